// What luck alone can do: how strongly one of many inputs without influence seems to be tied to a result.

import { normalQuantile } from './normal.ts';

/**
 * The square of a correlation that pure noise exceeds so seldom that, on average, `falseNames` of `candidates` inputs are named for
 * nothing: |r| exceeds z/√(n − 1) with the normal's tail (large-sample form of Spearman's test, M. G. Kendall 1970).
 */
export function smallestCorrelationSquared(samples: number, candidates: number, falseNames: number): number {
  const tail = Math.min(falseNames / Math.max(candidates, 1) / 2, 0.05);
  const z = normalQuantile(1 - tail);
  return Math.min((z * z) / Math.max(samples - 1, 1), 0.98);
}
