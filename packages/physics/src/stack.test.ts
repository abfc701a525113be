import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { orificeFlow } from './orifice.ts';
import { heatDrivenStack, neutralLevel, stackFlow, stackOutflow, stackPressure } from './stack.ts';

/** Even over the range: doubles drawn by fast-check crowd around zero. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((step) => min + ((max - min) * step) / 1e6);

const area = evenly(1e-4, 0.05);

describe('stack of two openings', () => {
  it('property: passes the same mass in below as out above, by the orifice law', () => {
    fc.assert(
      fc.property(area, area, evenly(0.1, 3), (lowerDischarge, upperDischarge, height) => {
        const openings = { lowerDischarge, upperDischarge, height, outside: 1.2, inside: 1.1 };
        const level = neutralLevel(openings);
        const inward = orificeFlow(stackPressure(1.2, 1.1, level), 1.2, lowerDischarge, 1e-9);
        const outward = orificeFlow(stackPressure(1.2, 1.1, height - level), 1.1, upperDischarge, 1e-9);
        expect(inward / outward).toBeCloseTo(1, 5);
        expect(stackFlow(openings) / inward).toBeCloseTo(1, 5);
      }),
    );
  });

  it('order: the neutral level moves towards the larger opening', () => {
    const equal = { lowerDischarge: 0.01, upperDischarge: 0.01, height: 1, outside: 1.2, inside: 1.1 };
    expect(neutralLevel({ ...equal, upperDischarge: 0.02 })).toBeGreaterThan(neutralLevel(equal));
    expect(neutralLevel({ ...equal, lowerDischarge: 0.02 })).toBeLessThan(neutralLevel(equal));
  });

  it('exact: cold inside turns the flow round', () => {
    const warm = { lowerDischarge: 0.01, upperDischarge: 0.01, height: 1, outside: 1.2, inside: 1.1 };
    expect(stackFlow({ ...warm, outside: 1.1, inside: 1.2 })).toBeCloseTo(-stackFlow(warm), 12);
    expect(() => stackFlow({ ...warm, height: 0 })).toThrow('height is 0');
  });

  it('cross: the handbook form agrees with the exact one within the density ratio', () => {
    const [insideK, outsideK] = [308.15, 295.15];
    const openings = {
      lowerDischarge: 0.01,
      upperDischarge: 0.01,
      height: 1.5,
      outside: 1.2,
      inside: (1.2 * outsideK) / insideK,
    };
    const exact = stackFlow(openings) / openings.inside;
    expect(stackOutflow(0.01, 0.75, insideK, outsideK) / exact).toBeCloseTo(1, 1);
    expect(() => stackOutflow(0.01, 0.75, 290, 295)).toThrow(RangeError);
  });

  it('exact: the heat-driven flow satisfies both of its balances', () => {
    const flow = heatDrivenStack(0.003, 1.2, 150, 300, 1190);
    const rise = 150 / (1190 * flow);
    expect(0.003 * Math.sqrt((2 * 9.80665 * 1.2 * rise) / 300)).toBeCloseTo(flow, 12);
  });
});
