// One price out of a range of them.

/**
 * Where a price lies between its low and its high end.
 *
 * @param low - 0 or more.
 * @param high - Not below low.
 * @param position - 0 at the low end, 1 at the high one.
 * @returns Money.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: any. Source: straight line. Checked: exact.
 *
 * @example The middle
 * ```ts
 * priceAt(70, 120, 0.5); // => 95
 * ```
 */
export function priceAt(low: number, high: number, position: number): number {
  if (!(low >= 0)) throw new RangeError(`priceAt: low is ${low}; it must not be below 0`);
  if (!(high >= low)) throw new RangeError(`priceAt: high - low is ${high - low}; it must not be below 0`);
  if (!(position >= 0 && position <= 1))
    throw new RangeError(`priceAt: position is ${position}; it must be from 0 to 1`);
  return low + position * (high - low);
}
