// Places on a front: the one nearest to the best of every want, a few spread along it, and what the next step in a want costs.

import { type Want, wantRules } from '../wants.ts';
import type { SearchOutcome } from './run-search.ts';
import { comesTo, type Scored } from './scores.ts';
import type { NextStep } from './search-study.ts';

/** Of a front the number nearest to the best of every want, each counted by its span along the front. */
export function nearestToBest(front: readonly number[], { scores }: Pick<Scored, 'scores'>): number | undefined {
  const finite = front.filter(
    (at) => Number.isFinite(scores[at]!.violation) && scores[at]!.costs.every(Number.isFinite),
  );
  const from = finite.length > 0 ? finite : front.filter((at) => Number.isFinite(scores[at]!.violation));
  const costs = scores[front[0] ?? 0]?.costs.map((_, cost) => from.map((at) => scores[at]!.costs[cost]!)) ?? [];
  const ends = costs.map((values) => ({ low: Math.min(...values), high: Math.max(...values) }));
  const far = (at: number): number =>
    scores[at]!.costs.reduce((sum, value, cost) => {
      const { low, high } = ends[cost]!;
      return sum + (high > low ? ((value - low) / (high - low)) ** 2 : 0);
    }, 0);
  return from.reduce<number | undefined>(
    (best, at) => (best === undefined || far(at) < far(best) ? at : best),
    undefined,
  );
}

/** So many of a list, spread evenly, its ends among them. */
export function spreadAlong<Item>(list: readonly Item[], wanted: number): Item[] {
  if (list.length <= wanted) return [...list];
  return Array.from({ length: wanted }, (_, at) => list[Math.round((at * (list.length - 1)) / (wanted - 1))]!);
}

/**
 * For each want the variant that is better in it and keeps what the winner keeps, at the least loss in the wants that were searched for: each
 * loss counts in steps that matter, for each step that matters gained.
 */
export function nextSteps(
  outcomes: readonly SearchOutcome[],
  scored: Scored,
  winner: number,
  wants: readonly Want[],
  changesTo: (at: number) => NextStep['changes'],
): NextStep[] {
  const now = comesTo(outcomes[winner]!, scored);
  return wantRules.flatMap(({ want, matters }): NextStep[] => {
    const from = now[want];
    if (from === undefined) return [];
    let [best, least] = [-1, Number.POSITIVE_INFINITY];
    for (const [at, outcome] of outcomes.entries()) {
      if (scored.scores[at]!.violation > scored.scores[winner]!.violation || outcome.fault !== undefined) continue;
      const then = comesTo(outcome, scored);
      const gain = (from - (then[want] ?? Number.POSITIVE_INFINITY)) / matters;
      if (gain < 1) continue;
      const loss = wantRules.reduce((sum, rule) => {
        const [was, is] = [now[rule.want], then[rule.want]];
        if (!wants.includes(rule.want) || rule.want === want || was === undefined) return sum;
        return sum + Math.max(((is ?? Number.POSITIVE_INFINITY) - was) / rule.matters, 0);
      }, 0);
      if (loss / gain < least) [best, least] = [at, loss / gain];
    }
    if (best < 0) return [];
    const then = comesTo(outcomes[best]!, scored);
    const worse = Object.fromEntries(
      wantRules.flatMap((rule) => {
        const [was, is] = [now[rule.want], then[rule.want]];
        if (rule.want === want || was === undefined || is === undefined || Math.abs(is - was) < rule.matters / 2)
          return [];
        return [[rule.want, is - was] as const];
      }),
    );
    return [{ want, better: from - then[want]!, worse, changes: changesTo(best) }];
  });
}
