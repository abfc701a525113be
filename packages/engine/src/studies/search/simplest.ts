// A winner without the changes that buy nothing: a search ends with some, as nothing speaks against them.

import { type Point, pointKey } from '../../numerics/choice-space.ts';
import type { Run } from '../../numerics/seek.ts';
import type { SearchChoice } from './choice.ts';
import { changesAt } from './choices.ts';
import type { SearchOutcome } from './run-search.ts';
import type { Scored } from './scores.ts';
import { undoneOf } from './why.ts';

export interface Simplifying {
  readonly choices: readonly SearchChoice[];
  /** All that was run; what is run here is put behind it. */
  readonly runs: Run<SearchOutcome>[];
  readonly scored: Scored;
  readonly evaluate: (point: Point) => Promise<SearchOutcome | undefined>;
}

/** Number of the run that is the winner with every change undone, one after another, that makes nothing worse. */
export async function simplest(winner: number, { choices, runs, scored, evaluate }: Simplifying): Promise<number> {
  const given = new Set(scored.givenUp);
  const named = (id: string) => ({ id, title: '', part: '', day: '' });
  const outcomes = runs.map(({ result }) => result);
  let at = winner;
  for (const choice of changesAt(choices, runs[winner]!.point)) {
    const point = runs[at]!.point.with(choice, choices[choice]!.base);
    const known = runs.findIndex((each) => pointKey(each.point) === pointKey(point));
    const whole = known >= 0 && runs[known]!.result.abandoned !== true;
    const result = whole ? runs[known]!.result : await evaluate(point);
    if (result === undefined) return at;
    // Held against the winner itself, not the step before: many steps that hardly matter may matter together.
    const change = { id: choices[choice]!.id, from: '', to: '' };
    const { idle } = undoneOf(change, result, { outcomes, scored, winner, given, named });
    if (!idle) continue;
    at = whole ? known : runs.push({ point, result }) - 1;
  }
  return at;
}
