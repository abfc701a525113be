// What burning gives off, and how much of it the oxygen of a closed space allows. Heats are net: the water leaves as vapour.

import { airDensity } from './air.ts';
import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';

/** Heat for each kilogram of oxygen that a fire uses, whatever burns, J/kg. Source: Huggett, Fire and Materials 4 (1980) 61. */
export const OXYGEN_HEAT = 13.1e6;

/** Oxygen of dry air by volume. Source: US Standard Atmosphere 1976, table 3. */
export const OXYGEN_BY_VOLUME = 0.20948;

/** Molar masses, kg/mol. Source: IUPAC 2018, abridged; dry air US Standard Atmosphere 1976. */
const OXYGEN_MOLAR = 31.998e-3;
const AIR_MOLAR = 28.9644e-3;
const ATOMS = { carbon: 12.011e-3, hydrogen: 1.008e-3, oxygen: 15.999e-3, nitrogen: 14.007e-3 } as const;

/** Latent heat of the 8.937 kg of water that a kilogram of hydrogen becomes, at 25 °C, J/kg. Source: 2.442 MJ/kg of water. */
const WATER_OF_HYDROGEN = 8.937 * 2.442e6;

/** Oxygen of dry air by mass, kg/kg. */
export const OXYGEN_BY_MASS: number = (OXYGEN_BY_VOLUME * OXYGEN_MOLAR) / AIR_MOLAR;

/** How many atoms of each kind stand in the formula of what burns. */
export interface Molecule {
  readonly carbon: number;
  readonly hydrogen: number;
  readonly oxygen?: number;
  readonly nitrogen?: number;
}

/**
 * Heat that a kilogram of air can give while all of its oxygen is used: 3.03 MJ/kg with the usual figure.
 *
 * @param oxygenHeat - Heat for each kilogram of oxygen, J/kg, above 0.
 * @returns J/kg.
 * @throws RangeError when the argument is nonsense.
 *
 * @remarks
 * Valid: organic solids, liquids and gases, complete burning, ± 7 %. Starved fires give off less, and more smoke.
 * Source: Huggett, Fire and Materials 4 (1980) 61. Checked: rule (second-hand).
 *
 * @example The usual figure
 * ```ts
 * airHeat() / 1e6; // => 3.03
 * ```
 */
export function airHeat(oxygenHeat: number = OXYGEN_HEAT): number {
  mustBePositive('airHeat', 'oxygenHeat', oxygenHeat);
  return oxygenHeat * OXYGEN_BY_MASS;
}

/**
 * Heat that the oxygen of a closed volume of air can give, down to a share of oxygen at which flames are weak.
 *
 *     Q = rho V y h (1 − x_end/x_air)
 *
 * | symbol | meaning                                  | unit |
 * | ------ | ---------------------------------------- | ---- |
 * | rho, V | density and volume of the air            | kg/m³, m³ |
 * | y      | oxygen of air by mass, 0.2314            | kg/kg |
 * | h      | heat for each kilogram of oxygen         | J/kg |
 * | x      | oxygen by volume, at the end and in air  | -    |
 *
 * @param volume - m³, 0 or more.
 * @param left - Oxygen by volume at which it ends, 0 to 0.20948; 0 for all of it.
 * @param oxygenHeat - J/kg, above 0.
 * @param density - Of the air before the fire, kg/m³.
 * @returns J. Air that enters brings more: this is the least, never the most.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: a closed volume, well mixed. No fire is promised to end at any share: at 15 % "risk for fire still exists".
 * Source: balance of oxygen. Checked: exact.
 *
 * @example A cabinet of 1.5 m by 0.7 m by 0.7 m: all of it, and down to 15 %
 * ```ts
 * closedAirHeat(0.735) / 1e6; // => 2.68
 * closedAirHeat(0.735, 0.15) / 1e6; // => 0.76
 * ```
 */
export function closedAirHeat(
  volume: number,
  left = 0,
  oxygenHeat: number = OXYGEN_HEAT,
  density: number = airDensity(293.15),
): number {
  mustNotBeNegative('closedAirHeat', 'volume', volume);
  mustLieWithin('closedAirHeat', 'left', left, 0, OXYGEN_BY_VOLUME);
  mustBePositive('closedAirHeat', 'density', density);
  return density * volume * airHeat(oxygenHeat) * (1 - left / OXYGEN_BY_VOLUME);
}

/**
 * Net heat of combustion of a substance from its formula, by the oxygen that it takes up.
 *
 *     q = h · M_O2 (c + h/4 − o/2)/M
 *
 * @param molecule - Atoms of its formula; of a polymer, of its repeating unit. Carbon above 0, the others 0 or more.
 * @param oxygenHeat - J/kg of oxygen, above 0.
 * @returns J/kg of the substance; nitrogen is taken to leave as such.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: organic substances, ± 7 %: 6 % low for PET, 6 % high for PA 66 against measured ones.
 * Source: Huggett 1980; Walters, Hackett, Lyon, Fire Mater. 24 (2000) 245. Checked: rule (second-hand).
 *
 * @example PLA, the repeating unit C3H4O2
 * ```ts
 * netHeatByOxygen({ carbon: 3, hydrogen: 4, oxygen: 2 }) / 1e6; // => 17.45
 * ```
 */
export function netHeatByOxygen(molecule: Molecule, oxygenHeat: number = OXYGEN_HEAT): number {
  const { carbon, hydrogen, oxygen = 0, nitrogen = 0 } = molecule;
  mustBePositive('netHeatByOxygen', 'carbon', carbon);
  mustNotBeNegative('netHeatByOxygen', 'hydrogen', hydrogen);
  mustNotBeNegative('netHeatByOxygen', 'oxygen', oxygen);
  mustNotBeNegative('netHeatByOxygen', 'nitrogen', nitrogen);
  mustBePositive('netHeatByOxygen', 'oxygenHeat', oxygenHeat);
  const molar = carbon * ATOMS.carbon + hydrogen * ATOMS.hydrogen + oxygen * ATOMS.oxygen + nitrogen * ATOMS.nitrogen;
  return Math.max((oxygenHeat * OXYGEN_MOLAR * (carbon + hydrogen / 4 - oxygen / 2)) / molar, 0);
}

/**
 * Net from gross heat of combustion: the water that the hydrogen becomes leaves as vapour, net = gross − 21.82 MJ/kg · H.
 *
 * @param gross - J/kg, as a bomb calorimeter gives it, 0 or more.
 * @param hydrogen - Share of hydrogen by mass, 0 to 1.
 * @returns J/kg.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: 25 °C. Source: 8.937 kg of water for each kg of hydrogen at 2.442 MJ/kg. Checked: exact.
 *
 * @example Polystyrene, 7.74 % hydrogen
 * ```ts
 * netFromGross(43.7e6, 0.0774) / 1e6; // => 42.0
 * ```
 */
export function netFromGross(gross: number, hydrogen: number): number {
  mustNotBeNegative('netFromGross', 'gross', gross);
  mustLieWithin('netFromGross', 'hydrogen', hydrogen, 0, 1);
  return gross - WATER_OF_HYDROGEN * hydrogen;
}
