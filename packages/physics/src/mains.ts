// The mains side: current of a load, what may run for hours, when a breaker's magnet acts, how much may leak to earth.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';

export type BreakerCurveName = 'B' | 'C' | 'D';

/** Multiples of the rating at which the magnetic release may, and must, act. Source: IEC 60898-1. */
const MAGNETIC: Readonly<Record<BreakerCurveName, readonly [number, number]>> = { B: [3, 5], C: [5, 10], D: [10, 20] };

/** A load on for this long counts as continuous in the USA, s. Source: NEC article 100. */
export const CONTINUOUS_TIME: number = 3 * 3600;
/** Sizing factor on a continuous load there. Source: NEC 210.19(A), 210.20(A). */
const CONTINUOUS_FACTOR = 1.25;
/** Share of an earth-fault device's trip current that standing leakage should take. Source: IEC 60364-5-53. */
const STANDING_SHARE = 0.3;

/**
 * Current of a single-phase load.
 *
 *     I = P/(V pf)
 *
 * @param power - P, W, 0 or more.
 * @param voltage - V, above 0.
 * @param powerFactor - pf, above 0 to 1: without correction a switched supply has about 0.65.
 * @returns I in A.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: sine or not, as pf holds harmonics. Source: definition of the power factor, IEC 60050-131. Checked: exact.
 *
 * @example Four printers at night, uncorrected supplies
 * ```ts
 * lineCurrent(1465, 230, 0.65); // => 9.8
 * ```
 */
export function lineCurrent(power: number, voltage: number, powerFactor: number): number {
  mustNotBeNegative('lineCurrent', 'power', power);
  mustBePositive('lineCurrent', 'voltage', voltage);
  mustBePositive('lineCurrent', 'powerFactor', powerFactor);
  mustLieWithin('lineCurrent', 'powerFactor', powerFactor, 0, 1);
  return power / (voltage * powerFactor);
}

/**
 * Current that a circuit of the USA may carry for three hours or more.
 *
 *     I = I_n/1.25
 *
 * @param rating - I_n of the breaker, A, above 0.
 * @returns I in A.
 * @throws RangeError when the rating is not above 0.
 *
 * @remarks
 * Valid: only where the National Electrical Code rules, and only for the continuous part of a load. Source: NEC 210.19(A),
 * 210.20(A). Checked: values (second-hand).
 *
 * @example A circuit of 15 A
 * ```ts
 * continuousCurrent(15); // => 12
 * ```
 */
export function continuousCurrent(rating: number): number {
  mustBePositive('continuousCurrent', 'rating', rating);
  return rating / CONTINUOUS_FACTOR;
}

/**
 * Currents between which a breaker's magnetic release acts at once.
 *
 * @param rating - A, above 0.
 * @param curve - B, C or D.
 * @returns It may act above `from`, and must above `to`, A.
 * @throws RangeError when the rating is not above 0.
 *
 * @remarks Valid: a few half cycles; a peak shorter than one may pass. Source: IEC 60898-1. Checked: bands (memory).
 *
 * @example B16
 * ```ts
 * magneticBand(16, 'B').from; // => 48
 * magneticBand(16, 'B').to; // => 80
 * ```
 */
export function magneticBand(rating: number, curve: BreakerCurveName): { readonly from: number; readonly to: number } {
  mustBePositive('magneticBand', 'rating', rating);
  const [low, high] = MAGNETIC[curve];
  return { from: low * rating, to: high * rating };
}

/**
 * Standing leakage that leaves an earth-fault device quiet.
 *
 *     I = 0.3 I_trip
 *
 * @param trip - I_trip, A, above 0.
 * @returns I in A.
 * @throws RangeError when the trip current is not above 0.
 *
 * @remarks Valid: devices to IEC 61008. Source: IEC 60364-5-53. Checked: share (memory).
 *
 * @example 30 mA
 * ```ts
 * 1000 * leakageBudget(0.03); // => 9
 * ```
 */
export function leakageBudget(trip: number): number {
  mustBePositive('leakageBudget', 'trip', trip);
  return STANDING_SHARE * trip;
}

/**
 * Share of its rated output that a supply gives in warm air: all up to a temperature, then less by a share for each kelvin.
 *
 * @param air - K, above 0.
 * @param full - Warmest air of full output, K, above 0.
 * @param slope - Share lost per kelvin above it, 1/K, 0 or more.
 * @returns 0 to 1.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: until the supply switches itself off, mostly at 70 °C. Source: common form of supplies' data sheets: full to 40 or 50 °C,
 * then 2 to 2.5 % less for each kelvin (memory); its own sheet rules. Checked: memory.
 *
 * @example 60 °C, full to 50 °C
 * ```ts
 * supplyShare(333.15, 323.15, 0.025); // => 0.75
 * ```
 */
export function supplyShare(air: number, full: number, slope: number): number {
  mustBePositive('supplyShare', 'air', air);
  mustBePositive('supplyShare', 'full', full);
  mustNotBeNegative('supplyShare', 'slope', slope);
  return Math.max(0, 1 - slope * Math.max(air - full, 0));
}
