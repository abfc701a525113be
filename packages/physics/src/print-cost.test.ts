import { describe, expect, it } from 'vitest';
import { joinersHours, priceAt, printCost } from './print-cost.ts';

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

describe('hours and prices', () => {
  it('exact: setting up alone takes three hours', () => {
    expect(joinersHours({ parts: 0, joints: 0, doors: 0, shelves: 0 })).toBe(3);
    expect(() => joinersHours({ parts: -1, joints: 0, doors: 0, shelves: 0 })).toThrow('parts is -1');
  });

  it('exact: a price lies between its ends', () => {
    expect([0, 0.5, 1].map((position) => priceAt(10, 30, position))).toEqual([10, 20, 30]);
    expect(() => priceAt(3, 2, 0)).toThrow('high - low is -1');
  });
});
