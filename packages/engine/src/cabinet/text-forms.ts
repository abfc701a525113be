// Short texts with a form of their own: build-ups, sections of holes, what lies under a bed.

import { fault, isFault, parseQuantity, parseSizes, type TextFault } from '../units/quantity.ts';
import type { Section } from './cabinet.ts';
import { choice, fromText, fullList, quantity, type Schema, thing } from './shape.ts';
import type { BuildSpec, LayerSpec, UndersideSpec } from './spec.ts';

const SECTION_FORM = '80 mm round, or 100 mm x 50 mm';

/** `80 mm round`, `100 mm x 50 mm`; a single length is a diameter. */
export function section(about: string): Schema<Section> {
  return fromText((input) => parseSection(String(input)), false, about, `a size such as ${SECTION_FORM}`);
}

/**
 * The section that a text describes.
 *
 * @example A round hole
 * ```ts
 * parseSection('80 mm round').shape; // => round
 * ```
 */
export function parseSection(text: string): Section | TextFault {
  const round = /^\s*(?:ø\s*)?(.*?)\s*(?:\bround|\bdiameter)?\s*$/i.exec(text)!;
  if (!/[x×*]/i.test(round[1]!)) {
    const diameter = parseQuantity('length', round[1]!);
    if (isFault(diameter)) return { ...diameter, allowed: `a size such as ${SECTION_FORM}` };
    return diameter.value > 0 ? { shape: 'round', diameter: diameter.value } : notPositive(text);
  }
  const read = parseSizes(text, 2);
  if (isFault(read)) return read;
  const [width = 0, height = 0] = read;
  return width > 0 && height > 0 ? { shape: 'rectangular', width, height } : notPositive(text);
}

function notPositive(text: string): TextFault {
  return fault(
    'value-out-of-bounds',
    0,
    text.length,
    `"${text}" has a size that is not above 0`,
    `a size such as ${SECTION_FORM}`,
    'measure it again',
  );
}

const LAYER_FORM = 'a board and its thickness, such as plywood 18 mm';

/** The board and the thickness that a text names. */
export function parseLayer(text: string): LayerSpec | TextFault {
  const split = /^\s*(.*?[^\s\d])\s+([\d.,].*)$/.exec(text);
  if (split === null) {
    return fault(
      'build-wrong',
      0,
      Math.max(1, text.length),
      `"${text}" does not say how thick it is`,
      LAYER_FORM,
      'write the thickness behind the board',
    );
  }
  const [, board = '', thick = ''] = split;
  const at = text.length - thick.length;
  const thickness = parseQuantity('length', thick);
  if (isFault(thickness)) return { ...thickness, at: at + thickness.at, allowed: LAYER_FORM };
  if (thickness.value <= 0 || thickness.value > 1) {
    return fault(
      'value-out-of-bounds',
      at,
      thick.length,
      `${thick} is no thickness of a board`,
      `${LAYER_FORM}, up to 1 m`,
      'measure it again',
    );
  }
  return { board, thickness: thickness.value, length: board.length + (text.length - text.trimStart().length) };
}

/** A board and its thickness, such as `plywood 18 mm`. */
export function layerText(about: string): Schema<LayerSpec> {
  return fromText((input) => parseLayer(String(input)), false, about, LAYER_FORM);
}

/** One board, boards from inside to outside, or a map that also says how its faces look. */
export function build(about: string): Schema<BuildSpec> {
  const layer = layerText('a board');
  const layers = fullList(layer, 'boards from inside to outside');
  const full = thing(
    {
      layers: choice(
        [layer.transform((one) => [one]), layers],
        (input) => (Array.isArray(input) ? 1 : 0),
        'boards from inside to outside',
      ),
      'emissivity-inside': quantity('number', 'long-wave emissivity of the inner face', { from: 0, to: 1 }).optional(),
      'emissivity-outside': quantity('number', 'long-wave emissivity of the outer face', { from: 0, to: 1 }).optional(),
      sunlight: quantity('share', 'share of sunlight that is let through', { from: 0, to: 1 }).optional(),
    },
    about,
  );
  const short = layer.transform((one): BuildSpec => ({ layers: [one] }));
  const list = layers.transform((all): BuildSpec => ({ layers: all }));
  const pick = (input: unknown): number =>
    Array.isArray(input) ? 1 : typeof input === 'object' && input !== null ? 2 : 0;
  return choice([short, list, full], pick, about) as Schema<BuildSpec>;
}

/** `foam 10 mm`, `bare` or `bare 0.2` (emissivity). */
export function underside(about: string): Schema<UndersideSpec> {
  const allowed = 'foam and its thickness, or bare and its emissivity: foam 10 mm, bare 0.2';
  const read = (input: unknown): UndersideSpec | TextFault => {
    const text = String(input);
    const [, what = '', rest = ''] = /^\s*(\w+)\s*(.*)$/.exec(text) ?? [];
    const at = text.length - rest.length;
    if (what === 'foam') {
      const thickness = parseQuantity('length', rest);
      if (isFault(thickness)) return { ...thickness, at: at + thickness.at, allowed };
      if (thickness.value > 0) return { kind: 'foam', thickness: thickness.value };
    } else if (what === 'bare') {
      const emissivity = parseQuantity('number', rest === '' ? '0.2' : rest);
      if (isFault(emissivity)) return { ...emissivity, at: at + emissivity.at, allowed };
      if (emissivity.value >= 0 && emissivity.value <= 1) return { kind: 'bare', emissivity: emissivity.value };
    }
    return fault(
      'underside-wrong',
      0,
      Math.max(1, text.length),
      `"${text}" is no underside of a bed`,
      allowed,
      'write one of the two',
    );
  };
  return fromText(read, false, about, allowed);
}
