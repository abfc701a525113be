// Published optima of cutting rectangles by guillotine cuts.

import type { OutsideCheck } from '@stillair/physics';
import { frontsOf, type Group } from './fronts.ts';
import { bestPattern, type Kind } from './pattern.ts';
import { fewest } from './plan.ts';

/** Length × width of ten pieces in a sheet of 250 × 250, as the OR-Library has them. */
const gcut1: readonly Kind[] = (
  [
    [167, 184],
    [114, 118],
    [167, 152],
    [83, 140],
    [70, 86],
    [143, 166],
    [120, 160],
    [66, 148],
    [87, 141],
    [69, 165],
  ] as const
).map(([length, width]) => ({ length, width, value: length * width }));

/** Length, width, copies at most, value; in a sheet of 15 × 10. */
const cgcut1 = [
  [8, 4, 2, 66],
  [3, 7, 1, 35],
  [8, 2, 3, 24],
  [3, 4, 5, 17],
  [3, 3, 2, 11],
  [3, 2, 2, 8],
  [2, 1, 1, 2],
] as const;

const BEASLEY =
  'Beasley, J. Opl Res. Soc. 36 (1985) 297, instance gcut1 of the OR-Library; optimum as Cintra et al. print it';
const CHRISTOFIDES = 'Christofides & Whitlock, Oper. Res. 25 (1977) 30, instance cgcut1 of the OR-Library';

/** The best choice of copies within their limits, by every choice that one sheet holds. */
function bestWithin(): number {
  let next = 0;
  const groups = cgcut1.map(
    ([length, width, copies]): Group => ({
      piece: { length, width, turned: false },
      members: Array.from({ length: copies }, () => next++),
    }),
  );
  const fronts = frontsOf(groups, { length: 15, width: 10, kerf: 0 });
  let most = 0;
  for (let choice = 0; choice < fronts.choices; choice++)
    if (fronts.fitsOnOne(choice))
      most = Math.max(
        most,
        fronts.counts(choice).reduce((sum, count, at) => sum + count * cgcut1[at]![3], 0),
      );
  return most;
}

const pinwheel = [
  [2, 1],
  [2, 1],
  [1, 2],
  [1, 2],
  [1, 1],
] as const;

const row = (
  what: string,
  formula: string,
  source: string,
  known: OutsideCheck['known'],
  expected: number,
  unit: string,
  got: () => number,
): OutsideCheck => ({ what, formula, source, known, expected, unit, tolerance: 0, got });

export const checks: readonly OutsideCheck[] = [
  row('gcut1, pieces as they lie', 'bestPattern', BEASLEY, 'read', 56_460, 'mm²', () =>
    bestPattern(gcut1, { length: 250, width: 250, kerf: 0 }, false),
  ),
  row('gcut1, pieces may be turned', 'bestPattern', BEASLEY, 'read', 58_136, 'mm²', () =>
    bestPattern(gcut1, { length: 250, width: 250, kerf: 0 }, true),
  ),
  row(
    'cgcut1 without its limits on copies',
    'bestPattern',
    'Hifi & Zissimopoulos 1996, page of their instances (where 249 stands beside 16 boxes: it is the optimum without limits)',
    'read',
    249,
    '-',
    () =>
      bestPattern(
        cgcut1.map(([length, width, , value]) => ({ length, width, value })),
        { length: 15, width: 10, kerf: 0 },
        false,
      ),
  ),
  row('cgcut1 with its limits on copies', 'frontsOf', CHRISTOFIDES, 'memory', 244, '-', bestWithin),
  row(
    'pinwheel of five pieces in 3 × 3, none turned: it fits, but no saw can cut it',
    'fewest',
    'definition of the guillotine cut, textbook counterexample',
    'second-hand',
    2,
    'sheets',
    () =>
      fewest(
        pinwheel.map(([length, width]) => ({ length, width, turned: false })),
        { length: 3, width: 3, kerf: 0 },
      ).length,
  ),
];
