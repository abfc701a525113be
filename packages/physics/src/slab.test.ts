import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { coolingShare } from './lumped-cooling.ts';
import { airStepShare } from './semi-infinite.ts';
import { slabCooling, wallStepResponse } from './slab.ts';

const biot = fc.double({ min: 0.01, max: 50, noNaN: true });
const fourier = fc.double({ min: 0.001, max: 20, noNaN: true });

describe('board between two films', () => {
  it('property: the centre lags, the mean lies between, and all fall with time', () => {
    fc.assert(
      fc.property(biot, fourier, (bi, fo) => {
        const { centre, mean, surface } = slabCooling(bi, fo);
        expect(centre).toBeGreaterThanOrEqual(mean - 1e-12);
        expect(mean).toBeGreaterThanOrEqual(surface - 1e-12);
        expect(slabCooling(bi, fo * 1.2).mean).toBeLessThanOrEqual(mean);
      }),
    );
  });

  it('limit: a thin board cools as one temperature', () => {
    expect(slabCooling(1e-5, 1e5).mean).toBeCloseTo(coolingShare(1, 1, 1), 5);
  });

  it('limit: at first the surface is that of an endless body', () => {
    const early = slabCooling(0.5, 1e-3).surface;
    expect(early).toBeCloseTo(1 - airStepShare(0.5, { conductivity: 1, diffusivity: 1 }, 0, 1e-3), 9);
  });

  it('cross: what leaves through the faces is what the mean has lost', () => {
    const lost = (slabCooling(0.5, 0.999).mean - slabCooling(0.5, 1.001).mean) / 0.002;
    expect(lost).toBeCloseTo(0.5 * slabCooling(0.5, 1).surface, 6);
  });

  it('limit: in the end as much leaves the wall as enters it, and that is U', () => {
    const { inflow, outflow } = wallStepResponse(0.018, 0.13, 8e5, 1 / 0.13, 1e6);
    expect(inflow).toBeCloseTo(outflow, 9);
    expect(inflow).toBeCloseTo(1 / (0.26 + 0.018 / 0.13), 9);
  });

  it('property: more enters than leaves while the wall warms', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 20_000, noNaN: true }), (time) => {
        const { inflow, outflow } = wallStepResponse(0.018, 0.13, 8e5, 7.7, time);
        expect(inflow).toBeGreaterThanOrEqual(outflow - 1e-9);
        expect(outflow).toBeGreaterThanOrEqual(-1e-9);
      }),
    );
  });

  it('limit: nothing is lost at the first moment', () => {
    expect(slabCooling(1, 0)).toEqual({ centre: 1, surface: 1, mean: 1 });
  });

  it('refuses no film and time running backwards', () => {
    expect(() => slabCooling(0, 1)).toThrow('biot is 0');
    expect(() => slabCooling(1, -1)).toThrow('fourier is -1');
    expect(() => wallStepResponse(0.018, 0.13, 8e5, 7.7, 0)).toThrow('time is 0');
  });
});
