import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airStepShare, planeSourceRise, surfaceFluxRise, surfaceStepHeat, surfaceStepShare } from './semi-infinite.ts';

const plywood = { conductivity: 0.13, diffusivity: 1.625e-7 };
const film = fc.double({ min: 0.1, max: 1e4, noNaN: true });
const depth = fc.double({ min: 0, max: 0.03, noNaN: true });
const time = fc.double({ min: 1, max: 5000, noNaN: true });

describe('thick bodies', () => {
  it('property: a step of the air arrives later and less than a step of the surface', () => {
    fc.assert(
      fc.property(film, depth, time, (h, x, t) => {
        const share = airStepShare(h, plywood, x, t);
        expect(share).toBeGreaterThanOrEqual(-1e-12);
        expect(share).toBeLessThanOrEqual(surfaceStepShare(x, plywood.diffusivity, t));
        expect(airStepShare(h, plywood, x, t * 1.1)).toBeGreaterThanOrEqual(share - 1e-12);
      }),
    );
  });

  it('limit: an endless film makes the air step a surface step, no film lets nothing in', () => {
    expect(airStepShare(1e9, plywood, 0.005, 300)).toBeCloseTo(surfaceStepShare(0.005, plywood.diffusivity, 300), 6);
    expect(airStepShare(0, plywood, 0.005, 300)).toBeCloseTo(0, 12);
  });

  it('cross: the heat in a surface step is the stored heat along the depth', () => {
    const cells = 4000;
    const reach = 0.08;
    let stored = 0;
    for (let cell = 0; cell < cells; cell++) {
      stored += surfaceStepShare(((cell + 0.5) * reach) / cells, plywood.diffusivity, 600) * (reach / cells);
    }
    const volumetricCapacity = plywood.conductivity / plywood.diffusivity;
    expect((stored * volumetricCapacity) / surfaceStepHeat(plywood, 600)).toBeCloseTo(1, 5);
  });

  it('cross: a steady flux is a train of pulses', () => {
    const pulses = 20_000;
    let rise = 0;
    for (let pulse = 0; pulse < pulses; pulse++) {
      const age = ((pulse + 0.5) * 300) / pulses;
      rise += planeSourceRise((100 * 300) / pulses, 8e5, plywood.diffusivity, 0.004, age);
    }
    expect(rise / surfaceFluxRise(100, plywood, 0.004, 300)).toBeCloseTo(1, 5);
  });

  it('refuses a depth above the surface and a time before the step', () => {
    expect(() => surfaceStepShare(-1, 1e-7, 1)).toThrow('surfaceStepShare: depth is -1');
    expect(() => airStepShare(1, plywood, 0, 0)).toThrow('airStepShare: time is 0');
    expect(() => surfaceStepHeat({ conductivity: 0, diffusivity: 1 }, 1)).toThrow('conductivity is 0');
  });
});
