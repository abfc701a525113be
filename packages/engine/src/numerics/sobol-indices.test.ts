import { describe, expect, it } from 'vitest';
import { randomStream } from './random.ts';
import { sobolShares } from './sobol-indices.ts';
import { estimatedShares, gFunction, gShares, ishigami, ishigamiShares } from './test-functions.ts';

describe('shares of variance', () => {
  it('exact: Ishigami’s function, whose inputs act alone, by squares and together', () => {
    const { first, total } = ishigamiShares();
    const got = estimatedShares(ishigami, 3, 4096, 1);
    for (let at = 0; at < 3; at += 1) {
      expect(Math.abs(got[at]!.first - first[at]!)).toBeLessThan(0.01);
      expect(Math.abs(got[at]!.total - total[at]!)).toBeLessThan(0.01);
    }
  });

  it('exact: Sobol’’s g-function of eight inputs', () => {
    const { first, total } = gShares();
    const got = estimatedShares(gFunction, 8, 4096, 2);
    for (let at = 0; at < 8; at += 1) {
      expect(Math.abs(got[at]!.first - first[at]!)).toBeLessThan(0.01);
      expect(Math.abs(got[at]!.total - total[at]!)).toBeLessThan(0.01);
    }
  });

  it('exact: the band holds the true share in at least 80 of 100 plain studies of a sum (it is meant to hold in 90)', () => {
    const random = randomStream(4);
    const weights = [3, 2, 1];
    const sum = (u: readonly number[]): number => weights.reduce((all, weight, at) => all + weight * u[at]!, 0);
    let inside = 0;
    for (let study = 0; study < 100; study += 1) {
      const draw = (): number[][] => Array.from({ length: 64 }, () => weights.map(random));
      const [a, b] = [draw(), draw()];
      const mixed = a.map((row, at) => [b[at]![0]!, row[1]!, row[2]!]);
      const [share] = sobolShares(a.map(sum), b.map(sum), [mixed.map(sum)], study);
      const [low, high] = share!.totalBand;
      if (low <= 9 / 14 && 9 / 14 <= high) inside += 1;
    }
    expect(inside).toBeGreaterThanOrEqual(80);
  });

  it('limit: an input that does nothing has none of the variance, the only one all of it; what does not vary has no shares', () => {
    const a = Array.from({ length: 32 }, randomStream(1));
    const b = Array.from({ length: 32 }, randomStream(2));
    const [none, all] = sobolShares(a, b, [a, b]);
    expect(none!.first).toBe(0);
    expect(none!.total).toBe(0);
    expect(all!.total).toBeGreaterThan(0.7);
    expect(sobolShares([1, 1, 1], [1, 1, 1], [[1, 1, 1]])).toEqual([undefined]);
  });

  it('property: the same shares whatever is added to all results', () => {
    const a = Array.from({ length: 32 }, randomStream(1));
    const b = Array.from({ length: 32 }, randomStream(2));
    const mixed = a.map((value, at) => (at % 2 === 0 ? value : b[at]!));
    const plus = (values: number[]): number[] => values.map((value) => value + 1000);
    const [plain] = sobolShares(a, b, [mixed]);
    const [moved] = sobolShares(plus(a), plus(b), [plus(mixed)]);
    expect(moved!.first).toBeCloseTo(plain!.first, 8);
    expect(moved!.total).toBeCloseTo(plain!.total, 8);
  });
});
