import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { draughtRate, draughtSpeed } from './draught-rate.ts';

const kelvin = fc.double({ min: 291.15, max: 303.15, noNaN: true });
const turbulence = fc.double({ min: 0, max: 60, noNaN: true });

describe('draught rate', () => {
  it('property: faster, colder or more turbulent air is minded more', () => {
    fc.assert(
      fc.property(kelvin, fc.double({ min: 0.06, max: 0.3, noNaN: true }), turbulence, (air, speed, tu) => {
        const rate = draughtRate(air, speed, tu);
        expect(draughtRate(air, speed + 0.01, tu)).toBeGreaterThan(rate);
        expect(draughtRate(air - 1, speed, tu)).toBeGreaterThan(rate);
        expect(draughtRate(air, speed, tu + 1)).toBeGreaterThan(rate);
      }),
    );
  });

  it('property: rate and speed undo each other', () => {
    fc.assert(
      fc.property(kelvin, turbulence, fc.double({ min: 1, max: 60, noNaN: true }), (air, tu, rate) => {
        expect(draughtRate(air, draughtSpeed(rate, air, tu), tu)).toBeCloseTo(rate, 8);
      }),
    );
  });

  it('limit: still air and air as warm as skin are not minded; nobody minds more than fully', () => {
    expect(draughtRate(295, 0.05, 40)).toBe(0);
    expect(draughtRate(310, 0.5, 40)).toBe(0);
    expect(draughtRate(275, 5, 60)).toBe(100);
  });

  it('refuses rates of nobody and of everybody, and air as warm as skin', () => {
    expect(() => draughtSpeed(0, 295, 40)).toThrow('ratePercent is 0');
    expect(() => draughtSpeed(100, 295, 40)).toThrow('ratePercent is 100');
    expect(() => draughtSpeed(20, 308, 40)).toThrow('kelvin is 308');
    expect(() => draughtRate(295, -1, 40)).toThrow('speed is -1');
  });
});
