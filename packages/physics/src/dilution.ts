// One mixed zone: what a source, fresh air, cleaning and deposition make of its concentration.
// Amounts may be kilograms or particles: the answer carries the same unit per m³.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';

/** A mixed zone and what acts on it. */
export interface MixedZone {
  /** m³. */
  readonly volume: number;
  /** Amount a second. */
  readonly source: number;
  /** Air from outside, m³/s. */
  readonly supply: number;
  /** Concentration of that air, amount per m³. */
  readonly supplied: number;
  /** Clean air that filters are worth: efficiency times flow, m³/s. */
  readonly cleaning: number;
  /** First-order loss to surfaces, 1/s. */
  readonly deposition: number;
}

/**
 * Rate at which a zone forgets: lambda = (Q_o + Q_c)/V + beta.
 *
 * @param zone - Volume above 0, the rest 0 or more.
 * @returns 1/s.
 * @throws RangeError when a value is nonsense.
 *
 * @remarks Valid: mixed air. Source: mass balance. Checked: exact.
 *
 * @example Six air changes an hour
 * ```ts
 * lossRate({ volume: 540, source: 0, supply: 0.9, supplied: 0, cleaning: 0, deposition: 0 }) * 3600; // => 6.00
 * ```
 */
export function lossRate(zone: MixedZone): number {
  mustBePositive('lossRate', 'volume', zone.volume);
  for (const name of ['source', 'supply', 'supplied', 'cleaning', 'deposition'] as const)
    mustNotBeNegative('lossRate', name, zone[name]);
  return (zone.supply + zone.cleaning) / zone.volume + zone.deposition;
}

/**
 * Concentration that a zone settles at: C = (S + Q_o C_o)/(lambda V).
 *
 * @param zone - As in {@link lossRate}; something must remove.
 * @returns Amount per m³.
 * @throws RangeError when a value is nonsense or nothing removes.
 *
 * @remarks Valid: mixed air. Source: mass balance. Checked: exact; textbook examples (second-hand).
 *
 * @example 110 µg/min of styrene in an office of 45 m³ at one air change an hour, in µg/m³
 * ```ts
 * settledConcentration({ volume: 45, source: 110 / 60, supply: 45 / 3600, supplied: 0, cleaning: 0, deposition: 0 }); // => 147
 * ```
 */
export function settledConcentration(zone: MixedZone): number {
  const rate = lossRate(zone);
  mustBePositive('settledConcentration', 'loss rate', rate);
  return (zone.source + zone.supply * zone.supplied) / (rate * zone.volume);
}

/**
 * Concentration of a zone after a time.
 *
 *     C = C_0 e + (S + Q_o C_o)/V (1 - e)/lambda,   e = exp(-lambda t)
 *
 * @param zone - As in {@link lossRate}; nothing need remove.
 * @param initial - C_0, amount per m³, 0 or more.
 * @param time - t, s, 0 or more.
 * @returns Amount per m³.
 * @throws RangeError when a value is nonsense.
 *
 * @remarks Valid: mixed air, constant source. Source: mass balance. Checked: exact; textbook examples (second-hand).
 *
 * @example A car park of 5400 m³, 2.4 l/s of carbon monoxide, one air change an hour, after 20 minutes, per 10 000
 * ```ts
 * const park = { volume: 5400, source: 0.0024, supply: 1.5, supplied: 0, cleaning: 0, deposition: 0 };
 * concentrationAfter(park, 0, 1200) * 1e4; // => 4.5355
 * ```
 */
export function concentrationAfter(zone: MixedZone, initial: number, time: number): number {
  const rate = lossRate(zone);
  mustNotBeNegative('concentrationAfter', 'initial', initial);
  mustNotBeNegative('concentrationAfter', 'time', time);
  const lag = rate === 0 ? time : -Math.expm1(-rate * time) / rate;
  return initial * Math.exp(-rate * time) + ((zone.source + zone.supply * zone.supplied) / zone.volume) * lag;
}

/**
 * Time to bring a concentration down by a factor: t = m ln(C_0/C)/lambda.
 *
 * @param ratio - C_0/C, 1 or more.
 * @param rate - lambda, 1/s, above 0, from {@link lossRate}.
 * @param mixing - m: 1 (perfect mixing) to 10 (very poor); 3 is a cautious choice for a bay full of machines.
 * @returns Seconds.
 * @throws RangeError when an argument is outside.
 *
 * @remarks
 * Valid: no source left; a warm part still gives off vapour. Source: CDC, Guidelines for preventing the transmission of
 * Mycobacterium tuberculosis, MMWR 43 (RR-13), 28 Oct 1994, table S3-1. Checked: table (read).
 *
 * @example 99 percent at six air changes an hour, in minutes
 * ```ts
 * purgeTime(100, 6 / 3600) / 60; // => 46.05
 * ```
 */
