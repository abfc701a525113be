// A curve through given points: pieces of cubics between them, straight lines with the end slopes beyond them.
// `curveAt` and `curveSlope` run in the hot loop of a network solver: they check nothing and allocate nothing.

import { mustBeFinite, mustBePositive } from './argument.ts';

/** A point of a curve: where, and how much. */
export type CurvePoint = readonly [x: number, y: number];

/** A curve ready to be read. Made by {@link monotoneCurve} or {@link straightCurve}. */
export interface Curve {
  /** Places of the points, rising. */
  readonly x: Float64Array;
  /** Four numbers a piece: y = c0 + c1 t + c2 t² + c3 t³ with t = x - x_i; the last piece is the line beyond the end. */
  readonly coefficients: Float64Array;
}

/**
 * Curve through points that rises where the points rise, falls where they fall and never overshoots (PCHIP).
 *
 * Slope at an inner point: 0 where the neighbouring chords d0, d1 differ in sign, else their weighted harmonic mean
 * (w0 + w1)/(w0/d0 + w1/d1) with w0 = 2 h1 + h0, w1 = h1 + 2 h0. At an end: the parabola through three points,
 * held to the sign of the first chord and to three times it.
 *
 * @param points - Two or more, x strictly rising, in the same order as read off a data sheet.
 * @returns The curve; its slope has no step, and it goes on beyond its ends with the end slopes.
 * @throws RangeError when fewer than two points are given, a number is not finite or x does not rise.
 *
 * @remarks
 * Valid: any points. Source: F. N. Fritsch, J. Butland, SIAM J. Sci. Stat. Comput. 5 (1984) 300-304; end slopes after
 * C. Moler, Numerical Computing (2004) ch. 3. Checked: formula (memory); values (independent library).
 *
 * @example Between the second and the third of three points
 * ```ts
 * curveAt(monotoneCurve([[0, 60], [1, 46], [2, 0]]), 1.5); // => 28.07
 * ```
 */
export function monotoneCurve(points: readonly CurvePoint[]): Curve {
  mustBeCurve('monotoneCurve', points);
  return cubicPieces(points, pchipSlopes(points));
}

/**
 * Curve of straight lines between points, going on beyond its ends with the first and the last line.
 *
 * @param points - Two or more, x strictly rising.
 * @returns The curve.
 * @throws RangeError as {@link monotoneCurve}.
 *
 * @remarks Valid: any points. Source: linear interpolation. Checked: exact.
 *
 * @example Beyond the end
 * ```ts
 * curveAt(straightCurve([[0, 60], [1, 46], [2, 0]]), 2.5); // => -23
 * ```
 */
export function straightCurve(points: readonly CurvePoint[]): Curve {
  mustBeCurve('straightCurve', points);
  const pieces = points.length - 1;
  const coefficients = new Float64Array(4 * points.length);
  for (let i = 0; i < pieces; i++) coefficients.set([points[i]![1], chord(points, i)], 4 * i);
  coefficients.set([points[pieces]![1], chord(points, pieces - 1)], 4 * pieces);
  return { x: Float64Array.from(points, ([x]) => x), coefficients };
}

/**
 * Value of a curve.
 *
 * @param curve - From {@link monotoneCurve} or {@link straightCurve}.
 * @param x - Where, any finite number.
 * @returns y.
 *
 * @remarks Valid, Source, Checked: as the maker of the curve.
 *
 * @example At a point
 * ```ts
 * curveAt(straightCurve([[0, 60], [1, 46], [2, 0]]), 1); // => 46
 * ```
 */
export function curveAt(curve: Curve, x: number): number {
  const i = pieceOf(curve, x);
  const t = x - curve.x[i]!;
  const c = curve.coefficients;
  const at = 4 * i;
  // Before the first point the curve is the tangent there.
  return t < 0 ? c[at]! + t * c[at + 1]! : c[at]! + t * (c[at + 1]! + t * (c[at + 2]! + t * c[at + 3]!));
}

/**
 * Slope of a curve, for Newton's method.
 *
 * @param curve - From {@link monotoneCurve} or {@link straightCurve}.
 * @param x - Where, any finite number.
 * @returns dy/dx; at a corner of a straight curve that of the line to the right.
 *
 * @remarks Valid, Source, Checked: as the maker of the curve.
 *
 * @example On the second line
 * ```ts
 * curveSlope(straightCurve([[0, 60], [1, 46], [2, 0]]), 1.5); // => -46
 * ```
 */
export function curveSlope(curve: Curve, x: number): number {
  const i = pieceOf(curve, x);
  const t = x - curve.x[i]!;
  const c = curve.coefficients;
  const at = 4 * i;
  return t < 0 ? c[at + 1]! : c[at + 1]! + t * (2 * c[at + 2]! + t * 3 * c[at + 3]!);
}

/** Last piece that starts at or before x; 0 before the first point. Curves have few points, so a scan is quickest. */
function pieceOf({ x: places }: Curve, x: number): number {
  let i = places.length - 1;
  while (i > 0 && x < places[i]!) i--;
  return i;
}

function pchipSlopes(points: readonly CurvePoint[]): number[] {
  const last = points.length - 1;
  if (last === 1) return [chord(points, 0), chord(points, 0)];
  return points.map((_, i) => {
    if (i === 0) return endSlope(width(points, 0), width(points, 1), chord(points, 0), chord(points, 1));
    if (i === last)
      return endSlope(width(points, i - 1), width(points, i - 2), chord(points, i - 1), chord(points, i - 2));
    const [before, after] = [chord(points, i - 1), chord(points, i)];
    if (before * after <= 0) return 0;
    const [h0, h1] = [width(points, i - 1), width(points, i)];
    const [w0, w1] = [2 * h1 + h0, h1 + 2 * h0];
    return (w0 + w1) / (w0 / before + w1 / after);
  });
}

function endSlope(h0: number, h1: number, d0: number, d1: number): number {
  const slope = ((2 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
  if (slope * d0 <= 0) return 0;
  return d0 * d1 < 0 && Math.abs(slope) > 3 * Math.abs(d0) ? 3 * d0 : slope;
}

function cubicPieces(points: readonly CurvePoint[], slopes: readonly number[]): Curve {
  const last = points.length - 1;
  const coefficients = new Float64Array(4 * points.length);
  for (let i = 0; i < last; i++) {
    const [h, d, s0, s1] = [width(points, i), chord(points, i), slopes[i]!, slopes[i + 1]!];
    coefficients.set([points[i]![1], s0, (3 * d - 2 * s0 - s1) / h, (s0 + s1 - 2 * d) / h ** 2], 4 * i);
  }
  coefficients.set([points[last]![1], slopes[last]!], 4 * last);
  return { x: Float64Array.from(points, ([x]) => x), coefficients };
}

function width(points: readonly CurvePoint[], i: number): number {
  return points[i + 1]![0] - points[i]![0];
}

function chord(points: readonly CurvePoint[], i: number): number {
  return (points[i + 1]![1] - points[i]![1]) / width(points, i);
}

function mustBeCurve(where: string, points: readonly CurvePoint[]): void {
  mustBePositive(where, 'number of points less one', points.length - 1);
  points.forEach(([x, y], i) => {
    mustBeFinite(where, `x of point ${i + 1}`, x);
    mustBeFinite(where, `y of point ${i + 1}`, y);
    if (i > 0) mustBePositive(where, `step of x to point ${i + 1}`, x - points[i - 1]![0]);
  });
}
