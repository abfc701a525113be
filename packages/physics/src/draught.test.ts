import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  mergedJetVelocity,
  roundJetVelocity,
  SLOT_JET_DECAY,
  slotJetCore,
  slotJetVelocity,
  WALL_JET_FACTOR,
} from './jet.ts';
import { draughtThreshold, partFilm, richardsonNumber } from './part-cooling.ts';
import { firePlume, PLUME_ENTRAINMENT, roomPlume, virtualOrigin } from './plume.ts';
import { captureVelocity, sinkVelocity } from './sink.ts';

/** Even over the range: doubles drawn by fast-check crowd around zero. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((step) => min + ((max - min) * step) / 1e6);

describe('jets', () => {
  it('property: slows with distance and is never faster than its outlet', () => {
    fc.assert(
      fc.property(evenly(0, 3), evenly(0, 3), (a, b) => {
        const [near, far] = a < b ? [a, b] : [b, a];
        expect(roundJetVelocity(2, 0.05, far)).toBeLessThanOrEqual(roundJetVelocity(2, 0.05, near));
        expect(slotJetVelocity(2, 0.01, far)).toBeLessThanOrEqual(slotJetVelocity(2, 0.01, near));
        expect(roundJetVelocity(2, 0.05, near)).toBeLessThanOrEqual(2);
      }),
    );
  });

  it('exact: twice as far a round jet is half as fast, a slot jet by the root', () => {
    expect(roundJetVelocity(1, 0.04, 1) / roundJetVelocity(1, 0.04, 2)).toBeCloseTo(2, 12);
    expect(slotJetVelocity(1, 0.01, 1) / slotJetVelocity(1, 0.01, 2)).toBeCloseTo(Math.SQRT2, 12);
    expect(slotJetCore(0.01, SLOT_JET_DECAY.central)).toBeCloseTo(0.061, 3);
  });

  it('cross: along a wall a jet keeps sqrt(2) of its velocity, as momentum on half the section demands', () => {
    expect(WALL_JET_FACTOR).toBeCloseTo(Math.SQRT2, 1);
    expect(roundJetVelocity(1, 0.04, 1, 6.2 * WALL_JET_FACTOR)).toBeCloseTo(1.4 * 6.2 * 0.04, 12);
  });

  it('exact: a merged jet carries the momentum of its holes', () => {
    const [flow, face, open] = [0.01, 0.02, 0.3];
    const merged = mergedJetVelocity(flow, face, open);
    expect(merged ** 2 * face).toBeCloseTo(flow * (flow / (open * face)), 12);
    expect(() => mergedJetVelocity(flow, face, 0)).toThrow('freeArea is 0');
  });
});

describe('sinks', () => {
  it('limit: at the opening itself the plain nozzle draws with V/A', () => {
    expect(captureVelocity(0.01, 0, 0.005)).toBeCloseTo(2, 12);
  });

  it('cross: the flanged nozzle and the half-space sink agree far away within 20 percent', () => {
    const ratio = captureVelocity(0.01, 1, 1e-4, true) / sinkVelocity(0.01, 1);
    expect(Math.abs(ratio - 1)).toBeLessThan(0.2);
  });
});

describe('plumes', () => {
  it('cross: axis velocity, rise and mass flow carry the heat: Gaussian profiles of one width within 15 percent', () => {
    // With both profiles Gaussian, flow = pi b² u rho and heat = pi b² u rho cp dT/2, so heat = m cp dT/2.
    const { massFlow, rise } = firePlume(50, 2, 295);
    expect(Math.abs((massFlow * 1006 * rise) / 2 / 50 - 1)).toBeLessThan(0.15);
    const room = roomPlume(50, 2);
    expect(Math.abs((room.volumeFlow * 1.2 * 1006 * room.rise) / 2 / 50 - 1)).toBeLessThan(0.15);
  });

  it('exact: similarity exponents', () => {
    expect(firePlume(80, 1, 295).velocity / firePlume(10, 1, 295).velocity).toBeCloseTo(2, 12);
    expect(firePlume(10, 8, 295).massFlow / firePlume(10, 1, 295).massFlow).toBeCloseTo(32, 10);
    expect(firePlume(10, 8, 295).rise / firePlume(10, 1, 295).rise).toBeCloseTo(1 / 32, 12);
  });

  it('limit: without heat the virtual origin lies 1.02 diameters below, and a corner leaves a plume less than a wall', () => {
    expect(virtualOrigin(0, 0.3, 295)).toBeCloseTo(-0.306, 12);
    expect(PLUME_ENTRAINMENT.corner).toBeLessThan(PLUME_ENTRAINMENT.wall);
    expect(() => firePlume(0, 1, 295)).toThrow('heat is 0');
  });
});

describe('parts in a draught', () => {
  it('property: the threshold is the speed of that Richardson number', () => {
    fc.assert(
      fc.property(evenly(0.005, 0.2), evenly(1, 80), evenly(0.05, 20), (length, difference, ri) => {
        const speed = draughtThreshold(length, difference, 320, ri);
        expect(richardsonNumber(length, difference, speed, 320) / ri).toBeCloseTo(1, 9);
      }),
    );
  });

  it('property: a faster draught cools more', () => {
    fc.assert(
      fc.property(evenly(0, 2), evenly(0.01, 0.5), (speed, more) => {
        expect(partFilm(0.04, 35, speed + more, 325)).toBeGreaterThan(partFilm(0.04, 35, speed, 325));
      }),
    );
  });
});
