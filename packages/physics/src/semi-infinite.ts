// Heat going into a body so thick that its far side does not know yet: good for a time of about d²/(20 alpha) into a board
// of thickness d. Depths in m, times in s, temperatures or rises in K.

import { mustBePositive, mustNotBeNegative } from './argument.ts';
import { erfc, scaledErfc } from './error-function.ts';

/** What a thick body is made of. */
export interface ThickBody {
  /** Thermal conductivity, W/(m·K), above 0. */
  readonly conductivity: number;
  /** Thermal diffusivity conductivity / (density · heat capacity), m²/s, above 0. */
  readonly diffusivity: number;
}

/**
 * How much of a step of the surface's temperature has arrived at a depth, 0 to 1.
 *
 *     (T - Ti) / (Ts - Ti) = erfc(x / (2 sqrt(alpha t)))
 *
 * @param depth - x, m, 0 or more.
 * @param diffusivity - alpha, m²/s, above 0.
 * @param time - t, s, above 0.
 * @returns Share of the step, 1 at the surface.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: while the far side is still untouched.
 * Source: Carslaw and Jaeger, Conduction of Heat in Solids, 2.4 (memory); Holman, Heat Transfer, eq 4-8.
 * Checked: second-hand.
 *
 * @example Steel from 35 °C to 250 °C at its face, 25 mm deep, after 30 s (Holman, example 4-2a: 118.5 °C)
 * ```ts
 * 35 + (250 - 35) * surfaceStepShare(0.025, 1.4e-5, 30); // => 118.5
 * ```
 */
export function surfaceStepShare(depth: number, diffusivity: number, time: number): number {
  return erfc(similarity('surfaceStepShare', depth, diffusivity, time));
}

/**
 * Heat that has gone in through the surface since a step of its temperature, J/m² for each kelvin of the step.
 *
 *     Q = 2 k sqrt(t / (pi alpha))        its rate is q = k / sqrt(pi alpha t)
 *
 * @param body - Conductivity and diffusivity.
 * @param time - t, s, above 0.
 * @returns Heat for each square metre and kelvin.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: while the far side is still untouched.
 * Source: Holman, Heat Transfer, eq 4-12, integrated over time.
 * Checked: second-hand.
 *
 * @example An aluminium slab dropped by 130 K for 37.73 s (Holman, example 4-4: 21.13 MJ/m²)
 * ```ts
 * 130 * surfaceStepHeat({ conductivity: 215, diffusivity: 8.4e-5 }, 37.73); // => 2.114e7
 * ```
 */
export function surfaceStepHeat({ conductivity, diffusivity }: ThickBody, time: number): number {
  mustBePositive('surfaceStepHeat', 'conductivity', conductivity);
  mustBePositive('surfaceStepHeat', 'diffusivity', diffusivity);
  mustBePositive('surfaceStepHeat', 'time', time);
  return 2 * conductivity * Math.sqrt(time / (Math.PI * diffusivity));
}

/**
 * Rise of temperature under a constant heat flux, K.
 *
 *     T - Ti = 2 q sqrt(alpha t / pi) / k · exp(-x²/(4 alpha t)) - q x / k · erfc(x / (2 sqrt(alpha t)))
 *
 * @param flux - q, W/m².
 * @param body - Conductivity k and diffusivity alpha.
 * @param depth - x, m, 0 or more.
 * @param time - t, s, above 0.
 * @returns Rise above the start, K.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: while the far side is still untouched.
 * Source: Holman, Heat Transfer, eq 4-13a.
 * Checked: second-hand.
 *
 * @example Steel under 3.2e5 W/m², 25 mm deep, after 30 s (Holman, example 4-2b: 79.3 °C from 35 °C)
 * ```ts
 * surfaceFluxRise(3.2e5, { conductivity: 45, diffusivity: 1.4e-5 }, 0.025, 30); // => 44.3
 * ```
 */
