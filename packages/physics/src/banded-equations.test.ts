import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveBand } from './banded-equations.ts';
import { solveLinear } from './linear-equations.ts';

describe('solveBand', () => {
  it('cross: agrees with elimination of the full matrix', () => {
    const shape = fc.tuple(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 0, max: 4 }), fc.integer());
    fc.assert(
      fc.property(shape, ([size, width, seed]) => {
        const entry = (row: number, distance: number) => Math.sin(seed + 7 * row + 3 * distance);
        const values = new Float64Array(size * (width + 1));
        const full = Array.from({ length: size }, () => new Array<number>(size).fill(0));
        for (let row = 0; row < size; row++) {
          for (let distance = 0; distance <= Math.min(row, width); distance++) {
            const value = distance === 0 ? 10 + entry(row, 0) : entry(row, distance);
            values[row * (width + 1) + distance] = value;
            full[row]![row - distance] = value;
            full[row - distance]![row] = value;
          }
        }
        const right = Float64Array.from({ length: size }, (_, row) => Math.cos(seed + row));
        const wanted = solveLinear(full, [...right]);
        solveBand({ size, width, values }, right);
        for (let row = 0; row < size; row++) expect(right[row]).toBeCloseTo(wanted[row]!, 10);
      }),
    );
  });

  it('refuses a matrix that is not positive definite', () => {
    expect(() => solveBand({ size: 1, width: 0, values: Float64Array.of(-1) }, Float64Array.of(1))).toThrow(
      'row 0 leaves -1',
    );
  });
});
