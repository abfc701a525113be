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

const AXES = [0, 1, 2] as const;

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
  for (const value of [...a.from, ...a.to, ...b.from, ...b.to]) mustBeFinite('solidGap', 'corner', value);
  const gaps = AXES.map((axis) => Math.max(b.from[axis] - a.to[axis], a.from[axis] - b.to[axis]));
  const round = a.round === undefined ? b.round : b.round === undefined || b.round === a.round ? a.round : undefined;
  if (round === undefined) return combined(gaps);
  const across = AXES.filter((axis) => axis !== round) as [Axis, Axis];
  return combined([gaps[round]!, planeGap(a, b, across)]);
}

/** Gaps along independent directions: apart in any of them they are apart. */
function combined(gaps: readonly number[]): number {
  const open = gaps.filter((gap) => gap > 0);
  return open.length > 0 ? Math.hypot(...open) : Math.max(...gaps);
}

/** Across the axis: circles against circles or rectangles. */
function planeGap(a: Solid, b: Solid, [u, v]: [Axis, Axis]): number {
  const [circle, other] = a.round === undefined ? [b, a] : [a, b];
  const centre = (solid: Solid): [number, number] => [
    (solid.from[u] + solid.to[u]) / 2,
    (solid.from[v] + solid.to[v]) / 2,
  ];
  const radius = (solid: Solid): number => (solid.to[u] - solid.from[u]) / 2;
  const [x, y] = centre(circle);
  if (other.round !== undefined) {
    const [ox, oy] = centre(other);
    return Math.hypot(x - ox, y - oy) - radius(circle) - radius(other);
  }
  const gaps = [Math.max(other.from[u] - x, x - other.to[u]), Math.max(other.from[v] - y, y - other.to[v])];
  return combined(gaps) - radius(circle);
}
