// Boxes in the cabinet: x to the right, y to the back, z upwards, from the inside lower left front corner. Metres.

export type Axis = 'x' | 'y' | 'z';

export type Triple = readonly [x: number, y: number, z: number];

export interface Place {
  readonly from: Triple;
  readonly to: Triple;
}

/** Lengths that differ by less are the same, m. */
export const HAIR = 1e-7;

const order: Readonly<Record<Axis, 0 | 1 | 2>> = { x: 0, y: 1, z: 2 };

export function along(axis: Axis, at: Triple): number {
  return at[order[axis]];
}

export function extent(axis: Axis, { from, to }: Place): number {
  return to[order[axis]] - from[order[axis]];
}

export type Span = readonly [from: number, to: number];

export function span(axis: Axis, { from, to }: Place): Span {
  return [from[order[axis]], to[order[axis]]];
}

/** How much two spans share; below 0 the gap between them. */
export function shared([a, b]: Span, [c, d]: Span): number {
  return Math.min(b, d) - Math.max(a, c);
}
