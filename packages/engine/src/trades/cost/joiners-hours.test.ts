import { describe, expect, it } from 'vitest';
import { joinersHours } from './joiners-hours.ts';
import { priceAt } from './price-at.ts';

describe('hours and prices', () => {
  it('exact: setting up alone takes three hours', () => {
    expect(joinersHours({ parts: 0, joints: 0, doors: 0, shelves: 0 })).toBe(3);
    expect(() => joinersHours({ parts: -1, joints: 0, doors: 0, shelves: 0 })).toThrow('parts is -1');
  });

  it('exact: a price lies between its ends', () => {
    expect([0, 0.5, 1].map((position) => priceAt(10, 30, position))).toEqual([10, 20, 30]);
    expect(() => priceAt(3, 2, 0)).toThrow('high - low is -1');
    expect(() => priceAt(-3, 2, 0)).toThrow('low is -3');
    expect(() => priceAt(3, 4, 1.5)).toThrow('position is 1.5');
  });
});
