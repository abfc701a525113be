import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type FireOpening, hotBoxAir, openingAir } from './fire-air.ts';

const upright = (area: number, from: number, height: number): FireOpening => ({ area, from, to: from + height });

describe('air to a fire', () => {
  it('exact: one upright opening alone is Kawagoe’s law, at any height and any density ratio', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 2, noNaN: true }),
        fc.double({ min: 0.05, max: 2, noNaN: true }),
        fc.double({ min: 1.5, max: 6, noNaN: true }),
        (area, height, ratio) => {
          const air = hotBoxAir([upright(area, 0.3, height)], 0.5, ratio);
          expect(air / openingAir(area, height)).toBeCloseTo(1, 6);
        },
      ),
    );
  });

  it('exact: an opening cut in two, one piece above the other, draws the same', () => {
    const halves = [upright(0.05, 0, 0.5), upright(0.05, 0.5, 0.5)];
    expect(hotBoxAir(halves)).toBeCloseTo(openingAir(0.1, 1), 9);
  });

  it('exact: two level holes balance in closed form', () => {
    const ratio = 3.66;
    const [low, high, apart] = [0.004, 0.006, 0.9];
    const toNeutral = apart / (1 + (low / high) ** 2 * ratio);
    const factor = 1.5 * 0.5 * (1 + Math.cbrt(ratio)) ** 1.5;
    const air = hotBoxAir(
      [
        { area: low, from: 0.1, to: 0.1 },
        { area: high, from: 0.1 + apart, to: 0.1 + apart },
      ],
      0.5,
      ratio,
    );
    expect(air).toBeCloseTo(factor * low * Math.sqrt(toNeutral), 9);
  });

  it('cross: the constant follows from hydrostatics with a discharge coefficient of 0.7 within 5 %', () => {
    const ratio = 1073.15 / 293.15;
    const hydrostatic = ((2 / 3) * 0.7 * 1.2 * Math.sqrt(2 * 9.81 * (1 - 1 / ratio))) / (1 + Math.cbrt(ratio)) ** 1.5;
    expect(hydrostatic / 0.5).toBeGreaterThan(0.95);
    expect(hydrostatic / 0.5).toBeLessThan(1.06);
  });

  it('cross: a vent of 0.2 × 0.1 m, a gap of 3 mm × 1.2 m and an open door of 0.6 × 1.2 m draw 3.16, 1.97 and 394 g/s', () => {
    expect(1000 * openingAir(0.02, 0.1)).toBeCloseTo(3.16, 2);
    expect(1000 * openingAir(0.0036, 1.2)).toBeCloseTo(1.97, 2);
    expect(1000 * openingAir(0.72, 1.2)).toBeCloseTo(394, 0);
  });

  it('limit: nothing without openings, nor when all lie at one level', () => {
    expect(hotBoxAir([])).toBe(0);
    expect(hotBoxAir([{ area: 0.1, from: 1, to: 1 }])).toBe(0);
    expect(hotBoxAir([upright(0, 0, 1)])).toBe(0);
  });

  it('property: more openings never draw less', () => {
    const opening = fc
      .tuple(fc.double({ min: 1e-4, max: 0.1, noNaN: true }), fc.double({ min: 0, max: 1.5, noNaN: true }))
      .map(([area, from]) => upright(area, from, 0.08));
    fc.assert(
      fc.property(fc.array(opening, { minLength: 1, maxLength: 5 }), opening, (some, more) => {
        expect(hotBoxAir([...some, more])).toBeGreaterThanOrEqual(hotBoxAir(some) * (1 - 1e-6));
      }),
    );
  });

  it('refuses nonsense', () => {
    expect(() => openingAir(-1, 1)).toThrow('area is -1');
    expect(() => hotBoxAir([{ area: 1, from: 2, to: 1 }])).toThrow('to - from is -1');
    expect(() => hotBoxAir([], 0.5, 1)).toThrow('densityRatio - 1 is 0');
  });
});
