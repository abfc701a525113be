// An arm clamped at one end that holds a camera at the other: how stiff, how fast it swings, what that blurs.

import { mustBePositive, mustNotBeNegative } from './argument.ts';

/** Share of a cantilever's own mass that swings with its end. */
const OWN_MASS = 33 / 140;

/**
 * Stiffness of a cantilever at its end: k = 3 E I/L³, I = b t³/12.
 *
 * @param modulus - E, Pa, above 0.
 * @param width - b across the bending, m, above 0.
 * @param thickness - t in the direction of bending, m, above 0.
 * @param length - L, m, above 0.
 * @returns N/m.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: slender (L above 5 t), a clamp that does not give; a real clamp makes it softer.
 * Source: Euler and Bernoulli; Roark's Formulas for Stress and Strain, table 8.1. Checked: exact; formula (memory).
 *
 * @example An arm of 150 mm, 20 by 8 mm, of 2.0 GPa
 * ```ts
 * armStiffness(2e9, 0.02, 0.008, 0.15); // => 1517
 * ```
 */
export function armStiffness(modulus: number, width: number, thickness: number, length: number): number {
  mustBePositive('armStiffness', 'modulus', modulus);
  mustBePositive('armStiffness', 'width', width);
  mustBePositive('armStiffness', 'thickness', thickness);
  mustBePositive('armStiffness', 'length', length);
  return (modulus * width * thickness ** 3) / (4 * length ** 3);
}

/**
 * Lowest frequency at which a loaded cantilever swings: f = sqrt(k/(m + 33/140 m_arm))/(2 pi).
 *
 * @param stiffness - k at its end, N/m, above 0.
 * @param load - m at its end, kg, 0 or more.
 * @param own - m_arm, kg, 0 or more; load and own not both 0.
 * @returns 1/s.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: load at the end; without load 1.5 % above the exact 1.8751² root.
 * Source: Rayleigh's quotient with the shape of the end load. Checked: exact shape; limit to the exact root (memory).
 *
 * @example 50 g on the arm above, whose own mass is 30 g
 * ```ts
 * armFrequency(1517, 0.05, 0.03); // => 25.95
 * ```
 */
export function armFrequency(stiffness: number, load: number, own: number): number {
  mustBePositive('armFrequency', 'stiffness', stiffness);
  mustNotBeNegative('armFrequency', 'load', load);
  mustNotBeNegative('armFrequency', 'own', own);
  const mass = load + OWN_MASS * own;
  mustBePositive('armFrequency', 'mass', mass);
  return Math.sqrt(stiffness / mass) / (2 * Math.PI);
}

/**
 * How much the end of an arm moves against its clamp, over how much the clamp moves: r²/sqrt((1 - r²)² + (2 z r)²).
 *
 * @param ratio - r: frequency of the shaking over that of the arm, 0 or more.
 * @param damping - z: damping ratio, above 0.
 * @returns 0 for a stiff arm, 1 for one so soft that the camera stays where it is.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: one frequency, small motion. Source: relative motion under base excitation, W. T. Thomson, Theory of Vibration, ch. 3.
 * Checked: limits; formula (memory).
 *
 * @example Shaken at half its own frequency
 * ```ts
 * armFollows(0.5, 0.03); // => 0.333
 * ```
 */
export function armFollows(ratio: number, damping: number): number {
  mustNotBeNegative('armFollows', 'ratio', ratio);
  mustBePositive('armFollows', 'damping', damping);
  return ratio ** 2 / Math.hypot(1 - ratio ** 2, 2 * damping * ratio);
}

/**
 * Blur of a picture taken from the end of a swinging cantilever, in pixels: it shifts, and its end tilts by 1.5 times shift over length.
 *
 *     blur = 2 a (1 + 1.5 D/L) N/w
 *
 * @param amplitude - a: half the way of its end against the clamp, m, 0 or more.
 * @param length - L of the arm, m, above 0.
 * @param distance - D from the lens to what is pictured, m, above 0.
 * @param sees - w: width pictured there, m, above 0.
 * @param pixels - N across, above 0.
 * @returns Pixels, when the exposure lasts half a swing or longer; less when it is shorter.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: the lens looks along the arm's clamp, shaken across its line of sight: an upper bound.
 * Source: slope of an end-loaded cantilever, 1.5 times deflection over length (Roark, table 8.1). Checked: exact; slope (memory).
 *
 * @example Half a tenth of a millimetre at 150 mm, 350 mm from a picture 350 mm wide
 * ```ts
 * swingBlur(0.00005, 0.15, 0.35, 0.35, 1920); // => 2.47
 * ```
 */
export function swingBlur(amplitude: number, length: number, distance: number, sees: number, pixels: number): number {
  mustNotBeNegative('swingBlur', 'amplitude', amplitude);
  mustBePositive('swingBlur', 'length', length);
  mustBePositive('swingBlur', 'distance', distance);
  mustBePositive('swingBlur', 'sees', sees);
  mustBePositive('swingBlur', 'pixels', pixels);
  return (2 * amplitude * (1 + (1.5 * distance) / length) * pixels) / sees;
}
