// The samples of a spread: for every uncertain input of the cabinet and of its options one column, common to all of them. They fill the
// space of inputs evenly, in several sets that are scrambled apart, so that the sets tell the error of whatever they are asked.

import { evenColumn } from '../../numerics/owen-scramble.ts';
import { textSeed } from '../../numerics/random.ts';

/** Sets that are scrambled apart. Sample `at` belongs to set `at` modulo this: whatever ran first is of all sets alike. */
export const SETS = 8;

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
  const each = Math.ceil(count / SETS);
  return new Map(
    paths.map((path, at) => {
      const sets = Array.from({ length: SETS }, (_, set) =>
        evenColumn(firstDimension + at, each, columnSeed(path, set, seed, firstDimension)),
      );
      return [path, Array.from({ length: count }, (_, row) => sets[row % SETS]![Math.floor(row / SETS)]!)] as const;
    }),
  );
}

function columnSeed(path: string, set: number, seed: number, firstDimension: number): number {
  return (textSeed(`${path} ${set} ${firstDimension === 0 ? 'first' : 'second'}`) ^ Math.imul(seed, 0x9e3779b9)) >>> 0;
}
