import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { factorToPolygon, type Vector } from './configuration-factor.ts';
import { areaIlluminance, lambertianIlluminance, pointIlluminance, stripIlluminance } from './illuminance.ts';

const height = fc.double({ min: 0.1, max: 3, noNaN: true });
const flux = fc.double({ min: 1, max: 5000, noNaN: true });

describe('light straight from a lamp', () => {
  it('cross: a strip is many small diffuse lamps in a row', () => {
    fc.assert(
      fc.property(height, fc.double({ min: 0.1, max: 2, noNaN: true }), (h, length) => {
        const pieces = 4000;
        let sum = 0;
        for (let i = 0; i < pieces; i += 1) {
          const x = ((i + 0.5) / pieces) * length;
          sum += lambertianIlluminance((1000 * length) / pieces, h, Math.atan(x / h));
        }
        expect(stripIlluminance(1000, h, 0, length) / sum).toBeCloseTo(1, 4);
      }),
    );
  });

  it('exact: a small diffuse lamp sends 1/pi of its flux straight ahead, and falls off with two cosines and two distances', () => {
    fc.assert(
      fc.property(flux, height, fc.double({ min: 0, max: 1.5, noNaN: true }), (lm, h, angle) => {
        const intensity = (lm / Math.PI) * Math.cos(angle);
        expect(lambertianIlluminance(lm, h, angle)).toBeCloseTo(
          pointIlluminance(intensity, h / Math.cos(angle), angle),
          6,
        );
      }),
    );
  });

  it('limit: far away, a panel is a point: 1.3 % at five times its side', () => {
    const errorAt = (times: number): number => {
      const square: Vector[] = [
        [-0.5, -0.5, times],
        [0.5, -0.5, times],
        [0.5, 0.5, times],
        [-0.5, 0.5, times],
      ];
      const exact = areaIlluminance(100, 1, factorToPolygon([0, 0, 0], [0, 0, 1], square));
      return lambertianIlluminance(100, times) / exact - 1;
    };
    expect(errorAt(5)).toBeCloseTo(0.0133, 4);
    expect(errorAt(50)).toBeLessThan(2e-4);
  });

  it('limit: a strip seen from beside its end only is less than half a strip', () => {
    expect(stripIlluminance(1000, 0.5, -0.2, 0.7)).toBeLessThan(stripIlluminance(1000, 0.5, 0, 0.5));
  });

  it('refuses negative light and no distance', () => {
    expect(() => pointIlluminance(-1, 1)).toThrow('intensity is -1');
    expect(() => lambertianIlluminance(1, 0)).toThrow('height is 0');
    expect(() => stripIlluminance(1, 0, 1, 1)).toThrow('height is 0');
    expect(() => areaIlluminance(1, 1, 1.1)).toThrow('factor is 1.1');
  });
});
