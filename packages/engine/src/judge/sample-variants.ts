// The samples of a study: one set of inputs each, common to the base and to everything it is compared with.

import type { AssumedInput } from '../cabinet/assumed-inputs.ts';
import type { Edit } from '../cabinet/cabinet.ts';
import { sampleColumn, valueAt } from './samples.ts';
import type { Variant } from './variants.ts';

/** One value a sample of every uncertain input, by path. */
export function sampleInputs(
  inputs: readonly AssumedInput[],
  count: number,
  seed: number,
): Map<string, readonly number[]> {
  return new Map(
    inputs.map(({ path, spread }) => [path, sampleColumn(path, count, seed).map((u) => valueAt(spread, u))] as const),
  );
}

export function sampleVariants(
  edits: readonly Edit[],
  columns: ReadonlyMap<string, readonly number[]>,
  count: number,
): Variant[] {
  return Array.from({ length: count }, (_, at) => ({
    edits,
    inputs: Object.fromEntries([...columns].map(([path, values]) => [path, values[at]!])),
  }));
}
