import type { OutsideCheck } from './outside-check.ts';
import { addLevels, aLevel, aWeighting } from './sound-level.ts';

/** Nominal frequency, exponent n of 1000·10^(n/10), weighting in dB. */
const weights = [
  [31.5, -15, -39.4],
  [63, -12, -26.2],
  [125, -9, -16.1],
  [250, -6, -8.6],
  [500, -3, -3.2],
  [1000, 0, 0],
  [2000, 3, 1.2],
  [4000, 6, 1],
  [8000, 9, -1.1],
  [16_000, 12, -6.6],
] as const;

/** Octave levels of a noise rating curve, and what the curve is worth in dB(A). */
const ratingCurves = [
  [25, [55.2, 43.8, 35.2, 29.2, 25, 21.9, 19.5, 17.8], 34.6],
  [35, [63, 52.4, 44.6, 38.9, 35, 32, 29.8, 28.1], 43.8],
] as const;

export const checks: readonly OutsideCheck[] = [
  ...weights.map(
    ([nominal, n, expected]): OutsideCheck => ({
      what: `weighting at ${nominal} Hz`,
      formula: 'aWeighting',
      source: 'IEC 61672-1:2013, table 3',
      known: 'second-hand',
      expected,
      unit: 'dB',
      tolerance: 0.05,
      got: () => aWeighting(1000 * 10 ** (n / 10)),
    }),
  ),
  ...(
    [
      [[86, 86], 89],
      [[86, 80], 87],
      [[100, 94], 101],
    ] as const
  ).map(
    ([levels, expected]): OutsideCheck => ({
      what: `${levels.join(' and ')} dB together`,
      formula: 'addLevels',
      source: 'technical page of a blower maker on adding levels',
      known: 'read',
      expected,
      unit: 'dB',
      tolerance: 0.5,
      got: () => addLevels(levels),
    }),
  ),
  ...ratingCurves.map(
    ([rating, octaves, expected]): OutsideCheck => ({
      what: `the curve of rating ${rating}, 63 Hz to 8 kHz`,
      formula: 'aLevel',
      source: 'second calculation: sum of the weighted octaves, by an independent script',
      known: 'independent',
      expected,
      unit: 'dB(A)',
      tolerance: 0.1,
      got: () => aLevel(octaves),
    }),
  ),
];