export function surfaceFluxRise(
  flux: number,
  { conductivity, diffusivity }: ThickBody,
  depth: number,
  time: number,
): number {
  mustBePositive('surfaceFluxRise', 'conductivity', conductivity);
  const x = similarity('surfaceFluxRise', depth, diffusivity, time);
  const spread = 2 * Math.sqrt(diffusivity * time);
  return (flux / conductivity) * ((spread / Math.sqrt(Math.PI)) * Math.exp(-x * x) - depth * erfc(x));
}

/**
 * How much of a step of the air's temperature has arrived at a depth, 0 to 1, when a film lies between air and body.
 *
 *     (T - Ti) / (Ta - Ti) = erfc(X) - exp(h x/k + h² alpha t/k²) · erfc(X + h sqrt(alpha t)/k),  X = x / (2 sqrt(alpha t))
 *
 * @param film - h, W/(m²·K), 0 or more.
 * @param body - Conductivity k and diffusivity alpha.
 * @param depth - x, m, 0 or more.
 * @param time - t, s, above 0.
 * @returns Share of the step.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: while the far side is still untouched. The product is formed with exp(s²) erfc(s), so large films do not overflow.
 * Source: Holman, Heat Transfer, eq 4-15.
 * Checked: second-hand.
 *
 * @example The face of a plywood board one minute after the bay's air has warmed
 * ```ts
 * airStepShare(7.69, { conductivity: 0.13, diffusivity: 1.625e-7 }, 0, 60); // => 0.179
 * ```
 */
export function airStepShare(
  film: number,
  { conductivity, diffusivity }: ThickBody,
  depth: number,
  time: number,
): number {
  mustNotBeNegative('airStepShare', 'film', film);
  mustBePositive('airStepShare', 'conductivity', conductivity);
  const x = similarity('airStepShare', depth, diffusivity, time);
  const reach = (film / conductivity) * Math.sqrt(diffusivity * time);
  // exp(2 x reach + reach²) erfc(x + reach) = exp(-x²) erfcx(x + reach)
  return erfc(x) - Math.exp(-x * x) * scaledErfc(x + reach);
}

/**
 * Rise of temperature after heat was released at once in a plane, K; the body lies on one side of it only.
 *
 *     T - Ti = Q / (rho c sqrt(pi alpha t)) · exp(-x²/(4 alpha t))
 *
 * @param heat - Q, J/m².
 * @param volumetricCapacity - rho c, J/(m³·K), above 0.
 * @param diffusivity - alpha, m²/s, above 0.
 * @param depth - x, m, 0 or more.
 * @param time - t, s, above 0.
 * @returns Rise above the start, K.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: while the far side is still untouched; halve it where the plane lies inside a body.
 * Source: Holman, Heat Transfer, eq 4-13b.
 * Checked: second-hand.
 *
 * @example A pulse of 10 MJ/m² on steel, at the surface after 2 s (Holman, example 4-3: 40 °C + 530 K)
 * ```ts
 * planeSourceRise(1e7, 7800 * 460, 0.44e-5, 0, 2); // => 530
 * ```
 */
export function planeSourceRise(
  heat: number,
  volumetricCapacity: number,
  diffusivity: number,
  depth: number,
  time: number,
): number {
  mustBePositive('planeSourceRise', 'volumetricCapacity', volumetricCapacity);
  const x = similarity('planeSourceRise', depth, diffusivity, time);
  return (heat / (volumetricCapacity * Math.sqrt(Math.PI * diffusivity * time))) * Math.exp(-x * x);
}

/** x / (2 sqrt(alpha t)), the one variable that all these solutions share. */
function similarity(where: string, depth: number, diffusivity: number, time: number): number {
  mustNotBeNegative(where, 'depth', depth);
  mustBePositive(where, 'diffusivity', diffusivity);
  mustBePositive(where, 'time', time);
  return depth / (2 * Math.sqrt(diffusivity * time));
}
