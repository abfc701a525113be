import { describe, expect, it } from 'vitest';
import type { Limit } from '../trades/measure.ts';
import { bandOf, chanceInside, quantile, shiftedBand } from './bands.ts';
import { verdictOf } from './verdict.ts';

const limit: Limit = { id: 'made-up', kind: 'at-most', value: 10, source: 'made up for this test', standing: 'own' };
const atLeast: Limit = { ...limit, kind: 'at-least' };

describe('bands', () => {
  it('exact: quantiles of 0 … 10 are tenths of the way, in logarithms geometric', () => {
    const values = [7, 0, 3, 10, 1, 9, 2, 8, 5, 6, 4];
    expect(bandOf(values)).toEqual({ p10: 1, p50: 5, p90: 9 });
    expect(quantile([1, 100], 0.5, true)).toBeCloseTo(10, 12);
    expect(quantile([0, 100], 0.5, true)).toBe(50);
  });

  it('limit: too few samples give no band', () => {
    expect(bandOf([1, 2, 3])).toBeUndefined();
  });

  it('exact: a change shifts by difference, or by ratio where values span decades', () => {
    const band = { p10: 1, p50: 2, p90: 4 };
    expect(shiftedBand(band, 2, 3)).toEqual({ p10: 2, p50: 3, p90: 5 });
    expect(shiftedBand(band, 2, 1, true)).toEqual({ p10: 0.5, p50: 1, p90: 2 });
    expect(shiftedBand(band, 2, 0, true)).toEqual({ p10: -1, p50: 0, p90: 2 });
  });

  it('exact: the chance is the share of samples inside', () => {
    expect(chanceInside(limit, [9, 10, 11, 12])).toBe(0.5);
    expect(chanceInside(atLeast, [9, 10, 11, 12])).toBe(0.75);
  });
});

describe('verdictOf', () => {
  it.each([
    [5, { p10: 4, p50: 5, p90: 10 }, limit, 'holds'],
    [5, { p10: 4, p50: 5, p90: 10.001 }, limit, 'tight'],
    [12, { p10: 10, p50: 12, p90: 14 }, limit, 'tight'],
    [12, { p10: 10.001, p50: 12, p90: 14 }, limit, 'fails'],
    [10, undefined, limit, 'holds'],
    [10.001, undefined, limit, 'fails'],
    [10, undefined, atLeast, 'holds'],
    [9.999, undefined, atLeast, 'fails'],
    [11, { p10: 9.9, p50: 11, p90: 14 }, atLeast, 'tight'],
    [5, undefined, undefined, 'told'],
    [undefined, undefined, limit, 'unknown'],
    [Number.NaN, undefined, limit, 'unknown'],
  ] as const)('exact: value %o with band %o against %o: %s', (value, band, against, verdict) => {
    expect(verdictOf(value, band, against)).toBe(verdict);
  });

  it('property: a nominal value beyond the limit is never called holding, whatever the band', () => {
    expect(verdictOf(11, { p10: 1, p50: 2, p90: 3 }, limit)).toBe('tight');
  });
});
