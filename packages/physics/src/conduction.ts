// Steady conduction through boards: resistances in series with the films of ISO 6946, and what edges and corners add.

import { mustBePositive, mustNotBeNegative } from './argument.ts';
import { STEFAN_BOLTZMANN } from './constants.ts';

/** Which way the heat flows through a board or an air layer. */
export type HeatFlow = 'horizontal' | 'up' | 'down';

/**
 * Resistance of a face to still indoor air, m²·K/W, by the direction of the heat flow.
 *
 * A cabinet's panel has indoor air on both faces, so this stands on both; `OUTDOOR_SURFACE_RESISTANCE` is for a house's wall.
 * Source: ISO 6946:2017, table 7. Checked: second-hand.
 */
export const INDOOR_SURFACE_RESISTANCE: Readonly<Record<HeatFlow, number>> = { horizontal: 0.13, up: 0.1, down: 0.17 };

/** Resistance of a face to outdoor air, m²·K/W. Source: ISO 6946:2017, table 7. Checked: second-hand. */
export const OUTDOOR_SURFACE_RESISTANCE = 0.04;

/**
 * Resistance of one homogeneous layer, m²·K/W.
 *
 *     R = d / lambda
 *
 * @param thickness - d, m, 0 or more.
 * @param conductivity - lambda, W/(m·K), above 0.
 * @returns Resistance of a square metre.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: flat layer, isothermal faces.
 * Source: ISO 6946:2017, 6.7.1.1.
 * Checked: second-hand.
 *
 * @example Plywood of 18 mm
 * ```ts
 * layerResistance(0.018, 0.13); // => 0.1385
 * ```
 */
export function layerResistance(thickness: number, conductivity: number): number {
  mustNotBeNegative('layerResistance', 'thickness', thickness);
  mustBePositive('layerResistance', 'conductivity', conductivity);
  return thickness / conductivity;
}

/**
 * Heat that a square metre of wall lets through for each kelvin between the airs on its sides, W/(m²·K).
 *
 *     U = 1 / (Rs1 + sum of R + Rs2)
 *
 * @param layers - Resistances R of the layers, m²·K/W, each 0 or more; their order does not matter.
 * @param flow - Direction of the heat flow, which sets the films of both faces.
 * @param outerFilm - Resistance of the second face, m²·K/W; the same indoor film unless given.
 * @returns U-value.
 * @throws RangeError when a resistance is negative or not a number.
 *
 * @remarks
 * Valid: homogeneous layers; no ventilation, no edges.
 * Source: ISO 6946:2017, 6.7.1.1 and table 7.
 * Checked: second-hand; that an inner partition has the indoor film on both faces is from memory.
 *
 * @example A cabinet's side of 18 mm plywood, and its top
 * ```ts
 * uValue([layerResistance(0.018, 0.13)], 'horizontal'); // => 2.51
 * uValue([layerResistance(0.018, 0.13)], 'up'); // => 2.95
 * ```
 */
export function uValue(
  layers: readonly number[],
  flow: HeatFlow,
  outerFilm: number = INDOOR_SURFACE_RESISTANCE[flow],
): number {
  mustNotBeNegative('uValue', 'outerFilm', outerFilm);
  let total = INDOOR_SURFACE_RESISTANCE[flow] + outerFilm;
  for (const resistance of layers) {
    mustNotBeNegative('uValue', 'a layer', resistance);
    total += resistance;
  }
  return 1 / total;
}

/**
 * Resistance of a face from its two films, m²·K/W: how the table values of ISO 6946 come about.
 *
 *     Rs = 1 / (hc + eps 4 sigma Tm³)
 *
 * @param convection - hc, W/(m²·K), 0 or more: 5.0 for flow up, 2.5 horizontal, 0.7 down in the standard.
 * @param emissivity - eps of the face, 0 or more; the standard takes 0.9.
 * @param meanKelvin - Tm, mean of the face and of what it sees, K, above 0.
 * @returns Surface resistance.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: surroundings near the face's temperature (4 Tm³ is within 1 % for 40 K of difference).
 * Source: ISO 6946:2017, annex C.
 * Checked: memory.
 *
 * @example An indoor face at 20 °C, rounded to 0.13 in the standard
 * ```ts
 * surfaceResistance(2.5, 0.9, 293.15); // => 0.131
 * ```
 */
