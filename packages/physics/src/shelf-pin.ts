// What a shelf pin and the board round it bear.

import { mustBePositive, mustNotBeNegative } from './argument.ts';

/** Stresses at a pin, Pa. */
export interface PinStress {
  /** In the pin, over its section. */
  readonly shear: number;
  /** In the board, over the pin's projected area. */
  readonly bearing: number;
}

/**
 * Stresses at a round pin that is sheared at the face of a board.
 *
 *     shear = F/(π d²/4),  bearing = F/(d t)
 *
 * @param force - F, N, 0 or more.
 * @param diameter - d, m, above 0.
 * @param depth - t in the board, m, above 0.
 * @returns Both stresses.
 * @throws RangeError when an argument lies outside its bounds.
 *
 * @remarks
 * Valid: a pin that fits tightly; the lever of a shelf that stands off the side adds bending. Source: any text on strength of
 * materials. Checked: formula (memory).
 *
 * @example 30 kg on two of four pins of 5 mm
 * ```ts
 * pinStress(147.1, 0.005, 0.01).shear / 1e6; // => 7.49
 * pinStress(147.1, 0.005, 0.01).bearing / 1e6; // => 2.94
 * ```
 */
export function pinStress(force: number, diameter: number, depth: number): PinStress {
  mustNotBeNegative('pinStress', 'force', force);
  mustBePositive('pinStress', 'diameter', diameter);
  mustBePositive('pinStress', 'depth', depth);
  return { shear: force / ((Math.PI * diameter ** 2) / 4), bearing: force / (diameter * depth) };
}

/**
 * Characteristic embedment strength of plywood against a steel pin or bolt.
 *
 *     f_h,k = 0.11 (1 - 0.01 d) rho_k, d in mm, kg/m³, N/mm²
 *
 * @param diameter - d, m, above 0 (the rule is made for 2 to 30 mm).
 * @param density - Characteristic density rho_k, kg/m³, above 0.
 * @returns Strength, Pa, short-term; permanent loads may use about half.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: bolts and pins in plywood. Source: EN 1995-1-1:2004, equation (8.36). Checked: formula (memory).
 *
 * @example 5 mm in plywood of 600 kg/m³
 * ```ts
 * plywoodEmbedment(0.005, 600) / 1e6; // => 62.7
 * ```
 */
export function plywoodEmbedment(diameter: number, density: number): number {
  mustBePositive('plywoodEmbedment', 'diameter', diameter);
  mustBePositive('plywoodEmbedment', 'density', density);
  return 0.11 * (1 - 0.01 * (diameter * 1000)) * density * 1e6;
}
