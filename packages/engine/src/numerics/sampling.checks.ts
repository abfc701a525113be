// Even sequences and shares of variance against what was published of them.

import { check, type OutsideCheck } from '@stillair/physics';
import { oddNumbers, sobolDigits } from './sobol-sequence.ts';
import { estimatedShares, gFunction, ishigami } from './test-functions.ts';

const bratley =
  'P. Bratley & B. L. Fox, ACM Trans. Math. Softw. 14 (1988) 88-100, worked example x³ + x + 1 with 1, 3, 7';
const joe = 'S. Joe & F. Y. Kuo 2008, first points of the sequence in ten dimensions';
const library = 'Sobol’ sequence of a general-purpose numerical library (SciPy 1.17.1), not scrambled';
const primer = 'A. Saltelli et al., Global Sensitivity Analysis: The Primer, Wiley, 2008';

/** The example's m4 to m6. */
const continued = [5, 7, 43];

/** Points 2 to 8, dimensions 1 to 10. */
const firstPoints = [
  [0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5, 0.5],
  [0.75, 0.25, 0.25, 0.25, 0.75, 0.75, 0.25, 0.75, 0.75, 0.75],
  [0.25, 0.75, 0.75, 0.75, 0.25, 0.25, 0.75, 0.25, 0.25, 0.25],
  [0.375, 0.375, 0.625, 0.875, 0.375, 0.125, 0.375, 0.875, 0.875, 0.625],
  [0.875, 0.875, 0.125, 0.375, 0.875, 0.625, 0.875, 0.375, 0.375, 0.125],
  [0.625, 0.125, 0.875, 0.625, 0.625, 0.875, 0.125, 0.125, 0.125, 0.375],
  [0.125, 0.625, 0.375, 0.125, 0.125, 0.375, 0.625, 0.625, 0.625, 0.875],
];

/** Point and dimension from 0, coordinate. */
const farPoints = [
  [5, 9, 0.125],
  [10, 9, 0.5625],
  [37, 119, 0.140625],
  [63, 212, 0.171875],
  [45, 480, 0.296875],
  [21, 359, 0.71875],
] as const;

const coordinate = (point: number, dimension: number): number => sobolDigits(dimension, point + 1)[point]! / 2 ** 32;

/** First and total order, to three printed digits. */
const ishigamiPublished = [
  [0.314, 0.558],
  [0.442, 0.442],
  [0, 0.244],
] as const;
const gPublished = [
  [0.716, 0.787],
  [0.179, 0.242],
  [0.024, 0.034],
  [0.007, 0.01],
] as const;

export const checks: readonly OutsideCheck[] = [
  ...continued.map((expected, at) =>
    check(`m${at + 4}`, 'oddNumbers', bratley, 'memory', expected, '-', 0, () => oddNumbers(11, [1, 3, 7], 6)[at + 3]!),
  ),
  ...firstPoints.map((row, at) =>
    check(`point ${at + 2}: its ten coordinates`, 'sobolDigits', joe, 'memory', 0, 'largest difference', 0, () =>
      Math.max(...row.map((expected, dimension) => Math.abs(coordinate(at + 1, dimension) - expected))),
    ),
  ),
  ...farPoints.map(([point, dimension, expected]) =>
    check(
      `point ${point + 1}, dimension ${dimension + 1}`,
      'sobolDigits',
      library,
      'independent',
      expected,
      '-',
      0,
      () => coordinate(point, dimension),
    ),
  ),
  ...ishigamiPublished.flatMap((row, input) =>
    row.map((expected, order) =>
      check(
        `Ishigami’s function, a = 7, b = 0.1: ${order === 0 ? 'first' : 'total'} order of x${input + 1}, 4096 rows`,
        'sobolShares',
        primer,
        'memory',
        expected,
        '-',
        0.01,
        () => estimatedShares(ishigami, 3, 4096, 1)[input]![order === 0 ? 'first' : 'total'],
      ),
    ),
  ),
  ...gPublished.flatMap((row, input) =>
    row.map((expected, order) =>
      check(
        `Sobol’’s g-function, a = 0, 1, 4.5, 9, 99 ...: ${order === 0 ? 'first' : 'total'} order of x${input + 1}, 4096 rows`,
        'sobolShares',
        primer,
        'memory',
        expected,
        '-',
        0.01,
        () => estimatedShares(gFunction, 8, 4096, 2)[input]![order === 0 ? 'first' : 'total'],
      ),
    ),
  ),
];
