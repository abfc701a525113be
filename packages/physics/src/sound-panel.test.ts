import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  compositeLoss,
  criticalFrequency,
  doubleLeafResonance,
  massLawLoss,
  panelLoss,
  panelOctaves,
} from './sound-panel.ts';

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('massLawLoss', () => {
  it('limit: twice the mass or twice the frequency is 6 dB more', () => {
    expect(massLawLoss(2000, 40) - massLawLoss(2000, 20)).toBeCloseTo(6.02, 2);
    expect(massLawLoss(2000, 40) - massLawLoss(1000, 40)).toBeCloseTo(6.02, 2);
  });

  it('limit: nothing weighs nothing', () => {
    expect(massLawLoss(100, 1e-6)).toBeCloseTo(0, 9);
  });

  it('cross: 20 lg(m f) - 42.4 where the wall is heavy', () => {
    expect(massLawLoss(500, 10)).toBeCloseTo(20 * Math.log10(5000) - 42.4, 1);
  });
});

describe('panelLoss', () => {
  const glass = { surfaceMass: 15, criticalFrequency: 2117, damping: 0.024 };

  it('exact: has the printed depth at the dip, and the law of mass less 5.5 dB below half of it', () => {
    expect(panelLoss(2117, glass)).toBeCloseTo(20 * Math.log10(2117 * 15) + 10 * Math.log10(0.024) - 44, 9);
    expect(panelLoss(500, glass)).toBeCloseTo(massLawLoss(500, 15) - 5.5, 9);
  });

  it('property: no jump at half the critical frequency, and only the dip’s own above it', () => {
    expect(panelLoss(2117 / 2 + 1e-6, glass)).toBeCloseTo(panelLoss(2117 / 2, glass), 5);
    expect(panelLoss(2117 * 1.0001, glass) - panelLoss(2117, glass)).toBeLessThan(2);
  });

  it('property: more damping never lets more through', () => {
    fc.assert(
      fc.property(between(50, 10_000), between(0.005, 0.1), between(0.005, 0.1), (frequency, a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        const loss = (damping: number): number => panelLoss(frequency, { ...glass, damping });
        expect(loss(high)).toBeGreaterThanOrEqual(loss(low) - 1e-9);
      }),
    );
  });
});

describe('panelOctaves', () => {
  it('cross: the averages of an independent script, up to the critical frequency', () => {
    const plywood = panelOctaves({ surfaceMass: 7, criticalFrequency: 1667, damping: 0.03 });
    for (const [band, expected] of [5.2, 10.8, 16.7, 22.7].entries())
      expect(Math.abs(plywood[band]! - expected)).toBeLessThan(0.15);
  });

  it('property: well above the dip an octave brings 5 dB at most', () => {
    const octaves = panelOctaves({ surfaceMass: 11, criticalFrequency: 500, damping: 0.03 });
    for (const band of [5, 6, 7]) expect(octaves[band]! - octaves[band - 1]!).toBeLessThanOrEqual(5 + 1e-9);
  });
});

describe('compositeLoss', () => {
  it('limit: of one part it is that part’s; an open part caps it whatever the wall', () => {
    expect(compositeLoss([{ area: 2, loss: 23 }])).toBeCloseTo(23, 12);
    const capped = (loss: number): number =>
      compositeLoss([
        { area: 0.99, loss },
        { area: 0.01, loss: 0 },
      ]);
    expect(capped(90) - capped(50)).toBeLessThan(0.1);
  });

  it('cross: a gap of 5 mm round the door of a box of 2.64 m², as worked by an independent script', () => {
    for (const [loss, expected] of [
      [20, 18.3],
      [25, 20.9],
      [30, 22.3],
    ] as const) {
      const box = [
        { area: 2.64 - 0.013, loss },
        { area: 0.013, loss: 0 },
      ];
      expect(Math.abs(compositeLoss(box) - expected)).toBeLessThan(0.06);
    }
  });
});

describe('resonances', () => {
  it('limit: twice the gap lowers it by the square root of two', () => {
    expect(doubleLeafResonance(7, 7, 0.02) / doubleLeafResonance(7, 7, 0.04)).toBeCloseTo(Math.SQRT2, 12);
  });

  it('exact: critical frequency times thickness is a number of the material', () => {
    const product = (thickness: number): number => thickness * criticalFrequency(62e9, thickness, 2500, 0.24);
    expect(product(0.004)).toBeCloseTo(product(0.008), 9);
  });

  it.each([
    ['no mass', () => massLawLoss(100, 0), 'massLawLoss: surfaceMass is 0'],
    ['no wall', () => compositeLoss([]), 'compositeLoss: whole area is 0'],
    ['no gap', () => doubleLeafResonance(7, 7, 0), 'doubleLeafResonance: distance is 0'],
    ['no solid', () => criticalFrequency(1e9, 0.01, 600, 1), 'poisson is 1; it must lie between 0 and 0.5'],
    ['no damping', () => panelLoss(100, { surfaceMass: 7, criticalFrequency: 1000, damping: 0 }), 'damping is 0'],
  ])('exact: %s is refused by name', (_, call, message) => {
    expect(call).toThrow(message);
  });
});
