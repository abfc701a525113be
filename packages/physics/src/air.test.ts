import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airConductivity, airDensity, airExpansion, airPrandtl, airViscosity } from './air.ts';

const cabinetKelvin = fc.double({ min: 250, max: 450, noNaN: true });

describe('dry air', () => {
  it('exact: density halves when the absolute temperature doubles, and doubles with pressure', () => {
    expect(airDensity(600)).toBeCloseTo(airDensity(300) / 2, 12);
    expect(airDensity(300, 202650)).toBeCloseTo(2 * airDensity(300), 12);
  });

  it('cross: expansion is the slope of the density', () => {
    const slope = (airDensity(300.01) - airDensity(299.99)) / 0.02;
    expect(-slope / airDensity(300)).toBeCloseTo(airExpansion(300), 9);
  });

  it('property: warmer air is more viscous, conducts better and is lighter', () => {
    fc.assert(
      fc.property(cabinetKelvin, (kelvin) => {
        expect(airViscosity(kelvin + 1)).toBeGreaterThan(airViscosity(kelvin));
        expect(airConductivity(kelvin + 1)).toBeGreaterThan(airConductivity(kelvin));
        expect(airDensity(kelvin + 1)).toBeLessThan(airDensity(kelvin));
      }),
    );
  });

  it('property: the Prandtl number stays near 0.71 all over a cabinet', () => {
    fc.assert(
      fc.property(fc.double({ min: 263, max: 373, noNaN: true }), (kelvin) => {
        expect(Math.abs(airPrandtl(kelvin) - 0.71)).toBeLessThan(0.03);
      }),
    );
  });

  it.each([0, -1, Number.NaN])('refuses %d K and names the function', (kelvin) => {
    expect(() => airDensity(kelvin)).toThrow(`airDensity: kelvin is ${kelvin}`);
    expect(() => airViscosity(kelvin)).toThrow('airViscosity: kelvin');
    expect(() => airConductivity(kelvin)).toThrow('airConductivity: kelvin');
    expect(() => airExpansion(kelvin)).toThrow('airExpansion: kelvin');
  });
});
