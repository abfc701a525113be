// Closed layers of air: between two panes, behind a back board, in a hollow shelf.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import type { HeatFlow } from './conduction.ts';
import { STEFAN_BOLTZMANN } from './constants.ts';

/**
 * Resistance of unventilated air layers with high emissivity on both sides, m²·K/W, by thickness in mm.
 * Source: ISO 6946:2007, table 2 (2017: table 8). Checked: memory.
 */
const THICKNESSES = [0, 5, 7, 10, 15, 25, 50, 100, 300];
const RESISTANCES: Readonly<Record<HeatFlow, readonly number[]>> = {
  up: [0, 0.11, 0.13, 0.15, 0.16, 0.16, 0.16, 0.16, 0.16],
  horizontal: [0, 0.11, 0.13, 0.15, 0.17, 0.18, 0.18, 0.18, 0.18],
  down: [0, 0.11, 0.13, 0.15, 0.17, 0.19, 0.21, 0.22, 0.23],
};

/**
 * Resistance of an unventilated air layer, radiation across it included, m²·K/W: the table of ISO 6946, linear in between.
 *
 * @param thickness - m, 0 to 0.3.
 * @param flow - Direction of the heat flow.
 * @returns Resistance.
 * @throws RangeError when the thickness is out of bounds.
 *
 * @remarks
 * Valid: closed layer near 10 °C, both faces of emissivity 0.8 or more, thickness below a tenth of the other dimensions.
 * Source: ISO 6946:2007, table 2; linear interpolation is the standard's own rule.
 * Checked: memory.
 *
 * @example Between two upright panes
 * ```ts
 * airLayerResistance(0.01, 'horizontal'); // => 0.15
 * airLayerResistance(0.02, 'horizontal'); // => 0.175
 * ```
 */
export function airLayerResistance(thickness: number, flow: HeatFlow): number {
  mustLieWithin('airLayerResistance', 'thickness', thickness, 0, 0.3);
  const millimetres = thickness * 1000;
  const table = RESISTANCES[flow];
  let at = 1;
  while (at < THICKNESSES.length - 1 && millimetres > THICKNESSES[at]!) at++;
  const share = (millimetres - THICKNESSES[at - 1]!) / (THICKNESSES[at]! - THICKNESSES[at - 1]!);
  return table[at - 1]! + share * (table[at]! - table[at - 1]!);
}

/**
 * Nusselt number across an upright gap, over its thickness; 1 is still air.
 *
 *     Nu = 0.197 Ra^(1/4) (H/d)^(-1/9)    Ra to 2e5
 *     Nu = 0.073 Ra^(1/3) (H/d)^(-1/9)    above
 *
 * @param rayleigh - Ra over the thickness d and the difference of the two faces, 0 or more.
 * @param slenderness - H/d, height over thickness, 1 or more.
 * @returns Nu, never below 1.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: 2e3 ≤ Ra ≤ 1.1e7, H/d 11 to 42 (memory).
 * Source: J. P. Holman, Heat Transfer, eq 7-64 and table 7-3 (Jakob).
 * Checked: second-hand for the first piece, memory for the second.
 *
 * @example A gap of 15 mm, 0.5 m tall, between 100 °C and 40 °C
 * ```ts
 * nusseltUprightGap(1.03e4, 33.3); // => 1.34
 * ```
 */
export function nusseltUprightGap(rayleigh: number, slenderness: number): number {
  mustNotBeNegative('nusseltUprightGap', 'rayleigh', rayleigh);
  mustLieWithin('nusseltUprightGap', 'slenderness', slenderness, 1, Number.MAX_VALUE);
  const flow = rayleigh <= 2e5 ? 0.197 * rayleigh ** 0.25 : 0.073 * Math.cbrt(rayleigh);
  return Math.max(1, flow * slenderness ** (-1 / 9));
}

/**
 * Nusselt number across a tall upright gap: a second equation for the same gaps.
 *
 *     Nu = 0.42 Ra^(1/4) Pr^0.012 (H/d)^(-0.3)
 *
 * @param rayleigh - Ra over the thickness d, 0 or more.
 * @param slenderness - H/d, 1 or more.
 * @param prandtl - Pr, above 0.
 * @returns Nu, never below 1.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: 1e4 ≤ Ra ≤ 1e7, H/d 10 to 40 (memory).
 * Source: R. K. MacGregor and A. F. Emery 1969, as Çengel, Heat and Mass Transfer, eq 9-53.
 * Checked: second-hand.
 *
 * @example A double window, 0.8 m tall, 20 mm of air, 12 °C to 2 °C (Çengel, example 9-4)
 * ```ts
 * nusseltTallGap(1.055e4, 40, 0.7344); // => 1.40
 * ```
 */
