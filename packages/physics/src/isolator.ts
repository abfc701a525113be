// A mass on something springy: how fast it swings, what of a shaking force gets through, how much it moves.

import { mustBePositive, mustNotBeNegative } from './argument.ts';
import { GRAVITY } from './constants.ts';

/**
 * Natural frequency of a mass on a spring, without damping.
 *
 *     f = (1/2π) √(k/m)
 *
 * @param stiffness - k against fast motion, N/m, above 0.
 * @param mass - m, kg, above 0.
 * @returns Frequency, Hz.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid: one direction, a stiff base. Source: any text on vibration. Checked: formula (read).
 *
 * @example 25 kg on a sheet of foam 400 mm x 400 mm x 20 mm of 100 kPa, half as stiff again when shaken
 * ```ts
 * naturalFrequency(1.5 * 100e3 * 0.16 / 0.02, 25); // => 34.87
 * ```
 */
export function naturalFrequency(stiffness: number, mass: number): number {
  mustBePositive('naturalFrequency', 'stiffness', stiffness);
  mustBePositive('naturalFrequency', 'mass', mass);
  return Math.sqrt(stiffness / mass) / (2 * Math.PI);
}

/**
 * Share of a shaking force that gets through a spring with a viscous damper; also motion of the mass over that of a shaking base.
 *
 *     T = √((1 + (2 ζ r)²)/((1 - r²)² + (2 ζ r)²)),  r = f/fn
 *
 * @param ratio - r, 0 or more.
 * @param damping - ζ, damping over critical damping, above 0.
 * @returns T: above 1 below r = √2, at any damping.
 * @throws RangeError when an argument lies outside its bounds.
 *
 * @remarks
 * Valid: one direction, a stiff base. Source: any text on vibration. Checked: formula (read); values (read).
 *
 * @example Eight times the natural frequency, and on it
 * ```ts
 * transmissibility(7.931, 0.05); // => 0.0206
 * transmissibility(1, 0.1); // => 5.099
 * ```
 */
export function transmissibility(ratio: number, damping: number): number {
  mustNotBeNegative('transmissibility', 'ratio', ratio);
  mustBePositive('transmissibility', 'damping', damping);
  const damper = (2 * damping * ratio) ** 2;
  return Math.sqrt((1 + damper) / ((1 - ratio ** 2) ** 2 + damper));
}

/**
 * The same for rubber and foam, whose loss does not grow with frequency.
 *
 *     T = √((1 + η²)/((1 - r²)² + η²))
 *
 * @param ratio - r = f/fn, 0 or more.
 * @param loss - Loss factor η, above 0: twice the damping ratio at resonance.
 * @returns T.
 * @throws RangeError when an argument lies outside its bounds.
 *
 * @remarks Valid: one direction, a stiff base. Source: any text on damping of rubber. Checked: formula (memory).
 *
 * @example Five times the natural frequency: the loss hardly matters
 * ```ts
 * hystereticTransmissibility(5, 0.2); // => 0.0425
 * ```
 */
export function hystereticTransmissibility(ratio: number, loss: number): number {
  mustNotBeNegative('hystereticTransmissibility', 'ratio', ratio);
  mustBePositive('hystereticTransmissibility', 'loss', loss);
  return Math.sqrt((1 + loss ** 2) / ((1 - ratio ** 2) ** 2 + loss ** 2));
}

/**
 * How far a mass on a spring moves under a shaking force.
 *
 *     X = (F/k)/√((1 - r²)² + (2 ζ r)²)
 *
 * @param force - F, half of the swing, N, 0 or more.
 * @param stiffness - k, N/m, above 0.
 * @param ratio - r = f/fn, 0 or more.
 * @param damping - ζ, above 0.
 * @returns Amplitude, m.
 * @throws RangeError when an argument lies outside its bounds.
 *
 * @remarks Valid: one direction, a stiff base, a steady shake. Source: any text on vibration. Checked: formula (memory); values (memory).
 *
 * @example Slowly: the spring's own give
 * ```ts
 * 1e6 * forcedAmplitude(1.2, 1e5, 0, 0.1); // => 12.0
 * ```
 */
