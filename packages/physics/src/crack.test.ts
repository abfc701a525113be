import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { crackFlow, crackSlope, leakageAreaLaw, smoothCrackFlow } from './crack.ts';
import { gapAsPowerLaw, gapFlow, gapResistance } from './gap.ts';
import { orificeFlow } from './orifice.ts';

/** Even over the range: doubles drawn by fast-check crowd around zero. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((step) => min + ((max - min) * step) / 1e6);

const exponents = evenly(0.5, 1);
const pressures = evenly(-50, 50);

describe('crackFlow', () => {
  it('cross: is the orifice law at exponent 0.5', () => {
    for (const dp of [-3, -0.01, 0.002, 7])
      expect(crackFlow(dp, 1.2, 0.006 * Math.sqrt(2 / 1.2), 0.5, 0.01)).toBeCloseTo(
        orificeFlow(dp, 1.2, 0.006, 0.01),
        14,
      );
  });

  it('property: is odd and rises with the difference', () => {
    fc.assert(
      fc.property(pressures, pressures, exponents, (a, b, n) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        expect(crackFlow(high, 1.2, 1e-3, n, 0.01)).toBeGreaterThanOrEqual(crackFlow(low, 1.2, 1e-3, n, 0.01));
        expect(crackFlow(-a, 1.2, 1e-3, n, 0.01)).toBeCloseTo(-crackFlow(a, 1.2, 1e-3, n, 0.01), 14);
      }),
    );
  });

  it('cross: its slope agrees with differences', () => {
    for (const dp of [-2, -0.03, 0, 0.001, 0.4]) {
      const step = 1e-6;
      const difference =
        (crackFlow(dp + step, 1.2, 1e-3, 0.65, 0.02) - crackFlow(dp - step, 1.2, 1e-3, 0.65, 0.02)) / (2 * step);
      expect(crackSlope(dp, 1.2, 1e-3, 0.65, 0.02) / difference).toBeCloseTo(1, 6);
    }
  });
});

describe('smoothCrackFlow', () => {
  const law = { coefficient: 1e-3, exponent: 0.65 };
  const turn = 0.1;

  it('exact: value, slope and curvature join at the turn', () => {
    const step = 1e-4;
    const at = (dp: number) => smoothCrackFlow(dp, law, turn) / law.coefficient;
    const power = (dp: number) => dp ** law.exponent;
    expect(at(turn - 1e-12)).toBeCloseTo(power(turn), 9);
    expect((at(turn) - at(turn - step)) / step).toBeCloseTo((power(turn) - power(turn - step)) / step, 3);
    const curvature = (f: (dp: number) => number) => (f(turn) - 2 * f(turn - step) + f(turn - 2 * step)) / step ** 2;
    expect(curvature(at) / curvature(power)).toBeCloseTo(1, 1);
  });

  it('property: rises with the difference for every exponent', () => {
    fc.assert(
      fc.property(evenly(-0.2, 0.2), exponents, (dp, exponent) => {
        const leak = { coefficient: 1, exponent };
        expect(smoothCrackFlow(dp + 1e-3, leak, turn)).toBeGreaterThan(smoothCrackFlow(dp, leak, turn));
      }),
    );
  });

  it('exact: refuses an exponent that no leak has', () => {
    expect(() => smoothCrackFlow(1, { coefficient: 1, exponent: 0.4 }, 0.1)).toThrow('exponent is 0.4');
    expect(() => smoothCrackFlow(Number.NaN, law, 0.1)).toThrow('dp is NaN');
  });
});

describe('leakageAreaLaw', () => {
  it('exact: at the reference pressure the leak equals a perfect hole of its area, whatever the exponent', () => {
    for (const exponent of [0.5, 0.65, 1]) {
      const law = leakageAreaLaw(1e-3, 1.2, exponent);
      expect(law.coefficient * 4 ** exponent).toBeCloseTo(1e-3 * Math.sqrt((2 * 4) / 1.2), 12);
    }
    expect(() => leakageAreaLaw(-1, 1.2)).toThrow('area is -1');
  });
});

describe('gaps', () => {
  const gap = { length: 4.3, width: 1e-3, depth: 0.018, bends: 1 };

  it('exact: the flow satisfies its own quadratic loss', () => {
    const { linear, quadratic } = gapResistance(gap, 1.2, 1.8e-5);
    const q = gapFlow(3, gap, 1.2, 1.8e-5);
    expect(linear * q + quadratic * q ** 2).toBeCloseTo(3, 12);
    expect(gapFlow(-3, gap, 1.2, 1.8e-5)).toBeCloseTo(-q, 15);
  });

  it('limit: a thin gap is plane Poiseuille flow, a wide one a hole with K = 1.5', () => {
    const thin = { ...gap, width: 5e-5 };
    expect(gapFlow(1, thin, 1.2, 1.8e-5)).toBeCloseTo((4.3 * 5e-5 ** 3) / (12 * 1.8e-5 * 0.018), 12);
    const wide = { length: 1, width: 0.05, depth: 0.01, bends: 0 };
    expect(gapFlow(1, wide, 1.2, 1.8e-5) / (0.05 * Math.sqrt(2 / (1.2 * 1.5)))).toBeCloseTo(1, 2);
  });

  it('cross: the power law touches the gap at 1 Pa and stays within 4 percent from 0.5 to 2 Pa', () => {
    for (const width of [2e-4, 5e-4, 1e-3, 2e-3, 4e-3]) {
      const law = gapAsPowerLaw({ ...gap, width }, 1.2, 1.84e-5);
      expect(law.exponent).toBeGreaterThan(0.5);
      expect(law.exponent).toBeLessThan(1);
      for (const dp of [0.5, 1, 2]) {
        const ratio = (law.coefficient * dp ** law.exponent) / gapFlow(dp, { ...gap, width }, 1.2, 1.84e-5);
        expect(Math.abs(ratio - 1)).toBeLessThan(dp === 1 ? 1e-12 : 0.04);
      }
    }
  });

  it('exact: refuses a gap without width', () => {
    expect(() => gapFlow(1, { ...gap, width: 0 }, 1.2, 1.8e-5)).toThrow('width is 0');
  });
});
