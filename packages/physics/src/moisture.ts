// Water in and around filament: what air holds, how fast a strand takes it up, how long a dry box stays dry.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import { saturationPressure } from './humid-air.ts';

/** Specific gas constant of water vapour, J/(kg·K). Source: 8.314462618/0.018015268. */
export const GAS_CONSTANT_VAPOUR = 461.52;

/**
 * Water that air holds.
 *
 *     w = phi p_s/(R_v T)
 *
 * @param temperature - T, K, above 0.
 * @param relative - phi, 0 to 1.
 * @returns w in kg/m³.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: as the saturation pressure. Source: ideal gas; ASHRAE Fundamentals 2017 ch. 1. Checked: printed vapour densities (memory).
 *
 * @example A room, in g/m³
 * ```ts
 * 1000 * vapourDensity(295.15, 0.55); // => 10.7
 * ```
 */
export function vapourDensity(temperature: number, relative: number): number {
  mustBePositive('vapourDensity', 'temperature', temperature);
  mustLieWithin('vapourDensity', 'relative', relative, 0, 1);
  return (relative * saturationPressure(temperature)) / (GAS_CONSTANT_VAPOUR * temperature);
}

/** Zeros of the Bessel function J0. Source: Abramowitz & Stegun 1964, table 9.5. */
const ZEROS = [
  2.4048255577, 5.52007811029, 8.65372791291, 11.79153443901, 14.93091770849, 18.07106396791, 21.21163662988,
  24.35247153075, 27.49347913204, 30.63460646843,
] as const;
/** Below it the root law of short times is exact to 1e-4, and the series would need more zeros. */
const SHORT = 0.02;

/**
 * Share of its final change that a long round strand has taken up or given off.
 *
 *     M/M_inf = 1 - sum 4/a_n^2 exp(-a_n^2 D t/r^2),  J0(a_n) = 0
 *
 * @param fourier - D t/r², 0 or more.
 * @returns 0 to 1.
 * @throws RangeError when the number is negative.
 *
 * @remarks
 * Valid: constant diffusivity, surface at its final state at once. Source: J. Crank, The Mathematics of Diffusion, 2nd ed. 1975,
 * section 5.3. Checked: formula (memory).
 *
 * @example Nine tenths
 * ```ts
 * strandUptake(0.3344); // => 0.9
 * ```
 */
export function strandUptake(fourier: number): number {
  mustNotBeNegative('strandUptake', 'fourier', fourier);
  if (fourier < SHORT) {
    const root = Math.sqrt(fourier);
    return (4 * root) / Math.sqrt(Math.PI) - fourier - root ** 3 / (3 * Math.sqrt(Math.PI));
  }
  return 1 - ZEROS.reduce((sum, zero) => sum + (4 / zero ** 2) * Math.exp(-(zero ** 2) * fourier), 0);
}

/**
 * Time in which a strand has changed by nine tenths.
 *
 *     t = 0.3344 r^2/D
 *
 * @param radius - r, m, above 0.
 * @param diffusivity - D of water in the polymer, m²/s, above 0; it doubles or trebles for each 10 K.
 * @returns t in s.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid: as {@link strandUptake}. Source: its first term, ln(40/(a_1²))/a_1². Checked: exact.
 *
 * @example 1.75 mm, 1e-12 and 1e-11 m²/s, in h
 * ```ts
 * strandTime(0.000875, 1e-12) / 3600; // => 71.1
 * strandTime(0.000875, 1e-11) / 3600; // => 7.11
 * ```
 */
export function strandTime(radius: number, diffusivity: number): number {
  mustBePositive('strandTime', 'radius', radius);
  mustBePositive('strandTime', 'diffusivity', diffusivity);
  const square = ZEROS[0] ** 2;
  return ((Math.log(40 / square) / square) * radius ** 2) / diffusivity;
}

/**
 * Water that leaks into a box with the air that it exchanges.
 *
 *     m' = n V (w_out - w_in)
 *
 * @param volume - V, m³, 0 or more.
 * @param exchange - n, 1/s, 0 or more.
 * @param outside - w_out, kg/m³, 0 or more.
 * @param inside - w_in, kg/m³, 0 or more.
 * @returns m' in kg/s; below 0 when the box dries.
 * @throws RangeError when an argument is negative.
 *
 * @remarks Valid: air alone; what passes through the walls of a plastic box comes on top. Source: balance. Checked: exact.
 *
 * @example 20 litres, a twentieth of its air an hour, in g/day
 * ```ts
 * const [room, box] = [vapourDensity(295.15, 0.55), vapourDensity(295.15, 0.1)];
 * 86.4e6 * boxIngress(0.02, 0.05 / 3600, room, box); // => 0.21
 * ```
 */
export function boxIngress(volume: number, exchange: number, outside: number, inside: number): number {
  mustNotBeNegative('boxIngress', 'volume', volume);
  mustNotBeNegative('boxIngress', 'exchange', exchange);
  mustNotBeNegative('boxIngress', 'outside', outside);
  mustNotBeNegative('boxIngress', 'inside', inside);
  return exchange * volume * (outside - inside);
}

/**
 * How long a desiccant keeps up with what leaks in.
 *
 *     t = m c/m'
 *
 * @param mass - m of dry desiccant, kg, above 0.
 * @param capacity - c, water over its mass at the humidity that is wanted, above 0: silica gel 5 to 8 % at 10 to 20 % RH.
 * @param ingress - m', kg/s, above 0.
 * @returns t in s.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid: ingress alone; water that the filament gives off comes on top. Source: balance. Checked: exact.
 *
 * @example 100 g of silica gel at 0.211 g a day, in days
 * ```ts
 * desiccantTime(0.1, 0.05, 0.211e-3 / 86_400) / 86_400; // => 23.7
 * ```
 */
export function desiccantTime(mass: number, capacity: number, ingress: number): number {
  mustBePositive('desiccantTime', 'mass', mass);
  mustBePositive('desiccantTime', 'capacity', capacity);
  mustBePositive('desiccantTime', 'ingress', ingress);
  return (mass * capacity) / ingress;
}
