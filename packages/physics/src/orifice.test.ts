import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { lossOfDischarge, orificeFlow, orificeSlope, parallelArea, plateDischarge, seriesArea } from './orifice.ts';

/** Even over the range: doubles drawn by fast-check crowd around zero. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((step) => min + ((max - min) * step) / 1e6);

const pressure = evenly(-500, 500);

describe('orificeFlow', () => {
  it('limit: is Cd A sqrt(2 rho dp) away from zero', () => {
    expect(orificeFlow(5, 1.2, 0.006, 1e-4) / (0.006 * Math.sqrt(2 * 1.2 * 5))).toBeCloseTo(1, 9);
  });

  it('exact: gives exactly nothing at zero difference', () => {
    expect(orificeFlow(0, 1.2, 0.006, 0.005)).toBe(0);
  });

  it('property: is odd, and rises with the difference', () => {
    fc.assert(
      fc.property(pressure, pressure, (a, b) => {
        expect(orificeFlow(-a, 1.2, 0.01, 0.01)).toBeCloseTo(-orificeFlow(a, 1.2, 0.01, 0.01), 12);
        const [low, high] = a < b ? [a, b] : [b, a];
        expect(orificeFlow(high, 1.2, 0.01, 0.01)).toBeGreaterThanOrEqual(orificeFlow(low, 1.2, 0.01, 0.01));
      }),
    );
  });

  it('cross: its slope agrees with differences, also through zero', () => {
    fc.assert(
      fc.property(evenly(-2, 2), (dp) => {
        const step = 1e-6;
        const difference =
          (orificeFlow(dp + step, 1.2, 0.01, 0.05) - orificeFlow(dp - step, 1.2, 0.01, 0.05)) / (2 * step);
        expect(orificeSlope(dp, 1.2, 0.01, 0.05) / difference).toBeCloseTo(1, 5);
      }),
    );
  });
});

describe('plateDischarge', () => {
  it('limit: tends to 0.5961 for a small hole at a high Reynolds number, near the free-jet value pi/(pi+2) = 0.611', () => {
    expect(plateDischarge(0.1, 1e9, 0.2)).toBeCloseTo(0.5961 + 0.0261 * 0.01, 4);
    expect(Math.abs(plateDischarge(0.1, 1e9, 0.2) - Math.PI / (Math.PI + 2))).toBeLessThan(0.02);
  });

  it('order: has no step where the term for small pipes ends', () => {
    expect(plateDischarge(0.5, 1e5, 0.07112)).toBeCloseTo(plateDischarge(0.5, 1e5, 0.07113), 5);
    // 0.011 (0.75 - 0.5)(2.8 - 50/25.4), worked by hand
    expect(plateDischarge(0.5, 1e5, 0.05) - plateDischarge(0.5, 1e5, 0.1)).toBeCloseTo(0.0022866, 6);
  });

  it('exact: refuses a ratio outside the standard', () => {
    expect(() => plateDischarge(0.8, 1e5, 0.2)).toThrow('diameterRatio is 0.8');
    expect(() => plateDischarge(0.5, Number.NaN, 0.2)).toThrow('pipeReynolds');
  });
});

describe('areas together', () => {
  it('exact: in series as resistances of a square law, in parallel as a sum', () => {
    expect(seriesArea([0.003, 0.004])).toBeCloseTo(0.0024, 12); // 3-4-5 triangle: 12/5
    expect(parallelArea([0.003, 0.004])).toBeCloseTo(0.007, 12);
    expect(seriesArea([0.01, 0])).toBe(0);
    expect(() => seriesArea([])).toThrow(RangeError);
    expect(() => parallelArea([-1])).toThrow('area is -1');
  });

  it('property: series is never wider than the narrowest, parallel never narrower than the widest', () => {
    fc.assert(
      fc.property(fc.array(evenly(1e-6, 1), { minLength: 1, maxLength: 6 }), (areas) => {
        expect(seriesArea(areas)).toBeLessThanOrEqual(Math.min(...areas) * (1 + 1e-12));
        expect(parallelArea(areas)).toBeGreaterThanOrEqual(Math.max(...areas));
      }),
    );
  });

  it('cross: a loss coefficient from Cd gives the flow of the orifice law', () => {
    const velocity = orificeFlow(8, 1.2, 0.62 * 0.01, 1e-6) / 1.2 / 0.01;
    expect((lossOfDischarge(0.62) * 1.2 * velocity ** 2) / 2).toBeCloseTo(8, 6);
    expect(() => lossOfDischarge(0)).toThrow(RangeError);
  });
});
