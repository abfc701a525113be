// Functions whose shares of variance are known in closed form, of numbers evenly spread over 0 < u < 1: for tests and checks.

import { evenColumn } from './owen-scramble.ts';
import { type ShareOfVariance, sobolShares } from './sobol-indices.ts';

type Result = (u: readonly number[]) => number;

/** T. Ishigami & T. Homma, ISUMA 90 (1990): sin x1 + 7 sin² x2 + 0.1 x3⁴ sin x1, −π < x < π. */
export const ishigami: Result = (u) => {
  const [x1, x2, x3] = u.map((share) => Math.PI * (2 * share - 1)) as [number, number, number];
  return Math.sin(x1) + 7 * Math.sin(x2) ** 2 + 0.1 * x3 ** 4 * Math.sin(x1);
};

/** Its shares by integration: V1 = (1 + bπ⁴/5)²/2, V2 = a²/8, V13 = b²π⁸(1/18 − 1/50). */
export function ishigamiShares(): { first: number[]; total: number[] } {
  const [a, b] = [7, 0.1];
  const [one, two] = [(1 + (b * Math.PI ** 4) / 5) ** 2 / 2, (a * a) / 8];
  const both = b * b * Math.PI ** 8 * (1 / 18 - 1 / 50);
  const all = one + two + both;
  return { first: [one / all, two / all, 0], total: [(one + both) / all, two / all, both / all] };
}

/** The g-function of I. M. Sobol' with a = 0, 1, 4.5, 9, 99, 99, 99, 99: Π (|4u − 2| + a)/(1 + a). */
const gWeights: readonly number[] = [0, 1, 4.5, 9, 99, 99, 99, 99];
export const gFunction: Result = (u) =>
  gWeights.reduce((product, a, at) => (product * (Math.abs(4 * u[at]! - 2) + a)) / (1 + a), 1);

/** V_i = 1/(3 (1 + a_i)²), and the variance of the product Π (1 + V_i) − 1. */
export function gShares(): { first: number[]; total: number[] } {
  const own = gWeights.map((a) => 1 / (3 * (1 + a) ** 2));
  const product = own.reduce((all, one) => all * (1 + one), 1);
  return {
    first: own.map((one) => one / (product - 1)),
    total: own.map((one) => (one * product) / (1 + one) / (product - 1)),
  };
}

/** Estimated from `rows` rows of an even sequence. */
export function estimatedShares(of: Result, inputs: number, rows: number, seed: number): ShareOfVariance[] {
  const columns = Array.from({ length: 2 * inputs }, (_, at) => evenColumn(at, rows, 1000 * seed + at));
  const row = (at: number, exchanged: readonly number[]): number[] =>
    Array.from({ length: inputs }, (_, input) => columns[exchanged.includes(input) ? inputs + input : input]![at]!);
  const every = Array.from({ length: inputs }, (_, input) => input);
  const run = (exchanged: readonly number[]): number[] =>
    Array.from({ length: rows }, (_, at) => of(row(at, exchanged)));
  const shares = sobolShares(
    run([]),
    run(every),
    every.map((input) => run([input])),
  );
  return shares.map((share) => share!);
}
