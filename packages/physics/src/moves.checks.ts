// Moves against the oldest printed laws of motion, and a speed that handbooks of spaceflight print.

import { arcSpeed, moveTime, reachedSpeed } from './moves.ts';
import type { OutsideCheck } from './outside-check.ts';

const GALILEO = 'Galileo, Two New Sciences, 1638, Third Day: spaces from rest are as the squares of the times';
const ORBIT = 'handbooks of spaceflight: circular speed at the surface of the Earth (6371 km, 9.81 m/s²), 7.91 km/s';

const check = (
  what: string,
  formula: string,
  source: string,
  expected: number,
  unit: string,
  tolerance: number,
  got: () => number,
): OutsideCheck => ({ what, formula, source, known: 'memory', expected, unit, tolerance, got });

const fromRest = (distance: number): number => moveTime(distance, 100, 3, 0, reachedSpeed(0, 3, distance));

export const checks: readonly OutsideCheck[] = [
  ...[2, 3, 4].map((times) =>
    check(`way times ${times ** 2} from rest, time times`, 'moveTime', GALILEO, times, '-', 1e-12, () => {
      return fromRest(0.01 * times ** 2) / fromRest(0.01);
    }),
  ),
  check('twice the time, twice the speed from rest', 'reachedSpeed', GALILEO, 2, '-', 1e-12, () => {
    return reachedSpeed(0, 3, 0.04) / reachedSpeed(0, 3, 0.01);
  }),
  check('round the Earth at its surface', 'arcSpeed', ORBIT, 7.91, 'km/s', 0.005, () => {
    return arcSpeed(9.81, 6.371e6) / 1000;
  }),
];
