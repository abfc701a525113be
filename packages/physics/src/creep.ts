// Sag that comes with the years.

import { mustNotBeNegative } from './argument.ts';

/**
 * Sag in the end, under loads that stay.
 *
 *     final = first (1 + k)
 *
 * @param first - Sag when the load has just been put on, m, 0 or more.
 * @param growth - k, k_def of EN 1995-1-1: 0.6 timber, 0.8 plywood, 2.25 chipboard and MDF in a dry room, 0 or more.
 * @returns Sag, m.
 * @throws RangeError when an argument is below 0.
 *
 * @remarks
 * Valid: lasting loads in a dry room (service class 1); a bay that is warmed and cooled daily creeps more.
 * Source: EN 1995-1-1:2004, 2.2.3 (3) and table 3.2. Checked: formula (second-hand); factors (second-hand).
 *
 * @example Plywood that sags 0.957 mm at first
 * ```ts
 * finalSag(0.957, 0.8); // => 1.723
 * ```
 */
export function finalSag(first: number, growth: number): number {
  mustNotBeNegative('finalSag', 'first', first);
  mustNotBeNegative('finalSag', 'growth', growth);
  return first * (1 + growth);
}
