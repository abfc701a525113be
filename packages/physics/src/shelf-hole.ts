// A hole in a level shelf with the warmer, lighter air below: it exchanges air both ways unless a net flow flushes it.

import { mustBeFinite, mustBePositive, mustNotBeNegative } from './argument.ts';
import { GRAVITY } from './constants.ts';

/**
 * Volume flow each way through a level hole without net flow, lighter air below.
 *
 *     V = 0.10 sqrt(g drho A^2.5/rho)
 *
 * Its spread is wide: {@link holeExchangeByShape} gives a quarter less for a thin plate and up to 70 % more for a thick one.
 *
 * @param area - A of the hole, m², 0 or more.
 * @param relativeDensity - drho/rho, heavier air above; 0 or less gives no exchange. About dT/T.
 * @returns m³/s each way.
 * @throws RangeError when the area is negative or the density difference not finite.
 *
 * @remarks
 * Valid: one hole in a thin plate.
 * Source: L. Y. Cooper, NISTIR 89-4052 (1989), as in NIST SP 1026 (2005). Checked: formula (read).
 *
 * @example A hole of 50 mm, 5 K at 303 K, in m³/h
 * ```ts
 * shelfHoleExchange((Math.PI / 4) * 0.05 ** 2, 5 / 303) * 3600; // => 0.0599
 * ```
 */
export function shelfHoleExchange(area: number, relativeDensity: number): number {
  mustNotBeNegative('shelfHoleExchange', 'area', area);
  mustBeFinite('shelfHoleExchange', 'relativeDensity', relativeDensity);
  return 0.1 * Math.sqrt(GRAVITY * Math.max(0, relativeDensity) * area ** 2.5);
}

/**
 * Volume flow each way through a round level hole from its diameter and the thickness of the shelf.
 *
 *     V = k sqrt(g drho D^5/rho),   x = L/D
 *     k = 0.055 (1 + 400 x^3)^(1/6) / (1 + 0.00527 (1 + 400 x^3)^(1/2) (x^6 + 117 x^2)^(3/4))^(1/3)
 *
 * k is 0.055 for a thin plate, peaks at 0.095 near x = 0.6 and falls again for a pipe.
 *
 * @param diameter - D, m, above 0.
 * @param thickness - L, m, 0 or more.
 * @param relativeDensity - drho/rho, heavier air above; 0 or less gives no exchange.
 * @returns m³/s each way.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: 0 ≤ L/D ≤ 10, measured with brine and water.
 * Source: M. Epstein, J. Heat Transfer 110 (1988) 885-893. Checked: formula (memory); thin-plate and peak value (second-hand).
 *
 * @example A hole of 50 mm in a thin plate, 5 K at 303 K, in m³/h
 * ```ts
 * holeExchangeByShape(0.05, 0, 5 / 303) * 3600; // => 0.0445
 * ```
 */
export function holeExchangeByShape(diameter: number, thickness: number, relativeDensity: number): number {
  mustBePositive('holeExchangeByShape', 'diameter', diameter);
  mustNotBeNegative('holeExchangeByShape', 'thickness', thickness);
  mustBeFinite('holeExchangeByShape', 'relativeDensity', relativeDensity);
  const x = thickness / diameter;
  const short = 1 + 400 * x ** 3;
  const long = 1 + 0.00527 * Math.sqrt(short) * (x ** 6 + 117 * x ** 2) ** 0.75;
  const k = (0.055 * short ** (1 / 6)) / Math.cbrt(long);
  return k * Math.sqrt(GRAVITY * Math.max(0, relativeDensity) * diameter ** 5);
}

/** Shape factor C_s of the flooding pressure. Source: Cooper 1989 in NIST SP 1026 (read). */
export const FLOODING_SHAPE: { readonly round: number; readonly square: number } = { round: 0.754, square: 0.942 };

/**
 * Pressure difference above which a level hole passes air one way only.
 *
 *     dp_f = C_s^2 g drho D^5/(2 A^2),   D = sqrt(4A/pi)
 *
 * @param area - A of the hole, m², above 0.
 * @param densityDifference - drho, kg/m³; 0 or less gives 0.
 * @param shape - C_s, see {@link FLOODING_SHAPE}.
 * @returns Pa.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: one hole in a thin plate, lighter air below. Source: L. Y. Cooper, NISTIR 89-4052 (1989), as in NIST SP 1026 (2005).
 * Checked: formula (read).
 *
 * @example A hole of 50 mm, 5 K at 303 K
 * ```ts
 * floodingPressure((Math.PI / 4) * 0.05 ** 2, (1.165 * 5) / 303); // => 0.00434
 * ```
 */
export function floodingPressure(
  area: number,
  densityDifference: number,
  shape: number = FLOODING_SHAPE.round,
): number {
  mustBePositive('floodingPressure', 'area', area);
  mustBeFinite('floodingPressure', 'densityDifference', densityDifference);
  mustBePositive('floodingPressure', 'shape', shape);
  const diameter = Math.sqrt((4 * area) / Math.PI);
  return (shape ** 2 * GRAVITY * Math.max(0, densityDifference) * diameter ** 5) / (2 * area ** 2);
}

/**
 * Exchange through a level hole that also carries a net flow: it dies out linearly up to the flooding pressure.
 *
 *     V = V_0 (1 - |dp|/dp_f), not below 0
 *
 * @param still - V_0: exchange without net flow, m³/s, 0 or more.
 * @param dp - Pressure difference across the shelf at the hole, Pa.
 * @param flooding - dp_f, Pa, 0 or more; 0 means no exchange at all.
 * @returns m³/s each way.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid, Source, Checked: as {@link floodingPressure}.
 *
 * @example Half-way to flooding
 * ```ts
 * exchangeUnderPressure(2e-5, -0.002, 0.004); // => 1.0e-5
 * ```
 */
export function exchangeUnderPressure(still: number, dp: number, flooding: number): number {
  mustNotBeNegative('exchangeUnderPressure', 'still', still);
  mustBeFinite('exchangeUnderPressure', 'dp', dp);
  mustNotBeNegative('exchangeUnderPressure', 'flooding', flooding);
  return Math.abs(dp) >= flooding ? 0 : still * (1 - Math.abs(dp) / flooding);
}
