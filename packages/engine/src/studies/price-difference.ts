// What must be bought to get from one cabinet to another. What becomes useless is not paid back.

import type { Cabinet } from '../cabinet/cabinet.ts';

export interface PriceRange {
  readonly low: number;
  readonly high: number;
  /** Where the prices come from, each said once. */
  readonly sources: readonly string[];
}

export function priceDifference(from: Cabinet, to: Cabinet): PriceRange {
  const owned = Object.entries(from.prices).map(([path, price]) => keyOf(path, price));
  const bought = Object.entries(to.prices).flatMap(([path, price]) => {
    const at = owned.indexOf(keyOf(path, price));
    if (at < 0) return [price];
    owned.splice(at, 1);
    return [];
  });
  return {
    low: bought.reduce((sum, { low }) => sum + low, 0),
    high: bought.reduce((sum, { high }) => sum + high, 0),
    sources: [...new Set(bought.map(({ source }) => source))],
  };
}

/** A part may change its place in a path without being bought anew. */
function keyOf(path: string, { low, high }: Cabinet['prices'][string]): string {
  return `${path.replace(/\.parts\.\d+$/, '')} ${low} ${high}`;
}
