import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { peakOfLoads } from './load-steps.ts';

const MINUTE = 60;
const printer = [
  [10 * MINUTE, 400],
  [60 * MINUTE, 150],
] as const;
const peak = (...minutes: number[]): number =>
  peakOfLoads(minutes.map((start) => ({ start: start * MINUTE, steps: printer }))).power;

/** Earliest finish of four printers below a cap, min: every start on a grid of ten minutes tried. */
function bestFinish(cap: number): number {
  let best = Number.POSITIVE_INFINITY;
  for (let b = 0; b <= 140; b += 10)
    for (let c = b; c <= 210; c += 10)
      for (let d = c; d <= 210; d += 10) if (d + 70 < best && peak(0, b, c, d) <= cap) best = d + 70;
  return best;
}

describe('peakOfLoads', () => {
  it('exact: four at once, and in the order that needs least', () => {
    expect(peak(0, 0, 0, 0)).toBe(1600);
    expect(peak(0, 0, 10, 20)).toBe(850);
    expect(peakOfLoads([])).toEqual({ power: 0, time: 0 });
  });

  // Optima proved by hand and by another program's enumeration; one watt less than 850 costs 50 minutes.
  it.each([
    [1600, 70],
    [1000, 90],
    [900, 90],
    [850, 90],
    [849, 140],
    [800, 140],
    [700, 140],
    [550, 150],
    [400, 280],
  ])('cross: below %d W four printers are done after %d min at the earliest', (cap, minutes) => {
    expect(bestFinish(cap)).toBe(minutes);
  });

  it('property: never above the sum of all peaks, never below the largest, the same for all at a later start', () => {
    const load = fc.record({
      start: fc.integer({ min: 0, max: 100 }),
      steps: fc.array(fc.tuple(fc.integer({ min: 1, max: 20 }), fc.integer({ min: 0, max: 500 })), {
        minLength: 1,
        maxLength: 4,
      }),
    });
    fc.assert(
      fc.property(fc.array(load, { minLength: 1, maxLength: 5 }), (loads) => {
        const peaks = loads.map(({ steps }) => Math.max(...steps.map(([, power]) => power)));
        const { power } = peakOfLoads(loads);
        expect(power).toBeLessThanOrEqual(peaks.reduce((a, b) => a + b, 0) + 1e-6);
        expect(power).toBeGreaterThanOrEqual(Math.max(...peaks) - 1e-6);
        expect(peakOfLoads(loads.map((one) => ({ ...one, start: one.start + 50 }))).power).toBeCloseTo(power, 9);
      }),
    );
  });

  it('exact: refuses nonsense', () => {
    expect(() => peakOfLoads([{ start: 0, steps: [[-1, 5]] }])).toThrow('duration is -1');
    expect(() => peakOfLoads([{ start: 0, steps: [[1, -5]] }])).toThrow('power is -5');
  });
});
