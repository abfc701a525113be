import { describe, expect, it } from 'vitest';
import { lampHeat, PEAK_EFFICACY, WHITE_EFFICACY } from './lamp-heat.ts';

describe('heat of a lamp', () => {
  it('exact: heat and light together are its power', () => {
    expect(lampHeat(12, 900) + 900 / WHITE_EFFICACY).toBeCloseTo(12, 12);
  });

  it('limit: a dark lamp is a heater; a perfect one gives no heat, nor less', () => {
    expect(lampHeat(10, 0)).toBe(10);
    expect(lampHeat(1, PEAK_EFFICACY, PEAK_EFFICACY)).toBe(0);
    expect(lampHeat(1, 1000)).toBe(0);
  });

  it('refuses more light than nature has', () => {
    expect(() => lampHeat(1, 1, 700)).toThrow('efficacy is 700');
    expect(() => lampHeat(-1, 1)).toThrow('power is -1');
  });
});
