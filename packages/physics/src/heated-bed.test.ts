import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Bed, bedChangeTime, bedLoss, sheetsCapacity } from './heated-bed.ts';

const bed: Bed = {
  width: 0.235,
  depth: 0.235,
  rim: 0.006,
  topEmissivity: 0.9,
  rimEmissivity: 0.3,
  undersideEmissivity: 0.9,
  undersideResistance: 0.25,
  stirring: 1,
};
const hot = fc.double({ min: 310, max: 400, noNaN: true });
const air = fc.double({ min: 280, max: 330, noNaN: true });

describe('heated bed', () => {
  it('property: the parts add up, and a stirred bed loses as many times more in each', () => {
    fc.assert(
      fc.property(hot, air, (kelvin, around) => {
        const { total, topConvection, topRadiation, rim, underside } = bedLoss(bed, kelvin, around, around);
        expect(topConvection + topRadiation + rim + underside).toBeCloseTo(total, 9);
        expect(bedLoss({ ...bed, stirring: 1.3 }, kelvin, around, around).total).toBeCloseTo(1.3 * total, 9);
      }),
    );
  });

  it('property: a hotter bed or a cooler bay costs more', () => {
    fc.assert(
      fc.property(hot, air, (kelvin, around) => {
        const { total } = bedLoss(bed, kelvin, around, around);
        expect(bedLoss(bed, kelvin + 1, around, around).total).toBeGreaterThan(total);
        expect(bedLoss(bed, kelvin, around - 1, around).total).toBeGreaterThan(total);
        expect(bedLoss(bed, kelvin, around, around - 1).total).toBeGreaterThan(total);
      }),
    );
  });

  it('limit: a bed as warm as its bay loses nothing, and a colder one gains', () => {
    expect(bedLoss(bed, 300, 300, 300).total).toBeCloseTo(0, 9);
    expect(bedLoss(bed, 300, 310, 310).total).toBeLessThan(0);
  });

  it('limit: endless insulation shuts the underside, none opens it', () => {
    expect(bedLoss({ ...bed, undersideResistance: 1e9 }, 373, 300, 300).underside).toBeCloseTo(0, 5);
    const thin = bedLoss({ ...bed, undersideResistance: 1e-7 }, 373, 300, 300).underside;
    expect(thin).toBeCloseTo(bedLoss({ ...bed, undersideResistance: 0 }, 373, 300, 300).underside, 2);
  });

  it('exact: with losses that hardly count, warming takes capacity times rise over power', () => {
    expect(bedChangeTime(bed, 500, 1e7, 300, 310, 300)).toBeCloseTo((500 * 10) / 1e7, 8);
  });

  it('property: cooling in two stages takes as long as at once', () => {
    const [whole, first, second] = [
      bedChangeTime(bed, 500, 0, 380, 320, 300),
      bedChangeTime(bed, 500, 0, 380, 345, 300),
      bedChangeTime(bed, 500, 0, 345, 320, 300),
    ];
    expect(first! + second!).toBeCloseTo(whole!, 3);
  });

  it('limit: what the power cannot reach takes forever', () => {
    expect(bedChangeTime(bed, 500, 20, 300, 380, 295)).toBe(Infinity);
    expect(bedChangeTime(bed, 500, 0, 340, 360, 295)).toBe(Infinity);
    expect(bedChangeTime(bed, 500, 0, 340, 340, 295)).toBe(0);
  });

  it('exact: capacities of sheets add up', () => {
    expect(sheetsCapacity(2, [{ thickness: 0.01, density: 1000, heatCapacity: 4000 }])).toBeCloseTo(80_000, 9);
    expect(sheetsCapacity(2, [])).toBe(0);
  });

  it('refuses a bed without extent and stirring that cools less than still air', () => {
    expect(() => bedLoss({ ...bed, width: 0 }, 350, 300, 300)).toThrow('width is 0');
    expect(() => bedLoss({ ...bed, stirring: 0.9 }, 350, 300, 300)).toThrow('stirring is 0.9');
    expect(() => bedChangeTime(bed, 0, 0, 350, 340, 300)).toThrow('capacity is 0');
  });
});
