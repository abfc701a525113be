// Copper wires of the low-voltage side: cross-section, resistance warm, drop, and what a wire may carry in warm air.

import { mustBePositive, mustNotBeNegative } from './argument.ts';
import { ICE_POINT } from './constants.ts';

/** Resistivity of annealed copper at 20 °C, Ω·m. Source: IEC 60028 (1925): 1/58 Ω mm²/m. */
export const COPPER_RESISTIVITY: number = 1e-6 / 58;

/** Rise of copper's resistance per kelvin, of its value at 20 °C, 1/K. Source: IEC 60028 (1925), 0.00393. */
export const COPPER_COEFFICIENT = 0.00393;

const TWENTY: number = ICE_POINT + 20;
/** Ambient at which tables of what a wire may carry are stated, K. Source: IEC 60364-5-52:2009. */
const TABLE_AMBIENT: number = ICE_POINT + 30;

/** Largest resistance at 20 °C of flexible (class 5) plain copper, Ω/km by mm². Source: IEC 60228:2004 table 3; below 0.5 mm² VDE 0295. */
const CLASS_5: readonly (readonly [millimetres2: number, ohmPerKilometre: number])[] = [
  [0.22, 96],
  [0.25, 76],
  [0.34, 53],
  [0.5, 39],
  [0.75, 26],
  [1, 19.5],
  [1.5, 13.3],
  [2.5, 7.98],
  [4, 4.95],
];

/** Stranding adds this share to a gauge's resistance. Source: NEC chapter 9 table 8, 7.95 against 7.77 Ω/kft. */
const STRANDED = 1.023;

/** Current up to which a flexible cord of this section is used, A by mm². Source: IEC 60335-1:2010 table 11. */
const CORD_CURRENTS: readonly (readonly [millimetres2: number, ampere: number])[] = [
  [0.5, 3],
  [0.75, 6],
  [1, 10],
  [1.5, 16],
  [2.5, 25],
];
/** A/mm² for thinner wires than that table has: that of its thinnest. */
const THIN_DENSITY = 6;
/** A/mm² for thicker ones: that of its thickest. */
const THICK_DENSITY = 10;

/** Flexible cord of two conductors, A by gauge. Source: NEC table 400.5(A), so numbered to the edition of 2008. */
const GAUGE_CURRENTS: Readonly<Record<number, number>> = { 18: 10, 17: 12, 16: 13, 14: 18, 12: 25 };

/**
 * Cross-section of an American wire gauge.
 *
 *     d = 0.127 mm * 92^((36 - n)/39),  A = pi d^2/4
 *
 * @param gauge - n, a whole number from 0 to 40.
 * @returns A in m².
 * @throws RangeError when the gauge is negative or not a number.
 *
 * @remarks Valid: solid round wire; stranded wire of a gauge has this copper. Source: ASTM B258. Checked: formula (memory), values (second-hand).
 *
 * @example 18 AWG
 * ```ts
 * gaugeArea(18) * 1e6; // => 0.823
 * ```
 */
export function gaugeArea(gauge: number): number {
  mustNotBeNegative('gaugeArea', 'gauge', gauge);
  return (Math.PI / 4) * (0.127e-3 * 92 ** ((36 - gauge) / 39)) ** 2;
}

/**
 * Resistance of copper against its value at 20 °C.
 *
 *     R/R20 = 1 + 0.00393 (T - 293.15)
 *
 * @param temperature - T of the copper, K, above 0.
 * @returns R/R20.
 * @throws RangeError when the temperature is not above 0.
 *
 * @remarks Valid: -50 to 200 °C. Source: IEC 60028 (1925). Checked: values (second-hand).
 *
 * @example At 45 °C
 * ```ts
 * copperFactor(318.15); // => 1.098
 * ```
 */
export function copperFactor(temperature: number): number {
  mustBePositive('copperFactor', 'temperature', temperature);
  return 1 + COPPER_COEFFICIENT * (temperature - TWENTY);
}

/**
 * Resistance of solid copper per metre of one conductor.
 *
 *     r = rho (1 + 0.00393 (T - 293.15))/A
 *
 * @param area - A, m², above 0.
 * @param temperature - T of the copper, K, above 0.
 * @returns r in Ω/m.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid: direct current. Source: IEC 60028 (1925). Checked: against NEC chapter 9 table 8 (second-hand).
 *
 * @example 18 AWG at 75 °C, in Ω/km
 * ```ts
 * 1000 * copperResistance(0.823e-6, 348.15); // => 25.48
 * ```
 */
export function copperResistance(area: number, temperature: number): number {
  mustBePositive('copperResistance', 'area', area);
  return (COPPER_RESISTIVITY * copperFactor(temperature)) / area;
}

