// How much vapour activated carbon holds at equilibrium, and what a loaded carbon gives back when it warms.

import { mustBePositive, mustNotBeNegative } from './argument.ts';
import { MOLAR_GAS_CONSTANT } from './concentration.ts';
import { molarPolarisation, type Solvent, solventSaturation } from './solvent.ts';

/** Micropore volume of ordinary carbon, m³/kg. Source: Wood's fit for respirator carbons, from memory. */
export const MICROPORE_VOLUME = 0.454e-3;

/** 1.987 cal/(mol·K), squared: the fit below was made in calories. */
const CALORIES = 1.987 ** 2;
const STEEPNESS = 3.56e-5;

/**
 * Mass of vapour that a mass of carbon holds in balance with air (Dubinin and Radushkevich in Wood's form).
 *
 *     W_e = W_0 d exp(-b W_0 Pe^-1.8 (R T ln(p/p_s))^2),   b = 3.56e-5,  R = 1.987 cal/(mol K)
 *
 * | symbol | meaning                               | unit     |
 * | ------ | ------------------------------------- | -------- |
 * | W_0    | micropore volume                      | cm³/g    |
 * | d      | density of the liquid                 | g/cm³    |
 * | Pe     | molar polarisation                    | cm³/mol  |
 * | p/p_s  | partial over saturation pressure      | -        |
 *
 * @param solvent - Vapour, the only one.
 * @param concentration - Of the air, kg/m³, 0 or more; above saturation the pores are full.
 * @param temperature - T, K, above 0.
 * @param microporeVolume - W_0, m³/kg, above 0.
 * @returns W_e in kg of vapour per kg of carbon.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: dry air (below half saturation), one vapour, about 50 to 1000 ppm. At room levels (10 to 1000 µg/m³) it is
 * an extrapolation by three to four decades: plan with a third to a tenth of it. Light polar molecules hardly hold.
 * Source: G. O. Wood, Am. Ind. Hyg. Assoc. J. 55 (1994) 11-15. Checked: formula (memory); a published table (read).
 *
 * @example Styrene at 1000 µg/m³ and 22 °C
 * ```ts
 * carbonCapacity({ molarMass: 0.10415, density: 906, refractiveIndex: 1.5468, antoine: [7.14016, 1574.51, 224.09] }, 1e-6, 295.15); // => 0.164
 * ```
 */
export function carbonCapacity(
  solvent: Solvent,
  concentration: number,
  temperature: number,
  microporeVolume: number = MICROPORE_VOLUME,
): number {
  mustNotBeNegative('carbonCapacity', 'concentration', concentration);
  mustBePositive('carbonCapacity', 'temperature', temperature);
  mustBePositive('carbonCapacity', 'microporeVolume', microporeVolume);
  const partial = (concentration * MOLAR_GAS_CONSTANT * temperature) / solvent.molarMass;
  const logarithm = Math.min(0, Math.log(partial / solventSaturation(solvent, temperature)));
  return microporeVolume * solvent.density * Math.exp(-spread(solvent, temperature, microporeVolume) * logarithm ** 2);
}

/**
 * Concentration of the air that a loaded carbon keeps in balance: the inverse of {@link carbonCapacity}.
 *
 *     ln(p/p_s) = -sqrt(ln(W_0 d/W)/(b W_0 Pe^-1.8 R^2 T^2))
 *
 * A filter loaded in the cool gives this back once the bay has warmed.
 *
 * @param solvent - Vapour, the only one.
 * @param loading - W, kg of vapour per kg of carbon, 0 or more; full pores give saturation.
 * @param temperature - T, K, above 0.
 * @param microporeVolume - W_0, m³/kg, above 0.
 * @returns kg/m³; 0 for a fresh carbon.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid, Source: as {@link carbonCapacity}. Checked: exact inverse.
 *
 * @example The carbon above
 * ```ts
 * carbonEquilibrium({ molarMass: 0.10415, density: 906, refractiveIndex: 1.5468, antoine: [7.14016, 1574.51, 224.09] }, 0.164, 295.15); // => 1.00e-6
 * ```
 */
export function carbonEquilibrium(
  solvent: Solvent,
  loading: number,
  temperature: number,
  microporeVolume: number = MICROPORE_VOLUME,
): number {
  mustNotBeNegative('carbonEquilibrium', 'loading', loading);
  mustBePositive('carbonEquilibrium', 'temperature', temperature);
  mustBePositive('carbonEquilibrium', 'microporeVolume', microporeVolume);
  const fullOverLoaded = Math.max(1, (microporeVolume * solvent.density) / loading);
  const logarithm = -Math.sqrt(Math.log(fullOverLoaded) / spread(solvent, temperature, microporeVolume));
  const partial = solventSaturation(solvent, temperature) * Math.exp(logarithm);
  return (partial * solvent.molarMass) / (MOLAR_GAS_CONSTANT * temperature);
}

/** b W_0 Pe^-1.8 R² T², the factor on ln²(p/p_s). */
function spread(solvent: Solvent, temperature: number, microporeVolume: number): number {
  return STEEPNESS * microporeVolume * 1e3 * molarPolarisation(solvent) ** -1.8 * CALORIES * temperature ** 2;
}
