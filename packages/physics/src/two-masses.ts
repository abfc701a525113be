// A mass on a spring that stands on another mass on a spring: a machine on foam on a shelf.

import { mustBePositive, mustNotBeNegative } from './argument.ts';

export interface SpringMass {
  /** kg, above 0. */
  readonly mass: number;
  /** Of the spring below it, N/m, above 0. */
  readonly stiffness: number;
  /** Loss factor of that spring, 0 or more: twice the damping ratio at resonance. */
  readonly loss: number;
}

/**
 * Both natural frequencies of two masses upon one another, without damping.
 *
 *     det [ k₁ - ω² m₁, -k₁ ; -k₁, k₁ + k₂ - ω² m₂ ] = 0
 *
 * @param upper - m₁ and the spring k₁ between it and the lower mass.
 * @param lower - m₂ and the spring k₂ between it and the ground.
 * @returns Lower and upper frequency, Hz.
 * @throws RangeError when a mass or stiffness is not above 0.
 *
 * @remarks
 * Valid: one direction. Source: any text on vibration (J. P. Den Hartog, Mechanical Vibrations, chapter 3). Checked: formula (memory); values (memory).
 *
 * @example 25 kg on foam, on a shelf whose own 1.95 kg swing with it
 * ```ts
 * const upper = { mass: 25, stiffness: 1.2e6, loss: 0 };
 * const lower = { mass: 1.944, stiffness: 388800, loss: 0 };
 * twoMassFrequencies(upper, lower)[0]; // => 16.87
 * twoMassFrequencies(upper, lower)[1]; // => 147.1
 * ```
 */
export function twoMassFrequencies(upper: SpringMass, lower: SpringMass): readonly [number, number] {
  for (const part of [upper, lower]) {
    mustBePositive('twoMassFrequencies', 'mass', part.mass);
    mustBePositive('twoMassFrequencies', 'stiffness', part.stiffness);
  }
  const alone = upper.stiffness / upper.mass;
  const both = (upper.stiffness + lower.stiffness) / lower.mass;
  const product = alone * (lower.stiffness / lower.mass);
  const half = (alone + both) / 2;
  const high = half + Math.sqrt(Math.max(half ** 2 - product, 0));
  return [Math.sqrt(product / high) / (2 * Math.PI), Math.sqrt(high) / (2 * Math.PI)];
}

/**
 * Share of a shaking force on the upper mass that reaches the ground.
 *
 *     T = | k₂* x₂/F |,  k* = k (1 + i η)
 *
 * @param frequency - f, Hz, 0 or more.
 * @param upper - Mass that is shaken, and the spring below it.
 * @param lower - Mass below that, and the spring to the ground.
 * @returns T.
 * @throws RangeError when an argument lies outside its bounds.
 *
 * @remarks
 * Valid: one direction, steady shake, losses that do not grow with frequency. Source: equations of motion of the two masses. Checked: formula (memory).
 *
 * @example On a lower spring that does not give it is the share through the upper spring alone
 * ```ts
 * const upper = { mass: 25, stiffness: 1.2e6, loss: 0.2 };
 * twoMassTransmission(125, upper, { mass: 1, stiffness: 1e15, loss: 0 }); // => 0.0860
 * ```
 */
export function twoMassTransmission(frequency: number, upper: SpringMass, lower: SpringMass): number {
  mustNotBeNegative('twoMassTransmission', 'frequency', frequency);
  for (const part of [upper, lower]) {
    mustBePositive('twoMassTransmission', 'mass', part.mass);
    mustBePositive('twoMassTransmission', 'stiffness', part.stiffness);
    mustNotBeNegative('twoMassTransmission', 'loss', part.loss);
  }
  const square = (2 * Math.PI * frequency) ** 2;
  // x₂/F = k₁*/(d₁ d₂ - k₁*²) with d₁ = k₁* - ω² m₁ and d₂ = k₁* + k₂* - ω² m₂; real and imaginary parts by hand.
  const [k1, i1] = [upper.stiffness, upper.stiffness * upper.loss];
  const [k2, i2] = [lower.stiffness, lower.stiffness * lower.loss];
  const a = k1 - square * upper.mass;
  const b = k1 + k2 - square * lower.mass;
  const real = a * b - i1 * (i1 + i2) - (k1 * k1 - i1 * i1);
  const imaginary = a * (i1 + i2) + b * i1 - 2 * k1 * i1;
  return (Math.hypot(k1, i1) * Math.hypot(k2, i2)) / Math.hypot(real, imaginary);
}
