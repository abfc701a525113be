// A bed of activated carbon in an air stream: what a fresh bed lets through and how long it lasts (Wheeler and Jonas).

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import { molarPolarisation, type Solvent } from './solvent.ts';

/**
 * Rate at which vapour leaves the air for the grains.
 *
 *     k_v = 800 beta^0.33 v^0.75 d^-1.5 sqrt(W_e/M)    in 1/min with v in cm/s, d in cm, M in g/mol
 *
 * @param capacity - W_e, kg/kg, 0 or more, from `carbonCapacity`.
 * @param molarMass - M, kg/mol, above 0.
 * @param speed - v: flow over face area, m/s, 0 or more.
 * @param grain - d: mean diameter of the grains, m, above 0.
 * @param affinity - beta against benzene, above 0, from {@link carbonAffinity} or a table.
 * @returns k_v in 1/s.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: packed beds at 10 % breakthrough; ±30 % against measured beds. Carbon-dusted foam and fleece do far worse.
 * Source: G. O. Wood, P. Lodewyckx, Am. Ind. Hyg. Assoc. J. 64 (2003) 646-650. Checked: formula (memory).
 *
 * @example Toluene, 3 mm grains at 0.2 m/s, per minute
 * ```ts
 * carbonRate(0.2, 0.09214, 0.2, 0.003, 1.25) * 60; // => 2309
 * ```
 */
export function carbonRate(
  capacity: number,
  molarMass: number,
  speed: number,
  grain: number,
  affinity: number,
): number {
  mustNotBeNegative('carbonRate', 'capacity', capacity);
  mustBePositive('carbonRate', 'molarMass', molarMass);
  mustNotBeNegative('carbonRate', 'speed', speed);
  mustBePositive('carbonRate', 'grain', grain);
  mustBePositive('carbonRate', 'affinity', affinity);
  const perMinute =
    800 * affinity ** 0.33 * (100 * speed) ** 0.75 * (100 * grain) ** -1.5 * Math.sqrt(capacity / (1000 * molarMass));
  return perMinute / 60;
}

/**
 * Affinity of a vapour for carbon against that of benzene: beta = 0.0862 Pe^0.75.
 *
 * @param solvent - Its molar polarisation Pe decides.
 * @returns beta, 1 for benzene.
 * @throws RangeError when a property is not above 0.
 *
 * @remarks Valid: ±10 %. Source: G. O. Wood, Carbon 39 (2001) 343-356. Checked: formula (memory).
 *
 * @example Toluene (tables give 1.1 to 1.25)
 * ```ts
 * carbonAffinity({ molarMass: 0.09214, density: 867, refractiveIndex: 1.4969, antoine: [6.95464, 1344.8, 219.482] }); // => 1.135
 * ```
 */
export function carbonAffinity(solvent: Solvent): number {
  return 0.0862 * molarPolarisation(solvent) ** 0.75;
}

/**
 * Share of vapour that a fresh bed lets through at once: P = 1/(1 + exp(k_v tau)).
 *
 * @param transferUnits - k_v tau: rate times residence time (bed volume over flow), 0 or more.
 * @returns P, 0.5 for no bed at all: below one transfer unit the model says nothing.
 * @throws RangeError when the argument is negative.
 *
 * @remarks Valid: k_v tau above 1. Source: Wheeler and Jonas equation at t = 0. Checked: formula (memory).
 *
 * @example A bed 25 mm deep at 0.1 m/s
 * ```ts
 * freshPenetration(5.72); // => 0.0033
 * ```
 */
export function freshPenetration(transferUnits: number): number {
  mustNotBeNegative('freshPenetration', 'transferUnits', transferUnits);
  return 1 / (1 + Math.exp(transferUnits));
}

/**
 * Time after which a bed lets through a given share of what enters.
 *
 *     t = W_e W/(C_0 V) (1 - ln((1 - s)/s)/(k_v tau))
 *
 * @param capacity - W_e at the concentration that enters, kg/kg, 0 or more.
 * @param carbonMass - W, kg, 0 or more.
 * @param concentration - C_0 that enters, kg/m³, above 0.
 * @param flow - V, m³/s, above 0.
 * @param transferUnits - k_v tau, above 0; infinite gives the time until the bed is full.
 * @param share - s: concentration behind over that before, above 0 to 0.5. Models and tests take 0.1.
 * @returns Seconds; 0 when the fresh bed already lets more through.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: constant inflow of one vapour, dry. Real cartridges lasted half as long again; half as long above 85 % humidity.
 * Source: L. A. Jonas, J. A. Rehrmann (1973); P. Lodewyckx, G. O. Wood, S. K. Ryu, Carbon 42 (2004) 1351-1355.
 * Checked: formula (memory); a published table (read).
 *
 * @example Toluene at 1000 ppm on 52 g, 53.3 l/min, in minutes
 * ```ts
 * breakthroughTime(0.3431, 0.052, 3.804e-3, 53.3e-3 / 60, 11.94, 0.1) / 60; // => 71.8
 * ```
 */
export function breakthroughTime(
  capacity: number,
  carbonMass: number,
  concentration: number,
  flow: number,
  transferUnits: number,
  share: number,
): number {
  mustNotBeNegative('breakthroughTime', 'capacity', capacity);
  mustNotBeNegative('breakthroughTime', 'carbonMass', carbonMass);
  mustBePositive('breakthroughTime', 'concentration', concentration);
  mustBePositive('breakthroughTime', 'flow', flow);
  mustLieWithin('breakthroughTime', 'transferUnits', transferUnits, Number.MIN_VALUE, Infinity);
  mustLieWithin('breakthroughTime', 'share', share, Number.MIN_VALUE, 0.5);
  const untilFull = (capacity * carbonMass) / (concentration * flow);
  return untilFull * Math.max(0, 1 - Math.log((1 - share) / share) / transferUnits);
}
