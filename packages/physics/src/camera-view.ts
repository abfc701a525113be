// What a camera sees: where a place lies in its picture.

import { mustBePositive, mustLieWithin } from './argument.ts';
import type { Vector } from './configuration-factor.ts';

/** A camera without distortion, held level. */
export interface View {
  readonly at: Vector;
  /** Place in the middle of its picture. */
  readonly towards: Vector;
  /** Whole angles across and up, rad, above 0 and below pi. */
  readonly angles: readonly [across: number, up: number];
}

/** Where a place lies in a picture: -1 to 1 across and up; `depth` along the axis, m. */
export interface InPicture {
  readonly across: number;
  readonly up: number;
  readonly depth: number;
}

/**
 * Width of what a camera shows at a distance.
 *
 *     w = 2 d tan(angle/2)
 *
 * @param distance - d along the axis, m, above 0.
 * @param angle - Whole angle of view, rad, 0 to pi.
 * @returns m.
 * @throws RangeError when an argument is out of these bounds.
 *
 * @remarks Valid: lenses without distortion. Source: geometry of the pinhole. Checked: memory.
 *
 * @example 90 degrees, one metre away
 * ```ts
 * fieldWidth(1, Math.PI / 2); // => 2.000
 * ```
 */
export function fieldWidth(distance: number, angle: number): number {
  mustBePositive('fieldWidth', 'distance', distance);
  mustLieWithin('fieldWidth', 'angle', angle, 0, Math.PI);
  return 2 * distance * Math.tan(angle / 2);
}

/**
 * Where a place lies in the picture of a camera.
 *
 *     across = (p - c)·right/(depth tan(a/2)),   up = (p - c)·above/(depth tan(b/2)),   depth = (p - c)·axis
 *
 * @param view - The camera.
 * @param place - p, m.
 * @returns Within -1 to 1 in both when the picture holds it; `depth` below 0 when it lies behind.
 * @throws RangeError when the camera stands where it looks, or an angle is out of bounds.
 *
 * @remarks Valid: lenses without distortion, horizon level. Source: geometry of the pinhole. Checked: memory.
 *
 * @example Half way to the edge
 * ```ts
 * placeInPicture({ at: [0, 0, 0], towards: [0, 1, 0], angles: [Math.PI / 2, Math.PI / 2] }, [0.5, 1, 0]).across; // => 0.500
 * ```
 */
export function placeInPicture({ at, towards, angles }: View, place: Vector): InPicture {
  const axis = unit([towards[0] - at[0], towards[1] - at[1], towards[2] - at[2]]);
  // Straight up or down there is no level horizon: the picture's top is then towards the back.
  const plumb = Math.hypot(axis[0], axis[1]) < 1e-9;
  const right = plumb ? ([1, 0, 0] as const) : unit([axis[1], -axis[0], 0]);
  const above = cross(right, axis);
  const way: Vector = [place[0] - at[0], place[1] - at[1], place[2] - at[2]];
  const depth = dot(way, axis);
  const [across, up] = angles;
  mustLieWithin('placeInPicture', 'an angle', across, 1e-6, Math.PI - 1e-6);
  mustLieWithin('placeInPicture', 'an angle', up, 1e-6, Math.PI - 1e-6);
  return {
    across: dot(way, right) / (Math.abs(depth) * Math.tan(across / 2)),
    up: dot(way, above) / (Math.abs(depth) * Math.tan(up / 2)),
    depth,
  };
}

function unit(vector: Vector): Vector {
  const length = Math.hypot(...vector);
  mustBePositive('placeInPicture', 'the way to what it looks at', length);
  return [vector[0] / length, vector[1] / length, vector[2] / length];
}

function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
}

function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]];
}
