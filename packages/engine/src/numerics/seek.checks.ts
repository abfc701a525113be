// Short searches of published problems: what they find against what is known to be best. Where a grid does not hold the best point, the
// tolerance is what the grid can cost. Longer ones are among the benches.

import type { OutsideCheck } from '@stillair/physics';
import { frontOf, ruledArea } from './fronts.ts';
import {
  binhKorn,
  frontAt,
  type GridProblem,
  g8,
  knownFronts,
  osyczkaKundu,
  rosenbrock,
  zdt1,
  zdt3,
  zdt6,
} from './published-problems.ts';
import { seek } from './seek.ts';

/** Costs of the front that a search of so many points finds; only what keeps every rule. */
export async function costsFound(
  { space, score }: GridProblem,
  most: number,
  seed: number = 41,
): Promise<readonly (readonly number[])[]> {
  const { runs } = await seek({
    space,
    most,
    seed,
    evaluate: (points) => Promise.resolve(points.map(score)),
    score: (scores) => scores,
  });
  const scores = runs.map(({ result }) => result);
  return frontOf(scores)
    .map((at) => scores[at]!)
    .flatMap(({ violation, costs }) => (violation === 0 ? [costs] : []));
}

/** Mean distance of what was found from the known front, in the second cost. */
export function distanceFrom(name: keyof typeof frontAt, costs: readonly (readonly number[])[]): number {
  return (
    costs.reduce((sum, [first = 0, second = 0]) => sum + Math.abs(second - frontAt[name](first)), 0) / costs.length
  );
}

/** Share of the area ruled by the known front that what was found rules. */
export function ruledShare(name: string, costs: readonly (readonly number[])[]): number {
  const { costs: known, reference } = knownFronts[name]!;
  return ruledArea(costs as readonly (readonly [number, number])[], reference) / ruledArea(known, reference);
}

const found = {
  rosenbrock: await costsFound(rosenbrock, 250),
  g8: await costsFound(g8, 250),
  zdt1: await costsFound(zdt1(6), 150),
  zdt3: await costsFound(zdt3(6), 150),
  zdt6: await costsFound(zdt6(6), 150),
  binhKorn: await costsFound(binhKorn, 120),
  osyczkaKundu: await costsFound(osyczkaKundu, 400),
};

const least = (costs: readonly (readonly number[])[], place: number = 0): number =>
  Math.min(...costs.map((each) => each[place]!));

/** One comparison; `known` to all of them: from memory. */
const check = (what: string, source: string, expected: number, tolerance: number, got: () => number): OutsideCheck => ({
  what,
  formula: 'seek',
  source,
  known: 'memory',
  expected,
  unit: '',
  tolerance,
  got,
});

const zitzler = 'E. Zitzler, K. Deb, L. Thiele, Evol. Comp. 8 (2000) 173-195, with six choices of a grid';
const osyczka = 'A. Osyczka, S. Kundu, Structural Optimization 10 (1995) 94-99';

export const checks: readonly OutsideCheck[] = [
  check('bent valley, 250 of 1681 points run', 'H. H. Rosenbrock, Computer Journal 3 (1960) 175-184', 0, 1e-9, () =>
    least(found.rosenbrock),
  ),
  check(
    'G8: hollows, most of them forbidden, 250 of 15876 points run',
    'Z. Michalewicz, M. Schoenauer, Evol. Comp. 4 (1996) 1-32',
    -0.095825,
    5e-4,
    () => least(found.g8),
  ),
  check('ZDT1: mean distance from the front', zitzler, 0, 0.02, () => distanceFrom('ZDT1', found.zdt1)),
  check('ZDT3: mean distance from the front', zitzler, 0, 0.02, () => distanceFrom('ZDT3', found.zdt3)),
  check('ZDT6: mean distance from the front', zitzler, 0, 0.02, () => distanceFrom('ZDT6', found.zdt6)),
  check('Binh and Korn: share of the area that the front rules', 'T. T. Binh, U. Korn, MOBES (1997)', 1, 0.02, () =>
    ruledShare('Binh and Korn', found.binhKorn),
  ),
  check('Osyczka and Kundu: one end of the front', osyczka, -274, 1e-9, () => least(found.osyczkaKundu)),
  check('Osyczka and Kundu: the other end', osyczka, 4, 1e-9, () => least(found.osyczkaKundu, 1)),
];
