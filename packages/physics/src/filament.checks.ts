// Filament, its way and its column against printed lengths, holding factors and textbook columns.

import { bendStrain, filamentLength } from './filament.ts';
import { clampedBuckling, rodMoment } from './filament-gap.ts';
import { pullAfterBends } from './filament-path.ts';
import { check, type OutsideCheck } from './outside-check.ts';

const LENGTHS = 'a printed guide: a spool of 1 kg holds 327.4 to almost 400 m of 1.75 mm, 123.4 to 150.7 m of 2.85 mm';
const HOLDING = 'holding factor of a rope round a post, as engineering tables print it (Euler and Eytelwein)';

/** Friction and turns, and the factor as printed. */
const holding = [
  [0.1, 1, 1.9, 0.05],
  [0.2, 1, 3.5, 0.05],
  [0.3, 1, 6.6, 0.05],
  [0.4, 1, 12, 0.5],
  [0.5, 1, 23, 0.5],
  [0.2, 2, 12, 0.5],
  [0.3, 2, 43, 0.5],
] as const;

export const checks: readonly OutsideCheck[] = [
  check('1 kg of PETG (1270 kg/m³), 1.75 mm', 'filamentLength', LENGTHS, 'second-hand', 327.4, 'm', 0.05, () =>
    filamentLength(1, 1270, 0.00175),
  ),
  check('1 kg of ABS (1040 kg/m³), 1.75 mm: almost', 'filamentLength', LENGTHS, 'second-hand', 400, 'm', 0.5, () =>
    filamentLength(1, 1040, 0.00175),
  ),
  check('1 kg of PETG (1270 kg/m³), 2.85 mm', 'filamentLength', LENGTHS, 'second-hand', 123.4, 'm', 0.05, () =>
    filamentLength(1, 1270, 0.00285),
  ),
  check('1 kg of ABS (1040 kg/m³), 2.85 mm', 'filamentLength', LENGTHS, 'second-hand', 150.7, 'm', 0.05, () =>
    filamentLength(1, 1040, 0.00285),
  ),
  ...holding.map(([friction, turns, factor, tolerance]) =>
    check(`friction ${friction}, ${turns} turns`, 'pullAfterBends', HOLDING, 'memory', factor, '-', tolerance, () =>
      pullAfterBends(1, friction, 2 * Math.PI * turns),
    ),
  ),
  check(
    'built-in ends against hinged ones',
    'clampedBuckling',
    'Timoshenko & Gere, Theory of Elastic Stability, 2nd ed. 1961, ch. 2: effective length of one half',
    'memory',
    4,
    '-',
    1e-12,
    () => clampedBuckling(1, 1, 1) / Math.PI ** 2,
  ),
  check(
    'moment of a round section, 10 mm',
    'rodMoment',
    'tables of sections: 490.9 mm⁴',
    'memory',
    490.9,
    'mm⁴',
    0.05,
    () => 1e12 * rodMoment(0.01),
  ),
  check(
    'radius at which old dry PLA of 1.75 mm is at risk: 50 mm, strain between 1 and 2 %',
    'bendStrain',
    'common practice of those who print',
    'common practice, no source',
    1.5,
    'percent',
    0.5,
    () => 100 * bendStrain(0.00175, 0.05),
  ),
];
