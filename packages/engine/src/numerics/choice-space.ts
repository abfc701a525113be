// Spaces of choices: each choice takes one of a few values, by its number. Values of an ordered choice lie nearer to their
// neighbours than to the others (a hole's diameter); those of the rest are all alike unlike (kinds of fans).

import { shuffled } from './random.ts';

export interface Choice {
  /** How many values it can take. */
  readonly count: number;
  readonly ordered: boolean;
}

export type ChoiceSpace = readonly Choice[];

/** The number of the value that each choice takes, from 0. */
export type Point = readonly number[];

/**
 * How many points a space has.
 *
 * @example Four fans, three filters
 * ```ts
 * pointsIn([{ count: 4, ordered: false }, { count: 3, ordered: true }]); // => 12
 * ```
 */
export function pointsIn(space: ChoiceSpace): number {
  return space.reduce((product, { count }) => product * count, 1);
}

/** Tells points apart. */
export function pointKey(point: Point): string {
  return point.join(' ');
}

/** The point with this number, 0 … pointsIn − 1: the last choice runs fastest. */
export function pointAt(space: ChoiceSpace, number: number): Point {
  const point: number[] = [];
  let rest = number;
  for (const { count } of space.toReversed()) {
    point.push(rest % count);
    rest = Math.floor(rest / count);
  }
  return point.reverse();
}

/** The number that `pointAt` takes. */
export function numberOf(space: ChoiceSpace, point: Point): number {
  return space.reduce((number, { count }, at) => number * count + point[at]!, 0);
}

export function randomPoint(space: ChoiceSpace, random: () => number): Point {
  return space.map(({ count }) => Math.floor(random() * count));
}

/** Points that differ from this one in one choice. */
export function neighboursOf(space: ChoiceSpace, point: Point): Point[] {
  return space.flatMap(({ count }, at) =>
    Array.from({ length: count }, (_, value) => value)
      .filter((value) => value !== point[at])
      .map((value) => point.with(at, value)),
  );
}

/** Points in which each value of each choice comes equally often, as far as it goes: a Latin hypercube over choices. */
export function spreadPoints(space: ChoiceSpace, wanted: number, random: () => number): Point[] {
  const columns = space.map(({ count }) => {
    const first = Math.floor(random() * count);
    return shuffled(wanted, random).map((stratum) => (first + stratum) % count);
  });
  return Array.from({ length: wanted }, (_, at) => columns.map((column) => column[at]!));
}
