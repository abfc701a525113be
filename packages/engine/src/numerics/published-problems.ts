// Published problems with known best points, on grids that hold these: what a search is held against.

import type { Choice, Point } from './choice-space.ts';
import type { Score } from './fronts.ts';

export interface GridProblem {
  readonly name: string;
  readonly space: readonly Choice[];
  readonly score: (point: Point) => Score;
}

/** From low to high in equal steps. */
interface Axis {
  readonly low: number;
  readonly high: number;
  readonly count: number;
}

function onGrid(
  name: string,
  axes: readonly Axis[],
  of: (x: readonly number[]) => { readonly costs: readonly number[]; readonly broken?: readonly number[] },
): GridProblem {
  return {
    name,
    space: axes.map(({ count }) => ({ count, ordered: true })),
    score: (point) => {
      const x = point.map((value, at) => {
        const { low, high, count } = axes[at]!;
        return low + ((high - low) * value) / (count - 1);
      });
      const { costs, broken = [] } = of(x);
      return { costs, violation: broken.reduce((sum, by) => sum + Math.max(by, 0), 0) };
    },
  };
}

const times = (count: number, axis: Axis): Axis[] => Array.from({ length: count }, () => axis);
const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/** H. H. Rosenbrock, Computer Journal 3 (1960) 175-184: 0 at (1, 1), at the end of a bent valley. */
export const rosenbrock: GridProblem = onGrid(
  'Rosenbrock',
  times(2, { low: -2, high: 2, count: 41 }),
  ([x = 0, y = 0]) => ({
    costs: [100 * (y - x * x) ** 2 + (1 - x) ** 2],
  }),
);

/** L. A. Rastrigin, Systems of Extremal Control (1974): 0 at the origin, a hollow at every whole number. */
export const rastrigin = (choices: number): GridProblem =>
  onGrid('Rastrigin', times(choices, { low: -5, high: 5, count: 41 }), (x) => ({
    costs: [10 * x.length + sum(x.map((value) => value * value - 10 * Math.cos(2 * Math.PI * value)))],
  }));

/** Problem G6 of Z. Michalewicz, M. Schoenauer, Evol. Comp. 4 (1996) 1-32: two arcs leave a sliver in which rules are kept. */
export const g6: GridProblem = onGrid(
  'G6',
  [
    { low: 14.035, high: 14.835, count: 41 },
    { low: 0.7, high: 1.5, count: 41 },
  ],
  ([x = 0, y = 0]) => ({
    costs: [(x - 10) ** 3 + (y - 20) ** 3],
    broken: [100 - (x - 5) ** 2 - (y - 5) ** 2, (x - 6) ** 2 + (y - 5) ** 2 - 82.81],
  }),
);

/** Problem G8 of the same: many hollows, few of them allowed. */
export const g8: GridProblem = onGrid(
  'G8',
  [
    { low: 0.5, high: 3, count: 126 },
    { low: 3, high: 5.5, count: 126 },
  ],
  ([x = 0, y = 0]) => ({
    costs: [-(Math.sin(2 * Math.PI * x) ** 3 * Math.sin(2 * Math.PI * y)) / (x ** 3 * (x + y))],
    broken: [x * x - y + 1, 1 - x + (y - 4) ** 2],
  }),
);

const LEVELS = 11;

function zdt(name: string, choices: number, of: (x: number, g: number) => number): GridProblem {
  return onGrid(
    name,
    [{ low: 0, high: 1, count: 41 }, ...times(choices - 1, { low: 0, high: 1, count: LEVELS })],
    ([x = 0, ...rest]) => {
      const g = 1 + (9 * sum(rest)) / rest.length;
      return { costs: [x, g * of(x, g)] };
    },
  );
}

/** E. Zitzler, K. Deb, L. Thiele, Evol. Comp. 8 (2000) 173-195: bulging, hollow, broken and uneven fronts, all where g = 1. */
export const zdt1 = (choices: number): GridProblem => zdt('ZDT1', choices, (f, g) => 1 - Math.sqrt(f / g));
export const zdt2 = (choices: number): GridProblem => zdt('ZDT2', choices, (f, g) => 1 - (f / g) ** 2);
export const zdt3 = (choices: number): GridProblem =>
  zdt('ZDT3', choices, (f, g) => 1 - Math.sqrt(f / g) - (f / g) * Math.sin(10 * Math.PI * f));
