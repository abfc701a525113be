// Labels written beside the ends of lines must not lie on each other: they are moved apart as little as possible.

/**
 * Places for labels that would like to stand at `wished`, at least `apart` from each other and between `low` and `high`,
 * in the order of their wishes; the sum of squared moves is least (pools of adjacent labels share one centre).
 *
 * @example Two that collide move apart around their middle, the third stays
 * ```ts
 * labelPlaces([10, 12, 40], 8, 0, 100).join(' '); // => 7 15 40
 * ```
 */
export function labelPlaces(wished: readonly number[], apart: number, low: number, high: number): number[] {
  const order = wished.map((_, at) => at).sort((a, b) => wished[a]! - wished[b]!);
  // Taking k·apart off the k-th wish turns "apart from each other" into "not falling": isotonic regression by pooling.
  const pools: { sum: number; count: number }[] = [];
  for (const [rank, at] of order.entries()) {
    pools.push({ sum: wished[at]! - rank * apart, count: 1 });
    while (pools.length > 1) {
      const last = pools[pools.length - 1]!;
      const before = pools[pools.length - 2]!;
      if (before.sum / before.count <= last.sum / last.count) break;
      pools.pop();
      before.sum += last.sum;
      before.count += last.count;
    }
  }
  const levels = pools.flatMap(({ sum, count }) => Array.from({ length: count }, () => sum / count));
  const top = high - (order.length - 1) * apart;
  const places = new Array<number>(wished.length);
  for (const [rank, at] of order.entries()) {
    places[at] = Math.min(Math.max(levels[rank]!, low), Math.max(top, low)) + rank * apart;
  }
  return places;
}
