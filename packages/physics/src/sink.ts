// Air drawn towards an outlet: the reach of suction is short.

import { mustBePositive, mustNotBeNegative } from './argument.ts';

/**
 * Velocity towards a small outlet in a wall: u = V/(2 pi x²), the flow through half a sphere.
 *
 * @param flow - V, m³/s, 0 or more.
 * @param distance - x, m, above 0; a diameter or more.
 * @returns m/s.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: beyond one diameter, wall all around. Source: continuity. Checked: exact.
 *
 * @example 30 m³/h at 0.2 m
 * ```ts
 * sinkVelocity(30 / 3600, 0.2); // => 0.033
 * ```
 */
export function sinkVelocity(flow: number, distance: number): number {
  mustNotBeNegative('sinkVelocity', 'flow', flow);
  mustBePositive('sinkVelocity', 'distance', distance);
  return flow / (2 * Math.PI * distance ** 2);
}

/**
 * Velocity on the axis of a plain or flanged opening that draws air (Dalla Valle).
 *
 *     plain: u = V/(10 x² + A),   flanged: u = V/(0.75 (10 x² + A))
 *
 * @param flow - V, m³/s, 0 or more.
 * @param distance - x from the opening, m, 0 or more.
 * @param area - A of the opening, m², above 0.
 * @param flanged - True where a flange or wall keeps air from behind away.
 * @returns m/s.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: x within 1.5 diameters; plain form also at the opening itself (u = V/A).
 * Source: J. M. Dalla Valle (1930) as in ACGIH, Industrial Ventilation. Checked: formula (memory).
 *
 * @example A 92 mm nozzle drawing 30 m³/h, 0.1 m before it
 * ```ts
 * captureVelocity(30 / 3600, 0.1, 0.00665, true); // => 0.104
 * ```
 */
export function captureVelocity(flow: number, distance: number, area: number, flanged = false): number {
  mustNotBeNegative('captureVelocity', 'flow', flow);
  mustNotBeNegative('captureVelocity', 'distance', distance);
  mustBePositive('captureVelocity', 'area', area);
  return flow / ((flanged ? 0.75 : 1) * (10 * distance ** 2 + area));
}
