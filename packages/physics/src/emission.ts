// How the emission of a print runs over time. Laws of form only: how much a filament emits stands in the catalogue.
// All constants here are estimates of ours from the trend of chamber studies; their bands are wide for a reason.

import { mustBeFinite, mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import type { TypicalRange } from './typical-range.ts';

/** Shape of a print's emission. Source: our estimate; that there is a peak in the first 5 to 20 minutes: from memory. */
export const EMISSION_SHAPE: {
  readonly burstRatio: TypicalRange;
  readonly burstTime: TypicalRange;
  readonly heatUpTime: TypicalRange;
  readonly tailShare: TypicalRange;
  readonly tailTime: TypicalRange;
  readonly perKelvin: TypicalRange;
} = {
  /** r: rate at the start over the settled rate. */
  burstRatio: { low: 1, central: 5, high: 30 },
  /** tau of the burst, s. */
  burstTime: { low: 180, central: 480, high: 1200 },
  /** The pulse while the nozzle heats up, in seconds of the settled rate. */
  heatUpTime: { low: 0, central: 600, high: 3600 },
  /** f: vapour rate just after the print over the settled rate. */
  tailShare: { low: 0.02, central: 0.1, high: 0.3 },
  /** tau of the tail, s. */
  tailTime: { low: 1800, central: 7200, high: 21_600 },
  /** Growth of the particle rate with nozzle temperature, 1/K. */
  perKelvin: { low: 0.03, central: 0.07, high: 0.1 },
};

/**
 * Emission rate during a print, over its settled rate: 1 + (r - 1) exp(-t/tau).
 *
 * @param time - t since the print began, s, 0 or more.
 * @param ratio - r, 1 or more.
 * @param burstTime - tau, s, above 0.
 * @returns Factor on the settled rate, falling from r to 1.
 * @throws RangeError when an argument is outside.
 *
 * @remarks Valid: particles; vapours hardly burst (r = 1). Source: our model of form. Checked: exact.
 *
 * @example At the start and after an hour
 * ```ts
 * burstFactor(0, 5, 480); // => 5.00
 * burstFactor(3600, 5, 480); // => 1.00
 * ```
 */
export function burstFactor(time: number, ratio: number, burstTime: number): number {
  mustNotBeNegative('burstFactor', 'time', time);
  mustBeBurst('burstFactor', ratio, burstTime);
  return 1 + (ratio - 1) * Math.exp(-time / burstTime);
}

/**
 * Mean emission rate over a whole print, over its settled rate.
 *
 *     1 + (r - 1)(tau/L)(1 - exp(-L/tau))
 *
 * @param length - L of the print, s, above 0.
 * @param ratio - r, 1 or more.
 * @param burstTime - tau, s, above 0.
 * @returns Factor on the settled rate, from r (short print) down to 1 (long one).
 * @throws RangeError when an argument is outside.
 *
 * @remarks Valid: as {@link burstFactor}. Source: its integral. Checked: exact; values (independent script).
 *
 * @example An hour's print
 * ```ts
 * meanBurstFactor(3600, 5, 480); // => 1.533
 * ```
 */
export function meanBurstFactor(length: number, ratio: number, burstTime: number): number {
  mustBePositive('meanBurstFactor', 'length', length);
  mustBeBurst('meanBurstFactor', ratio, burstTime);
  return 1 - ((ratio - 1) * burstTime * Math.expm1(-length / burstTime)) / length;
}

/**
 * Amount that the heating of the nozzle sets free before a print: settled rate times {@link EMISSION_SHAPE}.heatUpTime.
 *
 * @param settledRate - Amount a second, 0 or more.
 * @param heatUpTime - s, 0 or more.
 * @returns Amount.
 * @throws RangeError when an argument is negative.
 *
 * @remarks Valid: particles. Source: our model of form; that heating emits most: Deng et al. 2016 (abstract read). Checked: exact.
 *
 * @example 1e10 a minute for ten minutes
 * ```ts
 * heatUpPulse(1e10 / 60, 600); // => 1.0e11
 * ```
 */
export function heatUpPulse(settledRate: number, heatUpTime: number): number {
  mustNotBeNegative('heatUpPulse', 'settledRate', settledRate);
  mustNotBeNegative('heatUpPulse', 'heatUpTime', heatUpTime);
  return settledRate * heatUpTime;
}

/**
 * Vapour rate after the print, over its settled rate: f exp(-t/tau). Particles stop at once.
 *
 * @param time - t since the print ended, s, 0 or more.
 * @param share - f, 0 to 1.
 * @param tailTime - tau, s, above 0.
 * @returns Factor on the settled rate.
 * @throws RangeError when an argument is outside.
 *
 * @remarks
 * Valid: warm part and bed left in place. Source: our model of form; that printed parts go on emitting: Stefaniak et al.,
 * J. Occup. Environ. Hyg. 14 (2017) 540-550 (abstract read). Checked: exact.
 *
 * @example Two hours after
 * ```ts
 * tailFactor(7200, 0.1, 7200); // => 0.0368
 * ```
 */
export function tailFactor(time: number, share: number, tailTime: number): number {
  mustNotBeNegative('tailFactor', 'time', time);
  mustLieWithin('tailFactor', 'share', share, 0, 1);
  mustBePositive('tailFactor', 'tailTime', tailTime);
  return share * Math.exp(-time / tailTime);
}

/**
 * Particle rate at another nozzle temperature, over that at the reference: exp(a (T - T_ref)).
 *
 * @param difference - T - T_ref, K.
 * @param perKelvin - a, 1/K, 0 or more; doubling per 10 K unless given.
 * @returns Factor.
 * @throws RangeError when an argument is outside.
 *
 * @remarks Valid: ±30 K. Source: our estimate; that it is steep: three chamber studies (abstracts read). Checked: exact.
 *
 * @example Ten kelvin hotter
 * ```ts
 * temperatureFactor(10); // => 2.01
 * ```
 */
export function temperatureFactor(difference: number, perKelvin: number = EMISSION_SHAPE.perKelvin.central): number {
  mustBeFinite('temperatureFactor', 'difference', difference);
  mustNotBeNegative('temperatureFactor', 'perKelvin', perKelvin);
  return Math.exp(perKelvin * difference);
}

function mustBeBurst(where: string, ratio: number, burstTime: number): void {
  mustLieWithin(where, 'ratio', ratio, 1, Number.MAX_VALUE);
  mustBePositive(where, 'burstTime', burstTime);
}
