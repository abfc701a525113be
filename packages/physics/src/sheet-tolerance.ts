// How far boards differ from what is written on them: thickness, and what follows for the inside of a box made of them.

import { mustBeFinite, mustBePositive, mustNotBeNegative } from './argument.ts';

export interface Tolerance {
  /** m above the nominal size. */
  readonly above: number;
  /** m below it. */
  readonly below: number;
}

/** What a saw at home leaves, m: ±1 mm on site, ±0.5 on a good table saw, ±0.2 on a panel saw. Common practice, no source. */
export const SAW_CUT = 0.001;

/**
 * Tolerance on the thickness of sanded plywood: +(0.2 + 0.03 t) and -(0.4 + 0.03 t), in mm.
 *
 * A groove cut to the nominal thickness either rattles or does not go in: measure the sheet.
 *
 * @param thickness - t: nominal, m, above 0.
 * @returns m above and below.
 * @throws RangeError when the thickness is not above 0.
 *
 * @remarks
 * Valid: sanded sheets of 3 to 60 mm at 10 ± 2 % moisture. Within one sheet up to 0.6 mm besides.
 * Source: EN 315 (2000). Checked: formula (memory); mills' tables cut its values off after the first decimal (read).
 *
 * @example A sheet of 18 mm
 * ```ts
 * 1000 * sandedTolerance(0.018).above; // => 0.74
 * 1000 * sandedTolerance(0.018).below; // => 0.94
 * ```
 */
export function sandedTolerance(thickness: number): Tolerance {
  mustBePositive('sandedTolerance', 'thickness', thickness);
  return { above: 0.0002 + 0.03 * thickness, below: 0.0004 + 0.03 * thickness };
}

/**
 * How far an inside size may be off, when a cut panel runs over two boards: half widths added as squares.
 *
 *     half = sqrt(2 (0.3 mm + 0.03 t)² + cut²)
 *
 * @param thickness - t of the boards, m, above 0.
 * @param cut - Half width of the saw's error, m, 0 or more.
 * @returns Half width, m.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: independent errors of boards and cut. Source: root of the sum of squares over {@link sandedTolerance}. Checked: exact.
 *
 * @example Boards of 18 mm and a saw cut to 1 mm
 * ```ts
 * 1000 * insideTolerance(0.018); // => 1.553
 * ```
 */
export function insideTolerance(thickness: number, cut: number = SAW_CUT): number {
  mustNotBeNegative('insideTolerance', 'cut', cut);
  const { above, below } = sandedTolerance(thickness);
  return Math.hypot(Math.SQRT2 * ((above + below) / 2), cut);
}

/**
 * How far a plywood sheet grows in its plane with the air's humidity: 0.0002 of its length for each 10 % of relative humidity.
 *
 * @param length - m, 0 or more.
 * @param change - Change of relative humidity, 0…1; below 0 it shrinks.
 * @returns m.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: from 30 to 70 % relative humidity; measured sheets moved twice to three times as much from 30 to 90 %.
 * Source: plywood makers' association, technical note. Checked: value (second-hand).
 *
 * @example One metre from 30 to 70 %
 * ```ts
 * 1000 * sheetMovement(1, 0.4); // => 0.80
 * ```
 */
export function sheetMovement(length: number, change: number): number {
  mustNotBeNegative('sheetMovement', 'length', length);
  mustBeFinite('sheetMovement', 'change', change);
  return 0.002 * change * length;
}
