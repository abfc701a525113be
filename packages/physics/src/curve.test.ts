import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CurvePoint, curveAt, curveSlope, monotoneCurve, straightCurve } from './curve.ts';

/** Even over the range: doubles drawn by fast-check crowd around zero. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((step) => min + ((max - min) * step) / 1e6);

const steps = fc.array(fc.tuple(evenly(0.1, 3), evenly(0, 5)), {
  minLength: 2,
  maxLength: 12,
});

describe('curves', () => {
  it('property: through falling points a monotone curve falls, also beyond its ends', () => {
    fc.assert(
      fc.property(steps, evenly(-0.5, 1.5), (list, at) => {
        const points: CurvePoint[] = [[0, 100]];
        for (const [dx, dy] of list) {
          const [x, y] = points.at(-1)!;
          points.push([x + dx, y - dy]);
        }
        const curve = monotoneCurve(points);
        const place = at * points.at(-1)![0];
        expect(curveAt(curve, place + 1e-3)).toBeLessThanOrEqual(curveAt(curve, place) + 1e-9);
        expect(curveSlope(curve, place)).toBeLessThanOrEqual(1e-9);
      }),
    );
  });

  it('exact: both kinds go through their points and go on with their end slopes', () => {
    const points: CurvePoint[] = [
      [0, 5],
      [1, 4],
      [3, -1],
    ];
    for (const curve of [monotoneCurve(points), straightCurve(points)]) {
      for (const [x, y] of points) expect(curveAt(curve, x)).toBeCloseTo(y, 12);
      expect(curveAt(curve, -2)).toBeCloseTo(5 - 2 * curveSlope(curve, 0), 12);
      expect(curveAt(curve, 5)).toBeCloseTo(-1 + 2 * curveSlope(curve, 3), 12);
      expect(curveSlope(curve, -2)).toBe(curveSlope(curve, 0));
    }
  });

  it('cross: the slope agrees with differences', () => {
    const curve = monotoneCurve([
      [0, 60],
      [0.4, 46],
      [0.6, 30],
      [0.7, 36],
      [1, 0],
    ]);
    for (const x of [-0.3, 0.1, 0.55, 0.63, 0.9, 1.4])
      expect(curveSlope(curve, x)).toBeCloseTo((curveAt(curve, x + 1e-6) - curveAt(curve, x - 1e-6)) / 2e-6, 4);
  });

  it('cross: before a sharp turn the end slope is held to three chords, as in a general-purpose library (SciPy 1.17.1)', () => {
    const turn = monotoneCurve([
      [0, 0],
      [1, 1],
      [2, -9],
    ]);
    expect(curveSlope(turn, 0)).toBeCloseTo(3, 12);
    expect(curveAt(turn, 0.5)).toBeCloseTo(0.875, 12);
  });

  it('limit: two points are a line, equal neighbours are level', () => {
    const line = monotoneCurve([
      [0, 1],
      [2, 5],
    ]);
    expect(curveAt(line, 1)).toBeCloseTo(3, 12);
    const level = monotoneCurve([
      [0, 3],
      [1, 3],
      [2, 1],
    ]);
    expect(curveAt(level, 0.5)).toBe(3);
  });

  it('exact: refuses too few points, a step back and NaN', () => {
    expect(() => monotoneCurve([[0, 1]])).toThrow('number of points less one is 0');
    expect(() =>
      straightCurve([
        [0, 1],
        [0, 2],
      ]),
    ).toThrow('step of x to point 2 is 0');
    expect(() =>
      monotoneCurve([
        [0, 1],
        [1, Number.NaN],
      ]),
    ).toThrow('y of point 2');
  });
});
