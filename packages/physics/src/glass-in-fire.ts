// When a pane lets go in a fire, after which the opening behind it feeds the fire.

import { mustBePositive } from './argument.ts';
import { ICE_POINT } from './constants.ts';

/** Gas temperatures at which panes fell out, °C. Source: V. Babrauskas, Glass breakage in fires (1997). Checked: read. */
const SINGLE_THIN = 360;
const SINGLE_THICK = 450;
const DOUBLE = 600;

/**
 * Temperature of the hot gas at which an ordinary pane falls out; it cracks much earlier, when it reaches 150 to 200 °C itself.
 *
 * @param thickness - m, above 0.
 * @param panes - 1 or 2.
 * @returns K: 360 °C for 3 mm, 450 °C for 4 to 6 mm, 600 °C for double panes of 6 mm.
 * @throws RangeError when the thickness is nonsense.
 *
 * @remarks
 * Valid: annealed float, 3 to 6 mm; lower bound of tests 300 °C. Toughened glass stays longer and then goes all at once.
 * Source: Babrauskas 1997. Checked: read.
 *
 * @example A pane of 4 mm
 * ```ts
 * glassFallsOut(0.004, 1) - 273.15; // => 450
 * ```
 */
export function glassFallsOut(thickness: number, panes: 1 | 2): number {
  mustBePositive('glassFallsOut', 'thickness', thickness);
  if (panes === 2) return DOUBLE + ICE_POINT;
  return (thickness < 0.0035 ? SINGLE_THIN : SINGLE_THICK) + ICE_POINT;
}
