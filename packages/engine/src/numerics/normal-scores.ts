// Results as scores of a standard normal distribution, by their rank: any monotone scale of the results gives the same scores.

import { normalQuantile } from './normal.ts';

/**
 * Scores Φ⁻¹((rank − ½)/n); equal results share the middle of their ranks.
 *
 * @example The middle of three is 0, the outer ones lie at the sixths
 * ```ts
 * normalScores([30, 10, 20]).map((score) => score.toFixed(3)).join(' '); // => 0.967 -0.967 0.000
 * ```
 */
export function normalScores(values: readonly number[]): number[] {
  const order = values.map((_, at) => at).sort((a, b) => values[a]! - values[b]!);
  const scores = new Array<number>(values.length).fill(0);
  for (let start = 0; start < order.length; ) {
    let end = start;
    while (end + 1 < order.length && values[order[end + 1]!] === values[order[start]!]) end += 1;
    const score = normalQuantile(((start + end) / 2 + 0.5) / values.length);
    for (let at = start; at <= end; at += 1) scores[order[at]!] = score;
    start = end + 1;
  }
  return scores;
}

/** The score of a limit: half way between the results on either side of it. Infinite where all lie on one side. */
export function scoreOfLimit(values: readonly number[], scores: readonly number[], limit: number): number {
  let [below, above] = [-Infinity, Infinity];
  for (const [at, value] of values.entries()) {
    if (value <= limit) below = Math.max(below, scores[at]!);
    else above = Math.min(above, scores[at]!);
  }
  return Number.isFinite(below) && Number.isFinite(above)
    ? (below + above) / 2
    : below === -Infinity
      ? -Infinity
      : Infinity;
}
