import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakthroughTime, carbonAffinity, carbonRate, freshPenetration } from './carbon-bed.ts';
import { carbonCapacity, carbonEquilibrium, MICROPORE_VOLUME } from './carbon-capacity.ts';
import { massConcentration, partsPerMillion } from './concentration.ts';
import { packedBedResistance } from './packed-bed.ts';
import { solventSaturation, solvents } from './solvent.ts';

/** Even over the range: doubles drawn by fast-check crowd around zero. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((step) => min + ((max - min) * step) / 1e6);

const { styrene } = solvents;
const concentration = evenly(-10, -3).map((exponent) => 10 ** exponent);
const temperature = evenly(283, 333);

describe('carbon capacity', () => {
  it('exact: the equilibrium concentration over a loaded bed is the one that loaded it', () => {
    fc.assert(
      fc.property(concentration, temperature, (c, t) => {
        expect(carbonEquilibrium(styrene, carbonCapacity(styrene, c, t), t) / c).toBeCloseTo(1, 8);
      }),
    );
  });

  it('property: more vapour loads more, warmth holds less and gives back more', () => {
    fc.assert(
      fc.property(concentration, temperature, (c, t) => {
        const loading = carbonCapacity(styrene, c, t);
        expect(carbonCapacity(styrene, 1.1 * c, t)).toBeGreaterThan(loading);
        expect(carbonCapacity(styrene, c, t + 5)).toBeLessThan(loading);
        expect(carbonEquilibrium(styrene, loading, t + 10)).toBeGreaterThan(c);
      }),
    );
  });

  it('limit: nothing in, nothing held; saturated air fills the pores', () => {
    expect(carbonCapacity(styrene, 0, 295)).toBe(0);
    expect(carbonEquilibrium(styrene, 0, 295)).toBe(0);
    const full = MICROPORE_VOLUME * styrene.density;
    expect(carbonCapacity(styrene, 1, 295)).toBeCloseTo(full, 12);
    const saturated = (solventSaturation(styrene, 295) * styrene.molarMass) / (8.314462618 * 295);
    expect(carbonEquilibrium(styrene, full, 295)).toBeCloseTo(saturated, 12);
  });

  it('exact: refuses nonsense', () => {
    expect(() => carbonCapacity(styrene, -1, 295)).toThrow('concentration is -1');
    expect(() => carbonEquilibrium(styrene, 0.1, 0)).toThrow('temperature is 0');
  });
});

describe('carbon bed', () => {
  it('limit: an ideal bed lasts until it is full; a thin one breaks through at once', () => {
    expect(breakthroughTime(0.3, 1, 1e-3, 0.01, Infinity, 0.1)).toBeCloseTo(0.3 / 1e-5, 6);
    expect(breakthroughTime(0.3, 1, 1e-3, 0.01, 1, 0.1)).toBe(0);
  });

  it('cross: break-through begins at the share that the fresh bed lets through', () => {
    const units = 4;
    const share = freshPenetration(units);
    expect(breakthroughTime(0.3, 1, 1e-3, 0.01, units, share)).toBeCloseTo(0, 6);
    expect(breakthroughTime(0.3, 1, 1e-3, 0.01, units, 1.5 * share)).toBeGreaterThan(0);
  });

  it('order: finer grains and faster air exchange faster', () => {
    expect(carbonRate(0.2, 0.1, 0.2, 0.0015, 1.2)).toBeGreaterThan(carbonRate(0.2, 0.1, 0.2, 0.003, 1.2));
    expect(carbonRate(0.2, 0.1, 0.4, 0.003, 1.2)).toBeGreaterThan(carbonRate(0.2, 0.1, 0.2, 0.003, 1.2));
    expect(carbonAffinity(styrene)).toBeGreaterThan(carbonAffinity(solvents.toluene));
  });

  it('limit: slow air through a bed is linear, and a deeper bed costs in proportion', () => {
    const bed = { depth: 0.02, grain: 0.003, voids: 0.4, faceArea: 0.04 };
    const once = packedBedResistance(bed, 1.2, 1.8e-5);
    const twice = packedBedResistance({ ...bed, depth: 0.04 }, 1.2, 1.8e-5);
    expect(twice.linear / once.linear).toBeCloseTo(2, 12);
    expect(twice.quadratic / once.quadratic).toBeCloseTo(2, 12);
    expect(() => packedBedResistance({ ...bed, voids: 1.2 }, 1.2, 1.8e-5)).toThrow('voids is 1.2');
  });
});

describe('concentrations', () => {
  it('exact: there and back again', () => {
    fc.assert(
      fc.property(evenly(0, 1e4), temperature, (ppm, t) => {
        expect(partsPerMillion(massConcentration(ppm, 0.1, t, 9e4), 0.1, t, 9e4)).toBeCloseTo(ppm, 8);
      }),
    );
  });
});
