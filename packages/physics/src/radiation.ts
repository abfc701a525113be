// Heat radiation between grey faces: exact exchange of two, and the film that stands for it near room temperature.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import { STEFAN_BOLTZMANN } from './constants.ts';

/**
 * Emission of a black face, W/m².
 *
 *     Eb = sigma T⁴
 *
 * @param kelvin - T, K, 0 or more.
 * @returns Emissive power.
 * @throws RangeError when the temperature is negative or not a number.
 *
 * @remarks
 * Valid: always.
 * Source: Stefan-Boltzmann law, sigma of CODATA 2018.
 * Checked: second-hand.
 *
 * @example A face at 27 °C
 * ```ts
 * blackEmission(300); // => 459.3
 * ```
 */
export function blackEmission(kelvin: number): number {
  mustNotBeNegative('blackEmission', 'kelvin', kelvin);
  return STEFAN_BOLTZMANN * kelvin ** 4;
}

/**
 * Heat that a convex body loses by radiation to surroundings that enclose it widely, W.
 *
 *     q = eps A sigma (T⁴ - Tmr⁴)
 *
 * @param emissivity - eps of the body, 0 to 1.
 * @param area - A, m², 0 or more.
 * @param kelvin - T, K, 0 or more.
 * @param surroundingKelvin - Mean radiant temperature Tmr of the surroundings, K, 0 or more.
 * @returns Heat lost; negative when the surroundings are warmer.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: the body is small beside what encloses it, or that is black.
 * Source: any heat-transfer text, for instance Çengel, Heat and Mass Transfer, ch. 1.
 * Checked: second-hand.
 *
 * @example A black plate of 0.6 m square at 90 °C in a room of 30 °C (Çengel, example 9-2: 182 W)
 * ```ts
 * radiationToRoom(1, 0.36, 363, 303); // => 182.4
 * ```
 */
export function radiationToRoom(emissivity: number, area: number, kelvin: number, surroundingKelvin: number): number {
  mustLieWithin('radiationToRoom', 'emissivity', emissivity, 0, 1);
  mustNotBeNegative('radiationToRoom', 'area', area);
  return emissivity * area * (blackEmission(kelvin) - blackEmission(surroundingKelvin));
}

/**
 * Heat exchanged by two wide parallel faces, W/m².
 *
 *     q = sigma (T1⁴ - T2⁴) / (1/eps1 + 1/eps2 - 1)
 *
 * @param firstEmissivity - eps1, above 0, to 1.
 * @param firstKelvin - T1, K, 0 or more.
 * @param secondEmissivity - eps2, above 0, to 1.
 * @param secondKelvin - T2, K, 0 or more.
 * @returns Heat from the first to the second.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: grey, diffuse faces, far wider than their distance.
 * Source: Holman, Heat Transfer, eq 8-42.
 * Checked: second-hand.
 *
 * @example The faces of a gap at 100 °C and 40 °C with emissivity 0.2 (Holman, example 7-8: 15.4 W on 0.25 m²)
 * ```ts
 * 0.25 * parallelExchange(0.2, 373, 0.2, 313); // => 15.4
 * ```
 */
export function parallelExchange(
  firstEmissivity: number,
  firstKelvin: number,
  secondEmissivity: number,
  secondKelvin: number,
): number {
  mustBePositive('parallelExchange', 'firstEmissivity', firstEmissivity);
  mustLieWithin('parallelExchange', 'firstEmissivity', firstEmissivity, 0, 1);
  mustBePositive('parallelExchange', 'secondEmissivity', secondEmissivity);
  mustLieWithin('parallelExchange', 'secondEmissivity', secondEmissivity, 0, 1);
  return (blackEmission(firstKelvin) - blackEmission(secondKelvin)) / (1 / firstEmissivity + 1 / secondEmissivity - 1);
}

/**
 * Film that stands for radiation, W/(m²·K), exact for the two temperatures given.
 *
 *     h = eps sigma (T² + Tmr²) (T + Tmr),    near eps 4 sigma Tm³
 *
 * @param emissivity - eps, 0 to 1, or the exchange factor of two faces.
 * @param kelvin - T of the face, K, 0 or more.
 * @param surroundingKelvin - Tmr of what it sees, K, 0 or more.
 * @returns Film; times the difference of the two it gives the exact exchange.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: as `radiationToRoom`.
 * Source: factoring of T⁴ - Tmr⁴; ISO 6946:2017 annex C prints 5.1 W/(m²·K) for a black face at 10 °C, 5.7 at 20 °C.
 * Checked: memory.
 *
 * @example A black face at 20 °C
 * ```ts
 * radiationFilm(1, 293.15, 293.15); // => 5.7
 * ```
 */
export function radiationFilm(emissivity: number, kelvin: number, surroundingKelvin: number): number {
  mustLieWithin('radiationFilm', 'emissivity', emissivity, 0, 1);
  mustNotBeNegative('radiationFilm', 'kelvin', kelvin);
  mustNotBeNegative('radiationFilm', 'surroundingKelvin', surroundingKelvin);
  const squares = kelvin * kelvin + surroundingKelvin * surroundingKelvin;
  return emissivity * STEFAN_BOLTZMANN * squares * (kelvin + surroundingKelvin);
}
