// Samples of uncertain inputs: Latin hypercube (M. D. McKay, R. J. Beckman, W. J. Conover, Technometrics 21 (1979) 239-245).
// Each input has a column of its own, seeded by its path: an option that brings new inputs leaves the samples of all
// others as they were, so that base and options are compared on common random inputs.

import type { Spread } from '../cabinet/origin.ts';
import { normalQuantile } from '../numerics/normal.ts';
import { randomStream, shuffled, textSeed } from '../numerics/random.ts';

/** z at the 90th percentile. */
const Z90: number = normalQuantile(0.9);

/** How far beyond the 10th and 90th percentile a sample may lie: as far again as they lie from the middle (1 in 200). */
const REACH: number = 2 * Z90;

/** Shares 0 < u < 1 of one input's distribution, one a sample, one in each of `count` equal strata. */
export function sampleColumn(path: string, count: number, seed: number): number[] {
  const random = randomStream((textSeed(path) ^ Math.imul(seed, 0x9e3779b9)) >>> 0);
  return shuffled(count, random).map((stratum) => (stratum + random()) / count);
}

/**
 * The value of an input below which a share `u` of its distribution lies. The three percentiles given are met exactly: the
 * halves below and above the middle have their own widths (a two-piece normal); log-normal spreads do so in logarithms.
 */
export function valueAt(spread: Spread, u: number): number {
  const z = Math.min(Math.max(normalQuantile(u), -REACH), REACH) / Z90;
  if (spread.shape === 'log-normal' && spread.p10 > 0) {
    const side = z < 0 ? spread.p50 / spread.p10 : spread.p90 / spread.p50;
    return spread.p50 * side ** z;
  }
  const value = spread.p50 + z * (z < 0 ? spread.p50 - spread.p10 : spread.p90 - spread.p50);
  // A quantity whose low end is positive (a gap, a flow) does not become zero or negative in a far sample.
  return spread.p10 > 0 ? Math.max(value, spread.p10 / 4) : spread.p10 === 0 ? Math.max(value, 0) : value;
}
