// The error of an estimate from samples that came in independent groups: leave out one group after another (M. H. Quenouille, Biometrika
// 43 (1956) 353-360; J. W. Tukey 1958). It serves quantiles of evenly spread samples, whose groups are scrambled independently.

/**
 * Standard error of an estimate over groups of equal size: √((g − 1)/g · Σ (θ without group − their mean)²).
 *
 * @param without - The estimate with each group left out, one a group.
 * @returns NaN for fewer than two groups.
 *
 * @example Means of three groups 1, 2 and 3 without each: the error of their mean is 1/√3
 * ```ts
 * jackknifeError([2.5, 2, 1.5]).toFixed(4); // => 0.5774
 * ```
 */
export function jackknifeError(without: readonly number[]): number {
  const count = without.length;
  if (count < 2) return Number.NaN;
  const mean = without.reduce((sum, value) => sum + value, 0) / count;
  const squares = without.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return Math.sqrt((squares * (count - 1)) / count);
}
