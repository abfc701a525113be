// What goes through an opening: turning, tilting, and the sweep of a door.

import { mustBePositive, mustNotBeNegative } from './argument.ts';

/**
 * Width of the shadow of a box that is turned: a |cos t| + b |sin t|.
 *
 * @param a - Its width at t = 0, m, 0 or more.
 * @param b - Its depth, m, 0 or more.
 * @param angle - t, rad.
 * @returns m; at most {@link turningWidth}.
 * @throws RangeError when a length is nonsense.
 *
 * @remarks Valid: any. Source: projection of a rectangle. Checked: exact.
 *
 * @example 400 by 300 mm, turned by 30 degrees
 * ```ts
 * turnedWidth(0.4, 0.3, Math.PI / 6); // => 0.496
 * ```
 */
export function turnedWidth(a: number, b: number, angle: number): number {
  mustNotBeNegative('turnedWidth', 'a', a);
  mustNotBeNegative('turnedWidth', 'b', b);
  return a * Math.abs(Math.cos(angle)) + b * Math.abs(Math.sin(angle));
}

/**
 * Room that a box needs to be turned on the spot: its diagonal, √(a² + b²).
 *
 * @param a - m, 0 or more.
 * @param b - m, 0 or more.
 * @returns m.
 * @throws RangeError when a length is nonsense.
 *
 * @remarks Valid: any. Source: largest width of the turned rectangle. Checked: exact.
 *
 * @example 400 by 300 mm
 * ```ts
 * turningWidth(0.4, 0.3); // => 0.500
 * ```
 */
export function turningWidth(a: number, b: number): number {
  mustNotBeNegative('turningWidth', 'a', a);
  mustNotBeNegative('turningWidth', 'b', b);
  return Math.hypot(a, b);
}

/**
 * Narrowest clear opening that a box can be brought through: as it stands, or turned when there is room to turn it.
 *
 * Turning never makes it narrower than its shorter side.
 *
 * @param width - Its width as it stands, m, above 0.
 * @param depth - Its other side, m, above 0.
 * @param room - Width in which it can be turned, m, 0 or more.
 * @returns m, without air for hands.
 * @throws RangeError when a length is nonsense.
 *
 * @remarks
 * Valid: a rigid box on a level floor, brought out straight. Source: geometry. Checked: exact.
 *
 * @example 450 wide and 380 deep, in a bay of 600 and in one of 550 mm
 * ```ts
 * narrowestOpening(0.45, 0.38, 0.6); // => 0.38
 * narrowestOpening(0.45, 0.38, 0.55); // => 0.45
 * ```
 */
export function narrowestOpening(width: number, depth: number, room: number): number {
  mustBePositive('narrowestOpening', 'width', width);
  mustBePositive('narrowestOpening', 'depth', depth);
  mustNotBeNegative('narrowestOpening', 'room', room);
  return depth < width && turningWidth(width, depth) <= room ? depth : width;
}

/**
 * Radius that the free edge of a hinged door sweeps: √(w² + t²), its inner corner.
 *
 * @param width - w from the hinge's pin to the free edge, m, above 0.
 * @param thickness - t of the leaf, m, 0 or more.
 * @returns m.
 * @throws RangeError when a length is nonsense.
 *
 * @remarks Valid: pin in the plane of one face. Source: geometry. Checked: exact.
 *
 * @example A leaf of 600 by 18 mm
 * ```ts
 * 1000 * doorSweep(0.6, 0.018); // => 600.3
 * ```
 */
export function doorSweep(width: number, thickness: number): number {
  mustBePositive('doorSweep', 'width', width);
  mustNotBeNegative('doorSweep', 'thickness', thickness);
  return Math.hypot(width, thickness);
}
