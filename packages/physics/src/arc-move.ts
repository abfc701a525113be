// An arc between two points of a plane, as machines are told to go along: its middle, its sweep, its box.

import { mustBeFinite, mustBePositive } from './argument.ts';

export type PlanePoint = readonly [number, number];

/** From where it begins, anticlockwise above 0, clockwise below. */
export interface Arc {
  readonly middle: PlanePoint;
  readonly radius: number;
  /** Angle of the beginning seen from the middle, rad. */
  readonly from: number;
  /** Angle that it goes through, rad; a whole turn where it ends at its beginning. */
  readonly sweep: number;
}

/** A beginning so near the end, as a share of the radius, is taken for a whole turn. */
const SAME = 1e-9;
const QUARTER = Math.PI / 2;

/**
 * The arc round a given middle, from a beginning to the direction of an end.
 *
 * @param begin - m.
 * @param end - m; only its direction from the middle counts.
 * @param middle - m, not the beginning.
 * @param clockwise - Which way round.
 * @returns Its sweep is never 0: where it ends as it begins it is a whole turn.
 * @throws RangeError when the beginning lies on the middle or a number is none.
 *
 * @remarks Valid: any plane with a right-handed pair of axes. Source: geometry; ISO 6983-1:2009, arcs by their centre. Checked: exact (geometry), clause (memory).
 *
 * @example A quarter turn round the origin, and the same ends the other way round
 * ```ts
 * arcRound([1, 0], [0, 1], [0, 0], false).sweep; // => 1.5708
 * arcRound([1, 0], [0, 1], [0, 0], true).sweep; // => -4.7124
 * ```
 */
export function arcRound(begin: PlanePoint, end: PlanePoint, middle: PlanePoint, clockwise: boolean): Arc {
  const x = begin[0] - middle[0];
  const y = begin[1] - middle[1];
  const radius = Math.sqrt(x * x + y * y);
  mustBePositive('arcRound', 'radius', radius);
  mustBeFinite('arcRound', 'end', end[0] + end[1]);
  const from = Math.atan2(y, x);
  const turn = Math.atan2(end[1] - middle[1], end[0] - middle[0]) - from;
  const whole = 2 * Math.PI;
  const forward = ((turn % whole) + whole) % whole; // 0 to one turn, anticlockwise
  const same = SAME * radius;
  const closed = Math.abs(end[0] - begin[0]) <= same && Math.abs(end[1] - begin[1]) <= same;
  if (closed) return { middle, radius, from, sweep: clockwise ? -whole : whole };
  return { middle, radius, from, sweep: clockwise ? forward - whole : forward };
}

/**
 * Middle of an arc of given radius from a beginning to an end: right or left of the way, so that it goes less than half round; with a
 * radius below 0 more than half round.
 *
 *     h = √(R² - d²/4) beside the middle of the chord of length d
 *
 * @param begin - m.
 * @param end - m, not the beginning.
 * @param radius - R, m, not 0; where it is less than half the chord, half the chord is taken.
 * @param clockwise - Which way round.
 * @returns m.
 * @throws RangeError when both ends are the same.
 *
 * @remarks Valid: any. Source: geometry; NIST RS274NGC interpreter, version 3, 2000, radius format. Checked: exact (geometry), rule of the sign (memory).
 *
 * @example Quarter turns of radius 1
 * ```ts
 * arcMiddle([1, 0], [0, 1], 1, false)[0]; // => 0.0000
 * arcMiddle([1, 0], [0, 1], -1, false)[0]; // => 1.0000
 * ```
 */
export function arcMiddle(begin: PlanePoint, end: PlanePoint, radius: number, clockwise: boolean): PlanePoint {
  const [x, y] = [end[0] - begin[0], end[1] - begin[1]];
  const chord = Math.sqrt(x * x + y * y);
  mustBePositive('arcMiddle', 'chord', chord);
  const beside = Math.sqrt(Math.max(0, radius * radius - (chord * chord) / 4));
  const left = clockwise === radius < 0 ? beside : -beside;
  return [begin[0] + x / 2 - (left * y) / chord, begin[1] + y / 2 + (left * x) / chord];
}

/**
 * Box around an arc: its ends, and each of the four outermost points of the circle that it goes through.
 *
 * @param arc - m and rad.
 * @returns Least and greatest x and y, m.
 * @throws RangeError when its sweep is no number.
 *
 * @remarks Valid: any. Source: geometry. Checked: exact, and against many points of the arc.
 *
 * @example The upper half of a circle
 * ```ts
 * arcBox({ middle: [0, 0], radius: 2, from: 0, sweep: Math.PI }).y[1]; // => 2
 * arcBox({ middle: [0, 0], radius: 2, from: 0, sweep: Math.PI }).y[0]; // => 0
 * ```
 */
export function arcBox({ middle, radius, from, sweep }: Arc): { readonly x: PlanePoint; readonly y: PlanePoint } {
  mustBeFinite('arcBox', 'sweep', sweep);
  const low = sweep > 0 ? from : from + sweep;
  const high = sweep > 0 ? from + sweep : from;
  let left = Math.min(Math.cos(low), Math.cos(high));
  let right = Math.max(Math.cos(low), Math.cos(high));
  let down = Math.min(Math.sin(low), Math.sin(high));
  let up = Math.max(Math.sin(low), Math.sin(high));
  for (let k = Math.ceil(low / QUARTER); k * QUARTER < high; k++) {
    const side = ((k % 4) + 4) % 4; // right, up, left, down
    if (side === 0) right = 1;
    else if (side === 1) up = 1;
    else if (side === 2) left = -1;
    else down = -1;
  }
  return {
    x: [middle[0] + radius * left, middle[0] + radius * right],
    y: [middle[1] + radius * down, middle[1] + radius * up],
  };
}