export function forcedAmplitude(force: number, stiffness: number, ratio: number, damping: number): number {
  mustNotBeNegative('forcedAmplitude', 'force', force);
  mustBePositive('forcedAmplitude', 'stiffness', stiffness);
  mustNotBeNegative('forcedAmplitude', 'ratio', ratio);
  mustBePositive('forcedAmplitude', 'damping', damping);
  return force / stiffness / Math.hypot(1 - ratio ** 2, 2 * damping * ratio);
}

/**
 * How far a mass must press its springs to keep a share of a shake out, without damping.
 *
 *     δ = g/(2π f)² (1 + 1/T)
 *
 * @param frequency - f, Hz, above 0.
 * @param share - T that may get through, above 0.
 * @returns Deflection, m: against fast motion; foam must give less when it is loaded slowly, by its stiffening.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid: above resonance, a stiff base. Source: {@link transmissibility} without damping, solved for δ. Checked: formula (memory).
 *
 * @example To a fifth at 12 Hz, to a tenth at 125 Hz, mm
 * ```ts
 * 1000 * neededDeflection(12, 0.2); // => 10.35
 * 1000 * neededDeflection(125, 0.1); // => 0.175
 * ```
 */
export function neededDeflection(frequency: number, share: number): number {
  mustBePositive('neededDeflection', 'frequency', frequency);
  mustBePositive('neededDeflection', 'share', share);
  return (GRAVITY / (2 * Math.PI * frequency) ** 2) * (1 + 1 / share);
}

/**
 * Apparent stiffness of a bonded rubber pad in compression, which may bulge only at its free sides.
 *
 *     Ea = E (1 + 2 S²),  S = loaded area/free side area
 *
 * @param stiffness - E of the rubber, Pa, above 0.
 * @param width - Of the pad, m, above 0.
 * @param depth - Of the pad, m, above 0.
 * @param thickness - Of the pad, m, above 0.
 * @returns Ea, Pa.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: solid rubber between plates that hold it; open foam does not bulge: its stiffness stays E. Source: A. N. Gent, P. B. Lindley
 * (1959), as quoted in Strojniški vestnik - J. Mech. Eng. 60 (2014) 506-511. Checked: formula (second-hand).
 *
 * @example A pad four times as wide as thick, in E: its shape factor is 1
 * ```ts
 * padStiffness(1, 0.04, 0.04, 0.01); // => 3.0
 * ```
 */
export function padStiffness(stiffness: number, width: number, depth: number, thickness: number): number {
  mustBePositive('padStiffness', 'stiffness', stiffness);
  mustBePositive('padStiffness', 'width', width);
  mustBePositive('padStiffness', 'depth', depth);
  mustBePositive('padStiffness', 'thickness', thickness);
  const shape = (width * depth) / (2 * (width + depth) * thickness);
  return stiffness * (1 + 2 * shape ** 2);
}

/**
 * How stiffly a body on springs resists a sideways push at its centre of gravity: the springs shear, and the body rocks on them.
 *
 *     1/k = 1/k_h + h²/k_r,  k_r = k_v b²
 *
 * @param shear - k_h of all springs sideways, N/m, above 0.
 * @param vertical - k_v of all springs upright, N/m, above 0.
 * @param reach - b, radius of gyration of the springs about their middle in the direction of the push, m, above 0: half of the
 * distance between two rows of pads, length/√12 of a sheet.
 * @param height - h of the push above the springs, m, 0 or more.
 * @returns k, N/m.
 * @throws RangeError when an argument lies outside its bounds.
 *
 * @remarks
 * Valid: a stiff body, small motion, the lower of its two modes; its inertia against turning is left out, so that a real one is
 * a little slower. Source: springs in series (statics). Checked: formula (memory).
 *
 * @example Pads in rows 34 cm apart, pushed at their own height and 18 cm above it, in kN/m
 * ```ts
 * swayStiffness(20e3, 60e3, 0.17, 0) / 1000; // => 20.0
 * swayStiffness(20e3, 60e3, 0.17, 0.18) / 1000; // => 14.6
 * ```
 */
export function swayStiffness(shear: number, vertical: number, reach: number, height: number): number {
  mustBePositive('swayStiffness', 'shear', shear);
  mustBePositive('swayStiffness', 'vertical', vertical);
  mustBePositive('swayStiffness', 'reach', reach);
  mustNotBeNegative('swayStiffness', 'height', height);
  return 1 / (1 / shear + height ** 2 / (vertical * reach ** 2));
}
