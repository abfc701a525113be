// What must be bought to get from one cabinet to another. What becomes useless is not paid back.

import type { Cabinet } from '../cabinet/cabinet.ts';

export interface PriceRange {
  readonly low: number;
  readonly high: number;
  /** Where the prices come from, each said once. */
  readonly sources: readonly string[];
  /** What is added of which nobody said a price, by path: the whole then costs more, nobody knows how much. */
  readonly unknown: readonly string[];
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
    unknown: unpriced(from, to),
  };
}

/** Machines, heats and parts of air paths that are new and have no price; openings are made, not bought. */
function unpriced(from: Cabinet, to: Cabinet): string[] {
  const owned = thingsIn(from).map(({ what }) => what);
  return thingsIn(to).flatMap(({ path, what }) => {
    const at = owned.indexOf(what);
    if (at >= 0) owned.splice(at, 1);
    return at >= 0 || to.prices[path] !== undefined ? [] : [path];
  });
}

function thingsIn({ machines, heats, paths }: Cabinet): { readonly path: string; readonly what: string }[] {
  const named = [
    ...Object.keys(machines).map((id) => `machines.${id}`),
    ...Object.keys(heats).map((id) => `heats.${id}`),
  ].map((path) => ({ path, what: path }));
  const parts = Object.entries(paths).flatMap(([id, path]) =>
    path.parts.flatMap((part, index) => {
      if (part.part === 'hole') return [];
      const kind = 'kind' in part ? part.kind : 'what' in part ? part.what : '';
      return [{ path: `paths.${id}.parts.${index}`, what: `${id} ${part.part} ${kind}` }];
    }),
  );
  return [...named, ...parts];
}

/** A part may change its place in a path without being bought anew. */
function keyOf(path: string, { low, high }: Cabinet['prices'][string]): string {
  return `${path.replace(/\.parts\.\d+$/, '')} ${low} ${high}`;
}
