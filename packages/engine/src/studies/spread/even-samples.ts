// The samples of a spread: for every uncertain input of the cabinet and of its options one column, common to all of them, that together
// fill the space of inputs evenly.

import { evenColumn } from '../../numerics/owen-scramble.ts';
import { textSeed } from '../../numerics/random.ts';

/**
 * Blocks of samples that follow each other. Each block fills the space evenly by itself, so that what a block's absence changes tells the
 * error of an estimate; it tells it too large, because the blocks also make up for each other.
 */
export const BLOCKS = 8;

/** Samples without those of one block, in their order. */
export function withoutBlock<Sample>(samples: readonly Sample[], block: number): Sample[] {
  return samples.filter((_, at) => Math.floor((at * BLOCKS) / samples.length) !== block);
}

/**
 * Where each sample lies in each input's distribution, 0 < u < 1, by path.
 *
 * @param paths - Inputs in the order of their dimensions.
 * @param firstDimension - Of the sequence; a second design beside a first one begins where that ends.
 */
export function evenShares(
  paths: readonly string[],
  count: number,
  seed: number,
  firstDimension: number = 0,
): ReadonlyMap<string, readonly number[]> {
  return new Map(
    paths.map(
      (path, at) => [path, evenColumn(firstDimension + at, count, columnSeed(path, seed, firstDimension))] as const,
    ),
  );
}

function columnSeed(path: string, seed: number, firstDimension: number): number {
  return (textSeed(`${path} ${firstDimension === 0 ? 'first' : 'second'}`) ^ Math.imul(seed, 0x9e3779b9)) >>> 0;
}
