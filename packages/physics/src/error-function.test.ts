import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { erf, erfc, scaledErfc } from './error-function.ts';

const number = fc.double({ min: -8, max: 8, noNaN: true });

describe('error function', () => {
  it('property: is odd, rises and stays within one', () => {
    fc.assert(
      fc.property(number, (x) => {
        expect(erf(-x) + erf(x)).toBe(0);
        expect(erf(x + 1e-3)).toBeGreaterThanOrEqual(erf(x));
        expect(Math.abs(erf(x))).toBeLessThanOrEqual(1);
        expect(erf(x) + erfc(x)).toBeCloseTo(1, 14);
      }),
    );
  });

  it('cross: the scaled form times exp(-x²) is the complement', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 8, noNaN: true }), (x) => {
        expect((scaledErfc(x) * Math.exp(-x * x)) / erfc(x)).toBeCloseTo(1, 11);
      }),
    );
  });

  it('limit: series and continued fraction meet where one hands over to the other', () => {
    expect(erfc(2 - 1e-13) / erfc(2)).toBeCloseTo(1, 11);
    expect(scaledErfc(2 - 1e-13) / scaledErfc(2)).toBeCloseTo(1, 11);
  });

  it('limit: the scaled form falls as 1/(x sqrt(pi))', () => {
    expect(scaledErfc(1e6) * 1e6 * Math.sqrt(Math.PI)).toBeCloseTo(1, 11);
  });

  it('refuses what is no number, and a negative argument of the scaled form', () => {
    expect(() => erf(Number.NaN)).toThrow('erf: x is NaN');
    expect(() => erfc(Infinity)).toThrow('erfc: x is Infinity');
    expect(() => scaledErfc(-1)).toThrow('scaledErfc: x is -1');
  });
});
