import fc from 'fast-check';
import { expect, it } from 'vitest';
import { type Course, integralOf, integralOfProduct, within } from './course.ts';
import { largestMean } from './largest-mean.ts';
import { productWeights, weighted, windowWeights } from './product-weights.ts';

const number = fc.double({ min: 0, max: 100, noNaN: true });
/** Cubics between rows 1 to 5 apart. */
const cubics = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 5 }), number, fc.double({ min: -20, max: 20, noNaN: true })), {
    minLength: 4,
    maxLength: 20,
  })
  .map((rows): Course => {
    let time = 0;
    return {
      times: Float64Array.from(rows, ([span], at) => {
        if (at > 0) time += span;
        return time;
      }),
      values: Float64Array.from(rows, ([, value]) => value),
      slopes: Float64Array.from(rows, ([, , slope]) => slope),
    };
  });

it('cross: no window laid by hand has a larger mean, and the one that is told has just that mean', () => {
  fc.assert(
    fc.property(cubics, fc.integer({ min: 1, max: 8 }), (course, window) => {
      const last = course.times.at(-1)!;
      fc.pre(last > window);
      const meanTo = (end: number): number => integralOf(within(course, end - window, end)) / window;
      const { value, time } = largestMean(course, window, false);
      expect(value).toBeCloseTo(meanTo(time), 6);
      // Of cubics the slope of the mean is no straight line: the top may be missed by a little, windows at rows never are.
      for (const row of course.times) if (row >= window) expect(value).toBeGreaterThanOrEqual(meanTo(row) - 1e-9);
    }),
  );
});

it('cross: weights of a flow give the integral of its product with any level', () => {
  fc.assert(
    fc.property(cubics, fc.array(number, { minLength: 20, maxLength: 20 }), (level, flows) => {
      const flow = Float64Array.from(level.times, (_, row) => 1 + flows[row]!);
      const straight = integralOfProduct({ times: level.times, values: flow }, level);
      const scale = integralOf({ times: level.times, values: flow }) * 200;
      const weights = productWeights(level.times, flow)!;
      expect(Math.abs(weighted(weights, level.values, level.slopes!) - straight)).toBeLessThan(1e-12 * scale);
    }),
  );
  expect(productWeights(Float64Array.of(0, 1), new Float64Array(2))).toBeUndefined();
});

it('cross: weights of windows give the integral over each, wherever it begins and ends', () => {
  fc.assert(
    fc.property(
      cubics,
      fc.array(fc.tuple(number, number), { maxLength: 3 }),
      fc.boolean(),
      (level, shares, straight) => {
        const last = level.times.at(-1)!;
        const windows = shares.map((pair) => {
          const [start, end] = pair.map((share) => (share / 100) * last).sort((a, b) => a - b) as [number, number];
          return { start, end };
        });
        const course = straight ? { times: level.times, values: level.values } : level;
        const expected = windows.reduce((sum, { start, end }) => sum + integralOf(within(course, start, end)), 0);
        const weights = windowWeights(level.times, windows, straight);
        expect(weighted(weights, level.values, level.slopes!)).toBeCloseTo(expected, 6);
      },
    ),
  );
});
