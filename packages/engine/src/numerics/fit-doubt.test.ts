import { describe, expect, it } from 'vitest';
import { inverseGram, leastNorm, ofColumns, singularDirections } from './dense.ts';
import { blindDirections, correlationsOf, doubtOf } from './fit-doubt.ts';

describe('dense matrices', () => {
  const a = ofColumns([
    [1, 1, 1, 1],
    [0, 1, 2, 3],
  ]);

  it('exact: least squares of a line by reflections', () => {
    expect([...leastNorm(a, [1, 3, 5, 7])]).toEqual([expect.closeTo(1, 12), expect.closeTo(2, 12)]);
  });

  it('limit: a column that others span gets 0', () => {
    const twice = ofColumns([
      [1, 1, 1],
      [2, 2, 2],
    ]);
    expect([...leastNorm(twice, [3, 3, 3])]).toEqual([expect.closeTo(3, 12), 0]);
  });

  it('exact: singular values and the longest direction of a matrix with AᵀA = [9 12; 12 41]', () => {
    const { sizes, vectors } = singularDirections(
      ofColumns([
        [3, 0],
        [4, 5],
      ]),
    );
    expect(sizes[0]! ** 2).toBeCloseTo(45, 10);
    expect(sizes[1]! ** 2).toBeCloseTo(5, 10);
    expect(Math.abs(vectors[0]![0]!)).toBeCloseTo(1 / Math.sqrt(10), 10);
  });

  it('exact: the inverse of AᵀA for the line', () => {
    // AᵀA = [4 6; 6 14], determinant 20.
    for (const [at, wanted] of [0.7, -0.3, -0.3, 0.2].entries())
      expect(inverseGram(a).values[at]).toBeCloseTo(wanted, 12);
  });
});

describe('doubt of a fit', () => {
  const line = ofColumns([
    [1, 1, 1, 1],
    [0, 1, 2, 3],
  ]);

  it('exact: deviations and correlation of a line', () => {
    const doubt = doubtOf(line, 0.8);
    expect(doubt.deviations[1]).toBeCloseTo(Math.sqrt(0.4 * 0.2), 12);
    expect(correlationsOf(doubt.covariance).values[1]).toBeCloseTo(-0.3 / Math.sqrt(0.7 * 0.2), 12);
  });

  it('exact: two unknowns that only show as a sum have one blind direction with even parts', () => {
    const sum = ofColumns([
      [10, 10, 10],
      [10, 10, 10],
    ]);
    const [blind, ...more] = blindDirections(sum, [1, 1]);
    expect(more).toEqual([]);
    expect(blind!.left).toBeCloseTo(1, 9);
    expect(blind!.members.map(({ part }) => Math.abs(part))).toEqual([
      expect.closeTo(Math.SQRT1_2, 9),
      expect.closeTo(Math.SQRT1_2, 9),
    ]);
  });

  it('limit: what is told well is not blind', () => {
    expect(blindDirections(line, [100, 100])).toEqual([]);
  });
});
