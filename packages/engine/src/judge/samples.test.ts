import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../numerics/normal.ts';
import { sampleColumn, valueAt } from './samples.ts';

describe('normalQuantile', () => {
  it.each([
    [0.5, 0],
    [0.9, 1.2815515655446],
    [0.975, 1.95996398454005],
    [0.999, 3.09023230616781],
    [0.01, -2.32634787404084],
    [0.08, -1.40507156030963],
  ])('cross: z(%d) = %d (Python 3 statistics.NormalDist, AS 241 to 16 digits)', (p, z) => {
    expect(normalQuantile(p)).toBeCloseTo(z, 6);
  });
});

describe('Latin hypercube', () => {
  it('property: every column has one sample in each stratum', () => {
    fc.assert(
      fc.property(fc.string(), fc.integer({ min: 1, max: 60 }), fc.integer(), (path, count, seed) => {
        const strata = sampleColumn(path, count, seed).map((u) => Math.floor(u * count));
        expect(strata.sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, at) => at));
      }),
    );
  });

  it('property: a column depends on its own path and the seed alone', () => {
    expect(sampleColumn('room.humidity', 24, 1)).toEqual(sampleColumn('room.humidity', 24, 1));
    expect(sampleColumn('room.humidity', 24, 1)).not.toEqual(sampleColumn('room.heatLoss', 24, 1));
    expect(sampleColumn('room.humidity', 24, 1)).not.toEqual(sampleColumn('room.humidity', 24, 2));
  });
});

describe('valueAt', () => {
  it('exact: meets the three percentiles, symmetric or not, normal or log-normal', () => {
    for (const spread of [
      { p10: -3, p50: 1, p90: 2, shape: 'normal' },
      { p10: 1e7, p50: 5e8, p90: 2e10, shape: 'log-normal' },
      { p10: 0.2, p50: 0.5, p90: 1.5, shape: 'log-normal' },
    ] as const) {
      expect(valueAt(spread, 0.1) / spread.p10).toBeCloseTo(1, 6);
      expect(valueAt(spread, 0.5) / spread.p50).toBeCloseTo(1, 6);
      expect(valueAt(spread, 0.9) / spread.p90).toBeCloseTo(1, 6);
    }
  });

  it('property: rises with its share, keeps the sign of a positive quantity and stays within reach', () => {
    const share = fc.double({ min: 0.0001, max: 0.9999, noNaN: true });
    const triple = fc.tuple(
      fc.double({ min: 1e-6, max: 10, noNaN: true }),
      fc.double({ min: 0, max: 10, noNaN: true }),
      fc.double({ min: 0, max: 10, noNaN: true }),
    );
    fc.assert(
      fc.property(share, share, triple, fc.constantFrom('normal', 'log-normal'), (u, v, [p10, up, further], shape) => {
        const spread = { p10, p50: p10 + up, p90: p10 + up + further, shape };
        const [low, high] = u < v ? [u, v] : [v, u];
        expect(valueAt(spread, low)).toBeLessThanOrEqual(valueAt(spread, high) * (1 + 1e-12));
        expect(valueAt(spread, low)).toBeGreaterThan(0);
        expect(Number.isFinite(valueAt(spread, high))).toBe(true);
      }),
    );
  });
});
