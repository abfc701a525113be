import { describe, expect, it } from 'vitest';
import {
  binomialRegion,
  binomialShare,
  chiSquaredQuantile,
  incompleteBeta,
  incompleteGamma,
  logGamma,
  normalShare,
  studentQuantile,
  studentShare,
} from './distributions.ts';
import { normalQuantile } from './normal.ts';

describe('distributions', () => {
  it('exact: the gamma function at whole and half numbers', () => {
    expect(logGamma(5)).toBeCloseTo(Math.log(24), 12);
    expect(logGamma(0.5)).toBeCloseTo(0.5 * Math.log(Math.PI), 12);
    expect(logGamma(101)).toBeCloseTo(363.73937555556347, 8);
  });

  it('exact: t with one degree of freedom is Cauchy, with two has a closed form', () => {
    expect(studentShare(1.7, 1)).toBeCloseTo(0.5 + Math.atan(1.7) / Math.PI, 12);
    expect(studentShare(1.7, 2)).toBeCloseTo(0.5 + 1.7 / (2 * Math.sqrt(2 + 1.7 ** 2)), 12);
    expect(studentQuantile(0.1, 7)).toBeCloseTo(-studentQuantile(0.9, 7), 12);
  });

  it('limit: t of many degrees of freedom is normal', () => {
    expect(studentQuantile(0.975, 1e7)).toBeCloseTo(normalQuantile(0.975), 5);
  });

  it('exact: chi-squared of two degrees of freedom is an exponential', () => {
    expect(chiSquaredQuantile(0.9, 2)).toBeCloseTo(-2 * Math.log(0.1), 10);
    expect(incompleteGamma(1, 3)).toBeCloseTo(1 - Math.exp(-3), 13);
    expect(incompleteBeta(0.3, 2, 1)).toBeCloseTo(0.09, 13);
  });

  it('cross: shares of the normal undo its quantiles', () => {
    for (const p of [0.001, 0.02, 0.3, 0.5, 0.8, 0.999]) expect(normalShare(normalQuantile(p))).toBeCloseTo(p, 6);
  });

  it('exact: the binomial of four trials counted by hand, and its symmetric region', () => {
    expect(binomialShare(1, 4, 0.5)).toBeCloseTo(5 / 16, 13);
    expect(binomialRegion(4, 0.5, 0.13)).toEqual([1, 3]);
    expect(binomialRegion(4, 0.5, 0.12)).toEqual([0, 4]);
  });

  it('refuses shares outside 0 to 1', () => {
    expect(() => studentQuantile(1, 4)).toThrow(RangeError);
    expect(() => chiSquaredQuantile(0, 4)).toThrow(RangeError);
  });
});
