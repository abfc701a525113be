// Spaces of 50,000 points with known best points, invented to be hard for a search: in none of them can the choices be made one by one.
// Five choices of five values and four of two, as of fans, filters, holes, speeds, places, and lids that are there or not.

import type { ChoiceSpace, Point } from './choice-space.ts';
import { pointAt, pointsIn } from './choice-space.ts';
import { randomStream } from './random.ts';

export interface NamedSpace {
  readonly name: string;
  readonly space: ChoiceSpace;
  /** The lower the better. */
  readonly cost: (point: Point) => number;
}

const FIFTY_THOUSAND: ChoiceSpace = [5, 5, 5, 5, 5, 2, 2, 2, 2].map((count, at) => ({
  count,
  ordered: at === 1 || at === 3,
}));

/**
 * What each choice is worth depends on itself and on two others, by tables of random numbers: the landscape of S. A. Kauffman (The Origins of
 * Order, 1993) with N = 9, K = 2. Most of its hollows are not the deepest.
 */
export function coupledParts(tables: number): NamedSpace {
  const random = randomStream(tables);
  const space = FIFTY_THOUSAND;
  const parts = space.map((_, at) => {
    const others = [1, 2].map((step) => (at + step * 2 + 1) % space.length);
    const places = [at, ...others];
    const size = places.reduce((product, place) => product * space[place]!.count, 1);
    return { places, worth: Array.from({ length: size }, () => random()) };
  });
  const cost = (point: Point): number =>
    parts.reduce((sum, { places, worth }) => {
      const cell = places.reduce((number, place) => number * space[place]!.count + point[place]!, 0);
      return sum + worth[cell]!;
    }, 0);
  return { name: 'coupled parts', space, cost };
}

/**
 * Three groups of choices; in each every step away from the right set of values pays, so that whoever follows the slope ends at the far side,
 * and only the whole right set pays more: traps after K. Deb, D. E. Goldberg, Foundations of Genetic Algorithms 2 (1993) 93-108.
 */
export function lockAndKey(keys: number): NamedSpace {
  const random = randomStream(keys);
  const space = FIFTY_THOUSAND;
  const right = space.map(({ count }) => Math.floor(random() * count));
  const groups = [
    [0, 1, 5],
    [2, 3, 6],
    [4, 7, 8],
  ];
  const cost = (point: Point): number =>
    groups.reduce((sum, places, group) => {
      const wrong = places.filter((place) => point[place] !== right[place]).length;
      const far = places.reduce((steps, place) => {
        const { count } = space[place]!;
        return steps + ((point[place]! - right[place]! + count) % count) / (count - 1);
      }, 0);
      return sum + (1 + 0.3 * group) * (wrong === 0 ? 0 : 1 - (0.7 * far) / places.length);
    }, 0);
  return { name: 'lock and key', space, cost };
}

/** A space whose costs have been reckoned beforehand, in the order of `pointAt`. */
export function tabulated(name: string, space: ChoiceSpace, costs: ArrayLike<number>): NamedSpace {
  if (costs.length !== pointsIn(space))
    throw new RangeError(`tabulated: costs holds ${costs.length} numbers; the space has ${pointsIn(space)} points`);
  const cost = (point: Point): number =>
    costs[space.reduce((number, { count }, at) => number * count + point[at]!, 0)]!;
  return { name, space, cost };
}

/** The lowest cost, and how many points have it. */
export function lowestOf({ space, cost }: NamedSpace): { readonly cost: number; readonly points: number } {
  let [lowest, points] = [Number.POSITIVE_INFINITY, 0];
  for (let number = 0; number < pointsIn(space); number += 1) {
    const value = cost(pointAt(space, number));
    if (value < lowest) [lowest, points] = [value, 1];
    else if (value === lowest) points += 1;
  }
  return { cost: lowest, points };
}
