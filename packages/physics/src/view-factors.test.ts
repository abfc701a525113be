import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cornerViewFactor, parallelViewFactor } from './view-factors.ts';

const side = fc.double({ min: 0.05, max: 3, noNaN: true });

describe('view factors of a box', () => {
  it('exact: from any face of any box, the other five see all that it sends out', () => {
    fc.assert(
      fc.property(side, side, side, (width, depth, height) => {
        const opposite = parallelViewFactor(width, depth, height);
        const walls = 2 * cornerViewFactor(width, depth, height) + 2 * cornerViewFactor(depth, width, height);
        expect(opposite + walls).toBeCloseTo(1, 7);
      }),
    );
  });

  it('exact: area times factor is the same both ways', () => {
    fc.assert(
      fc.property(side, side, side, (edge, from, to) => {
        expect(from * cornerViewFactor(edge, from, to)).toBeCloseTo(to * cornerViewFactor(edge, to, from), 9);
      }),
    );
  });

  it('limit: plates that nearly touch see only one another, far ones hardly', () => {
    expect(parallelViewFactor(1, 1, 1e-4)).toBeCloseTo(1, 3);
    expect(parallelViewFactor(1, 1, 100) * Math.PI * 1e4).toBeCloseTo(1, 3);
  });

  it('refuses faces without extent', () => {
    expect(() => parallelViewFactor(1, 1, 0)).toThrow('distance is 0');
    expect(() => cornerViewFactor(1, Number.NaN, 1)).toThrow('sending is NaN');
  });
});
