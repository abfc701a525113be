// What of a lamp's power is light, and what is heat at the lamp.

import { mustLieWithin, mustNotBeNegative } from './argument.ts';

/** lm in a watt of light at 555 nm (540 THz). Source: SI Brochure 2019, definition of the candela. */
export const PEAK_EFFICACY = 683;

/** lm in a watt of the light of a white LED. From memory: 300 to 350. */
export const WHITE_EFFICACY = 320;

/**
 * Heat of a lamp at its place; its light becomes heat where it is swallowed.
 *
 *     heat = P - Phi/K
 *
 * @param power - P, W, 0 or more.
 * @param flux - Phi, lm, 0 or more.
 * @param efficacy - K of its light, lm/W, above 0 to 683.
 * @returns W; never below 0.
 * @throws RangeError when an argument is out of these bounds.
 *
 * @remarks
 * Valid: lamps whose light has this colour. Source: definition of luminous flux; K of white LEDs common practice, from memory.
 * Checked: memory.
 *
 * @example 1000 lm from 10 W
 * ```ts
 * lampHeat(10, 1000); // => 6.875
 * ```
 */
export function lampHeat(power: number, flux: number, efficacy: number = WHITE_EFFICACY): number {
  mustNotBeNegative('lampHeat', 'power', power);
  mustNotBeNegative('lampHeat', 'flux', flux);
  mustLieWithin('lampHeat', 'efficacy', efficacy, Number.MIN_VALUE, PEAK_EFFICACY);
  return Math.max(power - flux / efficacy, 0);
}