export const zdt6 = (choices: number): GridProblem =>
  onGrid(
    'ZDT6',
    [{ low: 0, high: 1, count: 41 }, ...times(choices - 1, { low: 0, high: 1, count: LEVELS })],
    ([x = 0, ...rest]) => {
      const f = 1 - Math.exp(-4 * x) * Math.sin(6 * Math.PI * x) ** 6;
      const g = 1 + 9 * (sum(rest) / rest.length) ** 0.25;
      return { costs: [f, g * (1 - (f / g) ** 2)] };
    },
  );

/** T. T. Binh, U. Korn, MOBES (1997): the front is y = x up to 3, then y = 3. */
export const binhKorn: GridProblem = onGrid(
  'Binh and Korn',
  [
    { low: 0, high: 5, count: 51 },
    { low: 0, high: 3, count: 31 },
  ],
  ([x = 0, y = 0]) => ({
    costs: [4 * x * x + 4 * y * y, (x - 5) ** 2 + (y - 5) ** 2],
    broken: [(x - 5) ** 2 + y * y - 25, 7.7 - (x - 8) ** 2 - (y + 3) ** 2],
  }),
);

/** Constr-Ex of K. Deb, Multi-Objective Optimization using Evolutionary Algorithms (2001): one part of the front lies on a rule. */
export const constrEx: GridProblem = onGrid(
  'Constr-Ex',
  [
    { low: 0.1, high: 1, count: 91 },
    { low: 0, high: 5, count: 51 },
  ],
  ([x = 0, y = 0]) => ({ costs: [x, (1 + y) / x], broken: [6 - y - 9 * x, 1 + y - 9 * x] }),
);

/** A. Osyczka, S. Kundu, Structural Optimization 10 (1995) 94-99: six choices, six rules, ends of the front at (-274, 76) and (-42, 4). */
export const osyczkaKundu: GridProblem = onGrid(
  'Osyczka and Kundu',
  [
    { low: 0, high: 10, count: 11 },
    { low: 0, high: 10, count: 11 },
    { low: 1, high: 5, count: 5 },
    { low: 0, high: 6, count: 7 },
    { low: 1, high: 5, count: 5 },
    { low: 0, high: 10, count: 11 },
  ],
  ([a = 0, b = 0, c = 0, d = 0, e = 0, f = 0]) => ({
    costs: [
      -(25 * (a - 2) ** 2 + (b - 2) ** 2 + (c - 1) ** 2 + (d - 4) ** 2 + (e - 1) ** 2),
      sum([a, b, c, d, e, f].map((value) => value * value)),
    ],
    broken: [2 - a - b, a + b - 6, b - a - 2, a - 3 * b - 2, (c - 3) ** 2 + d - 4, 4 - (e - 3) ** 2 - f],
  }),
);

const along = (from: number, to: number, count: number): number[] =>
  Array.from({ length: count }, (_, at) => from + ((to - from) * at) / (count - 1));

/** The second cost on the known front, by the first. */
export const frontAt: Readonly<Record<'ZDT1' | 'ZDT2' | 'ZDT3' | 'ZDT6', (first: number) => number>> = {
  ZDT1: (f) => 1 - Math.sqrt(f),
  ZDT2: (f) => 1 - f * f,
  ZDT3: (f) => 1 - Math.sqrt(f) - f * Math.sin(10 * Math.PI * f),
  ZDT6: (f) => 1 - f * f,
};

/** Points along the known fronts of the problems with rules, and a point that is worse than all of them. */
export const knownFronts: Readonly<
  Record<
    string,
    { readonly costs: readonly (readonly [number, number])[]; readonly reference: readonly [number, number] }
  >
> = {
  'Binh and Korn': {
    costs: [
      ...along(0, 3, 301).map((x) => [8 * x * x, 2 * (x - 5) ** 2] as const),
      ...along(3, 5, 201).map((x) => [4 * x * x + 36, (x - 5) ** 2 + 4] as const),
    ],
    reference: [140, 50],
  },
  'Constr-Ex': {
    costs: along(7 / 18, 1, 400).map((x) => [x, x < 2 / 3 ? (7 - 9 * x) / x : 1 / x] as const),
    reference: [1, 9],
  },
};
