import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airDensity } from './air.ts';
import {
  airHeat,
  closedAirHeat,
  netFromGross,
  netHeatByOxygen,
  OXYGEN_BY_MASS,
  OXYGEN_BY_VOLUME,
} from './combustion.ts';

describe('heat from oxygen', () => {
  it('exact: all oxygen of a volume times its heat', () => {
    expect(closedAirHeat(1, 0, 13.1e6, 1.2)).toBeCloseTo(1.2 * OXYGEN_BY_MASS * 13.1e6, 6);
  });

  it('exact: as much as is left is not used', () => {
    const half = OXYGEN_BY_VOLUME / 2;
    expect(closedAirHeat(2, half) / closedAirHeat(2)).toBeCloseTo(0.5, 12);
    expect(closedAirHeat(2, OXYGEN_BY_VOLUME)).toBeCloseTo(0, 9);
    expect(closedAirHeat(0)).toBe(0);
  });

  it('cross: a cabinet of 0.735 m³ has 2.67 MJ, and 0.759 MJ down to 15 % (separate calculation at 1.2 kg/m³)', () => {
    expect(closedAirHeat(0.735, 0, 13.1e6, 1.2) / 1e6).toBeCloseTo(2.67, 2);
    expect(closedAirHeat(0.735, 0.15, 13.1e6, 1.2) / 1e6).toBeCloseTo(0.759, 2);
    expect(airDensity(293.15)).toBeCloseTo(1.204, 3);
  });

  it('property: proportional to the volume', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 100, noNaN: true }), (volume) => {
        expect(closedAirHeat(3 * volume, 0.15) / closedAirHeat(volume, 0.15)).toBeCloseTo(3, 9);
      }),
    );
  });

  it('limit: what is burnt already gives nothing', () => {
    expect(netHeatByOxygen({ carbon: 1, hydrogen: 0, oxygen: 2 })).toBe(0);
  });

  it('exact: carbon takes one O2', () => {
    expect(netHeatByOxygen({ carbon: 1, hydrogen: 0 })).toBeCloseTo((13.1e6 * 31.998) / 12.011, 3);
    expect(netFromGross(40e6, 0)).toBe(40e6);
    expect(airHeat(10e6)).toBeCloseTo(10e6 * OXYGEN_BY_MASS, 6);
  });

  it.each([
    [() => closedAirHeat(-1), 'volume is -1'],
    [() => closedAirHeat(1, 0.3), 'left is 0.3'],
    [() => netHeatByOxygen({ carbon: 0, hydrogen: 4 }), 'carbon is 0'],
    [() => netFromGross(1, 2), 'hydrogen is 2'],
    [() => airHeat(0), 'oxygenHeat is 0'],
  ])('refuses nonsense %#', (act, message) => {
    expect(act).toThrow(message);
  });
});
