// Which inputs move a result most, from its samples: forward selection on ranks.
// Each step names the input whose ranks explain most of what is left, and takes its share out of the result and of all other
// inputs. It stops when an input with no influence could do as well: with few samples only strong drivers are named.

import { smallestCorrelationSquared } from '../numerics/luck.ts';

export interface Driver {
  readonly path: string;
  /** Of the result's variance in ranks. */
  readonly share: number;
}

/** How many inputs without influence may be named, on average, per result. */
const FALSE_NAMES = 0.05;

/** Drivers of less than this share are not worth a name. */
const SMALLEST_SHARE = 0.01;

/** Ranks from 0, ties sharing their mean rank, centred on 0. */
export function centredRanks(values: readonly number[]): number[] {
  const order = values.map((_, at) => at).sort((a, b) => values[a]! - values[b]!);
  const ranks = new Array<number>(values.length).fill(0);
  for (let start = 0; start < order.length; ) {
    let end = start;
    while (end + 1 < order.length && values[order[end + 1]!] === values[order[start]!]) end += 1;
    for (let at = start; at <= end; at += 1) ranks[order[at]!] = (start + end) / 2 - (values.length - 1) / 2;
    start = end + 1;
  }
  return ranks;
}

/** Ranks of columns and their squared length: hundreds of findings ask for those of the same samples. */
const ranked = new WeakMap<readonly number[], { readonly ranks: readonly number[]; readonly square: number }>();

function rankedColumn(values: readonly number[]): { readonly ranks: readonly number[]; readonly square: number } {
  const known = ranked.get(values);
  if (known !== undefined) return known;
  const ranks = centredRanks(values);
  const made = { ranks, square: dot(ranks, ranks) };
  ranked.set(values, made);
  return made;
}

/** @param inputs - By path, one value a sample, in the order of `results`. */
export function driversOf(
  inputs: ReadonlyMap<string, readonly number[]>,
  results: readonly number[],
  most: number = 5,
): Driver[] {
  const rest = centredRanks(results);
  const total = dot(rest, rest);
  let columns = [...inputs].map(([path, values]) => ({ path, ...rankedColumn(values) }));
  const drivers: Driver[] = [];
  while (total > 0 && drivers.length < most) {
    let [best, explained] = [columns[0], 0];
    for (const column of columns) {
      if (!(column.square > 1e-9 * total)) continue;
      const explains = dot(column.ranks, rest) ** 2 / column.square;
      if (explains > explained) [best, explained] = [column, explains];
    }
    if (best === undefined || explained < SMALLEST_SHARE * total) break;
    const correlationSquared = explained / dot(rest, rest);
    const least = smallestCorrelationSquared(results.length - drivers.length, columns.length, FALSE_NAMES);
    if (correlationSquared < least) break;
    const { path: named, ranks: taken } = best;
    drivers.push({ path: named, share: explained / total });
    takeOut(taken, rest);
    columns = columns
      .filter(({ path }) => path !== named)
      .map(({ path, ranks }) => {
        const left = [...ranks];
        takeOut(taken, left);
        return { path, ranks: left, square: dot(left, left) };
      });
  }
  return drivers;
}

function takeOut(direction: readonly number[], from: number[]): void {
  const factor = dot(direction, from) / dot(direction, direction);
  for (let at = 0; at < from.length; at += 1) from[at] = from[at]! - factor * direction[at]!;
}

function dot(a: readonly number[], b: readonly number[]): number {
  let sum = 0;
  for (let at = 0; at < a.length; at += 1) sum += a[at]! * b[at]!;
  return sum;
}
