import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  airLayerConductance,
  airLayerResistance,
  nusseltLevelGap,
  nusseltTallGap,
  nusseltUprightGap,
} from './air-gap.ts';

const rayleigh = fc.double({ min: 0, max: 1e7, noNaN: true });

describe('closed air layers', () => {
  it('property: a thicker layer never resists less, and heat going down meets the most', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 0.29, noNaN: true }), (thickness) => {
        const [up, across, down] = (['up', 'horizontal', 'down'] as const).map((flow) =>
          airLayerResistance(thickness, flow),
        );
        expect(airLayerResistance(thickness + 0.01, 'down')).toBeGreaterThanOrEqual(down!);
        expect(down!).toBeGreaterThanOrEqual(across!);
        expect(across!).toBeGreaterThanOrEqual(up!);
      }),
    );
  });

  it('limit: no layer, no resistance; between two rows of the table it is linear', () => {
    expect(airLayerResistance(0, 'up')).toBe(0);
    expect(airLayerResistance(0.0375, 'down')).toBeCloseTo(0.2, 12);
  });

  it('limit: weak buoyancy leaves still air', () => {
    expect(nusseltUprightGap(100, 40)).toBe(1);
    expect(nusseltTallGap(100, 40, 0.71)).toBe(1);
    expect(nusseltLevelGap(1600)).toBe(1);
  });

  it('property: no law falls as Ra rises', () => {
    fc.assert(
      fc.property(rayleigh, (ra) => {
        expect(nusseltLevelGap(ra * 1.02)).toBeGreaterThanOrEqual(nusseltLevelGap(ra));
        expect(nusseltTallGap(ra * 1.02, 30, 0.71)).toBeGreaterThanOrEqual(nusseltTallGap(ra, 30, 0.71));
        expect(nusseltUprightGap(ra * 1.02, 30)).toBeGreaterThanOrEqual(nusseltUprightGap(ra, 30) * 0.99);
      }),
    );
  });

  it('cross: two equations for the upright gap agree within a quarter at H/d = 30', () => {
    for (const ra of [2e4, 5e4, 2e5]) {
      expect(Math.abs(nusseltTallGap(ra, 30, 0.71) / nusseltUprightGap(ra, 30) - 1)).toBeLessThan(0.25);
    }
  });

  it('limit: shiny faces leave conduction alone', () => {
    expect(airLayerConductance(0.01, 1, 0.025, [1e-9, 1e-9], 300)).toBeCloseTo(2.5, 6);
  });

  it('refuses layers beyond the table and faces that emit more than a black one', () => {
    expect(() => airLayerResistance(0.4, 'up')).toThrow('thickness is 0.4; it must lie between 0 and 0.3');
    expect(() => airLayerConductance(0.01, 1, 0.025, [1.2, 0.9], 300)).toThrow('an emissivity is 1.2');
    expect(() => nusseltUprightGap(1e4, 0.5)).toThrow('slenderness is 0.5');
  });
});
