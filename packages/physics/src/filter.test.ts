import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { loadingFactor, MEDIA_RESISTANCE, panelResistance, penetrationAtSpeed, resistancePressure } from './filter.ts';
import { seatBypass, seatedEfficiency } from './filter-bypass.ts';
import { filterClasses, ULTRAFINE_ON_FINE_FILTER } from './filter-class.ts';
import { gapFlow } from './gap.ts';

/** Even over the range: doubles drawn by fast-check crowd around zero. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((step) => min + ((max - min) * step) / 1e6);

describe('filter classes', () => {
  it('order: within each standard a later class lets less through, and no spot is better than the whole', () => {
    for (const standard of ['EN 1822-1:2009', 'ISO 29463-1:2011']) {
      const list = Object.values(filterClasses).filter((entry) => entry.standard === standard);
      expect(list.length).toBeGreaterThan(7);
      for (const [i, { efficiency }] of list.slice(1).entries())
        expect(efficiency).toBeGreaterThan(list[i]!.efficiency);
      for (const { efficiency, local = 0 } of list) expect(local).toBeLessThan(efficiency);
    }
  });

  it('cross: like classes of the two standards promise alike', () => {
    for (const [en, iso] of [
      ['E11', '15E'],
      ['E12', '25E'],
      ['H13', '35H'],
      ['H14', '45H'],
      ['U17', '75U'],
    ] as const)
      expect(filterClasses[en]?.efficiency).toBe(filterClasses[iso]?.efficiency);
  });

  it('order: bands run upward', () => {
    for (const { low, central, high } of [
      ...Object.values(MEDIA_RESISTANCE),
      ...Object.values(ULTRAFINE_ON_FINE_FILTER),
    ]) {
      expect(low).toBeLessThan(central);
      expect(central).toBeLessThan(high);
    }
  });
});

describe('filters', () => {
  const panel = { mediaResistance: 6000, pleating: 15, frameLoss: 5, faceArea: 0.04 };

  it('exact: a high-efficiency panel is nearly linear, and stickier air meets more resistance', () => {
    const { linear, quadratic } = panelResistance(panel, 1.2);
    const flow = 60 / 3600;
    expect((quadratic * flow) / linear).toBeLessThan(0.01);
    expect(panelResistance(panel, 1.2, 1.813e-5 * 1.05).linear / linear).toBeCloseTo(1.05, 12);
    expect(resistancePressure({ linear, quadratic }, -flow)).toBeCloseTo(
      -resistancePressure({ linear, quadratic }, flow),
      12,
    );
  });

  it('limit: the rated speed and the clean filter change nothing', () => {
    expect(penetrationAtSpeed(5e-4, 1)).toBe(5e-4);
    expect(loadingFactor(3, 0)).toBe(1);
    expect(loadingFactor(3, 1)).toBe(3);
    expect(() => loadingFactor(0.5, 1)).toThrow('finalOverClean is 0.5');
  });

  it('property: gap and filter see one pressure and share the flow, whatever their laws', () => {
    fc.assert(
      fc.property(evenly(100, 2e4), evenly(0, 1e6), evenly(1e-4, 3e-3), (linear, quadratic, width) => {
        const gap = { length: 0.8, width, depth: 0.02, bends: 1 };
        const { share, pressure } = seatBypass({ linear, quadratic }, gap, 0.016, 1.2, 1.81e-5);
        expect(share).toBeGreaterThanOrEqual(0);
        expect(share).toBeLessThan(1);
        expect(gapFlow(pressure, gap, 1.2, 1.81e-5) / (share * 0.016)).toBeCloseTo(1, 6);
        expect(resistancePressure({ linear, quadratic }, (1 - share) * 0.016) / pressure).toBeCloseTo(1, 6);
      }),
    );
  });

  it('order: a wider gap lets more past', () => {
    const at = (width: number) =>
      seatBypass({ linear: 9000, quadratic: 0 }, { length: 0.8, width, depth: 0.02, bends: 0 }, 0.016, 1.2, 1.81e-5)
        .share;
    expect(at(1e-3)).toBeGreaterThan(at(5e-4));
    expect(seatedEfficiency(0.9, 0)).toBe(0.9);
    expect(() => seatedEfficiency(0.9, 1.1)).toThrow('share is 1.1');
  });
});
