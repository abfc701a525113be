// Which combinations of values have been run together: by threes, by pairs where there are too many threes, or not at all.
// Few points hold all threes at once (covering arrays: C. J. Colbourn, Le Matematiche 59 (2004) 125-172), so that whatever
// takes three right values to work is met.

import type { ChoiceSpace, Point } from './choice-space.ts';

export interface Coverage {
  readonly add: (point: Point) => void;
  /** Combinations of this point that were in none. */
  readonly newIn: (point: Point) => number;
  /** Combinations that did better than their values alone explain, by normal scores of runs, the clearest first: each puts itself into a point. */
  readonly standouts: (points: readonly Point[], scores: readonly number[]) => ((host: Point) => Point)[];
}

/** Combinations that are handed back at most. */
const STANDOUTS = 24;

/** Threes are counted while their most numerous needs no more than this share of the runs. */
const AFFORDED = 0.25;

/** @param most - Runs that there may be. */
export function coverageOf(space: ChoiceSpace, most: number): Coverage | undefined {
  const counts = space.map(({ count }) => count).sort((a, b) => b - a);
  const needs = (together: number): number => counts.slice(0, together).reduce((product, count) => product * count, 1);
  const together = [3, 2].find((number) => space.length > number && needs(number) <= AFFORDED * most);
  if (together === undefined) return undefined;
  const groups = groupsOf(space.length, together);
  const widest = counts[0]!;
  const met = groups.map(() => new Uint8Array(widest ** together));
  const cellOf = (group: readonly number[], point: Point): number =>
    group.reduce((cell, at) => cell * widest + point[at]!, 0);
  return {
    add: (point) => {
      for (const [number, group] of groups.entries()) met[number]![cellOf(group, point)] = 1;
    },
    newIn: (point) => groups.reduce((sum, group, number) => sum + 1 - met[number]![cellOf(group, point)]!, 0),
    standouts: (points, scores) => {
      const left = unexplained(space, points, scores);
      const found: { readonly from: Point; readonly group: readonly number[]; readonly clear: number }[] = [];
      for (const group of groups) {
        const cells = new Map<number, { sum: number; count: number; from: Point }>();
        for (const [at, point] of points.entries()) {
          const cell = cellOf(group, point);
          const seen = cells.get(cell);
          if (seen === undefined) cells.set(cell, { sum: left[at]!, count: 1, from: point });
          else {
            seen.sum += left[at]!;
            seen.count += 1;
          }
        }
        for (const { sum, count, from } of cells.values()) found.push({ from, group, clear: sum / Math.sqrt(count) });
      }
      return found
        .sort((a, b) => a.clear - b.clear)
        .slice(0, STANDOUTS)
        .map(
          ({ from, group }) =>
            (host) =>
              host.map((value, at) => (group.includes(at) ? from[at]! : value)),
        );
    },
  };
}

/** What of each score the values of its choices, one by one, do not explain. */
function unexplained(space: ChoiceSpace, points: readonly Point[], scores: readonly number[]): number[] {
  let left = [...scores];
  // Twice over: the first pass is disturbed by values that happen to come together.
  for (let pass = 0; pass < 2; pass += 1)
    for (const [at, { count }] of space.entries()) {
      const sums = new Float64Array(count);
      const counts = new Float64Array(count);
      for (const [run, point] of points.entries()) {
        sums[point[at]!]! += left[run]!;
        counts[point[at]!]! += 1;
      }
      left = left.map((value, run) => value - sums[points[run]![at]!]! / counts[points[run]![at]!]!);
    }
  return left;
}

function groupsOf(choices: number, together: number): number[][] {
  if (together === 0) return [[]];
  return groupsOf(choices, together - 1).flatMap((group) =>
    Array.from({ length: choices - 1 - (group.at(-1) ?? -1) }, (_, step) => [
      ...group,
      (group.at(-1) ?? -1) + 1 + step,
    ]),
  );
}
