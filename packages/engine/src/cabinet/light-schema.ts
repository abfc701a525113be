// Keys of light: finishes of faces, lamps, cameras.

import { fault, isFault, parseQuantity, parseSizes, type Quantity, type TextFault } from '../units/quantity.ts';
import type { LampShape } from './light.ts';
import type { CameraKindSpec, CameraSpec, DimmingSpec, LampKindSpec, LampPlaceSpec } from './light-spec.ts';
import { type FieldsOf, fromText, name, place, quantity, type Schema, thing, word } from './shape.ts';

const share = { from: 0, to: 1 };
const SHAPE_FORM = 'strip 500 mm, panel 300 mm x 300 mm, or point';

export const reflectance = (): Schema<Quantity> =>
  quantity('number', 'share of visible light that its face throws back', share);

export const finish = (about: string): Schema<string> => name(`finish of the catalogue: ${about}`);

export const finishFields: { readonly reflectance: Schema<Quantity> } = { reflectance: reflectance() };

function dimming(): Schema<DimmingSpec> {
  return thing(
    {
      by: word(['dc', 'pwm', 'mains'], 'steady current, pulses, or the ripple of the mains'),
      frequency: quantity('frequency', 'of its pulses or ripple', { above: 0, to: 1e7 }).optional(),
      duty: quantity('share', 'share of each pulse during which it is on', { above: 0, to: 1 }).optional(),
      depth: quantity('share', 'depth of the ripple: (most - least)/(most + least)', share).optional(),
    },
    'how it is driven and dimmed',
  ) as unknown as Schema<DimmingSpec>;
}

export const lampFields: FieldsOf<LampKindSpec> = {
  flux: quantity('luminous-flux', 'light of a lamp', { from: 0, to: 1e6 }).optional(),
  shape: lampShape('its light-giving face').optional(),
  dimming: dimming().optional(),
};

export const lampPlaceFields: FieldsOf<LampPlaceSpec> = {
  at: place(3, 'middle of a lamp, from the left front lower corner of its bay: right, back, up').optional(),
  faces: word(['down', 'up', 'back', 'front', 'left', 'right'], 'where a lamp sends its light').optional(),
  along: word(['x', 'y', 'z'], 'axis of a strip: left to right, front to back, up').optional(),
};

export const cameraFields: FieldsOf<CameraKindSpec> = {
  view: view('whole angles of view, across and up').optional(),
  aperture: quantity('number', 'f-number of its lens', { from: 0.7, to: 64 }).optional(),
  iso: quantity('number', 'highest ISO speed that it may use', { from: 10, to: 1e6 }).optional(),
  readout: quantity('exposure-time', 'from the first row of a picture to the last', { from: 0, to: 10 }).optional(),
  pixels: pixels('of a picture, across and up').optional(),
};

export function cameraSchema(): Schema<CameraSpec> {
  return thing(
    {
      kind: name('kind of the catalogue').optional(),
      bay: name('bay in which it hangs').optional(),
      at: place(3, 'its lens, from the left front lower corner of its bay: right, back, up').optional(),
      'looks-at': name('machine whose print it looks at').optional(),
      shutter: shutter('exposure time').optional(),
      task: word(['time-lapse', 'live', 'watching'], 'what its pictures are for').optional(),
      'subject-speed': quantity('speed', 'how fast what it looks at moves', { from: 0, to: 10 }).optional(),
      ...cameraFields,
    },
    'a camera',
  );
}

/** `strip 500 mm`, `panel 300 mm x 300 mm`, `point`. */
export function lampShape(about: string): Schema<LampShape> {
  return fromText((input) => parseLampShape(String(input)), false, about, SHAPE_FORM);
}

/**
 * The face of a lamp that a text describes.
 *
 * @example A strip
 * ```ts
 * parseLampShape('strip 500 mm').kind; // => strip
 * ```
 */
export function parseLampShape(text: string): LampShape | TextFault {
  const [, what = '', rest = ''] = /^\s*([a-z]+)\s*(.*)$/.exec(text) ?? [];
  const at = text.length - rest.length;
  if (what === 'point' && rest.trim() === '') return { kind: 'point' };
  if (what === 'strip') {
    const length = parseQuantity('length', rest);
    if (isFault(length)) return { ...length, at: at + length.at, allowed: SHAPE_FORM };
    if (length.value > 0) return { kind: 'strip', length: length.value };
  }
  if (what === 'panel') {
    const read = parseSizes(rest, 2);
    if (isFault(read)) return { ...read, at: at + read.at, allowed: SHAPE_FORM };
    const [width = 0, height = 0] = read;
    if (width > 0 && height > 0) return { kind: 'panel', width, height };
  }
  return fault(
    'lamp-shape-wrong',
    0,
    Math.max(1, text.length),
    `"${text}" is no face of a lamp`,
    SHAPE_FORM,
    'write one of the three, with sizes above 0',
  );
}

/** `62° x 49°`. */
export function view(about: string): Schema<readonly number[]> {
  const allowed = 'two angles above 0° and below 180°, such as 62° x 49°';
  const read = (input: unknown): readonly number[] | TextFault => {
    const text = String(input);
    const pieces = text.split(/\s*[x×]\s*/i);
    const angles = pieces.map((piece) => parseQuantity('angle', piece));
    const wrong = angles.find(isFault);
    const values = angles.flatMap((angle) => (isFault(angle) ? [] : [angle.value]));
    if (wrong === undefined && values.length === 2 && values.every((value) => value > 0 && value < Math.PI))
      return values;
    const what = wrong === undefined ? `"${text}" is no angle of view` : wrong.what;
    return fault('view-wrong', 0, Math.max(1, text.length), what, allowed, 'give the angle across and the angle up');
  };
  return fromText(read, false, about, allowed);
}

/** `1920 x 1080`. */
function pixels(about: string): Schema<readonly number[]> {
  const allowed = 'two whole numbers, such as 1920 x 1080';
  const read = (input: unknown): readonly number[] | TextFault => {
    const text = String(input);
    const [, across, up] = /^\s*(\d{1,6})\s*[x×]\s*(\d{1,6})\s*$/i.exec(text) ?? [];
    if (Number(across) > 0 && Number(up) > 0) return [Number(across), Number(up)];
    return fault(
      'pixels-wrong',
      0,
      Math.max(1, text.length),
      `"${text}" is no number of pixels`,
      allowed,
      'look it up in the settings of the camera',
    );
  };
  return fromText(read, false, about, allowed);
}

/** `20 ms`, or as on a camera: `1/50 s`. */
export function shutter(about: string): Schema<Quantity> {
  const allowed = 'an exposure time, such as 20 ms or 1/50 s';
  const read = (input: unknown): Quantity | TextFault => {
    const text = String(input);
    const part = /^\s*1\/(\d{1,6})\s*(?:s\s*)?$/.exec(text)?.[1];
    const time = part === undefined ? parseQuantity('exposure-time', text) : { value: 1 / Number(part) };
    if (isFault(time)) return { ...time, allowed };
    if (time.value > 0 && time.value <= 3600) return time;
    return fault(
      'value-out-of-bounds',
      0,
      Math.max(1, text.length),
      `"${text}" is no time that a shutter stays open`,
      `${allowed}, above 0 s to 1 h`,
      'check the number and its unit',
    );
  };
  return fromText(read, false, about, allowed);
}
