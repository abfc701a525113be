import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Axis, type Point, type Solid, solidGap } from './solid-gap.ts';

const box = (from: Point, to: Point): Solid => ({ from, to });
const cylinder = (centre: Point, radius: number, half: number, round: Axis): Solid => {
  const reach = ([0, 1, 2] as const).map((axis) => (axis === round ? half : radius));
  return {
    from: [centre[0] - reach[0]!, centre[1] - reach[1]!, centre[2] - reach[2]!],
    to: [centre[0] + reach[0]!, centre[1] + reach[1]!, centre[2] + reach[2]!],
    round,
  };
};
const unit = box([0, 0, 0], [1, 1, 1]);

describe('solidGap', () => {
  it.each([
    ['side by side', box([1.5, 0, 0], [2, 1, 1]), 0.5],
    ['edge to edge', box([4, 5, 0], [6, 6, 1]), 5],
    ['corner to corner', box([2, 3, 3], [4, 4, 4]), 3],
    ['touching', box([1, 0, 0], [2, 1, 1]), 0],
    ['a fifth inside', box([0.8, -1, -1], [2, 2, 2]), -0.2],
  ] as const)('exact: boxes %s', (_, other, gap) => {
    expect(solidGap(unit, other)).toBeCloseTo(gap, 12);
  });

  it('exact: a cylinder beside a face, and before an edge', () => {
    expect(solidGap(cylinder([3, 0.5, 0.5], 0.5, 0.5, 2), unit)).toBeCloseTo(1.5, 12);
    expect(solidGap(cylinder([4, 5, 0.5], 2, 0.5, 2), unit)).toBeCloseTo(5 - 2, 12);
  });

  it('exact: two cylinders along one axis, and one above the other', () => {
    const a = cylinder([0, 0, 0], 1, 1, 1);
    expect(solidGap(a, cylinder([3, 0, 4], 2, 1, 1))).toBeCloseTo(2, 12);
    expect(solidGap(a, cylinder([0, 5, 0], 1, 1, 1))).toBeCloseTo(3, 12);
  });

  it('limit: crossed cylinders count as boxes, which never tells a gap too large', () => {
    const gap = solidGap(cylinder([0, 0, 0], 1, 1, 0), cylinder([0, 0, 3], 1, 1, 1));
    expect(gap).toBeCloseTo(1, 12);
  });

  const coordinate = fc.double({ min: -2, max: 2, noNaN: true });
  const half = fc.double({ min: 0.05, max: 1, noNaN: true });
  const boxes = fc
    .tuple(coordinate, coordinate, coordinate, half, half, half)
    .map(([x, y, z, a, b, c]) => box([x - a, y - b, z - c], [x + a, y + b, z + c]));

  it('property: the same from both sides, and no point of one comes nearer to the other', () => {
    fc.assert(
      fc.property(
        boxes,
        boxes,
        fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 6, maxLength: 6 }),
        (a, b, shares) => {
          const gap = solidGap(a, b);
          expect(gap).toBeCloseTo(solidGap(b, a), 12);
          const inside = (solid: Solid, at: number): number[] =>
            [0, 1, 2].map((axis) => solid.from[axis]! + shares[at + axis]! * (solid.to[axis]! - solid.from[axis]!));
          const [p, q] = [inside(a, 0), inside(b, 3)];
          const distance = Math.hypot(...p.map((value, axis) => value - q[axis]!));
          expect(distance).toBeGreaterThanOrEqual(Math.max(gap, 0) - 1e-12);
        },
      ),
    );
  });

  it('cross: a cylinder’s gap to a box is the least over points of both, by search', () => {
    fc.assert(
      fc.property(boxes, coordinate, coordinate, half, (b, x, y, radius) => {
        const gap = solidGap(cylinder([x, y, 0], radius, 3, 2), b);
        let least = Infinity;
        for (let step = 0; step < 720; step += 1)
          for (let ring = 0; ring <= 20; ring += 1) {
            const angle = (step * Math.PI) / 360;
            const px = x + (ring / 20) * radius * Math.cos(angle);
            const py = y + (ring / 20) * radius * Math.sin(angle);
            const dx = Math.max(b.from[0] - px, 0, px - b.to[0]);
            const dy = Math.max(b.from[1] - py, 0, py - b.to[1]);
            least = Math.min(least, Math.hypot(dx, dy));
          }
        if (gap > 0) expect(least).toBeCloseTo(gap, 2);
        else expect(least).toBeLessThan(0.05);
      }),
      { numRuns: 60 },
    );
  });

  it('refuses a corner that is no number', () => {
    expect(() => solidGap(unit, box([0, 0, 0], [Number.NaN, 1, 1]))).toThrow('solidGap: corner is NaN');
  });
});
