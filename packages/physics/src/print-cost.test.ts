import { describe, expect, it } from 'vitest';
import { printCost } from './print-cost.ts';

const base = {
  mass: 0.1,
  filamentPrice: 25,
  waste: 0,
  failures: 0,
  electricity: 0.2,
  duration: 3600,
  perSecond: 1 / 3600,
};

describe('cost of a print', () => {
  it('exact: the sum of its pieces', () => {
    expect(printCost(base)).toEqual({ filament: 2.5, electricity: 0.2, time: 1, failures: 0, total: 3.7 });
  });

  it('exact: when half of the prints fail, a good one costs twice', () => {
    const { total, failures } = printCost({ ...base, failures: 0.5 });
    expect(total).toBeCloseTo(7.4, 12);
    expect(failures).toBeCloseTo(3.7, 12);
  });

  it('limit: nothing costs nothing; a print that always fails has no price', () => {
    expect(printCost({ ...base, mass: 0, electricity: 0, duration: 0 }).total).toBe(0);
    expect(() => printCost({ ...base, failures: 1 })).toThrow('1 - failures is 0');
    expect(() => printCost({ ...base, mass: -1 })).toThrow('mass is -1');
  });
});
