// Loss coefficients of pieces that widen or narrow gradually: printed adapters, cones. Sudden steps are in `fittings.ts`.

import { mustLieWithin } from './argument.ts';

/** Above this included angle a widening costs as much as a sudden step, rad. */
const WIDE = Math.PI / 4;

/**
 * K of a conical widening, on the velocity in its narrow end.
 *     K = 2.6 sin(a/2) (1 - A1/A2)^2 up to a = 45 degrees, (1 - A1/A2)^2 beyond
 * @param areaRatio - A1/A2: narrow over wide, 0 to 1.
 * @param angle - a: included angle of the cone, rad, 0 to pi.
 * @returns K.
 * @throws RangeError when an argument lies outside.
 * @remarks
 * Valid: turbulent flow, some diameters of straight duct before it. The formula jumps by 0.5 % at 45 degrees.
 * Source: flow of fluids through fittings, Crane Technical Paper 410 (1976), A-26, after Gibson. Checked: limits; values (memory).
 * @example Twice the section in a cone of 20 degrees
 * ```ts
 * gradualExpansionLoss(0.5, Math.PI / 9); // => 0.1129
 * ```
 */
export function gradualExpansionLoss(areaRatio: number, angle: number): number {
  mustLieWithin('gradualExpansionLoss', 'areaRatio', areaRatio, 0, 1);
  mustLieWithin('gradualExpansionLoss', 'angle', angle, 0, Math.PI);
  const step = (1 - areaRatio) ** 2;
  return angle > WIDE ? step : 2.6 * Math.sin(angle / 2) * step;
}

/**
 * K of a conical narrowing, on the velocity in its narrow end.
 *     K = 0.8 sin(a/2) (1 - A2/A1) up to a = 45 degrees, 0.5 sqrt(sin(a/2)) (1 - A2/A1) beyond
 * @param areaRatio - A2/A1: narrow over wide, 0 to 1.
 * @param angle - a: included angle of the cone, rad, 0 to pi; pi is a sudden step.
 * @returns K.
 * @throws RangeError when an argument lies outside.
 * @remarks
 * Valid: turbulent flow. The formula jumps by 1 % at 45 degrees.
 * Source: Crane Technical Paper 410 (1976), A-26. Checked: limits; values (memory).
 * @example A fan of 116 mm behind a filter of 200 mm square, under 90 degrees
 * ```ts
 * gradualContractionLoss(0.264, Math.PI / 2); // => 0.309
 * ```
 */
export function gradualContractionLoss(areaRatio: number, angle: number): number {
  mustLieWithin('gradualContractionLoss', 'areaRatio', areaRatio, 0, 1);
  mustLieWithin('gradualContractionLoss', 'angle', angle, 0, Math.PI);
  const s = Math.sin(angle / 2);
  return (angle > WIDE ? 0.5 * Math.sqrt(s) : 0.8 * s) * (1 - areaRatio);
}
