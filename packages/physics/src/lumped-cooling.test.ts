import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { biotNumber, coolingShare, coolingTime, naturalCoolingShare } from './lumped-cooling.ts';

describe('one-temperature cooling', () => {
  it('property: time and share undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 1, noNaN: true }), (share) => {
        expect(coolingShare(coolingTime(share, 500, 3), 500, 3)).toBeCloseTo(share, 12);
      }),
    );
  });

  it('limit: a film that hardly weakens cools as a constant one', () => {
    expect(naturalCoolingShare(100, 500, 5, 1e-7)).toBeCloseTo(coolingShare(100, 500, 5), 6);
  });

  it('property: a weakening film always leaves more than a constant one', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 1e4, noNaN: true }),
        fc.double({ min: 0.05, max: 1, noNaN: true }),
        (time, n) => {
          expect(naturalCoolingShare(time, 500, 3, n)).toBeGreaterThan(coolingShare(time, 500, 3));
        },
      ),
    );
  });

  it('exact: Biot number of half a board is film times half thickness over conductivity', () => {
    expect(biotNumber(10, 0.01, 0.2)).toBeCloseTo(0.5, 12);
  });

  it('refuses a share above one or of nothing', () => {
    expect(() => coolingTime(0, 1, 1)).toThrow('share is 0');
    expect(() => coolingTime(2, 1, 1)).toThrow('share is 2');
    expect(() => naturalCoolingShare(1, 1, 1, 0)).toThrow('exponent is 0');
    expect(() => biotNumber(-1, 1, 1)).toThrow('film is -1');
  });
});
