import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  bendLoss,
  contractionLoss,
  EXIT_LOSS,
  entranceLoss,
  expansionLoss,
  grilleLoss,
  lossOnArea,
  mitreLoss,
  perforatedPlateLoss,
  wireScreenLoss,
} from './fittings.ts';

/** Even over the range: doubles drawn by fast-check crowd around zero. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((step) => min + ((max - min) * step) / 1e6);

describe('fittings', () => {
  it('order: a wider bend costs less, down to a minimum near r/D = 2', () => {
    expect(bendLoss(0.75, 0.025)).toBeLessThan(bendLoss(0.5, 0.025));
    expect(bendLoss(2, 0.025)).toBeLessThan(bendLoss(1, 0.025));
    expect(bendLoss(8, 0.025)).toBeGreaterThan(bendLoss(2, 0.025));
    expect(bendLoss(1, 0.025, Math.PI / 4)).toBeLessThan(bendLoss(1, 0.025));
  });

  it('limit: no turn, no step and no plate cost nothing', () => {
    expect(mitreLoss(0)).toBe(0);
    expect(expansionLoss(1)).toBe(0);
    expect(contractionLoss(1)).toBeCloseTo(0, 12);
    expect(perforatedPlateLoss(1)).toBe(0);
    expect(wireScreenLoss(1, 100)).toBe(0);
  });

  it('limit: widening into a room is the exit loss, narrowing from a room the sharp entrance', () => {
    expect(expansionLoss(0)).toBe(EXIT_LOSS);
    expect(contractionLoss(0)).toBeCloseTo(entranceLoss(0), 12);
  });

  it('cross: the contraction lies between the simple rule 0.5 (1 - A2/A1) and that plus 45 percent', () => {
    for (const ratio of [0.1, 0.3, 0.5, 0.7]) {
      expect(contractionLoss(ratio)).toBeGreaterThan(0.5 * (1 - ratio));
      expect(contractionLoss(ratio)).toBeLessThan(1.45 * 0.5 * (1 - ratio));
    }
  });

  it('property: more free area costs less', () => {
    fc.assert(
      fc.property(evenly(0.2, 0.79), (area) => {
        expect(grilleLoss(area + 0.005)).toBeLessThan(grilleLoss(area));
        expect(perforatedPlateLoss(area + 0.005)).toBeLessThan(perforatedPlateLoss(area));
        expect(wireScreenLoss(area + 0.005, 80)).toBeLessThan(wireScreenLoss(area, 80));
      }),
    );
  });

  it('exact: grilles go through the points of their table', () => {
    expect(grilleLoss(0.2)).toBeCloseTo(34, 9);
    expect(grilleLoss(0.7)).toBeCloseTo(1.35, 9);
    expect(grilleLoss(0.8)).toBeCloseTo(0.72, 9);
    expect(() => grilleLoss(0.1)).toThrow('freeArea is 0.1');
  });

  it('exact: each refuses what its law does not cover', () => {
    expect(() => mitreLoss(2.2)).toThrow('angle is 2.2');
    expect(() => wireScreenLoss(1.5, 100)).toThrow('freeArea is 1.5');
    expect(() => perforatedPlateLoss(0)).toThrow('freeArea is 0');
    expect(() => bendLoss(0.4, 0.02)).toThrow('radius is 0.4');
    expect(() => contractionLoss(-0.1)).toThrow('areaRatio is -0.1');
  });

  it('exact: a K moves with the square of the areas and back', () => {
    expect(lossOnArea(lossOnArea(2.7, 0.005, 0.01), 0.01, 0.005)).toBeCloseTo(2.7, 12);
  });
});
