// Nested uniform scrambling of binary fractions: A. B. Owen, Randomly permuted (t,m,s)-nets and (t,s)-sequences, in Monte Carlo and
// Quasi-Monte Carlo Methods in Scientific Computing, Lecture Notes in Statistics 106 (1995) 299-317. Each scrambled point is evenly
// distributed by itself, and all together remain as even as they were; so that several scramblings of one sequence tell its error.

import { randomStream, scramble } from './random.ts';
import { SOBOL_DIMENSIONS, sobolDigits } from './sobol-sequence.ts';

/** Digits that are scrambled by where they stand in the tree; those below are random. */
const DEPTH = 24;

/**
 * Each digit is turned or not, by a coin that belongs to the digits before it.
 *
 * @param digits - A binary fraction times 2^32.
 * @returns Scrambled, 0 < u < 1.
 */
export function owenScrambled(digits: number, seed: number): number {
  const root = scramble(seed);
  let made = 0;
  for (let depth = 0; depth < DEPTH; depth += 1) {
    const above = depth === 0 ? 0 : digits >>> (32 - depth);
    const node = (1 << depth) | above;
    const coin = scramble((Math.imul(node, 0x9e3779b9) ^ root) >>> 0) & 1;
    made = (made << 1) | (((digits >>> (31 - depth)) & 1) ^ coin);
  }
  const below = scramble((digits ^ Math.imul(root, 0x85ebca6b)) >>> 0) >>> DEPTH;
  return (made * 2 ** (32 - DEPTH) + below + 0.5) / 2 ** 32;
}

/**
 * One coordinate of scrambled points: a column of samples, evenly spread over 0 < u < 1. Dimensions beyond those with direction
 * numbers are Latin columns (A. B. Owen, Latin supercube sampling, ACM Trans. Model. Comput. Simul. 8 (1998) 71-102).
 *
 * @param seed - Columns of unlike seeds are scrambled independently.
 */
export function evenColumn(dimension: number, count: number, seed: number): number[] {
  if (dimension < SOBOL_DIMENSIONS)
    return Array.from(sobolDigits(dimension, count), (digits) => owenScrambled(digits, seed));
  const random = randomStream(seed);
  const order = Array.from({ length: count }, (_, at) => ({ at, key: random() })).sort((a, b) => a.key - b.key);
  return order.map(({ at }) => (at + random()) / count);
}