/**
 * Largest resistance that a flexible wire of this section may have, per metre of one conductor: the printed one of a usual
 * section, else that of its copper with what stranding adds.
 *
 * @param area - m², above 0.
 * @param temperature - Of the copper, K, above 0.
 * @returns Ω/m.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: plain copper; a flexible wire has up to 13 % more than its section's copper. Source: IEC 60228:2004 table 3, class 5;
 * NEC chapter 9 table 8 for stranding. Checked: values (second-hand).
 *
 * @example 0.75 mm² at 20 °C, in Ω/km
 * ```ts
 * 1000 * flexibleResistance(0.75e-6, 293.15); // => 26
 * ```
 */
export function flexibleResistance(area: number, temperature: number): number {
  mustBePositive('flexibleResistance', 'area', area);
  const printed = CLASS_5.find(([section]) => Math.abs(area * 1e6 - section) < 1e-3 * section)?.[1];
  return printed === undefined
    ? STRANDED * copperResistance(area, temperature)
    : (printed / 1000) * copperFactor(temperature);
}

/**
 * Voltage lost in a pair of wires.
 *
 *     dV = 2 L I r
 *
 * @param current - I, A, 0 or more.
 * @param length - L one way, m, 0 or more.
 * @param resistance - r of one conductor, Ω/m, 0 or more.
 * @returns dV in V.
 * @throws RangeError when an argument is negative.
 *
 * @remarks Valid: direct current, contacts left out. Source: Ohm's law. Checked: exact.
 *
 * @example 2.5 A through 3 m of 0.75 mm²
 * ```ts
 * voltageDrop(2.5, 3, flexibleResistance(0.75e-6, 293.15)); // => 0.39
 * ```
 */
export function voltageDrop(current: number, length: number, resistance: number): number {
  mustNotBeNegative('voltageDrop', 'current', current);
  mustNotBeNegative('voltageDrop', 'length', length);
  mustNotBeNegative('voltageDrop', 'resistance', resistance);
  return 2 * length * current * resistance;
}

/**
 * What a wire may carry in warm air, against air of 30 °C: the rise that its insulation leaves, as the square of the current.
 *
 *     f = sqrt((T_max - T_air)/(T_max - 303.15)), 0 in air as warm as the insulation bears
 *
 * @param limit - T_max of the insulation, K, above 303.15.
 * @param air - T_air, K, above 0.
 * @returns f; above 1 in cooler air.
 * @throws RangeError when the limit is not above 303.15 K.
 *
 * @remarks
 * Valid: loss as the square of current, heat as the rise. Source: the law behind IEC 60364-5-52:2009 table B.52.14. Checked: against
 * printed tables of PVC, rubber and XLPE (second-hand), which round, and print 1.03 for PVC at 25 °C where the law gives 1.06.
 *
 * @example PVC of 70 °C in a bay at 50 °C
 * ```ts
 * ambientFactor(343.15, 323.15); // => 0.707
 * ```
 */
export function ambientFactor(limit: number, air: number): number {
  mustBePositive('ambientFactor', 'limit above 30 °C', limit - TABLE_AMBIENT);
  mustBePositive('ambientFactor', 'air', air);
  return Math.sqrt(Math.max(limit - air, 0) / (limit - TABLE_AMBIENT));
}

/**
 * Current up to which a flexible cord is used in air of 30 °C.
 *
 * @param area - m², above 0.
 * @returns A: the printed one of the largest usual section within it; outside the table in proportion.
 * @throws RangeError when the area is not above 0.
 *
 * @remarks Valid: two loaded cores in free air. Source: IEC 60335-1:2010 table 11. Checked: values (memory).
 *
 * @example 0.75 mm²
 * ```ts
 * cordCurrent(0.75e-6); // => 6
 * ```
 */
export function cordCurrent(area: number): number {
  mustBePositive('cordCurrent', 'area', area);
  const section = area * 1e6;
  if (section < CORD_CURRENTS[0]![0] * (1 - 1e-3)) return THIN_DENSITY * section;
  const thickest = CORD_CURRENTS.at(-1)!;
  if (section > thickest[0] * 1.2) return THICK_DENSITY * section;
  return CORD_CURRENTS.findLast(([usual]) => usual <= section * (1 + 1e-3))![1];
}

/**
 * Current that a flexible cord of a gauge may carry in air of 30 °C, two conductors.
 *
 * @param gauge - Whole number.
 * @returns A; of a gauge that the table leaves out, what its section may carry by {@link cordCurrent}.
 * @throws RangeError when the gauge is negative.
 *
 * @remarks Valid: cords of 60 °C. Source: NEC table 400.5(A), so numbered to the edition of 2008, 400.5(A)(1) from 2011 on (memory).
 * Checked: values (second-hand, from a guide that names no edition).
 *
 * @example 18 AWG
 * ```ts
 * gaugeCurrent(18); // => 10
 * ```
 */
export function gaugeCurrent(gauge: number): number {
  mustNotBeNegative('gaugeCurrent', 'gauge', gauge);
  return GAUGE_CURRENTS[gauge] ?? cordCurrent(gaugeArea(gauge));
}