export function surfaceResistance(convection: number, emissivity: number, meanKelvin: number): number {
  mustNotBeNegative('surfaceResistance', 'convection', convection);
  mustNotBeNegative('surfaceResistance', 'emissivity', emissivity);
  mustBePositive('surfaceResistance', 'meanKelvin', meanKelvin);
  return 1 / (convection + emissivity * 4 * STEFAN_BOLTZMANN * meanKelvin ** 3);
}

/**
 * Temperatures between resistances in series, K: the first end, every joint, the last end.
 *
 *     T_i = T_hot - (T_hot - T_cold) · (sum of the R up to i) / (sum of all R)
 *
 * @param first - Temperature before the first resistance, K.
 * @param last - Temperature behind the last one, K.
 * @param resistances - In order from first to last, in any one unit, each 0 or more and not all 0.
 * @returns One temperature more than there are resistances.
 * @throws RangeError when a resistance is negative or all are 0.
 *
 * @remarks
 * Valid: steady state, one heat flow through all.
 * Source: any heat-transfer text, for instance Çengel, Heat and Mass Transfer, ch. 3.
 * Checked: second-hand.
 *
 * @example The faces of a plywood side between 35 °C and 22 °C
 * ```ts
 * jointTemperatures(308.15, 295.15, [0.13, 0.1385, 0.13])[1]; // => 303.91
 * ```
 */
export function jointTemperatures(first: number, last: number, resistances: readonly number[]): number[] {
  let total = 0;
  for (const resistance of resistances) {
    mustNotBeNegative('jointTemperatures', 'a resistance', resistance);
    total += resistance;
  }
  mustBePositive('jointTemperatures', 'the sum of resistances', total);
  const temperatures = [first];
  let sum = 0;
  for (const resistance of resistances) {
    sum += resistance;
    temperatures.push(first + ((last - first) * sum) / total);
  }
  return temperatures;
}

/** Shape factor of a straight edge for each metre of its length, isothermal faces. Source: Holman table 3-1. Checked: second-hand. */
const EDGE = 0.54;
/** Shape factor of a corner of three walls for each metre of wall thickness. Source: Holman table 3-1. Checked: second-hand. */
const CORNER = 0.15;

/**
 * Conduction shape factor of a closed box with isothermal faces, m: heat = lambda · S · temperature difference.
 *
 *     S = A / L + 0.54 · (length of the 12 edges) + 0.15 · 8 L    on inside dimensions
 *
 * Do not use it for a cabinet's boards: their faces are not isothermal, and 0.54 lambda overstates their edges threefold;
 * see `edgeTransmittance`.
 *
 * @param width - Inside width, m, above 0.
 * @param height - Inside height, m, above 0.
 * @param depth - Inside depth, m, above 0.
 * @param thickness - Wall thickness L, m, above 0.
 * @returns Shape factor S, m.
 * @throws RangeError when an argument is 0, negative or not a number.
 *
 * @remarks
 * Valid: every inside dimension above L/5.
 * Source: J. P. Holman, Heat Transfer, table 3-1; the exact value of a square edge is 1 - (2/pi) ln 2 = 0.5587 (memory).
 * Checked: second-hand.
 *
 * @example A furnace of 0.5 m inside with walls of 0.1 m (Holman, example 3-2)
 * ```ts
 * boxShapeFactor(0.5, 0.5, 0.5, 0.1); // => 18.36
 * ```
 */
export function boxShapeFactor(width: number, height: number, depth: number, thickness: number): number {
  mustBePositive('boxShapeFactor', 'width', width);
  mustBePositive('boxShapeFactor', 'height', height);
  mustBePositive('boxShapeFactor', 'depth', depth);
  mustBePositive('boxShapeFactor', 'thickness', thickness);
  const faces = 2 * (width * height + height * depth + depth * width);
  const edges = 4 * (width + height + depth);
  return faces / thickness + EDGE * edges + CORNER * 8 * thickness;
}
