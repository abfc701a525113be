// Gaps between solids that stand along the axes: boxes, and cylinders whose axis lies along one of them. Closed forms.

import { mustBeFinite } from './argument.ts';

export type Axis = 0 | 1 | 2;
export type Point = readonly [x: number, y: number, z: number];

/** The box around it; `round` is the axis of a cylinder that fills that box. */
export interface Solid {
  readonly from: Point;
  readonly to: Point;
  readonly round?: Axis;
}

/**
 * Shortest distance between two solids; below 0 how far they must at least be moved along one axis to part.
 *
 *     boxes: d = |(gx, gy, gz)| of the gaps above 0, else the largest of the three
 *     cylinder and box: as boxes along its axis, as a circle against a rectangle across it
 *
 * A cylinder against one with another axis counts as its box: the gap is then told too small, by at most 0.42 of its radius.
 *
 * @param a - One solid, `to` not below `from`.
 * @param b - The other.
 * @returns m; exact for boxes, for a cylinder and a box, and for cylinders along one axis.
 * @throws RangeError when a corner is not a finite number.
 *
 * @remarks Valid: any size. Source: distance of convex sets that are products of intervals and circles. Checked: exact.
 *
 * @example Boxes that miss each other by 3 across and 4 in depth
 * ```ts
 * solidGap({ from: [0, 0, 0], to: [1, 1, 1] }, { from: [4, 5, 0], to: [6, 6, 1] }); // => 5
 * ```
 */
export function solidGap(a: Solid, b: Solid): number {
  const gx = gapAlong(a, b, 0);
  const gy = gapAlong(a, b, 1);
  const gz = gapAlong(a, b, 2);
  mustBeFinite('solidGap', 'corner', gx + gy + gz);
  const round = a.round === undefined ? b.round : b.round === undefined || b.round === a.round ? a.round : undefined;
  if (round === undefined) return combined(combined(gx, gy), gz);
  const [u, v] = round === 0 ? ([1, 2] as const) : round === 1 ? ([0, 2] as const) : ([0, 1] as const);
  return combined(round === 0 ? gx : round === 1 ? gy : gz, planeGap(a, b, u, v));
}

function gapAlong(a: Solid, b: Solid, axis: Axis): number {
  return Math.max(b.from[axis] - a.to[axis], a.from[axis] - b.to[axis]);
}

/** Gaps along independent directions: apart in any of them they are apart. */
function combined(one: number, other: number): number {
  return one > 0 && other > 0 ? Math.hypot(one, other) : Math.max(one, other);
}

/** Across the axis: circles against circles or rectangles. */
function planeGap(a: Solid, b: Solid, u: Axis, v: Axis): number {
  const [circle, other] = a.round === undefined ? [b, a] : [a, b];
  const x = (circle.from[u] + circle.to[u]) / 2;
  const y = (circle.from[v] + circle.to[v]) / 2;
  const radius = (circle.to[u] - circle.from[u]) / 2;
  if (other.round !== undefined) {
    const dx = x - (other.from[u] + other.to[u]) / 2;
    const dy = y - (other.from[v] + other.to[v]) / 2;
    return Math.hypot(dx, dy) - radius - (other.to[u] - other.from[u]) / 2;
  }
  const across = Math.max(other.from[u] - x, x - other.to[u]);
  const up = Math.max(other.from[v] - y, y - other.to[v]);
  return combined(across, up) - radius;
}
