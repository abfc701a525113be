import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  factorToDisk,
  factorToParallelCorner,
  factorToPolygon,
  factorToUprightCorner,
  type Vector,
} from './configuration-factor.ts';

const side = fc.double({ min: 0.05, max: 3, noNaN: true });
const inside = fc.double({ min: 0.05, max: 0.95, noNaN: true });
const up: Vector = [0, 0, 1];
const parallel = (x0: number, x1: number, y0: number, y1: number, z: number): Vector[] => [
  [x0, y0, z],
  [x1, y0, z],
  [x1, y1, z],
  [x0, y1, z],
];

describe('configuration factors', () => {
  it('cross: a polygon that is the rectangle of a closed form has its factor', () => {
    fc.assert(
      fc.property(side, side, side, (a, b, c) => {
        expect(factorToPolygon([0, 0, 0], up, parallel(0, a, 0, b, c))).toBeCloseTo(factorToParallelCorner(a, b, c), 9);
        const wall: Vector[] = [
          [0, c, 0],
          [b, c, 0],
          [b, c, a],
          [0, c, a],
        ];
        expect(factorToPolygon([0, 0, 0], up, wall)).toBeCloseTo(factorToUprightCorner(a, b, c), 9);
      }),
    );
  });

  it('cross: the factor of a disk is the integral of cos² over it', () => {
    const [radius, distance, rings] = [0.13, 0.09, 4000];
    let factor = 0;
    for (let ring = 0; ring < rings; ring += 1) {
      const r = ((ring + 0.5) * radius) / rings;
      factor += (distance ** 2 * 2 * r * (radius / rings)) / (distance ** 2 + r ** 2) ** 2;
    }
    expect(factorToDisk(radius, distance)).toBeCloseTo(factor, 6);
  });

  it('cross: a polygon of many corners has the factor of its disk', () => {
    const ring = Array.from({ length: 720 }, (_, i): Vector => {
      const angle = (i * Math.PI) / 360;
      return [0.7 * Math.cos(angle), 0.7 * Math.sin(angle), 0.4];
    });
    expect(factorToPolygon([0, 0, 0], up, ring)).toBeCloseTo(factorToDisk(0.7, 0.4), 4);
  });

  it('exact: from any place on the floor of any box, ceiling and walls fill the whole view', () => {
    fc.assert(
      fc.property(side, side, side, inside, inside, (a, b, c, s, t) => {
        const at: Vector = [s * a, t * b, 0];
        const walls: Vector[][] = [
          parallel(0, a, 0, b, c),
          [
            [0, 0, 0],
            [a, 0, 0],
            [a, 0, c],
            [0, 0, c],
          ],
          [
            [0, b, 0],
            [a, b, 0],
            [a, b, c],
            [0, b, c],
          ],
          [
            [0, 0, 0],
            [0, b, 0],
            [0, b, c],
            [0, 0, c],
          ],
          [
            [a, 0, 0],
            [a, b, 0],
            [a, b, c],
            [a, 0, c],
          ],
        ];
        expect(walls.reduce((sum, wall) => sum + factorToPolygon(at, up, wall), 0)).toBeCloseTo(1, 9);
      }),
    );
  });

  it('exact: what lies behind the element is cut off, wherever the list of corners begins', () => {
    const wall: Vector[] = [
      [0, 1, -2],
      [1, 1, -2],
      [1, 1, 1],
      [0, 1, 1],
    ];
    for (let turn = 0; turn < 4; turn += 1) {
      const turned = [...wall.slice(turn), ...wall.slice(0, turn)];
      expect(factorToPolygon([0, 0, 0], up, turned)).toBeCloseTo(factorToUprightCorner(1, 1, 1), 12);
      expect(factorToPolygon([0, 0, 0], up, turned.reverse())).toBeCloseTo(factorToUprightCorner(1, 1, 1), 12);
    }
    expect(factorToPolygon([0, 0, 0], up, parallel(0, 1, 0, 1, -1))).toBe(0);
    expect(factorToPolygon([0.4, 0.5, 0], up, parallel(0, 1, 0, 1, 0))).toBe(0);
  });

  it('limit: a quarter of the sky is a quarter', () => {
    expect(factorToParallelCorner(1e5, 1e5, 1)).toBeCloseTo(0.25, 4);
    expect(factorToDisk(1e5, 1)).toBeCloseTo(1, 9);
    expect(factorToDisk(0.1, 0)).toBe(1);
    expect(factorToUprightCorner(1e5, 1e5, 1e-3)).toBeCloseTo(0.25, 4);
  });

  it('refuses rectangles without extent', () => {
    expect(() => factorToDisk(0, 1)).toThrow('radius is 0');
    expect(() => factorToDisk(1, -1)).toThrow('distance is -1');
    expect(() => factorToParallelCorner(1, Number.NaN, 1)).toThrow('depth is NaN');
    expect(() => factorToUprightCorner(1, 1, -1)).toThrow('distance is -1');
  });
});
