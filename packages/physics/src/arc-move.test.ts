import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arcBox, arcMiddle, arcRound, type PlanePoint } from './arc-move.ts';

const coordinate = fc.double({ min: -200, max: 200, noNaN: true });
const point = fc.tuple(coordinate, coordinate);
const apart = (a: PlanePoint, b: PlanePoint): number => Math.hypot(a[0] - b[0], a[1] - b[1]);

describe('arcRound', () => {
  it('exact: a whole turn where it ends as it begins', () => {
    expect(arcRound([3, 4], [3, 4], [0, 0], false)).toMatchObject({ radius: 5, sweep: 2 * Math.PI });
    expect(arcRound([3, 4], [3, 4], [0, 0], true).sweep).toBeCloseTo(-2 * Math.PI, 12);
  });

  it('property: both ways round make one turn', () => {
    fc.assert(
      fc.property(point, point, point, (begin, end, middle) => {
        fc.pre(apart(begin, middle) > 0.1 && apart(end, middle) > 0.1 && apart(begin, end) > 0.1);
        const [one, other] = [arcRound(begin, end, middle, false), arcRound(begin, end, middle, true)];
        expect(one.sweep - other.sweep).toBeCloseTo(2 * Math.PI, 9);
        expect(one.sweep).toBeGreaterThanOrEqual(0);
      }),
    );
  });
});

describe('arcMiddle', () => {
  it('property: as far from both ends; above 0 less than half round, below more', () => {
    fc.assert(
      fc.property(
        point,
        point,
        fc.double({ min: 1.001, max: 30, noNaN: true }),
        fc.boolean(),
        fc.boolean(),
        (begin, end, times, clockwise, far) => {
          fc.pre(apart(begin, end) > 0.1);
          const radius = ((times * apart(begin, end)) / 2) * (far ? -1 : 1);
          const middle = arcMiddle(begin, end, radius, clockwise);
          expect(apart(begin, middle) / Math.abs(radius)).toBeCloseTo(1, 9);
          expect(apart(end, middle) / Math.abs(radius)).toBeCloseTo(1, 9);
          const { sweep } = arcRound(begin, end, middle, clockwise);
          expect(Math.abs(sweep) > Math.PI).toBe(far);
          expect(sweep < 0).toBe(clockwise);
        },
      ),
    );
  });

  it('limit: a radius too small gives the half circle', () => {
    expect(arcMiddle([0, 0], [2, 0], 0.5, true)).toEqual([1, 0]);
  });
});

describe('arcBox', () => {
  it('cross: holds what two thousand points of the arc hold', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.1, max: 100, noNaN: true }),
        fc.double({ min: -3.1, max: 3.1, noNaN: true }),
        fc.double({ min: -6.28, max: 6.28, noNaN: true }),
        (radius, from, sweep) => {
          const { x, y } = arcBox({ middle: [1, 2], radius, from, sweep });
          const angles = Array.from({ length: 2001 }, (_, at) => from + (sweep * at) / 2000);
          const across = angles.map((angle) => 1 + radius * Math.cos(angle));
          const along = angles.map((angle) => 2 + radius * Math.sin(angle));
          const near = radius * 1e-5;
          for (const [got, expected] of [
            [x[0], Math.min(...across)],
            [x[1], Math.max(...across)],
            [y[0], Math.min(...along)],
            [y[1], Math.max(...along)],
          ] as const)
            expect(Math.abs(got - expected)).toBeLessThanOrEqual(near);
        },
      ),
      { numRuns: 200 },
    );
  });
});

it.each([
  [() => arcRound([0, 0], [1, 0], [0, 0], false), 'arcRound: radius is 0'],
  [() => arcMiddle([1, 1], [1, 1], 2, false), 'arcMiddle: chord is 0'],
  [() => arcBox({ middle: [0, 0], radius: 1, from: 0, sweep: Number.NaN }), 'arcBox: sweep is NaN'],
])('exact: refuses nonsense (%#)', (call, message) => {
  expect(call).toThrow(message);
});
