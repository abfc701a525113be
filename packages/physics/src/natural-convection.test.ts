import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  nusseltBlock,
  nusseltHotFaceDown,
  nusseltHotFaceUp,
  nusseltHotFaceUpBlend,
  nusseltVerticalPlate,
  nusseltVerticalPlateIntegral,
  nusseltVerticalPlateLaminar,
  rayleighNumber,
} from './natural-convection.ts';

describe('natural convection', () => {
  it('limit: an upright plate keeps its conduction, and grows as the cube root of Ra when turbulence rules', () => {
    expect(nusseltVerticalPlate(0, 0.71)).toBeCloseTo(0.825 ** 2, 12);
    expect(nusseltVerticalPlate(8e24, 0.71) / nusseltVerticalPlate(1e24, 0.71)).toBeCloseTo(2, 3);
  });

  it.each([1e4, 1e5, 1e6, 1e7])(
    'cross: three equations for the upright plate agree within 8 percent at Ra = %d',
    (rayleigh) => {
      const laminar = nusseltVerticalPlateLaminar(rayleigh, 0.71);
      expect(Math.abs(nusseltVerticalPlate(rayleigh, 0.71) / laminar - 1)).toBeLessThan(0.08);
      expect(Math.abs(nusseltVerticalPlateIntegral(rayleigh, 0.71) / laminar - 1)).toBeLessThan(0.08);
    },
  );

  it.each([1e5, 1e6, 1e8, 1e9])(
    'cross: two equations for the hot face up agree within 15 percent at Ra = %d',
    (rayleigh) => {
      expect(Math.abs(nusseltHotFaceUpBlend(rayleigh, 0.71) / nusseltHotFaceUp(rayleigh) - 1)).toBeLessThan(0.15);
    },
  );

  it('cross: Çengel, example 9-2, stays on the first piece at Ra = 1.18e7, just past its end; the second reads 8 percent more', () => {
    const rayleigh = rayleighNumber(0.15, 60, 1.896e-5, 0.7202, 1 / 333);
    expect(rayleigh).toBeGreaterThan(1e7);
    expect(0.54 * rayleigh ** 0.25).toBeCloseTo(31.75, 1);
    expect(nusseltHotFaceUp(rayleigh) / 31.75).toBeCloseTo(1.08, 2);
  });

  it('property: every law rises with Ra', () => {
    const rayleigh = fc.double({ min: 1e-3, max: 1e12, noNaN: true });
    const laws = [
      (ra: number) => nusseltVerticalPlate(ra, 0.71),
      (ra: number) => nusseltVerticalPlateLaminar(ra, 0.71),
      (ra: number) => nusseltVerticalPlateIntegral(ra, 0.71),
      (ra: number) => nusseltHotFaceUpBlend(ra, 0.71),
      nusseltHotFaceUp,
      nusseltHotFaceDown,
      nusseltBlock,
    ];
    fc.assert(
      fc.property(rayleigh, (ra) => {
        for (const law of laws) expect(law(ra * 1.01)).toBeGreaterThan(law(ra));
      }),
    );
  });

  it('exact: Ra grows with the cube of length and does not care about the sign of the difference', () => {
    const small = rayleighNumber(0.1, 10, 1.6e-5, 0.71, 1 / 300);
    expect(rayleighNumber(0.2, 10, 1.6e-5, 0.71, 1 / 300)).toBeCloseTo(8 * small, 3);
    expect(rayleighNumber(0.1, -10, 1.6e-5, 0.71, 1 / 300)).toBe(small);
  });

  it('limit: a level face at the temperature of its air gives off nothing by the published laws', () => {
    expect(nusseltHotFaceUpBlend(0, 0.71)).toBe(0);
    expect(nusseltHotFaceUp(0)).toBe(0);
  });

  it('refuses a negative Ra, no Pr and no length', () => {
    expect(() => nusseltVerticalPlate(-1, 0.71)).toThrow('nusseltVerticalPlate: rayleigh is -1');
    expect(() => nusseltVerticalPlate(1, 0)).toThrow('prandtl is 0');
    expect(() => rayleighNumber(0, 1, 1, 1, 1)).toThrow('length is 0');
    expect(() => nusseltHotFaceUp(Number.NaN)).toThrow('rayleigh is NaN');
  });
});
