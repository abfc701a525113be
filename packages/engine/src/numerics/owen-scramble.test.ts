import { describe, expect, it } from 'vitest';
import { evenColumn, owenScrambled } from './owen-scramble.ts';
import { randomStream } from './random.ts';
import { SOBOL_DIMENSIONS, sobolDigits } from './sobol-sequence.ts';

/** Largest difference between the share of points in a box from the origin and its volume, squared and averaged: T. T. Warnock 1972. */
function starDiscrepancy(columns: readonly (readonly number[])[]): number {
  const [count, size] = [columns[0]!.length, columns.length];
  let [single, pairs] = [0, 0];
  for (let a = 0; a < count; a += 1) {
    single += columns.reduce((product, column) => (product * (1 - column[a]! ** 2)) / 2, 1);
    for (let b = 0; b < count; b += 1)
      pairs += columns.reduce((product, column) => product * (1 - Math.max(column[a]!, column[b]!)), 1);
  }
  return Math.sqrt(3 ** -size - (2 / count) * single + pairs / count ** 2);
}

const even = (size: number, count: number, seed: number): number[][] =>
  Array.from({ length: size }, (_, at) => evenColumn(at, count, 100 * seed + at));
const random = (size: number, count: number, seed: number): number[][] => {
  const stream = randomStream(seed);
  return Array.from({ length: size }, () => Array.from({ length: count }, stream));
};

function rootMeanSquare(values: readonly number[]): number {
  return Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);
}

/** Error of the mean of Π (1 + (u − ½)/j) over the cube, whose integral is 1. */
const integrationError = (columns: readonly (readonly number[])[]): number =>
  columns[0]!.reduce(
    (sum, _, row) => sum + columns.reduce((all, u, at) => all * (1 + (u[row]! - 0.5) / (at + 1)), 1),
    0,
  ) /
    columns[0]!.length -
  1;

describe('scrambled points', () => {
  it('property: scrambling keeps every dyadic cell of two axes at one point each', () => {
    const [x, y] = [evenColumn(0, 64, 5), evenColumn(1, 64, 6)];
    for (const [across, up] of [
      [64, 1],
      [8, 8],
      [2, 32],
    ] as const) {
      const cells = new Set(x.map((u, at) => `${Math.floor(u * across)},${Math.floor(y[at]! * up)}`));
      expect(cells.size, `${across} by ${up}`).toBe(64);
    }
  });

  it('property: points that share their first digits still do, and those that differ still differ', () => {
    const points = [...sobolDigits(3, 32)];
    const made = points.map((digits) => Math.floor(owenScrambled(digits, 9) * 2 ** 24));
    for (const [at, a] of points.entries())
      for (const [to, b] of points.entries())
        expect(Math.clz32((made[at]! ^ made[to]!) << 8)).toBe(at === to ? 32 : Math.clz32(a ^ b));
  });

  it('exact: a scrambled point is evenly distributed over seeds: mean 1/2 and variance 1/12 within four standard errors', () => {
    const values = Array.from({ length: 20_000 }, (_, seed) => owenScrambled(sobolDigits(1, 4)[3]!, seed));
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
    expect(Math.abs(mean - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / values.length));
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(4 * Math.sqrt(1 / 180 / values.length));
  });

  it('property: equal seeds give equal columns, others others; beyond the direction numbers columns are Latin', () => {
    expect(evenColumn(7, 32, 1)).toEqual(evenColumn(7, 32, 1));
    expect(evenColumn(7, 32, 1)).not.toEqual(evenColumn(7, 32, 2));
    const beyond = evenColumn(SOBOL_DIMENSIONS, 32, 1);
    expect(new Set(beyond.map((u) => Math.floor(32 * u))).size).toBe(32);
  });

  it('property: in 6 dimensions 256 points have less than two thirds of the discrepancy of random ones', () => {
    const ours = rootMeanSquare([1, 2, 3, 4].map((seed) => starDiscrepancy(even(6, 256, seed))));
    const theirs = rootMeanSquare([1, 2, 3, 4].map((seed) => starDiscrepancy(random(6, 256, seed))));
    expect(ours).toBeLessThan((2 / 3) * theirs);
  });

  it('order: the error of a mean over 8 inputs falls faster than 1/n, that of random points as 1/√n', () => {
    const slope = (of: (count: number, seed: number) => number[][]): number => {
      const [few, many] = [32, 2048].map((count) =>
        rootMeanSquare(Array.from({ length: 12 }, (_, seed) => integrationError(of(count, seed)))),
      ) as [number, number];
      return Math.log(many / few) / Math.log(2048 / 32);
    };
    expect(slope((count, seed) => even(8, count, seed))).toBeLessThan(-1.1);
    const plain = slope((count, seed) => random(8, count, seed));
    expect(plain).toBeLessThan(-0.3);
    expect(plain).toBeGreaterThan(-0.7);
  });
});