export function nusseltTallGap(rayleigh: number, slenderness: number, prandtl: number): number {
  mustNotBeNegative('nusseltTallGap', 'rayleigh', rayleigh);
  mustLieWithin('nusseltTallGap', 'slenderness', slenderness, 1, Number.MAX_VALUE);
  mustBePositive('nusseltTallGap', 'prandtl', prandtl);
  return Math.max(1, 0.42 * rayleigh ** 0.25 * prandtl ** 0.012 * slenderness ** -0.3);
}

/** Rayleigh number at which air heated from below begins to turn over. Source: Holman, table 7-3 (1700); exact theory 1708. */
const ONSET = 1700;

/**
 * Nusselt number across a level gap that is heated from below.
 *
 *     Nu = 1 below 1700,  0.059 Ra^0.4 to 7000,  0.212 Ra^(1/4) to 3.2e5,  0.061 Ra^(1/3) above
 *
 * The pieces of the table do not meet. Here the lower of the two middle ones is taken, and the last one only once it has
 * caught up (Ra = 3.1e6), so that Nu never falls as Ra rises; above 3.2e5 that reads up to 21 % above the table.
 * A gap heated from above stands still: Nu = 1.
 *
 * @param rayleigh - Ra over the thickness, 0 or more.
 * @returns Nu, never below 1.
 * @throws RangeError when the argument is out of bounds.
 *
 * @remarks
 * Valid: gases, wide gaps.
 * Source: J. P. Holman, Heat Transfer, table 7-3.
 * Checked: second-hand to 7000, memory above.
 *
 * @example A gap of 10 mm between 100 °C below and 40 °C above (Holman, example 7-9)
 * ```ts
 * nusseltLevelGap(3043); // => 1.46
 * ```
 */
export function nusseltLevelGap(rayleigh: number): number {
  mustNotBeNegative('nusseltLevelGap', 'rayleigh', rayleigh);
  if (rayleigh < ONSET) return 1;
  const middle = Math.min(0.059 * rayleigh ** 0.4, 0.212 * rayleigh ** 0.25);
  return Math.max(1, middle, 0.061 * Math.cbrt(rayleigh));
}

/**
 * Conductance of an air layer from its Nusselt number and the radiation across it, W/(m²·K).
 *
 *     h = Nu k / d + 4 sigma Tm³ / (1/eps1 + 1/eps2 - 1)
 *
 * @param thickness - d, m, above 0.
 * @param nusselt - Nu across the gap, 1 or more.
 * @param conductivity - k of the air, W/(m·K), above 0.
 * @param emissivities - eps1 and eps2 of the faces, above 0, to 1.
 * @param meanKelvin - Tm, mean of the faces, K, above 0.
 * @returns Conductance; its inverse is the layer's resistance.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: wide gap; faces near one another's temperature.
 * Source: ISO 6946:2017, annex D.
 * Checked: memory.
 *
 * @example Still air of 10 mm at 10 °C between panes; the standard's table says 0.15 m²·K/W
 * ```ts
 * 1 / airLayerConductance(0.01, 1, 0.025, [0.9, 0.9], 283.15); // => 0.149
 * ```
 */
export function airLayerConductance(
  thickness: number,
  nusselt: number,
  conductivity: number,
  emissivities: readonly [number, number],
  meanKelvin: number,
): number {
  mustBePositive('airLayerConductance', 'thickness', thickness);
  mustLieWithin('airLayerConductance', 'nusselt', nusselt, 1, Number.MAX_VALUE);
  mustBePositive('airLayerConductance', 'conductivity', conductivity);
  mustBePositive('airLayerConductance', 'meanKelvin', meanKelvin);
  const [first, second] = emissivities;
  for (const emissivity of emissivities) {
    mustBePositive('airLayerConductance', 'an emissivity', emissivity);
    mustLieWithin('airLayerConductance', 'an emissivity', emissivity, 0, 1);
  }
  const radiation = (4 * STEFAN_BOLTZMANN * meanKelvin ** 3) / (1 / first + 1 / second - 1);
  return (nusselt * conductivity) / thickness + radiation;
}
