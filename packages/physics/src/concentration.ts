// Gas concentrations: share of volume (ppm) and mass per volume.

import { mustBePositive, mustNotBeNegative } from './argument.ts';
import { ATMOSPHERE, ICE_POINT } from './constants.ts';

/** Molar gas constant, J/(mol·K). Source: SI (exact since 2019). */
export const MOLAR_GAS_CONSTANT = 8.314462618;

/**
 * Mass concentration of a gas from its share of the volume: C = x p M/(R T).
 *
 * At 25 °C and 1 atm one ppm is M/24.465 mg/m³ (M in g/mol).
 *
 * @param ppm - x, parts per million of volume, 0 or more.
 * @param molarMass - M, kg/mol, above 0.
 * @param temperature - T, K, above 0; 25 °C unless given, as occupational limits have it.
 * @param pressure - p, Pa, above 0; standard atmosphere unless given.
 * @returns C in kg/m³.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: ideal gas. Source: gas law. Checked: exact.
 *
 * @example One ppm of styrene, in mg/m³
 * ```ts
 * massConcentration(1, 0.10415) * 1e6; // => 4.26
 * ```
 */
export function massConcentration(
  ppm: number,
  molarMass: number,
  temperature: number = ICE_POINT + 25,
  pressure: number = ATMOSPHERE,
): number {
  mustNotBeNegative('massConcentration', 'ppm', ppm);
  mustBeGas('massConcentration', molarMass, temperature, pressure);
  return (ppm * 1e-6 * pressure * molarMass) / (MOLAR_GAS_CONSTANT * temperature);
}

/**
 * Share of the volume from the mass concentration: the inverse of {@link massConcentration}.
 *
 * @param concentration - C, kg/m³, 0 or more.
 * @param molarMass - M, kg/mol, above 0.
 * @param temperature - T, K, above 0.
 * @param pressure - p, Pa, above 0.
 * @returns ppm.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: ideal gas. Source: gas law. Checked: exact.
 *
 * @example 215 mg/m³ of styrene
 * ```ts
 * partsPerMillion(215e-6, 0.10415); // => 50.5
 * ```
 */
export function partsPerMillion(
  concentration: number,
  molarMass: number,
  temperature: number = ICE_POINT + 25,
  pressure: number = ATMOSPHERE,
): number {
  mustNotBeNegative('partsPerMillion', 'concentration', concentration);
  mustBeGas('partsPerMillion', molarMass, temperature, pressure);
  return (concentration * MOLAR_GAS_CONSTANT * temperature * 1e6) / (pressure * molarMass);
}

function mustBeGas(where: string, molarMass: number, temperature: number, pressure: number): void {
  mustBePositive(where, 'molarMass', molarMass);
  mustBePositive(where, 'temperature', temperature);
  mustBePositive(where, 'pressure', pressure);
}
