// Filament as a column in the gap below the drive wheels: what it bears before it gives way sideways.

import { mustBePositive } from './argument.ts';

/**
 * Second moment of area of a round rod.
 *
 *     I = pi d^4/64
 *
 * @param diameter - d, m, above 0.
 * @returns I in m⁴.
 * @throws RangeError when the diameter is not above 0.
 *
 * @remarks Valid: full round section. Source: Roark's Formulas for Stress and Strain, appendix A. Checked: exact.
 *
 * @example 1.75 mm, in mm⁴
 * ```ts
 * 1e12 * rodMoment(0.00175); // => 0.4604
 * ```
 */
export function rodMoment(diameter: number): number {
  mustBePositive('rodMoment', 'diameter', diameter);
  return (Math.PI * diameter ** 4) / 64;
}

/**
 * Push at which a column held at both ends gives way.
 *
 *     P = 4 pi^2 E I/L^2
 *
 * @param modulus - E, Pa, above 0.
 * @param moment - I, m⁴, above 0.
 * @param length - L between the ends, m, above 0.
 * @returns P in N.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: long against its thickness, straight, elastic: an upper bound. Source: Euler 1744; Timoshenko & Gere, Theory of Elastic
 * Stability, 2nd ed. 1961, ch. 2, both ends built in. Checked: memory.
 *
 * @example Soft filament of 30 MPa, 10 mm
 * ```ts
 * clampedBuckling(30e6, rodMoment(0.00175), 0.01); // => 5.45
 * ```
 */
export function clampedBuckling(modulus: number, moment: number, length: number): number {
  mustBePositive('clampedBuckling', 'modulus', modulus);
  mustBePositive('clampedBuckling', 'moment', moment);
  mustBePositive('clampedBuckling', 'length', length);
  return (4 * Math.PI ** 2 * modulus * moment) / length ** 2;
}

/**
 * Longest gap that bears a push: {@link clampedBuckling} turned round.
 *
 *     L = 2 pi sqrt(E I/P)
 *
 * @param modulus - E, Pa, above 0.
 * @param moment - I, m⁴, above 0.
 * @param push - P, N, above 0.
 * @returns L in m.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid: as {@link clampedBuckling}. Source: the same. Checked: exact, as its inverse.
 *
 * @example Soft filament, 20 N
 * ```ts
 * longestGap(30e6, rodMoment(0.00175), 20); // => 0.00522
 * ```
 */
export function longestGap(modulus: number, moment: number, push: number): number {
  mustBePositive('longestGap', 'modulus', modulus);
  mustBePositive('longestGap', 'moment', moment);
  mustBePositive('longestGap', 'push', push);
  return 2 * Math.PI * Math.sqrt((modulus * moment) / push);
}
