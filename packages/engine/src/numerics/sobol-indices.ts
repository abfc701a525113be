// Shares of a result's variance by input: Sobol' indices of first and total order, from two sets of samples and those in which one
// input (or a group of inputs) of the first set is taken from the second.

import { randomStream } from './random.ts';

export interface ShareOfVariance {
  /** What knowing the input alone would take away of the variance, as share of it; noise can carry it below 0. */
  readonly first: number;
  /** What would be left if everything but the input were known, as share of the variance. */
  readonly total: number;
  /** 5th and 95th percentile of both over the resampled rows. */
  readonly firstBand: readonly [number, number];
  readonly totalBand: readonly [number, number];
}

/** How often the rows are drawn anew for a band. */
const RESAMPLED = 200;

/**
 * First order after A. Saltelli, P. Annoni, I. Azzini, F. Campolongo, M. Ratto, S. Tarantola, Comput. Phys. Commun. 181 (2010)
 * 259-270, table 2 (b); total order after M. J. W. Jansen, Comput. Phys. Commun. 117 (1999) 35-43 (table 2 (f) there):
 *
 *     S_i = mean(f_B (f_ABi − f_A)) / V,    T_i = mean((f_A − f_ABi)²) / 2V
 *
 * with V the variance over both sets, and results counted from their mean. The band is that of a bootstrap of the rows (G. E. B.
 * Archer, A. Saltelli, I. M. Sobol', J. Stat. Comput. Simul. 58 (1997) 99-120); for rows of an even sequence it is too wide.
 *
 * @param a - Results of the first set, one a row.
 * @param b - Results of the second set.
 * @param exchanged - Per input: results of the first set with this input taken from the second.
 * @returns One share an input; undefined where the result does not vary.
 */
export function sobolShares(
  a: readonly number[],
  b: readonly number[],
  exchanged: readonly (readonly number[])[],
  seed: number = 1,
): (ShareOfVariance | undefined)[] {
  const rows = a.map((_, at) => at);
  const random = randomStream(seed);
  const drawn = Array.from({ length: RESAMPLED }, () => rows.map(() => Math.floor(random() * rows.length)));
  return exchanged.map((mixed) => {
    const whole = sharesOver(rows, a, b, mixed);
    if (whole === undefined) return undefined;
    const others = drawn.flatMap((picked) => sharesOver(picked, a, b, mixed) ?? []);
    return {
      ...whole,
      firstBand: middle90(others.map(({ first }) => first)),
      totalBand: middle90(others.map(({ total }) => total)),
    };
  });
}

function sharesOver(
  rows: readonly number[],
  a: readonly number[],
  b: readonly number[],
  mixed: readonly number[],
): { first: number; total: number } | undefined {
  let [sum, squares, first, total] = [0, 0, 0, 0];
  for (const at of rows) sum += a[at]! + b[at]!;
  const mean = sum / (2 * rows.length);
  for (const at of rows) {
    const [left, right, both] = [a[at]! - mean, b[at]! - mean, mixed[at]! - mean];
    squares += left * left + right * right;
    first += right * (both - left);
    total += (left - both) ** 2;
  }
  const variance = squares / (2 * rows.length);
  if (!(variance > 1e-18 * mean * mean) || variance === 0) return undefined;
  return { first: first / rows.length / variance, total: total / rows.length / (2 * variance) };
}

function middle90(values: number[]): [number, number] {
  const sorted = values.sort((x, y) => x - y);
  const at = (share: number): number => sorted[Math.round(share * (sorted.length - 1))] ?? Number.NaN;
  return [at(0.05), at(0.95)];
}
