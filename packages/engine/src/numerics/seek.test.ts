import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ChoiceSpace, neighboursOf, numberOf, pointAt, pointKey, pointsIn, spreadPoints } from './choice-space.ts';
import { crowdingOf, dominates, frontOf, frontsOf, ruledArea, type Score } from './fronts.ts';
import { expected, firstLikeness, fitPoints, likenessOf, likenessWith, openShare, weightsOf } from './kriging.ts';
import { coupledParts, lockAndKey, lowestOf, type NamedSpace } from './named-spaces.ts';
import { randomStream } from './random.ts';
import { type SeekOptions, seek } from './seek.ts';

const small: ChoiceSpace = [
  { count: 3, ordered: true },
  { count: 4, ordered: false },
  { count: 2, ordered: false },
];

async function search({ space, cost }: NamedSpace, options: Partial<SeekOptions<number>>) {
  return seek<number>({
    space,
    evaluate: (points) => Promise.resolve(points.map(cost)),
    score: (costs) => costs.map((each) => ({ violation: 0, costs: [each] })),
    most: 1000,
    seed: 501,
    ...options,
  });
}

describe('spaces of choices', () => {
  it('exact: numbers and points of a space are each other’s names', () => {
    const points = Array.from({ length: pointsIn(small) }, (_, number) => pointAt(small, number));
    expect(new Set(points.map(pointKey)).size).toBe(24);
    expect(points.map((point) => numberOf(small, point))).toEqual(points.map((_, number) => number));
  });

  it('exact: neighbours differ in one choice, and there are all of them', () => {
    const near = neighboursOf(small, [1, 2, 0]);
    expect(near).toHaveLength(2 + 3 + 1);
    expect(near.every((other) => other.filter((value, at) => value !== [1, 2, 0][at]).length === 1)).toBe(true);
  });

  it('property: spread points hold every value of every choice equally often', () => {
    const points = spreadPoints(small, 12, randomStream(7));
    for (const [at, { count }] of small.entries())
      for (let value = 0; value < count; value += 1)
        expect(points.filter((point) => point[at] === value)).toHaveLength(12 / count);
  });
});

describe('fronts', () => {
  const score = fc.record({
    violation: fc.constantFrom(0, 0, 0, 1, 2),
    costs: fc.tuple(fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 }), fc.integer({ min: 0, max: 6 })),
  });

  it('cross: the front is what no other dominates, by asking every pair', () => {
    fc.assert(
      fc.property(fc.array(score, { minLength: 1, maxLength: 30 }), (scores: Score[]) => {
        const key = ({ violation, costs }: Score): string => `${violation} ${costs.join(' ')}`;
        const pairwise = scores.filter((one) => !scores.some((other) => dominates(other, one)));
        const front = frontOf(scores).map((at) => key(scores[at]!));
        expect(new Set(front)).toEqual(new Set(pairwise.map(key)));
        expect(new Set(front).size).toBe(front.length);
      }),
    );
  });

  it('property: fronts are taken whole, and each is dominated by the one before', () => {
    const scores = [5, 1, 4, 2, 3].map((at): Score => ({ violation: 0, costs: [at, at] }));
    expect(frontsOf(scores, 3)).toEqual([[1], [3], [4]]);
  });

  it('exact: ends of a front are infinitely far from their neighbours, others by the gaps beside them', () => {
    const costs = [0, 1, 3, 4].map((at): Score => ({ violation: 0, costs: [at, 4 - at] }));
    expect(crowdingOf(costs)).toEqual([Number.POSITIVE_INFINITY, 1.5, 1.5, Number.POSITIVE_INFINITY]);
  });

  it('exact: a front of two steps rules the area of two rectangles', () => {
    expect(
      ruledArea(
        [
          [0, 2],
          [1, 1],
          [5, 5],
        ],
        [3, 3],
      ),
    ).toBe(3 + 2);
  });
});

