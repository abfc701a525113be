// Small phrases that texts of every kind need.

/**
 * Words in a row.
 *
 * @example Three, and a choice of two
 * ```ts
 * listed(['one', 'two', 'three']); // => one, two and three
 * listed(['one', 'two'], 'or'); // => one or two
 * ```
 */
export function listed(words: readonly string[], last: 'and' | 'or' = 'and'): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} ${last} ${words.at(-1)}`;
}

/** A share of 1 in whole percent. */
export function percentText(share: number): string {
  return `${Math.round(100 * share)} %`;
}

/** Two amounts in whole numbers, `12 to 40`; one where both are alike. */
export function rangeText(low: number, high: number): string {
  const [from, to] = [Math.round(low), Math.round(high)];
  return from === to ? `${from}` : `${from} to ${to}`;
}
