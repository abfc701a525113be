// Bodies so thin or so good at conducting that they have one temperature: spools, beds, metal sheets, glass panes.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';

/**
 * Biot number: resistance inside the body over resistance of its film. Below 0.1 one temperature will do.
 *
 *     Bi = h (V/A) / k
 *
 * @param film - h, W/(m²·K), 0 or more.
 * @param volumePerArea - V/A, m, above 0; half the thickness of a board that is cooled on both faces.
 * @param conductivity - k of the body, W/(m·K), above 0.
 * @returns Bi.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: definition.
 * Source: Holman, Heat Transfer, eq 4-6.
 * Checked: second-hand.
 *
 * @example A pane of glass may be one node, a plywood board may not
 * ```ts
 * biotNumber(7.69, 0.002, 1); // => 0.015
 * biotNumber(7.69, 0.009, 0.13); // => 0.53
 * ```
 */
export function biotNumber(film: number, volumePerArea: number, conductivity: number): number {
  mustNotBeNegative('biotNumber', 'film', film);
  mustBePositive('biotNumber', 'volumePerArea', volumePerArea);
  mustBePositive('biotNumber', 'conductivity', conductivity);
  return (film * volumePerArea) / conductivity;
}

/**
 * Share of the first temperature difference that is left after a time, when the film does not change.
 *
 *     (T - Ta) / (Ti - Ta) = exp(-t / tau),    tau = C / (h A)
 *
 * @param time - t, s, 0 or more.
 * @param capacity - C, heat capacity of the body, J/K, above 0.
 * @param conductance - h A, W/K, above 0.
 * @returns Share left, 1 to 0.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: Bi below 0.1, constant surroundings.
 * Source: Holman, Heat Transfer, eq 4-5.
 * Checked: second-hand.
 *
 * @example After one time constant
 * ```ts
 * coolingShare(100, 500, 5); // => 0.368
 * ```
 */
export function coolingShare(time: number, capacity: number, conductance: number): number {
  mustNotBeNegative('coolingShare', 'time', time);
  mustBePositive('coolingShare', 'capacity', capacity);
  mustBePositive('coolingShare', 'conductance', conductance);
  return Math.exp((-time * conductance) / capacity);
}

/**
 * Time until a share of the first temperature difference is left, s: the inverse of `coolingShare`.
 *
 *     t = -C / (h A) · ln(share)
 *
 * @param share - What is left, above 0, to 1.
 * @param capacity - C, J/K, above 0.
 * @param conductance - h A, W/K, above 0.
 * @returns Time, s.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: as `coolingShare`.
 * Source: Holman, Heat Transfer, eq 4-5.
 * Checked: second-hand.
 *
 * @example A steel ball of 50 mm from 450 °C to 150 °C in 100 °C (Holman, example 4-1: 5818 s)
 * ```ts
 * const area = Math.PI * 0.05 ** 2;
 * coolingTime(50 / 350, 7800 * 460 * area * 0.05 / 6, 10 * area); // => 5818
 * ```
 */
export function coolingTime(share: number, capacity: number, conductance: number): number {
  mustBePositive('coolingTime', 'share', share);
  mustLieWithin('coolingTime', 'share', share, 0, 1);
  mustBePositive('coolingTime', 'capacity', capacity);
  mustBePositive('coolingTime', 'conductance', conductance);
  return (-capacity / conductance) * Math.log(share);
}

/**
 * Share of the first temperature difference that is left when the film weakens with the difference, h ~ difference^n.
 *
 *     (T - Ta) / (Ti - Ta) = (1 + n h_i A t / C)^(-1/n)
 *
 * @param time - t, s, 0 or more.
 * @param capacity - C, J/K, above 0.
 * @param firstConductance - h_i A at the start, W/K, above 0.
 * @param exponent - n, above 0: 1/4 for laminar natural convection, such as a bed's; 1/3 for turbulent.
 * @returns Share left, 1 to 0; larger than that of the constant film.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: Bi below 0.1, convection only.
 * Source: A. Bejan and A. D. Kraus, Heat Transfer Handbook, 2003, eq 3.286.
 * Checked: read.
 *
 * @example A bed after its first time constant: 41 % of the difference is left instead of 37 %
 * ```ts
 * naturalCoolingShare(100, 500, 5, 1 / 4); // => 0.410
 * ```
 */
export function naturalCoolingShare(
  time: number,
  capacity: number,
  firstConductance: number,
  exponent: number,
): number {
  mustNotBeNegative('naturalCoolingShare', 'time', time);
  mustBePositive('naturalCoolingShare', 'capacity', capacity);
  mustBePositive('naturalCoolingShare', 'firstConductance', firstConductance);
  mustBePositive('naturalCoolingShare', 'exponent', exponent);
  return (1 + (exponent * firstConductance * time) / capacity) ** (-1 / exponent);
}