describe('what is likely to come of a point', () => {
  const likeness = { ...firstLikeness(small), nugget: 0 };

  it('exact: a point is like itself', () => {
    expect(likenessOf(small, likeness)([1, 2, 0], [1, 2, 0])).toBeCloseTo(1, 12);
  });

  it('cross: sums over pairs and threes agree with adding them up one by one', () => {
    const [a, b] = [
      [0, 1, 1],
      [2, 1, 0],
    ] as const;
    const one = (at: number): number =>
      likenessOf([small[at]!], { unlike: [1], shares: [1, 0, 0, 0], nugget: 0 })([a[at]!], [b[at]!]);
    const [x, y, z] = [one(0), one(1), one(2)];
    const of = (shares: readonly [number, number, number, number]) => likenessOf(small, { ...likeness, shares })(a, b);
    expect(of([1, 0, 0, 0])).toBeCloseTo((x + y + z) / 3, 12);
    expect(of([0, 1, 0, 0])).toBeCloseTo((x * y + y * z + x * z) / 3, 12);
    expect(of([0, 0, 1, 0])).toBeCloseTo(x * y * z, 12);
    expect(of([0, 0, 0, 1])).toBeCloseTo(x * y * z, 12);
  });

  it('exact: without a nugget it goes through every run, where nothing is left open', () => {
    const points = [0, 5, 11, 17, 22].map((number) => pointAt(small, number));
    const fitted = fitPoints(small, points, likeness)!;
    const values = [-1, 0.5, 0.2, 0.8, -0.5];
    const weights = weightsOf(fitted, values);
    for (const [at, point] of points.entries()) {
      const like = likenessWith(fitted, point);
      expect(expected(weights, like)).toBeCloseTo(values[at]!, 9);
      expect(openShare(fitted, like)).toBeCloseTo(0, 9);
    }
    expect(openShare(fitted, likenessWith(fitted, pointAt(small, 1)))).toBeGreaterThan(0.01);
  });

  it('exact: two runs of one point cannot be told apart without a nugget', () => {
    expect(
      fitPoints(
        small,
        [
          [0, 0, 0],
          [0, 0, 0],
        ],
        likeness,
      ),
    ).toBeUndefined();
  });
});

describe('a search', () => {
  it('exact: runs every point of a small space, each once', async () => {
    const space: ChoiceSpace = small;
    const cost = (point: readonly number[]): number => numberOf(space, point) % 7;
    const { runs, complete, closed, front } = await search({ name: 'small', space, cost }, { first: [[2, 3, 1]] });
    expect(new Set(runs.map(({ point }) => pointKey(point))).size).toBe(24);
    expect(runs[0]!.point).toEqual([2, 3, 1]);
    expect({ complete, closed }).toEqual({ complete: true, closed: true });
    expect(runs[front[0]!]!.result).toBe(0);
  });

  it('property: never runs more than asked, nor a point twice; the same seed gives the same runs', async () => {
    const of = () => search(coupledParts(3), { most: 101 });
    const [one, two] = [await of(), await of()];
    expect(one.runs).toHaveLength(101);
    expect(new Set(one.runs.map(({ point }) => pointKey(point))).size).toBe(101);
    expect(two.runs).toEqual(one.runs);
  });

  it('exact: what was run before a stop is told', async () => {
    let batches = 0;
    const { runs, complete } = await search(coupledParts(3), {
      evaluate: (points) => {
        batches += 1;
        return Promise.resolve(points.map((point, at) => (batches > 1 && at > 2 ? undefined : point[0]!)));
      },
    });
    expect(complete).toBe(false);
    expect(runs.length).toBeGreaterThan(12);
    expect(batches).toBe(2);
  });

  it('property: patience ends it only when no single change of the best is better', async () => {
    const named = coupledParts(4);
    const { runs, front, closed } = await search(named, { patience: 40 });
    expect(runs.length).toBeLessThan(1000);
    expect(closed).toBe(true);
    const best = runs[front[0]!]!;
    for (const near of neighboursOf(named.space, best.point))
      expect(named.cost(near)).toBeGreaterThanOrEqual(best.result);
  });

  it('exact: rules come before wants', async () => {
    const { runs, scores, front } = await search(coupledParts(5), {
      most: 150,
      score: (costs) => costs.map((cost) => ({ violation: Math.max(4 - cost, 0), costs: [cost] })),
    });
    expect(scores[front[0]!]!.violation).toBe(0);
    expect(runs[front[0]!]!.result).toBeGreaterThanOrEqual(4);
  });

  // Twenty seeds of three spaces, and random search beside them, are among the benches.
  it.each([coupledParts(1), lockAndKey(1)])(
    'exact: finds the best of 50,000 in fewer than 1,000 runs ($name)',
    async (named) => {
      const lowest = lowestOf(named);
      expect(lowest.points).toBe(1);
      const { runs } = await search(named, { enough: (all) => all.some(({ result }) => result === lowest.cost) });
      expect(runs.some(({ result }) => result === lowest.cost)).toBe(true);
      expect(runs.length).toBeLessThan(1000);
    },
  );
});
