import { describe, expect, it } from 'vitest';
import { normalQuantile } from '../../numerics/normal.ts';
import { chanceOf, estimated, estimatedBand, meanOf } from './estimate.ts';
import { BLOCKS, evenShares } from './even-samples.ts';

/** A sum of three normal inputs, of 64 samples, by seed. */
const sums = Array.from({ length: 200 }, (_, seed) => {
  const columns = [...evenShares(['one', 'two', 'three'], 64, seed).values()];
  return columns[0]!.map((_u, row) =>
    columns.reduce((sum, column, at) => sum + normalQuantile(column[row]!) / (at + 1), 0),
  );
});

function scatter(values: readonly number[]): number {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  return Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
}

const rootMeanSquare = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value * value, 0) / values.length);

describe('estimates', () => {
  it('cross: the error of a chance is no less than what 200 other seeds scatter by, at most twice it, and below that of random samples', () => {
    const chances = sums.map((values) => chanceOf(values.map((value) => value < 0.5))!);
    const real = scatter(chances.map(({ value }) => value));
    const said = rootMeanSquare(chances.map(({ error }) => error!));
    expect(said / real).toBeGreaterThan(0.95);
    expect(said / real).toBeLessThan(2);
    expect(real).toBeLessThan(0.6 * Math.sqrt((0.66 * 0.34) / 64));
    const mean = chances.reduce((sum, { value }) => sum + value, 0) / chances.length;
    const near = chances.filter(({ value, error }) => Math.abs(value - mean) <= 2 * error!);
    expect(near.length / chances.length).toBeGreaterThan(0.95);
  });

  it('cross: the errors of 10th, 50th and 90th percentile are no less than what other seeds scatter by, at most twice and a half it', () => {
    const bands = sums.map((values) => estimatedBand(values)!);
    for (const key of ['p10', 'p50', 'p90'] as const) {
      const real = scatter(bands.map((band) => band[key]));
      const said = rootMeanSquare(bands.map(({ errors }) => errors![key]));
      expect(said / real, key).toBeGreaterThan(0.95);
      expect(said / real, key).toBeLessThan(2.5);
    }
  });

  it('exact: of a mean the error is that of the means of the blocks', () => {
    const values = sums[0]!;
    const blocks = Array.from({ length: BLOCKS }, (_, block) => {
      const own = values.slice(8 * block, 8 * block + 8);
      return own.reduce((sum, value) => sum + value, 0) / own.length;
    });
    expect(meanOf(values)!.error).toBeCloseTo(scatter(blocks) / Math.sqrt(BLOCKS), 10);
  });

  it('limit: few samples have a value but no error, none neither; what never happened may still happen', () => {
    expect(estimated([3, undefined, 5], (values) => Math.max(...values))).toEqual({ value: 5 });
    expect(chanceOf([undefined])).toBeUndefined();
    expect(estimatedBand([1, 2, 3])).toBeUndefined();
    const always = chanceOf(new Array<boolean>(64).fill(true))!;
    expect(always.value).toBe(1);
    expect(always.error).toBeCloseTo(1 / 66, 12);
  });
});
