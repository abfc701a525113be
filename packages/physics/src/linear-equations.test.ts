import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { solveLinear } from './linear-equations.ts';

const entry = fc.double({ min: -10, max: 10, noNaN: true });

describe('solveLinear', () => {
  it('property: the solution fulfils its equations', () => {
    const system = fc
      .integer({ min: 1, max: 8 })
      .chain((size) =>
        fc.tuple(
          fc.array(fc.array(entry, { minLength: size, maxLength: size }), { minLength: size, maxLength: size }),
          fc.array(entry, { minLength: size, maxLength: size }),
        ),
      );
    fc.assert(
      fc.property(system, ([rows, right]) => {
        const heavy = rows.map((row, at) => row.map((value, to) => (at === to ? value + 200 : value)));
        const x = solveLinear(heavy, right);
        for (const [at, row] of heavy.entries()) {
          expect(row.reduce((sum, value, to) => sum + value * x[to]!, 0)).toBeCloseTo(right[at]!, 9);
        }
      }),
    );
  });

  it('exact: exchanges rows where a pivot is 0, and leaves what it was given', () => {
    const rows = [
      [0, 1],
      [1, 0],
    ];
    expect(solveLinear(rows, [2, 3])).toEqual([3, 2]);
    expect(rows[0]).toEqual([0, 1]);
  });

  it('refuses a system without one answer, and shapes that do not fit', () => {
    expect(() => solveLinear([[0]], [1])).toThrow('matrix has no inverse');
    expect(() => solveLinear([[1, 2]], [1])).toThrow('matrix is not 1 by 1');
  });
});
