// How fast a fire grows before anything stops it: with the square of time, in four agreed classes.

import { mustBePositive, mustNotBeNegative } from './argument.ts';

export type GrowthClass = 'slow' | 'medium' | 'fast' | 'ultra-fast';

/** Growth a in Q = a t², W/s². Source: NFPA 204 and NFPA 92 classes: 1055 kW after 600, 300, 150 and 75 s. Checked: second-hand. */
export const fireGrowth: Readonly<Record<GrowthClass, number>> = {
  slow: 2.93,
  medium: 11.72,
  fast: 46.9,
  'ultra-fast': 187.6,
};

/**
 * Heat release of a growing fire: Q = a t².
 *
 * @param growth - a, W/s², above 0.
 * @param time - Since it burns by itself, s, 0 or more.
 * @returns W.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: until air or fuel limits it. Smouldering before it may last hours. Source: NFPA 204. Checked: second-hand.
 *
 * @example Medium, after a minute
 * ```ts
 * growingFire(11.72, 60) / 1000; // => 42.2
 * ```
 */
export function growingFire(growth: number, time: number): number {
  mustBePositive('growingFire', 'growth', growth);
  mustNotBeNegative('growingFire', 'time', time);
  return growth * time ** 2;
}

/**
 * Time after which a growing fire has a heat release: t = √(Q/a).
 *
 * @param growth - a, W/s², above 0.
 * @param power - Q, W, 0 or more.
 * @returns s.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: as `growingFire`. Source: NFPA 204. Checked: second-hand.
 *
 * @example Medium, to 10 kW and to 50 kW
 * ```ts
 * timeToPower(11.72, 10_000); // => 29.2
 * timeToPower(11.72, 50_000); // => 65.3
 * ```
 */
export function timeToPower(growth: number, power: number): number {
  mustBePositive('timeToPower', 'growth', growth);
  mustNotBeNegative('timeToPower', 'power', power);
  return Math.sqrt(power / growth);
}

/**
 * Time after which a growing fire has given off a heat: E = a t³/3.
 *
 * @param growth - a, W/s², above 0.
 * @param heat - E, J, 0 or more.
 * @returns s.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: as `growingFire`. Source: its integral. Checked: exact.
 *
 * @example Medium, until 0.76 MJ are given off
 * ```ts
 * timeToHeat(11.72, 0.76e6); // => 57.9
 * ```
 */
export function timeToHeat(growth: number, heat: number): number {
  mustBePositive('timeToHeat', 'growth', growth);
  mustNotBeNegative('timeToHeat', 'heat', heat);
  return Math.cbrt((3 * heat) / growth);
}
