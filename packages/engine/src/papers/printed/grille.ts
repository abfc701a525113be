// A grille over a hole: slots too narrow for a finger, between bars that are printed flat with the plate.

import { grilleLoss } from '@stillair/physics';
import type { CabinetPath, Section } from '../../cabinet/cabinet.ts';
import { sizeText } from './cassette.ts';
import { RIM, sectionWords, sides } from './ends.ts';
import { corners } from './fan-plate.ts';
import { insertPart } from './path-edit.ts';
import { PLATE, WOOD_SCREW } from './practice.ts';
import type { PrintedPart } from './printed-part.ts';
import { bore, cut, type Flat, outlineArea, plate, prism } from './shape.ts';

/** Width of a slot; the jointed test finger of IEC 61032 is 12 mm thick (from memory). */
const SLOT = 6;
/** Bars are at least this thick. */
const BAR = 2;
/** A bar longer than this is held by a rib across. */
const LONGEST = 60;
/** Points of the arc at the end of a slot. */
const ARC = 8;

export function grille(
  id: string,
  path: CabinetPath,
  section: Section,
  count: number,
  bay: string | undefined,
): PrintedPart {
  const [width, height] = sides(section);
  const slots = section.shape === 'round' ? roundSlots(width / 2) : straightSlots(width, height);
  const outline = plate(width + 2 * RIM, height + 2 * RIM);
  const screws = corners(width + RIM, height + RIM).map((at) => bore(WOOD_SCREW / 2, at, 24));
  const holes = [...slots, ...screws];
  const open = slots.reduce((sum, slot) => sum + outlineArea(slot), 0);
  const whole = section.shape === 'round' ? (Math.PI / 4) * width ** 2 : width * height;
  const share = open / whole;
  const factor = grilleLoss(Math.min(Math.max(share, 0.2), 0.8));
  return {
    id: `${id}-grille`,
    title: `grille of ${id}`,
    count,
    shape: cut(prism(outline, 0, PLATE), ...holes.map((hole) => prism(hole, 0, PLATE))),
    size: [width + 2 * RIM, height + 2 * RIM, PLATE],
    volume: PLATE * (outlineArea(outline) - holes.reduce((sum, hole) => sum + outlineArea(hole), 0)),
    thinnest: BAR,
    why: `keeps fingers and mice out of the hole; ${Math.round(100 * share)} % of it stays free`,
    sizedFrom: [`hole of ${id}: ${sectionWords(section)}`, `slots of ${SLOT} mm, bars of ${BAR} mm or more`],
    lies: 'flat, without support',
    check: ['brush the dust off monthly: it multiplies the loss by 1.5 to 3 (common practice, from memory)'],
    ...(bay === undefined ? {} : { bay }),
    loss: {
      factor,
      area: whole / 1e6,
      formula: 'table of K by free share, bars with square edges',
      source: 'table of a general-purpose fluids library after Idelchik, second-hand',
      edits: [
        insertPart(id, path, 0, {
          grille: 'square-edged 70 % free',
          loss: Math.round(1000 * factor) / 1000,
          size: sizeText(section),
        }),
      ],
    },
    pins: {
      acrossX: [-1, 1].map((sign) => [sign * (height / 2 + RIM / 2), PLATE / 2] as const),
      acrossY: [-1, 1].map((sign) => [sign * (width / 2 + RIM / 2), PLATE / 2] as const),
    },
  };
}

/** Middles and half widths of slots side by side, as many as a width holds. */
function across(width: number): { readonly middles: readonly number[]; readonly half: number } {
  const count = Math.max(1, Math.floor((width + BAR) / (SLOT + BAR)));
  const slot = (width - (count - 1) * BAR) / count;
  // What is left over makes bars wider, not slots.
  const half = Math.min(slot, SLOT) / 2;
  const pitch = width / count;
  return { middles: Array.from({ length: count }, (_, at) => (at + 0.5) * pitch - width / 2), half };
}

/** Stretches between ribs, as few as keep each bar short. */
function along(length: number): (readonly [number, number])[] {
  const count = Math.max(1, Math.ceil(length / LONGEST));
  const each = (length - (count - 1) * BAR) / count;
  return Array.from({ length: count }, (_, at) => {
    const from = -length / 2 + at * (each + BAR);
    return [from, from + each] as const;
  });
}

function straightSlots(width: number, height: number): Flat[][] {
  const { middles, half } = across(width);
  return middles.flatMap((x) =>
    along(height).map(([from, to]): Flat[] => [
      [x - half, from],
      [x + half, from],
      [x + half, to],
      [x - half, to],
    ]),
  );
}

/** Slots that end on the circle. */
function roundSlots(radius: number): Flat[][] {
  const { middles, half } = across(2 * radius);
  const rib = 2 * radius > LONGEST ? BAR / 2 : 0;
  return middles.flatMap((x) => {
    const edge = (at: number): number => Math.sqrt(Math.max(radius ** 2 - at ** 2, 0));
    const [left, right] = [Math.max(x - half, -radius), Math.min(x + half, radius)];
    const arc = Array.from({ length: ARC + 1 }, (_, step) => {
      const at = right + ((left - right) * step) / ARC;
      return [at, edge(at)] as const;
    });
    // At the rim a slot may be shorter than the rib is wide.
    if (Math.max(edge(left), edge(right)) <= rib + BAR) return [];
    const top = arc.map(([at, y]): Flat => [at, Math.max(y, rib)]);
    if (rib === 0) return [[...top, ...top.map(([at, y]): Flat => [at, -y]).reverse()]];
    const upper: Flat[] = [[left, rib], [right, rib], ...top.filter(([, y]) => y > rib)];
    return [upper, upper.map(([at, y]): Flat => [at, -y]).reverse()];
  });
}
