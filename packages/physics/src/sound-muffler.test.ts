import { describe, expect, it } from 'vitest';
import { endReflection, expansionBoxLoss, linedDuctLoss, plenumLoss } from './sound-muffler.ts';

describe('linedDuctLoss', () => {
  it('limit: no lining, no loss; 40 dB at most', () => {
    expect(linedDuctLoss(0, 0.4, 0.01, 1, 500)).toBe(0);
    expect(linedDuctLoss(0.9, 0.4, 0.01, 10, 500)).toBe(40);
  });

  it('exact: twice the length is twice the loss; above the width of a wave it falls by four for each octave', () => {
    const loss = (length: number, frequency: number): number => linedDuctLoss(0.5, 0.4, 0.01, length, frequency);
    expect(loss(0.4, 500)).toBeCloseTo(2 * loss(0.2, 500), 12);
    expect(loss(0.4, 4000) / loss(0.4, 8000)).toBeCloseTo(4, 9);
  });
});

describe('plenumLoss', () => {
  const box = { outlet: 0.0064, distance: 0.25, angle: Math.PI / 6, surface: 0.27, absorption: 0.6 };

  it('cross: a small baffle box both ways, as worked by an independent script', () => {
    expect(Math.abs(plenumLoss(box) - 13.56)).toBeLessThan(0.02);
    expect(Math.abs(plenumLoss(box, 2) - 15.24)).toBeLessThan(0.02);
  });

  it('property: more lining never lets more through', () => {
    expect(plenumLoss({ ...box, absorption: 0.8 })).toBeGreaterThan(plenumLoss(box));
  });
});

describe('expansionBoxLoss', () => {
  it('exact: nothing where the box is half a wave long, or as wide as the duct', () => {
    expect(expansionBoxLoss(9, 0.3, 343 / 0.6)).toBeCloseTo(0, 9);
    expect(expansionBoxLoss(1, 0.3, 200)).toBe(0);
  });

  it('cross: nine times the section, 0.3 m, as worked by an independent script', () => {
    for (const [frequency, expected] of [
      [63, 5.15],
      [125, 9.52],
      [250, 13.01],
      [500, 5.92],
    ] as const)
      expect(Math.abs(expansionBoxLoss(9, 0.3, frequency) - expected)).toBeLessThan(0.01);
  });
});

describe('endReflection', () => {
  it('limit: nothing comes back of high tones; 18.8 dB for a tenth of a low one', () => {
    expect(endReflection(0.3, 1e6)).toBeCloseTo(0, 3);
    expect(endReflection(0.1, 0.1) - endReflection(0.1, 1)).toBeCloseTo(18.8, 2);
  });

  it('exact: nonsense is refused by name', () => {
    expect(() => endReflection(0, 100)).toThrow('endReflection: diameter is 0');
    expect(() => linedDuctLoss(1.1, 1, 1, 1, 1)).toThrow('linedDuctLoss: absorption is 1.1');
    expect(() => plenumLoss({ outlet: 1, distance: 0, angle: 0, surface: 1, absorption: 1 })).toThrow('distance is 0');
    expect(() => expansionBoxLoss(2, 0, 100)).toThrow('expansionBoxLoss: length is 0');
  });
});
