// Which piece of board, door or partition each bay sees: rectangles cut from the bays' ranges. Pure geometry, metres.

import type { Bay, Cabinet, FaceName } from './cabinet.ts';
import { restingOnParts } from './resting-on-parts.ts';

/** Boards thinner than this may stand between two bays that count as neighbours, m. */
const THICKEST_BOARD = 0.08;

/** A piece of the inside surface of one bay. `from` and `to` are heights for upright pieces, equal for level ones. */
export interface Piece {
  readonly bay: string;
  readonly face: FaceName;
  /** The bay behind it, or the outside. */
  readonly behind: { readonly kind: 'outside' } | { readonly kind: 'bay'; readonly bay: string };
  readonly width: number;
  readonly from: number;
  readonly to: number;
  readonly area: number;
}

/** Every bay's inside surface in pieces; areas of a bay's pieces add up to its whole box. */
export const piecesOf: (cabinet: Pick<Cabinet, 'bays' | 'inside'>) => readonly Piece[] = restingOnParts((cabinet) =>
  Object.keys(cabinet.bays).flatMap((id) => bayPieces(id, cabinet)),
);

/** Air space of a bay, m³. */
export function bayVolume(bay: Bay, depth: number): number {
  return (bay.x[1] - bay.x[0]) * (bay.z[1] - bay.z[0]) * depth;
}

function bayPieces(id: string, { bays, inside }: Pick<Cabinet, 'bays' | 'inside'>): Piece[] {
  const bay = bays[id]!;
  const [x0, x1] = bay.x;
  const [z0, z1] = bay.z;
  const { depth } = inside;
  const outside = { kind: 'outside' } as const;
  const upright = (face: FaceName, width: number, from: number, to: number, behind: Piece['behind']): Piece => ({
    bay: id,
    face,
    behind,
    width,
    from,
    to,
    area: width * (to - from),
  });
  const level = (face: FaceName, width: number, z: number, behind: Piece['behind']): Piece => ({
    bay: id,
    face,
    behind,
    width,
    from: z,
    to: z,
    area: width * depth,
  });

  const pieces: Piece[] = [upright('front', x1 - x0, z0, z1, outside), upright('back', x1 - x0, z0, z1, outside)];
  for (const [face, edge, step] of [
    ['left', x0, -1],
    ['right', x1, 1],
  ] as const) {
    const shared = neighbours(id, bays, (other) => ({
      gap: step < 0 ? edge - other.x[1] : other.x[0] - edge,
      range: overlap(bay.z, other.z),
    }));
    for (const { bay: other, range } of shared)
      pieces.push(upright(face, depth, range[0], range[1], { kind: 'bay', bay: other }));
    for (const [from, to] of rest(bay.z, shared)) pieces.push(upright(face, depth, from, to, outside));
  }
  for (const [face, edge, step] of [
    ['bottom', z0, -1],
    ['top', z1, 1],
  ] as const) {
    const shared = neighbours(id, bays, (other) => ({
      gap: step < 0 ? edge - other.z[1] : other.z[0] - edge,
      range: overlap(bay.x, other.x),
    }));
    for (const { bay: other, range } of shared)
      pieces.push(level(face, range[1] - range[0], edge, { kind: 'bay', bay: other }));
    for (const [from, to] of rest(bay.x, shared)) pieces.push(level(face, to - from, edge, outside));
  }
  return pieces;
}

type Range = readonly [number, number];

function neighbours(
  id: string,
  bays: Cabinet['bays'],
  meets: (other: Bay) => { gap: number; range: Range },
): { bay: string; range: Range }[] {
  return Object.entries(bays)
    .filter(([other]) => other !== id)
    .map(([other, bay]) => ({ bay: other, ...meets(bay) }))
    .filter(({ gap, range }) => gap > -1e-6 && gap <= THICKEST_BOARD && range[1] - range[0] > 1e-6)
    .map(({ bay, range }) => ({ bay, range }))
    .sort((a, b) => a.range[0] - b.range[0]);
}

function overlap(a: Range, b: Range): Range {
  return [Math.max(a[0], b[0]), Math.min(a[1], b[1])];
}

/** What the shared ranges leave of the whole. */
function rest(whole: Range, shared: readonly { range: Range }[]): Range[] {
  const left: Range[] = [];
  let at = whole[0];
  for (const { range } of shared) {
    if (range[0] - at > 1e-6) left.push([at, range[0]]);
    at = Math.max(at, range[1]);
  }
  if (whole[1] - at > 1e-6) left.push([at, whole[1]]);
  return left;
}
