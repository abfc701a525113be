import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  colebrookFriction,
  ductFriction,
  ductPressure,
  dynamicLoss,
  HOSE_FRICTION_MULTIPLIER,
  haalandFriction,
  hydraulicDiameter,
  laminarFriction,
} from './duct.ts';

/** Even over the range: doubles drawn by fast-check crowd around zero. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((step) => min + ((max - min) * step) / 1e6);

describe('friction', () => {
  it('exact: Colebrook satisfies its own equation', () => {
    const f = colebrookFriction(3e4, 0.003);
    expect(1 / Math.sqrt(f)).toBeCloseTo(-2 * Math.log10(0.003 / 3.7 + 2.51 / (3e4 * Math.sqrt(f))), 12);
  });

  it('property: Haaland stays within 2 percent of Colebrook', () => {
    fc.assert(
      fc.property(evenly(4e3, 1e6), evenly(0, 0.03), (re, e) => {
        expect(Math.abs(haalandFriction(re, e) / colebrookFriction(re, e) - 1)).toBeLessThan(0.02);
      }),
    );
  });

  it('limit: the blend meets both laws at its ends', () => {
    expect(ductFriction(2000.0001, 0)).toBeCloseTo(laminarFriction(2000), 8);
    expect(ductFriction(3999.9999, 0.001)).toBeCloseTo(haalandFriction(4000, 0.001), 8);
  });

  it('property: pressure loss f Re² rises with the flow throughout', () => {
    fc.assert(
      fc.property(evenly(100, 1e5), evenly(0, 0.02), (re, e) => {
        const more = re * 1.001;
        expect(ductFriction(more, e) * more ** 2).toBeGreaterThan(ductFriction(re, e) * re ** 2);
      }),
    );
  });

  it('exact: refuses nonsense', () => {
    expect(() => ductFriction(-1, 0)).toThrow('reynolds is -1');
    expect(() => colebrookFriction(1e4, Number.NaN)).toThrow('roughness');
  });
});

describe('ductPressure', () => {
  const duct = { length: 3, area: 0.0079, diameter: 0.1, roughness: 0, frictionMultiplier: 1, loss: 1.5 };

  it('property: is odd in the flow', () => {
    fc.assert(
      fc.property(evenly(-0.1, 0.1), (flow) => {
        expect(ductPressure(duct, -flow, 1.2, 1.8e-5)).toBeCloseTo(-ductPressure(duct, flow, 1.2, 1.8e-5), 12);
      }),
    );
    expect(ductPressure(duct, 0, 1.2, 1.8e-5)).toBe(0);
  });

  it('limit: slow flow without fittings is Hagen and Poiseuille, 128 mu L V/(pi D^4)', () => {
    const round = { ...duct, area: (Math.PI / 4) * 0.01, loss: 0 };
    expect(ductPressure(round, 1e-4, 1.2, 1.8e-5)).toBeCloseTo((128 * 1.8e-5 * 3 * 1e-4) / (Math.PI * 1e-4), 9);
  });

  it('order: slack hose costs more than stretched hose, and that more than smooth duct', () => {
    const at = (frictionMultiplier: number) => ductPressure({ ...duct, frictionMultiplier }, 0.01, 1.2, 1.8e-5);
    expect(at(HOSE_FRICTION_MULTIPLIER.slack.central)).toBeGreaterThan(at(HOSE_FRICTION_MULTIPLIER.stretched.central));
    expect(at(HOSE_FRICTION_MULTIPLIER.stretched.low)).toBeGreaterThan(at(1));
  });

  it('exact: a square duct has its side as hydraulic diameter', () => {
    expect(hydraulicDiameter(0.2, 0.2)).toBeCloseTo(0.2, 12);
    expect(dynamicLoss(2, 1.2, -3)).toBeCloseTo(-10.8, 12);
  });
});
