// Vapours that hot plastics give off and that carbon holds, with the properties which decide how well.
// Caprolactam, lactide and the aldehydes are missing: no properties we could source well enough.

import { mustBePositive } from './argument.ts';
import { ICE_POINT } from './constants.ts';

/** A liquid by the properties that carbon sees. */
export interface Solvent {
  /** kg/mol. */
  readonly molarMass: number;
  /** Of the liquid at 20 °C, kg/m³. */
  readonly density: number;
  /** Of the liquid at 20 °C in yellow light. */
  readonly refractiveIndex: number;
  /** A, B, C of lg(p/mmHg) = A - B/(C + t/°C). */
  readonly antoine: readonly [a: number, b: number, c: number];
}

/** Vapours of {@link solvents}. */
export type SolventName = 'toluene' | 'ethylbenzene' | 'm-xylene' | 'styrene' | 'cumene' | 'mesitylene' | 'p-cymene';

/** Source: handbook values from memory; with them the carbon model meets a published table to 1.4 % (see the checks). */
export const solvents: Readonly<Record<SolventName, Solvent>> = {
  toluene: { molarMass: 0.09214, density: 867, refractiveIndex: 1.4969, antoine: [6.95464, 1344.8, 219.482] },
  ethylbenzene: { molarMass: 0.10617, density: 867, refractiveIndex: 1.4959, antoine: [6.95719, 1424.255, 213.206] },
  'm-xylene': { molarMass: 0.10617, density: 864, refractiveIndex: 1.4972, antoine: [7.00908, 1462.266, 215.105] },
  styrene: { molarMass: 0.10415, density: 906, refractiveIndex: 1.5468, antoine: [7.14016, 1574.51, 224.09] },
  cumene: { molarMass: 0.12019, density: 862, refractiveIndex: 1.4915, antoine: [6.93666, 1460.793, 207.777] },
  mesitylene: { molarMass: 0.12019, density: 865, refractiveIndex: 1.4994, antoine: [7.07436, 1569.622, 209.578] },
  'p-cymene': { molarMass: 0.13422, density: 857, refractiveIndex: 1.4909, antoine: [7.05074, 1608.91, 208.72] },
};

/**
 * Saturation pressure of a solvent (Antoine equation).
 *
 * @param solvent - One of {@link solvents}, or another.
 * @param temperature - K, above 0; sensible from 0 to 150 °C.
 * @returns Pa.
 * @throws RangeError when the temperature is not above 0.
 *
 * @remarks Valid: 0 to 150 °C. Source: C. Antoine (1888); constants from memory. Checked: boiling points (memory).
 *
 * @example Styrene at 22 °C
 * ```ts
 * solventSaturation(solvents.styrene, 295.15); // => 736
 * ```
 */
export function solventSaturation({ antoine: [a, b, c] }: Solvent, temperature: number): number {
  mustBePositive('solventSaturation', 'temperature', temperature);
  return 133.322368 * 10 ** (a - b / (c + temperature - ICE_POINT));
}

/**
 * Molar polarisation of a liquid (Lorentz and Lorenz): Pe = (n^2 - 1)/(n^2 + 2) M/d.
 *
 * @param solvent - One of {@link solvents}, or another.
 * @returns Pe in cm³/mol, the unit in which the carbon formulas take it.
 * @throws RangeError when a property is not above 0.
 *
 * @remarks Valid: any liquid. Source: H. A. Lorentz, L. Lorenz (1880). Checked: formula (memory).
 *
 * @example Toluene
 * ```ts
 * molarPolarisation(solvents.toluene); // => 31.09
 * ```
 */
export function molarPolarisation({ refractiveIndex, molarMass, density }: Solvent): number {
  mustBePositive('molarPolarisation', 'refractiveIndex', refractiveIndex);
  mustBePositive('molarPolarisation', 'molarMass', molarMass);
  mustBePositive('molarPolarisation', 'density', density);
  const square = refractiveIndex ** 2;
  return (((square - 1) / (square + 2)) * molarMass * 1e6) / density;
}
