import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { orificeFlow } from './orifice.ts';
import {
  exchangeUnderPressure,
  FLOODING_SHAPE,
  floodingPressure,
  holeExchangeByShape,
  shelfHoleExchange,
} from './shelf-hole.ts';
import { doorSwingVolume, doorwayExchange, tallOpeningFlow } from './tall-opening.ts';

/** Even over the range: doubles drawn by fast-check crowd around zero. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((step) => min + ((max - min) * step) / 1e6);

const door = { width: 0.8, bottom: 0.3, top: 1.9, discharge: 0.65 };

describe('tallOpeningFlow', () => {
  it('cross: equals a pile of thin slices, each an orifice', () => {
    const slices = 200_000;
    const step = (door.top - door.bottom) / slices;
    for (const dpDatum of [-0.6, -0.25, 0, 0.4]) {
      let [forward, backward] = [0, 0];
      for (let slice = 0; slice < slices; slice++) {
        const z = door.bottom + (slice + 0.5) * step;
        const dp = dpDatum - (1.1 - 1.2) * 9.80665 * z;
        const flow = orificeFlow(dp, dp > 0 ? 1.1 : 1.2, door.discharge * door.width * step, 1e-12);
        if (flow > 0) forward += flow;
        else backward -= flow;
      }
      const both = tallOpeningFlow(door, dpDatum, 1.1, 1.2);
      expect(both.forward).toBeCloseTo(forward, 6);
      expect(both.backward).toBeCloseTo(backward, 6);
    }
  });

  it('limit: equal densities make it one plain orifice', () => {
    const flow = tallOpeningFlow(door, 2, 1.2, 1.2);
    expect(flow.forward).toBeCloseTo(0.65 * 0.8 * 1.6 * Math.sqrt(2 * 1.2 * 2), 10);
    expect(flow.backward).toBe(0);
    expect(tallOpeningFlow(door, 0, 1.2, 1.2)).toEqual({ forward: 0, backward: 0 });
  });

  it('property: seen from the other side the flows change places', () => {
    fc.assert(
      fc.property(evenly(-3, 3), evenly(1, 1.3), (dp, rho) => {
        const here = tallOpeningFlow(door, dp, rho, 1.2);
        const there = tallOpeningFlow(door, -dp, 1.2, rho);
        expect(there.forward).toBeCloseTo(here.backward, 10);
        expect(there.backward).toBeCloseTo(here.forward, 10);
      }),
    );
  });

  it('cross: with the neutral level in the middle it is the doorway without net flow, to the first order of the density difference', () => {
    const [warmK, coldK] = [298.15, 293.15];
    const [light, heavy] = [351 / warmK, 351 / coldK];
    const middle = (light - heavy) * 9.80665 * 1.1;
    const exact = tallOpeningFlow({ width: 1, bottom: 0, top: 2.2, discharge: 0.65 }, middle, light, heavy);
    const volume = 0.5 * (exact.forward / light + exact.backward / heavy);
    expect(doorwayExchange(0.65, 1, 2.2, warmK, coldK) / volume).toBeCloseTo(1, 3);
  });

  it('exact: refuses an opening that is upside down', () => {
    expect(() => tallOpeningFlow({ ...door, top: 0 }, 1, 1.2, 1.1)).toThrow('top - bottom');
  });
});

describe('doors', () => {
  it('exact: a square leaf pushes a quarter of the cylinder it turns in, and equal air exchanges nothing', () => {
    expect(doorSwingVolume(1, 1)).toBeCloseTo(Math.PI / 4, 12);
    expect(doorwayExchange(0.65, 1, 2, 300, 300)).toBe(0);
    expect(doorwayExchange(0.65, 1, 2, 300, 290)).toBe(doorwayExchange(0.65, 1, 2, 290, 300));
    expect(() => doorwayExchange(0.65, 0, 2, 300, 290)).toThrow('width is 0');
  });
});

describe('level holes', () => {
  it('limit: no exchange when the heavier air lies below', () => {
    expect(shelfHoleExchange(0.002, -0.01)).toBe(0);
    expect(holeExchangeByShape(0.05, 0.018, -0.01)).toBe(0);
    expect(floodingPressure(0.002, -0.02)).toBe(0);
  });

  // The same paper also gives a law for each kind of hole; the one curve through all of them must meet those.
  it('cross: a short tube follows 0.147 sqrt(L/D), a long pipe 0.32 (L/D)^-1.5', () => {
    const k = (ratio: number) => holeExchangeByShape(1, ratio, 1 / 9.80665);
    expect(Math.abs(k(0.3) / (0.147 * Math.sqrt(0.3)) - 1)).toBeLessThan(0.01);
    expect(Math.abs(k(10) / (0.32 * 10 ** -1.5) - 1)).toBeLessThan(0.02);
  });

  it('order: the two published laws for a thin plate differ by a quarter', () => {
    const ratio = holeExchangeByShape(0.1, 0, 0.02) / shelfHoleExchange((Math.PI / 4) * 0.01, 0.02);
    expect(ratio).toBeGreaterThan(0.7);
    expect(ratio).toBeLessThan(0.78);
  });

  it('property: pressure only ever lessens the exchange, alike in both directions', () => {
    fc.assert(
      fc.property(evenly(-0.02, 0.02), (dp) => {
        const under = exchangeUnderPressure(1e-5, dp, 0.01);
        expect(under).toBeLessThanOrEqual(1e-5);
        expect(under).toBe(exchangeUnderPressure(1e-5, -dp, 0.01));
      }),
    );
    expect(FLOODING_SHAPE.square).toBeGreaterThan(FLOODING_SHAPE.round);
  });
});