export function purgeTime(ratio: number, rate: number, mixing = 1): number {
  mustLieWithin('purgeTime', 'ratio', ratio, 1, Number.MAX_VALUE);
  mustBePositive('purgeTime', 'rate', rate);
  mustLieWithin('purgeTime', 'mixing', mixing, 1, 10);
  return (mixing * Math.log(ratio)) / rate;
}

/**
 * Clean air that a device is worth, from two decay tests: CADR = V (k_e - k_n).
 *
 * @param volume - V of the test room or bay, m³, above 0.
 * @param decayWith - k_e: slope of ln C with the device on, 1/s.
 * @param decayWithout - k_n: slope with it off, 1/s, 0 or more.
 * @returns m³/s; below 0 when the device seems to do harm (measurement error).
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: mixed air. Source: ANSI/AHAM AC-1. Checked: worked values (second-hand).
 *
 * @example Test room of 28.5 m³, in m³/h
 * ```ts
 * cleanAirDelivery(28.5, 0.12 / 60, 0.006 / 60) * 3600; // => 194.9
 * ```
 */
export function cleanAirDelivery(volume: number, decayWith: number, decayWithout: number): number {
  mustBePositive('cleanAirDelivery', 'volume', volume);
  mustNotBeNegative('cleanAirDelivery', 'decayWith', decayWith);
  mustNotBeNegative('cleanAirDelivery', 'decayWithout', decayWithout);
  return volume * (decayWith - decayWithout);
}

/**
 * Floor area in which a cleaner keeps particles at a fifth of their level without it.
 *
 *     A = CADR/(k h),   k = 4.84 per hour against 1.21 per hour of other losses
 *
 * @param delivery - CADR, m³/s, 0 or more.
 * @param ceiling - h, m, above 0; the rule's 8 ft unless given.
 * @returns m².
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: 80 % reduction. Source: ANSI/AHAM AC-1 room rule. Checked: worked value (second-hand).
 *
 * @example 85 m³/h (50 cubic feet a minute)
 * ```ts
 * areaServed(85 / 3600); // => 7.2
 * ```
 */
export function areaServed(delivery: number, ceiling = 2.4384): number {
  mustNotBeNegative('areaServed', 'delivery', delivery);
  mustBePositive('areaServed', 'ceiling', ceiling);
  return delivery / ((4.84 / 3600) * ceiling);
}

/**
 * Carbon dioxide above outdoors that people keep up: N/V.
 *
 * @param generation - N: gas breathed out, m³/s; 0.31 l/min for one person at a desk.
 * @param outdoorAir - V, m³/s, above 0.
 * @returns Share of volume above outdoors, ppm.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: steady. Source: ASHRAE 62.1, informative appendix on carbon dioxide. Checked: worked value (memory).
 *
 * @example One person at 7.5 l/s
 * ```ts
 * carbonDioxideRise(0.31e-3 / 60, 7.5e-3); // => 689
 * ```
 */
export function carbonDioxideRise(generation: number, outdoorAir: number): number {
  mustNotBeNegative('carbonDioxideRise', 'generation', generation);
  mustBePositive('carbonDioxideRise', 'outdoorAir', outdoorAir);
  return (1e6 * generation) / outdoorAir;
}

/**
 * Steady concentrations near a source and in the rest of the room: C_far = G/Q, C_near = C_far + G/beta.
 *
 * @param source - G, amount a second, 0 or more.
 * @param supply - Q of the room, m³/s, above 0.
 * @param exchange - beta between near zone and room, m³/s, above 0: half its free surface times the air's random speed.
 * @returns Amount per m³ near and far.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: mixed within each. Source: two-zone model (Nicas). Checked: worked values (second-hand).
 *
 * @example 100 mg/min, 20 m³/min, exchange 5 m³/min, in mg/m³
 * ```ts
 * nearAndFar(100 / 60, 20 / 60, 5 / 60).near; // => 25.0
 * ```
 */
export function nearAndFar(source: number, supply: number, exchange: number): { near: number; far: number } {
  mustNotBeNegative('nearAndFar', 'source', source);
  mustBePositive('nearAndFar', 'supply', supply);
  mustBePositive('nearAndFar', 'exchange', exchange);
  const far = source / supply;
  return { near: far + source / exchange, far };
}
