import { describe, expect, it } from 'vitest';
import { expandAdditively, hermite, varianceOf } from './additive-expansion.ts';
import { normalQuantile } from './normal.ts';
import { evenColumn } from './owen-scramble.ts';
import { randomStream } from './random.ts';
import { ishigami, ishigamiShares } from './test-functions.ts';

const scoresOf = (inputs: number, count: number, seed: number): number[][] =>
  Array.from({ length: inputs }, (_, at) => evenColumn(at, count, 1000 * seed + at).map(normalQuantile));

describe('additive expansion', () => {
  it('exact: a sum of one polynomial each gives back its coefficients', () => {
    const inputs = scoresOf(6, 128, 1);
    const results = inputs[0]!.map((z, at) => {
      const other = hermite(inputs[3]![at]!);
      return 5 + 2 * z + 0.7 * other[1] - 0.4 * other[2];
    });
    const { parts, residual, variance } = expandAdditively(inputs, results);
    expect(residual).toBeLessThan(1e-20);
    expect(variance).toBeCloseTo(4 + 0.49 + 0.16, 9);
    expect(parts.map(({ input }) => input)).toEqual([0, 3]);
    expect(parts[0]!.coefficients[0]).toBeCloseTo(2, 9);
    expect(parts[1]!.coefficients[1]).toBeCloseTo(0.7, 9);
    expect(parts[1]!.coefficients[2]).toBeCloseTo(-0.4, 9);
  });

  it('exact: shares of a linear sum of a hundred inputs, the strong ones within 0.03', () => {
    const inputs = scoresOf(100, 512, 2);
    const weights = inputs.map((_, at) => 1 / (at + 1));
    const all = weights.reduce((sum, weight) => sum + weight * weight, 0);
    const results = inputs[0]!.map((_, row) =>
      inputs.reduce((sum, column, at) => sum + weights[at]! * column[row]!, 0),
    );
    const { parts, variance, excess } = expandAdditively(inputs, results);
    for (const [at, weight] of weights.slice(0, 5).entries()) {
      const part = parts.find(({ input }) => input === at)!;
      expect(Math.abs(varianceOf(part.coefficients, excess) / variance - weight ** 2 / all)).toBeLessThan(0.03);
    }
  });

  it('limit: noise alone names about one term in twenty studies', () => {
    const random = randomStream(3);
    let named = 0;
    for (let study = 0; study < 100; study += 1) {
      const column = (): number[] => Array.from({ length: 64 }, () => normalQuantile(random()));
      named += expandAdditively(Array.from({ length: 30 }, column), column()).parts.length;
    }
    expect(named).toBeLessThan(15);
  });

  it('limit: a result that does not vary has no parts, and a product of two inputs is left to the residual', () => {
    const inputs = scoresOf(2, 1024, 4);
    expect(expandAdditively(inputs, new Array<number>(1024).fill(7))).toEqual({
      mean: 7,
      parts: [],
      residual: 0,
      variance: 0,
      excess: 0,
    });
    const product = expandAdditively(
      inputs,
      inputs[0]!.map((z, at) => z * inputs[1]![at]!),
    );
    expect(product.residual / product.variance).toBeGreaterThan(0.9);
  });

  it('exact: two inputs with the same samples are told once', () => {
    const [one] = scoresOf(1, 64, 5) as [number[]];
    const { parts } = expandAdditively(
      [one, [...one]],
      one.map((z) => 3 * z),
    );
    expect(parts).toHaveLength(1);
  });

  it('limit: what rises and falls again within one input is told too small, never too large: Ishigami’s x1 and x2', () => {
    const columns = [0, 1, 2].map((at) => evenColumn(at, 1024, 50 + at));
    const { parts, variance, excess } = expandAdditively(
      columns.map((column) => column.map(normalQuantile)),
      columns[0]!.map((_, row) => ishigami(columns.map((column) => column[row]!))),
    );
    const share = (at: number): number =>
      varianceOf(parts.find(({ input }) => input === at)?.coefficients ?? [], excess) / variance;
    const { first } = ishigamiShares();
    expect(share(0)).toBeGreaterThan(0.5 * first[0]!);
    expect(share(0)).toBeLessThan(first[0]! + 0.02);
    expect(share(1)).toBeLessThan(first[1]! + 0.02);
    expect(share(2)).toBe(0);
  });
});
