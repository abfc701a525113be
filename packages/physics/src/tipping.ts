// When furniture tips over its front feet, and what an open door pulls at its hinge.

import { mustBeFinite, mustBePositive, mustNotBeNegative } from './argument.ts';
import { GRAVITY } from './constants.ts';

/** A mass and how far it lies behind the line of the front feet, m; before it: below 0. */
export interface StandingMass {
  readonly mass: number;
  readonly behind: number;
}

/**
 * How surely a piece of furniture stands: what holds it down over what would turn it over its front feet.
 *
 *     ratio = Σ (m b, behind the line) / Σ (m |b|, before it)
 *
 * @param masses - In kg, 0 or more, with their distance behind the front feet in m.
 * @returns The ratio: it tips below 1; infinite when nothing lies before the feet.
 * @throws RangeError when a mass is below 0 or a distance not finite.
 *
 * @remarks
 * Valid: a stiff floor and slow loads; a jerk or a carpet needs more. Source: statics. Checked: formula (memory).
 *
 * @example A cabinet of 82 kg, its open door of 8 kg, 27.2 kg hung on the door's edge
 * ```ts
 * tipRatio([{ mass: 82, behind: 0.3 }, { mass: 8, behind: -0.275 }, { mass: 27.2, behind: -0.55 }]); // => 1.434
 * ```
 */
export function tipRatio(masses: readonly StandingMass[]): number {
  let [holding, turning] = [0, 0];
  for (const { mass, behind } of masses) {
    mustNotBeNegative('tipRatio', 'mass', mass);
    mustBeFinite('tipRatio', 'behind', behind);
    if (behind > 0) holding += mass * behind;
    else turning -= mass * behind;
  }
  return turning > 0 ? holding / turning : Number.POSITIVE_INFINITY;
}

/**
 * Horizontal push at which furniture begins to tip.
 *
 *     F = m g b / h
 *
 * @param mass - m, kg, above 0.
 * @param behind - b, its centre of gravity behind the line about which it tips, m, 0 or more.
 * @param height - h of the push above the floor, m, above 0.
 * @returns Force, N.
 * @throws RangeError when an argument lies outside its bounds.
 *
 * @remarks Valid: feet that do not slide. Source: statics. Checked: formula (memory).
 *
 * @example 90 kg, 0.3 m behind the feet, pushed at 1.6 m
 * ```ts
 * tippingPush(90, 0.3, 1.6); // => 165.5
 * ```
 */
export function tippingPush(mass: number, behind: number, height: number): number {
  mustBePositive('tippingPush', 'mass', mass);
  mustNotBeNegative('tippingPush', 'behind', behind);
  mustBePositive('tippingPush', 'height', height);
  return (mass * GRAVITY * behind) / height;
}

/**
 * Tilt at which furniture falls by itself.
 *
 *     tan θ = b / z
 *
 * @param behind - b of the centre of gravity behind the line about which it tips, m, 0 or more.
 * @param height - z of the centre of gravity, m, above 0.
 * @returns Angle, rad.
 * @throws RangeError when an argument lies outside its bounds.
 *
 * @remarks Valid: a stiff body. Source: statics. Checked: formula (memory).
 *
 * @example In degrees
 * ```ts
 * tiltLimit(0.3, 1) * 180 / Math.PI; // => 16.7
 * ```
 */
export function tiltLimit(behind: number, height: number): number {
  mustNotBeNegative('tiltLimit', 'behind', behind);
  mustBePositive('tiltLimit', 'height', height);
  return Math.atan(behind / height);
}

/**
 * Horizontal pull of a side-hung door at its upper hinge.
 *
 *     F = m g (w/2) / s
 *
 * @param mass - m, kg, above 0.
 * @param width - w of the leaf, m, above 0.
 * @param spacing - s between its outermost hinges, m, above 0.
 * @returns Force, N.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid: its centre of gravity is in its middle. Source: statics. Checked: formula (memory).
 *
 * @example 8 kg, 0.55 m wide, hinges 0.9 m apart
 * ```ts
 * hingePull(8, 0.55, 0.9); // => 24.0
 * ```
 */
export function hingePull(mass: number, width: number, spacing: number): number {
  mustBePositive('hingePull', 'mass', mass);
  mustBePositive('hingePull', 'width', width);
  mustBePositive('hingePull', 'spacing', spacing);
  return (mass * GRAVITY * width) / 2 / spacing;
}
