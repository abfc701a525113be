import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  boxShapeFactor,
  jointTemperatures,
  layerResistance,
  OUTDOOR_SURFACE_RESISTANCE,
  surfaceResistance,
  uValue,
} from './conduction.ts';

const thickness = fc.double({ min: 1e-4, max: 0.2, noNaN: true });

describe('conduction', () => {
  it('property: a thicker board, or one more layer, always lets less through', () => {
    fc.assert(
      fc.property(thickness, thickness, (d, more) => {
        const board = layerResistance(d, 0.13);
        expect(uValue([layerResistance(d + more, 0.13)], 'horizontal')).toBeLessThan(uValue([board], 'horizontal'));
        expect(uValue([board, layerResistance(more, 0.035)], 'down')).toBeLessThan(uValue([board], 'down'));
      }),
    );
  });

  it('limit: without a board only the two films are left', () => {
    expect(uValue([], 'horizontal')).toBeCloseTo(1 / 0.26, 12);
    expect(uValue([], 'horizontal', OUTDOOR_SURFACE_RESISTANCE)).toBeCloseTo(1 / 0.17, 12);
  });

  it('exact: joints of equal resistances are evenly spaced, ends included', () => {
    expect(jointTemperatures(40, 20, [1, 1, 1, 1])).toEqual([40, 35, 30, 25, 20]);
  });

  it('property: the heat through every resistance of a chain is the same', () => {
    fc.assert(
      fc.property(fc.array(fc.double({ min: 0.01, max: 2, noNaN: true }), { minLength: 1, maxLength: 8 }), (chain) => {
        const joints = jointTemperatures(310, 290, chain);
        const heat = 20 / chain.reduce((sum, resistance) => sum + resistance, 0);
        for (const [at, resistance] of chain.entries()) {
          expect((joints[at]! - joints[at + 1]!) / resistance).toBeCloseTo(heat, 8);
        }
      }),
    );
  });

  it('limit: the shape factor of a box with thin walls is area over thickness', () => {
    expect((boxShapeFactor(1, 1, 1, 1e-6) * 1e-6) / 6).toBeCloseTo(1, 5);
  });

  it('refuses negative layers and names them', () => {
    expect(() => uValue([0.1, -0.1], 'up')).toThrow('uValue: a layer is -0.1');
    expect(() => layerResistance(0.018, 0)).toThrow('conductivity is 0');
    expect(() => jointTemperatures(1, 0, [])).toThrow('the sum of resistances is 0');
    expect(() => surfaceResistance(-1, 0.9, 293)).toThrow('convection is -1');
  });
});
