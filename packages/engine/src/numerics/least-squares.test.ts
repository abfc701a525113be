import { describe, expect, it } from 'vitest';
import { doubtOf } from './fit-doubt.ts';
import { type Fit, leastSquares, leastSquaresLater } from './least-squares.ts';
import { type ReferenceFit, referenceFits } from './reference-fits.data.ts';

const fitted = ({ x, y, model, starts }: ReferenceFit, start: 0 | 1): Fit =>
  leastSquares((b) => x.map((each, at) => model([...b], each) - y[at]!), starts[start]);
const off = (got: number, wanted: number): number => Math.abs(got / wanted - 1);
const cases = referenceFits.flatMap((set) =>
  ([0, 1] as const).map((start) => [set.name, start + 1, set, start] as const),
);

describe('least squares', () => {
  it.each(cases)(
    'published: NIST StRD %s from start %d to six digits, deviations to five',
    (_, _number, set, start) => {
      const fit = fitted(set, start);
      expect(fit.converged).toBe(true);
      for (const [at, wanted] of set.certified.entries()) expect(off(fit.values[at]!, wanted)).toBeLessThan(1e-6);
      expect(off(fit.sum, set.sum)).toBeLessThan(1e-6);
      const { deviations } = doubtOf(fit.jacobian, fit.sum);
      for (const [at, wanted] of set.deviations.entries()) expect(off(deviations[at]!, wanted)).toBeLessThan(1e-5);
    },
  );

  it('exact: a straight line gets the closed form of its slope and intercept', () => {
    const points = [
      [0, 1.1],
      [1, 2.9],
      [2, 5.2],
      [3, 6.8],
    ] as const;
    const fit = leastSquares(([a = 0, b = 0]) => points.map(([x, y]) => a + b * x - y), [0, 0]);
    expect(fit.values[1]).toBeCloseTo(1.94, 8);
    expect(fit.values[0]).toBeCloseTo(1.09, 8);
  });

  it('exact: a bound that the free answer lies beyond is where the answer ends, and the others adjust', () => {
    const fit = leastSquares(([a = 0, b = 0]) => [a - 3, a + b - 5, b - 1], [0, 0], {
      bounds: [
        [0, 2],
        [0, 10],
      ],
    });
    expect([...fit.values]).toEqual([2, expect.closeTo(2, 9)]);
    expect(fit.atBound).toEqual([true, false]);
  });

  it('exact: an outlier pulls the mean; Huber counts it, and what lies 0.125 below, as one scale each', () => {
    const data = [1, 1.1, 0.9, 1.05, 0.95, 40];
    const at = (loss: 'squares' | 'huber' | 'soft-l1'): number =>
      leastSquares(([m = 0]) => data.map((each) => m - each), [0.2], { loss, lossScale: 0.1 }).values[0]!;
    expect(at('squares')).toBeCloseTo(7.5, 6);
    expect(at('huber')).toBeCloseTo(1.025, 6);
    expect(Math.abs(at('soft-l1') - 1)).toBeLessThan(0.05);
  });

  it('property: residuals that come later, on whatever thread, give the same bits', async () => {
    const [set] = referenceFits;
    const residuals = (b: Float64Array): number[] => set!.x.map((each, at) => set!.model([...b], each) - set!.y[at]!);
    const later = await leastSquaresLater(async (points) => points.map(residuals), set!.starts[1]);
    expect([...later.values]).toEqual([...fitted(set!, 1).values]);
  });

  it('property: what no residual feels stays where it was and ends the search all the same', () => {
    const fit = leastSquares(([a = 0]) => [a - 1], [3, 7]);
    expect([...fit.values]).toEqual([expect.closeTo(1, 9), 7]);
    expect(fit.converged).toBe(true);
  });

  it('refuses a start without unknowns, and one at which nothing can be computed', () => {
    expect(() => leastSquares(() => [1], [])).toThrow(RangeError);
    expect(() => leastSquares(() => [Number.NaN], [1])).toThrow(RangeError);
  });
});
