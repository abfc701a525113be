import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hermite, hermiteCrossing, hermiteIntegral, hermiteSlope, hermiteTurns } from './hermite.ts';

const number = fc.double({ min: -5, max: 5, noNaN: true });
const cubic = fc.tuple(number, number, number, number, fc.double({ min: 0.1, max: 10, noNaN: true }));
const value = ([a, b, c, d]: readonly number[], t: number): number => a! + t * (b! + t * (c! + t * d!));
const slope = ([, b, c, d]: readonly number[], t: number): number => b! + t * (2 * c! + 3 * t * d!);
const area = ([a, b, c, d]: readonly number[], t: number): number =>
  t * (a! + t * (b! / 2 + t * (c! / 3 + (t * d!) / 4)));

describe('hermite', () => {
  it('exact: value, slope and integral of random cubics are found again', () => {
    fc.assert(
      fc.property(cubic, fc.double({ min: 0, max: 1, noNaN: true }), (p, share) => {
        const length = p[4];
        const ends = [value(p, 0), slope(p, 0), value(p, length), slope(p, length)] as const;
        const scale = 1 + length ** 4 * 5;
        expect(Math.abs(hermite(share, length, ...ends) - value(p, share * length))).toBeLessThan(1e-13 * scale);
        expect(Math.abs(hermiteSlope(share, length, ...ends) - slope(p, share * length))).toBeLessThan(1e-12 * scale);
        expect(Math.abs(hermiteIntegral(share, length, ...ends) - area(p, share * length))).toBeLessThan(1e-13 * scale);
      }),
    );
  });

  it('exact: turns of t^3 - 3 t between -2 and 2 lie at -1 and 1', () => {
    const out: number[] = [];
    expect(hermiteTurns(4, -2, 9, 2, 9, out)).toBe(2);
    expect(out[0]).toBeCloseTo(0.25, 14);
    expect(out[1]).toBeCloseTo(0.75, 14);
  });

  it('exact: a parabola turns once and a line never', () => {
    const out: number[] = [];
    expect(hermiteTurns(2, 0, 2, 0, -2, out)).toBe(1);
    expect(out[0]).toBeCloseTo(0.5, 14);
    expect(hermiteTurns(2, 0, 1, 2, 1, out)).toBe(0);
  });

  it('exact: crosses 1 on the way of t^3 from 0 to 8 at t = 1', () => {
    expect(2 * hermiteCrossing(1, 2, 0, 0, 8, 12, 0, 1)).toBeCloseTo(1, 13);
  });
});
