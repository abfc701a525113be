// Dry air as a gas: the few properties that convection, buoyancy and flow need. Temperatures in kelvin, pressures absolute.

import { mustBePositive } from './argument.ts';
import { AIR_HEAT_CAPACITY, ATMOSPHERE, GAS_CONSTANT_AIR } from './constants.ts';

/**
 * Density of dry air as an ideal gas, kg/m³.
 *
 *     rho = p / (R T)
 *
 * @param kelvin - Temperature T, K, above 0.
 * @param pressure - Absolute pressure p, Pa, above 0; the standard atmosphere unless given.
 * @returns Density, kg/m³. Humid air is up to 1.5 % lighter at 40 °C; see `moistAirDensity`.
 * @throws RangeError when an argument is 0, negative or not a number.
 *
 * @remarks
 * Valid: within 0.1 % of real air between 200 K and 500 K at 1 atmosphere (memory).
 * Source: ideal gas; R from the US Standard Atmosphere 1976.
 * Checked: second-hand.
 *
 * @example Air at 15 °C, the sea-level density of the US Standard Atmosphere
 * ```ts
 * airDensity(288.15); // => 1.2250
 * ```
 */
export function airDensity(kelvin: number, pressure: number = ATMOSPHERE): number {
  mustBePositive('airDensity', 'kelvin', kelvin);
  mustBePositive('airDensity', 'pressure', pressure);
  return pressure / (GAS_CONSTANT_AIR * kelvin);
}

/** Coefficients of Sutherland's law: 1.458e-6 kg/(s·m·K^0.5) and 110.4 K. US Standard Atmosphere 1976, eq 51. */
const SUTHERLAND = { scale: 1.458e-6, kelvin: 110.4 };

/**
 * Dynamic viscosity of air, Pa·s.
 *
 *     mu = 1.458e-6 T^1.5 / (T + 110.4)
 *
 * @param kelvin - Temperature T, K, above 0.
 * @returns Viscosity, Pa·s.
 * @throws RangeError when the temperature is 0, negative or not a number.
 *
 * @remarks
 * Valid: 100 K to 1900 K (memory).
 * Source: US Standard Atmosphere 1976, eq 51 (Sutherland's law).
 * Checked: second-hand.
 *
 * @example Air at 20 °C
 * ```ts
 * airViscosity(293.15); // => 1.8134e-5
 * ```
 */
export function airViscosity(kelvin: number): number {
  mustBePositive('airViscosity', 'kelvin', kelvin);
  return (SUTHERLAND.scale * kelvin * Math.sqrt(kelvin)) / (kelvin + SUTHERLAND.kelvin);
}

/**
 * Thermal conductivity of air, W/(m·K).
 *
 *     k = 2.64638e-3 T^1.5 / (T + 245.4 · 10^(-12/T))
 *
 * @param kelvin - Temperature T, K, above 0.
 * @returns Conductivity, W/(m·K). Textbook tables differ from it by up to 2.5 %.
 * @throws RangeError when the temperature is 0, negative or not a number.
 *
 * @remarks
 * Valid: 100 K to 1000 K (memory).
 * Source: US Standard Atmosphere 1976, eq 53.
 * Checked: second-hand.
 *
 * @example Air at 20 °C
 * ```ts
 * airConductivity(293.15); // => 0.02572
 * ```
 */
export function airConductivity(kelvin: number): number {
  mustBePositive('airConductivity', 'kelvin', kelvin);
  return (2.64638e-3 * kelvin * Math.sqrt(kelvin)) / (kelvin + 245.4 * 10 ** (-12 / kelvin));
}

/**
 * Prandtl number of air: how far momentum spreads for each bit of heat that spreads.
 *
 *     Pr = mu cp / k
 *
 * @param kelvin - Temperature, K, above 0.
 * @returns Pr, about 0.71 in a cabinet.
 * @throws RangeError when the temperature is 0, negative or not a number.
 *
 * @remarks
 * Valid: 250 K to 450 K, where cp stays within 1 % of the constant used here.
 * Source: definition; viscosity and conductivity of the US Standard Atmosphere 1976.
 * Checked: second-hand.
 *
 * @example Air at 27 °C
 * ```ts
 * airPrandtl(300); // => 0.71
 * ```
 */
export function airPrandtl(kelvin: number): number {
  return (airViscosity(kelvin) * AIR_HEAT_CAPACITY) / airConductivity(kelvin);
}

/**
 * Volume expansion of air with temperature at constant pressure, 1/K.
 *
 *     beta = 1 / T
 *
 * @param kelvin - Temperature T, K, above 0.
 * @returns Expansion, 1/K.
 * @throws RangeError when the temperature is 0, negative or not a number.
 *
 * @remarks
 * Valid: as far as air is an ideal gas.
 * Source: ideal gas.
 * Checked: exact.
 *
 * @example Air at 27 °C
 * ```ts
 * airExpansion(300); // => 0.003333
 * ```
 */
export function airExpansion(kelvin: number): number {
  mustBePositive('airExpansion', 'kelvin', kelvin);
  return 1 / kelvin;
}

/**
 * Kinematic viscosity of dry air, m²/s.
 *
 *     nu = mu / rho
 *
 * @param kelvin - Temperature, K, above 0.
 * @param pressure - Absolute pressure, Pa, above 0; the standard atmosphere unless given.
 * @returns Kinematic viscosity, m²/s.
 * @throws RangeError when an argument is 0, negative or not a number.
 *
 * @remarks
 * Valid: as the viscosity and the density.
 * Source: definition.
 * Checked: second-hand.
 *
 * @example Air at 15 °C
 * ```ts
 * airKinematicViscosity(288.15); // => 1.461e-5
 * ```
 */
export function airKinematicViscosity(kelvin: number, pressure: number = ATMOSPHERE): number {
  return airViscosity(kelvin) / airDensity(kelvin, pressure);
}
