// When does a draught cool a printed part more than its own warmth does?

import { airConductivity, airPrandtl } from './air.ts';
import { mustBePositive, mustNotBeNegative } from './argument.ts';
import { GRAVITY } from './constants.ts';
import { mixedConvection, streamFilm } from './forced-convection.ts';
import { nusseltVerticalPlateLaminar, rayleighInAir } from './natural-convection.ts';

/**
 * Richardson number, buoyancy over momentum: Ri = g dT L/(T U²).
 *
 * Above 10 a part cools by its own plume, below 0.1 by the draught, near 1 by both.
 *
 * @param length - L: height of the part, m, above 0.
 * @param difference - dT between part and air, K, 0 or more.
 * @param speed - U of the air, m/s, above 0.
 * @param filmK - T: mean of part and air, K, above 0.
 * @returns Ri.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: ideal gas. Source: Grashof over Reynolds squared. Checked: exact; values (independent script).
 *
 * @example A part of 40 mm at 70 °C in 35 °C air at 0.2 m/s
 * ```ts
 * richardsonNumber(0.04, 35, 0.2, 325.65); // => 1.05
 * ```
 */
export function richardsonNumber(length: number, difference: number, speed: number, filmK: number): number {
  mustBePositive('richardsonNumber', 'length', length);
  mustNotBeNegative('richardsonNumber', 'difference', difference);
  mustBePositive('richardsonNumber', 'speed', speed);
  mustBePositive('richardsonNumber', 'filmK', filmK);
  return (GRAVITY * difference * length) / (filmK * speed ** 2);
}

/**
 * Air speed at which a part reaches a Richardson number: U = sqrt(g dT L/(T Ri)).
 *
 * @param length - L, m, above 0.
 * @param difference - dT, K, 0 or more.
 * @param filmK - T, K, above 0.
 * @param richardson - Ri, above 0; 1 unless given: the draught begins to matter.
 * @returns m/s.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: as {@link richardsonNumber}. Source: its inverse. Checked: exact; values (independent script).
 *
 * @example The part above
 * ```ts
 * draughtThreshold(0.04, 35, 325.65); // => 0.205
 * ```
 */
export function draughtThreshold(length: number, difference: number, filmK: number, richardson = 1): number {
  mustBePositive('draughtThreshold', 'length', length);
  mustNotBeNegative('draughtThreshold', 'difference', difference);
  mustBePositive('draughtThreshold', 'filmK', filmK);
  mustBePositive('draughtThreshold', 'richardson', richardson);
  return Math.sqrt((GRAVITY * difference * length) / (filmK * richardson));
}

/**
 * Film of a small upright part in a draught, by convection: cubic blend of its own plume and the stream.
 *
 *     h³ = h_natural³ + h_stream³
 *
 * @param length - L, m, above 0.
 * @param difference - dT between part and air, K, above 0.
 * @param speed - U, m/s, 0 or more.
 * @param filmK - Mean of part and air, K, above 0.
 * @returns W/(m²·K), without radiation (about 6 more).
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: laminar, 10 to 150 mm. Source: laminar fit of Churchill & Chu 1975 for the plume, laminar plate for the stream.
 * Checked: values (independent script).
 *
 * @example The part above in 0.2 m/s
 * ```ts
 * partFilm(0.04, 35, 0.2, 325.65); // => 10.3
 * ```
 */
export function partFilm(length: number, difference: number, speed: number, filmK: number): number {
  const rayleigh = rayleighInAir(length, difference, filmK);
  const natural = (nusseltVerticalPlateLaminar(rayleigh, airPrandtl(filmK)) * airConductivity(filmK)) / length;
  return mixedConvection(streamFilm(speed, length, filmK), natural);
}
