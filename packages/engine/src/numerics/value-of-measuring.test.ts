import { describe, expect, it } from 'vitest';
import { expandAdditively } from './additive-expansion.ts';
import { normalQuantile } from './normal.ts';
import { normalScores, scoreOfLimit } from './normal-scores.ts';
import { evenColumn } from './owen-scramble.ts';
import { readingCorrelation, varianceTakenAway, wrongCalls } from './value-of-measuring.ts';

/** The normal distribution by a table turned round: the share whose quantile is z. */
function normalShare(z: number): number {
  let [low, high] = [0, 1];
  for (let step = 0; step < 60; step += 1) {
    const middle = (low + high) / 2;
    if (normalQuantile(middle) < z) low = middle;
    else high = middle;
  }
  return low;
}

/** Y = Σ a_i z_i with unit variance against L, after a reading of z_i: the mean of Φ(−|L − a ρ r|/√(1 − a²ρ²)) over r. */
function linearGaussian(weight: number, limit: number, correlation: number): number {
  const count = 4000;
  let sum = 0;
  for (let at = 0; at < count; at += 1) {
    const reading = normalQuantile((at + 0.5) / count);
    const left = Math.sqrt(1 - (weight * correlation) ** 2);
    sum += normalShare(-Math.abs(limit - weight * correlation * reading) / left) / count;
  }
  return sum;
}

const weights = [0.8, 0.5, Math.sqrt(1 - 0.64 - 0.25)];
const inputs = Array.from({ length: 30 }, (_, at) => evenColumn(at, 1024, 70 + at).map(normalQuantile));
const results = inputs[0]!.map((_, row) => weights.reduce((sum, weight, at) => sum + weight * inputs[at]![row]!, 0));
const scores = normalScores(results);

describe('value of a measurement', () => {
  it.each([
    [0, 0.6, 0],
    [0, 0.6, 0.5],
    [0, 0.6, 2],
    [1, 0.6, 0],
    [0, -1.2, 0.3],
  ])(
    'exact: a sum of normal inputs, input %d, limit %d, error %d: chance of a wrong call within 0.012 of the closed form',
    (input, limit, error) => {
      const correlation = readingCorrelation(error);
      const expansion = expandAdditively(inputs, scores);
      const part = expansion.parts.find((one) => one.input === input)!;
      const got = wrongCalls(scores, inputs[input]!, part, scoreOfLimit(results, scores, limit), correlation);
      expect(Math.abs(got.before - normalShare(-Math.abs(limit)))).toBeLessThan(0.012);
      expect(Math.abs(got.after - linearGaussian(weights[input]!, limit, correlation))).toBeLessThan(0.012);
    },
  );

  it.each([0, 0.5, 1, 3])(
    'exact: variance taken away of a sum of normal inputs is a²/(1 + error²), error %d',
    (error) => {
      const expansion = expandAdditively(inputs, results);
      for (const part of expansion.parts) {
        const taken = varianceTakenAway(expansion, part, readingCorrelation(error));
        expect(Math.abs(taken - (weights[part.input] ?? 0) ** 2 / (1 + error * error))).toBeLessThan(0.02);
      }
    },
  );

  it('exact: a result that one input decides alone is told rightly after an exact reading of it', () => {
    const step = inputs[0]!.map((z) => Math.exp(z));
    const own = normalScores(step);
    const part = expandAdditively(inputs, own).parts[0]!;
    const got = wrongCalls(own, inputs[0]!, part, scoreOfLimit(step, own, 1), 1);
    expect(got.before).toBeGreaterThan(0.45);
    expect(got.after).toBeLessThan(0.02);
  });

  it('cross: a product of two inputs agrees within 0.03 with its calls counted in a hundred thousand draws', () => {
    const count = 100_000;
    const result = (a: number, b: number): number => Math.exp(0.8 * a + 0.4 * b) + 0.3 * b;
    const sample = inputs[0]!.map((a, at) => result(a, inputs[1]![at]!));
    const own = normalScores(sample);
    const part = expandAdditively(inputs, own).parts.find(({ input }) => input === 0)!;
    const got = wrongCalls(own, inputs[0]!, part, scoreOfLimit(sample, own, 1.5), readingCorrelation(0.5));
    const cells = Array.from({ length: 200 }, () => [0, 0] as [number, number]);
    const draws = [300, 301, 302].map((seed, at) => evenColumn(at, count, seed).map(normalQuantile));
    for (let at = 0; at < count; at += 1) {
      const [a, b, e] = draws.map((column) => column[at]!) as [number, number, number];
      const reading = (a + 0.5 * e) / Math.sqrt(1.25);
      const cell = cells[Math.min(199, Math.max(0, Math.floor(25 * (reading + 4))))]!;
      cell[result(a, b) <= 1.5 ? 0 : 1] += 1;
    }
    const counted = cells.reduce((sum, [below, above]) => sum + Math.min(below, above), 0) / count;
    expect(Math.abs(got.after - counted)).toBeLessThan(0.03);
  });

  it('property: a worse reading never helps more; one of no use changes nothing', () => {
    const part = expandAdditively(inputs, scores).parts[0]!;
    const limit = scoreOfLimit(results, scores, 0.3);
    const after = [0, 0.2, 0.5, 1, 2, 5, 1000].map(
      (error) => wrongCalls(scores, inputs[part.input]!, part, limit, readingCorrelation(error)).after,
    );
    for (const [at, value] of after.slice(1).entries()) expect(value).toBeGreaterThanOrEqual(after[at]! - 0.004);
    const { before, after: useless } = wrongCalls(scores, inputs[part.input]!, part, limit, readingCorrelation(1000));
    expect(Math.abs(before - useless)).toBeLessThan(0.002);
  });

  it('limit: where all samples lie on one side of the limit, no call is wrong', () => {
    const part = expandAdditively(inputs, scores).parts[0]!;
    const limit = scoreOfLimit(results, scores, 100);
    expect(limit).toBe(Infinity);
    expect(wrongCalls(scores, inputs[part.input]!, part, limit, 1)).toEqual({ before: 0, after: 0 });
    expect(scoreOfLimit(results, scores, -100)).toBe(-Infinity);
  });
});
