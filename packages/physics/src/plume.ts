// The warm air that rises over a heat source: how much, how fast, how warm.

import { mustBePositive, mustNotBeNegative } from './argument.ts';
import { AIR_HEAT_CAPACITY, ATMOSPHERE, GAS_CONSTANT_AIR, GRAVITY } from './constants.ts';

/** Share of the free plume's entrainment left beside a wall and in a corner. Source: NIST SP 1026 (2005), read. */
export const PLUME_ENTRAINMENT: { readonly free: 1; readonly wall: number; readonly corner: number } = {
  free: 1,
  wall: 0.63,
  corner: 0.4,
};

/** A plume at one height. */
export interface Plume {
  /** On the axis, m/s. */
  readonly velocity: number;
  /** On the axis above the surrounding air, K. */
  readonly rise: number;
  /** Rising air in all, kg/s. */
  readonly massFlow: number;
}

/**
 * Plume over a point source (Heskestad).
 *
 *     m  = 0.196 (g rho²/(cp T))^(1/3) Q^(1/3) z^(5/3)
 *     u  = 3.4 (g/(cp rho T))^(1/3) Q^(1/3) z^(-1/3)
 *     dT = 9.1 (T/(g cp² rho²))^(1/3) Q^(2/3) z^(-5/3)
 *
 * @param heat - Q given to the air (without radiation), W, above 0.
 * @param height - z above the virtual origin, m, above 0; see {@link virtualOrigin}.
 * @param airK - T of the surrounding air, K, above 0. Density at one atmosphere and cp 1006 J/(kg·K).
 * @returns Velocity, temperature rise and mass flow.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: turbulent plume in still, unstratified air, made for fires; at 10 to 100 W it is an extrapolation. The constants
 * of {@link roomPlume} give 24 % more velocity and 16 % less air.
 * Source: G. Heskestad, as in NIST SP 1026 (2005). Checked: formula (read); values (independent script).
 *
 * @example 20 W half a metre up
 * ```ts
 * firePlume(20, 0.5, 298.15).velocity; // => 0.351
 * ```
 */
export function firePlume(heat: number, height: number, airK: number): Plume {
  mustBePositive('firePlume', 'heat', heat);
  mustBePositive('firePlume', 'height', height);
  mustBePositive('firePlume', 'airK', airK);
  const rho = ATMOSPHERE / (GAS_CONSTANT_AIR * airK);
  const cp = AIR_HEAT_CAPACITY;
  const root = Math.cbrt(height);
  return {
    massFlow: 0.196 * Math.cbrt(((GRAVITY * rho ** 2) / (cp * airK)) * heat) * height * root ** 2,
    velocity: (3.4 * Math.cbrt((GRAVITY / (cp * rho * airK)) * heat)) / root,
    rise: (9.1 * Math.cbrt((airK / (GRAVITY * cp ** 2 * rho ** 2)) * heat ** 2)) / (height * root ** 2),
  };
}

/**
 * Height of a flat source's virtual origin above its face; below 0 for weak sources.
 *
 *     z_0 = D (-1.02 + 1.4 q^0.4),   q = Q/(rho cp T sqrt(g D) D²)
 *
 * @param heat - Q, W, 0 or more.
 * @param diameter - D of the source, m, above 0; that of equal area for a square.
 * @param airK - T, K, above 0.
 * @returns m.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: a fit for fires; at 10 to 100 W nearly -D. Source: Heskestad, as in NIST SP 1026 (2005). Checked: formula (read).
 *
 * @example A bed of 235 mm giving 28 W to the air
 * ```ts
 * virtualOrigin(28, 0.265, 298.15); // => -0.250
 * ```
 */
export function virtualOrigin(heat: number, diameter: number, airK: number): number {
  mustNotBeNegative('virtualOrigin', 'heat', heat);
  mustBePositive('virtualOrigin', 'diameter', diameter);
  mustBePositive('virtualOrigin', 'airK', airK);
  const rho = ATMOSPHERE / (GAS_CONSTANT_AIR * airK);
  const strength = heat / (rho * AIR_HEAT_CAPACITY * airK * Math.sqrt(GRAVITY * diameter) * diameter ** 2);
  return diameter * (-1.02 + 1.4 * strength ** 0.4);
}

/**
 * Plume over a point source with the constants that ventilation engineers use.
 *
 *     u = 0.128 Q^(1/3) z^(-1/3),   dT = 0.329 Q^(2/3) z^(-5/3),   V = 0.005 Q^(1/3) z^(5/3)
 *
 * @param heat - Q given to the air, W, above 0.
 * @param height - z above the virtual origin, m, above 0.
 * @returns Velocity in m/s and rise in K on the axis, volume flow in m³/s.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: room air near 20 °C, unstratified. Source: B. R. Morton, G. Taylor, J. S. Turner, Proc. R. Soc. A 234 (1956);
 * constants as in a REHVA guidebook on displacement ventilation. Checked: formula (memory).
 *
 * @example 100 W one metre up, in l/s
 * ```ts
 * roomPlume(100, 1).volumeFlow * 1000; // => 23.2
 * ```
 */
export function roomPlume(heat: number, height: number): { velocity: number; rise: number; volumeFlow: number } {
  mustBePositive('roomPlume', 'heat', heat);
  mustBePositive('roomPlume', 'height', height);
  return {
    velocity: 0.128 * Math.cbrt(heat / height),
    rise: 0.329 * heat ** (2 / 3) * height ** (-5 / 3),
    volumeFlow: 0.005 * Math.cbrt(heat) * height ** (5 / 3),
  };
}
