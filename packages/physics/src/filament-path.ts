// The way of the filament from its spool to the drive wheels: what holds it back.

import { mustBePositive, mustNotBeNegative } from './argument.ts';
import { GRAVITY } from './constants.ts';

/**
 * Pull behind a guide that bends the filament.
 *
 *     T2 = T1 exp(mu theta)
 *
 * @param before - T1 before the guide, N, 0 or more.
 * @param friction - mu of filament on guide, 0 or more.
 * @param bends - theta, all bends added up, not the change of direction from end to end, rad, 0 or more.
 * @returns T2 in N.
 * @throws RangeError when an argument is negative.
 *
 * @remarks Valid: a limp line; stiffness adds to it in tight bends. Source: Euler 1762, Eytelwein 1808. Checked: printed holding factors (memory).
 *
 * @example Half a turn, and two turns on printed guides
 * ```ts
 * pullAfterBends(0.5, 0.15, Math.PI); // => 0.801
 * pullAfterBends(0.5, 0.3, 4 * Math.PI); // => 21.7
 * ```
 */
export function pullAfterBends(before: number, friction: number, bends: number): number {
  mustNotBeNegative('pullAfterBends', 'before', before);
  mustNotBeNegative('pullAfterBends', 'friction', friction);
  mustNotBeNegative('pullAfterBends', 'bends', bends);
  return before * Math.exp(friction * bends);
}

/**
 * Pull that turns a spool against the friction of what it hangs on.
 *
 *     F = mu m g r/R
 *
 * @param mass - m of spool and filament, kg, 0 or more.
 * @param friction - mu where it slides, or the coefficient of a bearing, 0 or more.
 * @param contact - r at which it rubs: radius of the hole on a rod, half the bore of a bearing, m, 0 or more.
 * @param winding - R at which the filament leaves, m, above 0.
 * @returns F in N.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: steady turning, level axle, pull small against the weight. Source: balance of moments; Coulomb friction. Checked: exact.
 *
 * @example On a plain rod, and on a ball bearing with a bore of 8 mm
 * ```ts
 * spoolDrag(1.25, 0.3, 0.026, 0.08); // => 1.195
 * spoolDrag(1.25, 0.0015, 0.004, 0.08); // => 0.00092
 * ```
 */
export function spoolDrag(mass: number, friction: number, contact: number, winding: number): number {
  mustNotBeNegative('spoolDrag', 'mass', mass);
  mustNotBeNegative('spoolDrag', 'friction', friction);
  mustNotBeNegative('spoolDrag', 'contact', contact);
  mustBePositive('spoolDrag', 'winding', winding);
  return (friction * mass * GRAVITY * contact) / winding;
}

/**
 * Pull that sets a spool turning: a hollow disc whose rim must reach the filament's speed.
 *
 *     F = I a/R^2,  I = m (R_o^2 + R_i^2)/2
 *
 * @param mass - m of spool and filament, kg, 0 or more.
 * @param outer - R_o, m, above 0.
 * @param inner - R_i of its hole, m, 0 or more.
 * @param winding - R at which the filament leaves, m, above 0.
 * @param acceleration - a of the filament, m/s², 0 or more.
 * @returns F in N.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: mass spread evenly over the disc; slack between spool and drive makes it less. Source: moment of inertia of a hollow cylinder. Checked: exact.
 *
 * @example A full kilogram brought to 50 mm/s in 50 ms
 * ```ts
 * spoolStart(1.25, 0.1, 0.026, 0.08, 1); // => 1.04
 * ```
 */
export function spoolStart(mass: number, outer: number, inner: number, winding: number, acceleration: number): number {
  mustNotBeNegative('spoolStart', 'mass', mass);
  mustBePositive('spoolStart', 'outer', outer);
  mustNotBeNegative('spoolStart', 'inner', inner);
  mustBePositive('spoolStart', 'winding', winding);
  mustNotBeNegative('spoolStart', 'acceleration', acceleration);
  return (0.5 * mass * (outer ** 2 + inner ** 2) * acceleration) / winding ** 2;
}
