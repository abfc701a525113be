// The plate that carries an axial fan on a board: opening, the fan's four holes, four for wood screws.

import { CLEARANCE, FAN_HOLES, PLATE, WOOD_SCREW } from './practice.ts';
import type { PrintedPart } from './printed-part.ts';
import { bore, cut, type Flat, outlineArea, plate, prism } from './shape.ts';

/** Beyond the fan's frame on each side. */
const FLANGE = 16;
/** The frame of a fan is wider than its opening by this. */
const FRAME_EDGE = 4;

export interface FanEnd {
  readonly shape: 'fan';
  /** Side of its frame, mm. */
  readonly frame: number;
  readonly spacing: number;
  readonly screw: keyof typeof CLEARANCE;
}

/** What is known of a fan's frame by its size; undefined where the trade has no such size. */
export function fanEnd(frame: number): FanEnd | undefined {
  const known = FAN_HOLES.find((one) => Math.abs(one.frame - frame) < 0.5);
  return known === undefined ? undefined : { shape: 'fan', ...known };
}

export const openingOf = ({ frame }: FanEnd): number => frame - FRAME_EDGE;

/** Four points on the corners of a square about the middle. */
export function corners(spacing: number, depth: number = spacing): Flat[] {
  const [a, b] = [spacing / 2, depth / 2];
  return [
    [-a, -b],
    [a, -b],
    [a, b],
    [-a, b],
  ];
}

export function fanPlate(path: string, end: FanEnd, bay: string | undefined): PrintedPart {
  const side = end.frame + 2 * FLANGE;
  const opening = bore(openingOf(end) / 2);
  const screws = corners(end.spacing).map((at) => bore(CLEARANCE[end.screw] / 2, at, 24));
  const wood = corners(end.frame + FLANGE).map((at) => bore(WOOD_SCREW / 2, at, 24));
  const holes = [opening, ...screws, ...wood];
  const volume = PLATE * (side ** 2 - holes.reduce((sum, hole) => sum + outlineArea(hole), 0));
  return {
    id: `${path}-fan-plate`,
    title: `fan plate of ${path}`,
    count: 1,
    shape: cut(prism(plate(side, side), 0, PLATE), ...holes.map((hole) => prism(hole, 0, PLATE))),
    size: [side, side, PLATE],
    volume,
    thinnest: PLATE,
    why: `carries the fan on the board, and closes the rest of its hole; saw the board ${Math.round(openingOf(end))} mm round`,
    sizedFrom: [
      `fan of ${end.frame} mm: holes ${end.spacing} mm apart (trade size, from memory)`,
      `opening ${openingOf(end)} mm`,
    ],
    lies: 'flat, without support',
    check: [
      'hold the fan against the print before screwing: frames differ by tenths of a millimetre',
      'it is its own template: hold it over the hole and prick its four outer holes into the board',
      'a foam strip of 3 mm between plate and board keeps air from going round it',
    ],
    ...(bay === undefined ? {} : { bay }),
    pins: {
      acrossX: [-1, 1].map((sign) => [(sign * (openingOf(end) / 2 + side / 2)) / 2, PLATE / 2] as const),
      acrossY: [-1, 1].map((sign) => [(sign * (openingOf(end) / 2 + side / 2)) / 2, PLATE / 2] as const),
    },
  };
}
