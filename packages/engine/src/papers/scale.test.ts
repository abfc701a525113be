import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { decadeScale, linearScale, timeScale } from './scale.ts';

describe('linearScale', () => {
  it('property: holds all values between ends that are ticks, evenly stepped and few', () => {
    const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
    fc.assert(
      fc.property(fc.array(value, { minLength: 1 }), fc.integer({ min: 2, max: 9 }), (values, most) => {
        const { low, high, ticks } = linearScale(values, most);
        expect(Math.min(...values)).toBeGreaterThanOrEqual(low - 1e-9 * (1 + Math.abs(low)));
        expect(Math.max(...values)).toBeLessThanOrEqual(high + 1e-9 * (1 + Math.abs(high)));
        expect(ticks.length).toBeLessThanOrEqual(most + 3);
        expect(ticks.length).toBeGreaterThanOrEqual(2);
      }),
    );
  });

  it('limit: a line that never moves still gets a scale', () => {
    const { low, high } = linearScale([21, 21], 5);
    expect(high).toBeGreaterThan(low);
  });

  it('limit: no values at all give a scale, not a fault', () => {
    expect(linearScale([], 5).ticks.every(Number.isFinite)).toBe(true);
  });
});

describe('decadeScale', () => {
  it('exact: puts equal factors at equal distances', () => {
    const { share } = decadeScale([100, 10_000]);
    expect([100, 1000, 10_000].map(share)).toEqual([0, 0.5, 1]);
  });

  it('limit: zero and less lie on the lower end', () => {
    expect(decadeScale([0, 10, 1000]).share(0)).toBe(0);
    expect(decadeScale([0]).ticks).toEqual([1, 2, 5, 10]);
  });

  it('limit: shows four decades at most', () => {
    expect(decadeScale([1e-30, 1e3]).ticks).toHaveLength(5);
  });
});

it.each([
  [24, [0, 3, 6, 9, 12, 15, 18, 21, 24]],
  [8, [0, 1, 2, 3, 4, 5, 6, 7, 8]],
  [72, [0, 12, 24, 36, 48, 60, 72]],
])('exact: %d hours have ticks at whole hours', (hours, ticks) => {
  expect(timeScale(hours * 3600).ticks.map((tick) => tick / 3600)).toEqual(ticks);
});
