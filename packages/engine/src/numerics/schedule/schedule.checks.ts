// The scheduler against published optima, and against optima that a proof by hand gives.

import type { Knowledge, OutsideCheck } from '@stillair/physics';
import { equalMachines, jobShop, printersUnderCap, project } from './instances.ts';
import { modelOf } from './model.ts';
import type { ScheduleProblem } from './problem.ts';
import { shortestSchedule } from './shortest.ts';
import { listScheduleOf } from './try.ts';

/** Proved shortest length, or no number at all. */
function proved(problem: ScheduleProblem, nodes = 20_000): number {
  const found = shortestSchedule(problem, { nodes });
  return found?.proved === true ? found.length : Number.NaN;
}

const listed = (machines: number, lengths: readonly number[], list: readonly number[]): number => {
  const problem = equalMachines(machines, lengths, 40);
  return listScheduleOf(problem, modelOf(problem), list);
};

const longestFirst = (lengths: readonly number[]): number[] =>
  [...lengths.keys()].sort((a, b) => lengths[b]! - lengths[a]! || a - b);

const row = (
  what: string,
  formula: string,
  source: string,
  known: Knowledge,
  expected: number,
  got: () => number,
  unit = 'slots',
): OutsideCheck => ({ what, formula, source, known, expected, unit, tolerance: 0, got });

const GRAHAM = 'R. L. Graham, Bounds on multiprocessing timing anomalies, SIAM J. Appl. Math. 17:416 (1969)';
const worst: readonly (readonly [machines: number, lengths: readonly number[], best: number, listed: number])[] = [
  [2, [3, 3, 2, 2, 2], 6, 7],
  [3, [5, 5, 4, 4, 3, 3, 3], 9, 11],
  [4, [7, 7, 6, 6, 5, 5, 4, 4, 4], 12, 15],
];

const BY_HAND =
  'by hand: three that heat draw 1200 W, two that heat beside two that print 1100 W, one that heats beside three that print 850 W; and by enumeration';

export const checks: readonly OutsideCheck[] = [
  row(
    'job shop ft06, shortest schedule, proved',
    'shortestSchedule',
    'H. Fisher and G. L. Thompson, in Industrial Scheduling (1963); optimum 55 of the benchmark file',
    'read',
    55,
    () => proved(jobShop(100)),
  ),
  row(
    'project j30_1_1 with four resources, shortest schedule, proved',
    'shortestSchedule',
    'R. Kolisch and A. Sprecher, PSPLIB, Eur. J. Oper. Res. 96:205 (1997); optimum 43 of its list',
    'read',
    43,
    () => proved(project(80)),
  ),
  ...worst.flatMap(([machines, lengths, best, list]) => [
    row(
      `${machines} equal machines, ${lengths.join(', ')}: shortest schedule, proved`,
      'shortestSchedule',
      `${GRAHAM}: the cases in which longest first comes to 4/3 - 1/(3m) of the optimum`,
      'second-hand',
      best,
      () => proved(equalMachines(machines, lengths, 40)),
    ),
    row(
      `${machines} equal machines, ${lengths.join(', ')}: longest first`,
      'listSchedule',
      `${GRAHAM}: longest first`,
      'second-hand',
      list,
      () => listed(machines, lengths, longestFirst(lengths)),
    ),
  ]),
  ...(
    [
      [2, 18, 15],
      [3, 13, 11],
    ] as const
  ).flatMap(([machines, list, best]) => [
    row(
      `${machines} equal machines, 4, 5, 6, 7, 8 in that order: list rule`,
      'listSchedule',
      'worked example of list scheduling, quoted in texts on it',
      'second-hand',
      list,
      () => listed(machines, [4, 5, 6, 7, 8], [0, 1, 2, 3, 4]),
    ),
    row(
      `${machines} equal machines, 4, 5, 6, 7, 8: shortest schedule, proved`,
      'shortestSchedule',
      'by enumeration of all assignments',
      'independent',
      best,
      () => proved(equalMachines(machines, [4, 5, 6, 7, 8], 40)),
    ),
  ]),
  ...(
    [
      [1600, 70],
      [1000, 90],
      [850, 90],
      [849, 140],
      [700, 140],
      [550, 150],
      [400, 280],
    ] as const
  ).map(([cap, minutes]) =>
    row(
      `four printers, 400 W for 10 min, then 150 W for 60 min, under ${cap} W: all done, proved`,
      'shortestSchedule',
      BY_HAND,
      'independent',
      minutes,
      () => 10 * proved(printersUnderCap(cap)),
      'min',
    ),
  ),
  row(
    'four printers that heat for 10 min and print for 120, 90, 60 and 30 min, under 1000 W: all done, proved',
    'shortestSchedule',
    'by hand: the longest starts first, 130 min',
    'independent',
    130,
    () => 10 * proved(printersUnderCap(1000, [12, 9, 6, 3])),
    'min',
  ),
];
