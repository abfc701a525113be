import { describe, expect, it } from 'vitest';
import { expansionLoss } from './fittings.ts';
import { gradualContractionLoss, gradualExpansionLoss } from './transition.ts';

const degrees = (angle: number): number => (angle * Math.PI) / 180;

describe('transition', () => {
  it('limit: without a change of section nothing is lost, whatever the angle', () => {
    for (const angle of [0, 20, 60, 180]) {
      expect(gradualExpansionLoss(1, degrees(angle))).toBe(0);
      expect(gradualContractionLoss(1, degrees(angle))).toBe(0);
    }
  });

  it('limit: a steep widening is the sudden one', () => {
    expect(gradualExpansionLoss(0.3, degrees(120))).toBe(expansionLoss(0.3));
  });

  it('property: both formulas meet at 45 degrees within a hundredth, and grow with the angle', () => {
    expect(gradualExpansionLoss(0.3, degrees(45))).toBeCloseTo(gradualExpansionLoss(0.3, degrees(45.001)), 2);
    expect(gradualContractionLoss(0.3, degrees(45))).toBeCloseTo(gradualContractionLoss(0.3, degrees(45.001)), 2);
    expect(gradualExpansionLoss(0.3, degrees(15))).toBeLessThan(gradualExpansionLoss(0.3, degrees(30)));
    expect(gradualContractionLoss(0.3, degrees(60))).toBeLessThan(gradualContractionLoss(0.3, degrees(90)));
  });

  it('exact: refuses a ratio above 1 and an angle beyond a half turn', () => {
    expect(() => gradualExpansionLoss(1.1, 0.3)).toThrow(RangeError);
    expect(() => gradualContractionLoss(0.5, 4)).toThrow(RangeError);
  });
});
