// Quantiles against printed tables.

import type { OutsideCheck } from '@stillair/physics';
import { binomialShare, chiSquaredQuantile, studentQuantile } from './distributions.ts';

const T = "table of Student's t, upper 2.5 percent, in any textbook of statistics";
const CHI = 'table of chi-squared, upper 5 percent, in any textbook of statistics';

const row = (
  what: string,
  formula: string,
  source: string,
  known: OutsideCheck['known'],
  expected: number,
  tolerance: number,
  got: () => number,
): OutsideCheck => ({ what, formula, source, known, expected, unit: '-', tolerance, got });

export const checks: readonly OutsideCheck[] = [
  ...(
    [
      [1, 12.706],
      [2, 4.303],
      [5, 2.571],
      [10, 2.228],
      [30, 2.042],
      [120, 1.98],
    ] as const
  ).map(([freedom, expected]) =>
    row(`${freedom} degrees of freedom`, 'studentQuantile', T, 'memory', expected, 5.01e-4, () =>
      studentQuantile(0.975, freedom),
    ),
  ),
  ...(
    [
      [1, 3.841],
      [2, 5.991],
      [5, 11.07],
      [10, 18.307],
      [30, 43.773],
    ] as const
  ).map(([freedom, expected]) =>
    row(`${freedom} degrees of freedom`, 'chiSquaredQuantile', CHI, 'memory', expected, 5.01e-4, () =>
      chiSquaredQuantile(0.95, freedom),
    ),
  ),
  row(
    'at most 2 of 10 with chance 0.25',
    'binomialShare',
    'table of the cumulative binomial in any textbook of statistics',
    'memory',
    0.5256,
    5.01e-5,
    () => binomialShare(2, 10, 0.25),
  ),
];
