// A search over everything that a file leaves free: limits of all trades first, then what the person wants. One want has a best
// variant, several have a front. The best are run again with uncertain inputs varied, and the winner is taken apart, change by change.

import { readCabinet } from '../../cabinet/read-cabinet.ts';
import type { ReadSource } from '../../judge/judge.ts';
import { type DayMeasure, measureAll } from '../../judge/pipeline.ts';
import { type Point, pointKey, pointsIn } from '../../numerics/choice-space.ts';
import { frontOf } from '../../numerics/fronts.ts';
import { seek } from '../../numerics/seek.ts';
import type { Trade } from '../../trades/measure.ts';
import type { Want } from '../wants.ts';
import { nearestToBest, nextSteps, spreadAlong } from './along-front.ts';
import { chanceOf } from './chance.ts';
import type { SearchChoice } from './choice.ts';
import { changesAt, changesFrom, choicesOf, editsAt, spaceOf } from './choices.ts';
import { type EvaluateSearch, evaluateSearchHere, type SearchOutcome, type SearchTask } from './run-search.ts';
import { breaksOf, comesTo, type Scored, scored } from './scores.ts';
import type { SearchStudy, SearchVariant } from './search-study.ts';
import { simplest } from './simplest.ts';
import { closeLimits, inTheWay, type NamedLimit, type Undone, undoneOf, unnamed } from './why.ts';

export interface SearchOptions {
  readonly wants: readonly Want[];
  /** Variants run at most, without samples. */
  readonly most?: number;
  readonly samples?: number;
  readonly seed?: number;
  readonly evaluate?: EvaluateSearch;
  readonly trades?: readonly Trade[];
  readonly progress?: (done: number, all: number, best?: SearchProgress) => void;
  readonly stop?: () => boolean;
}

/** The best so far, for a line of progress. */
export interface SearchProgress {
  readonly keepsAll: boolean;
  readonly comesTo: SearchVariant['comesTo'];
  readonly front: number;
}

export const SEARCH_MOST = 400;
const SEARCH_SAMPLES = 24;
/** Without a better one for so many variants it is enough. */
const PATIENCE = 150;
/** Of a front so many are run with samples. */
const VARIED = 6;

export async function search(source: ReadSource, options: SearchOptions): Promise<SearchStudy> {
  const { wants, most = SEARCH_MOST, samples = SEARCH_SAMPLES, seed = 1, trades, stop = () => false } = options;
  const evaluate = options.evaluate ?? evaluateSearchHere(source, trades);
  const choices = choicesOf(source);
  const space = spaceOf(choices);
  const base = choices.map(({ base: at }) => at);
  let done = 0;
  const all = Math.min(most, pointsIn(space));
  let seen: { readonly scored: Scored; readonly outcomes: readonly SearchOutcome[] } | undefined;
  const scoreAll = (outcomes: readonly SearchOutcome[]): Scored => {
    if (seen?.outcomes.length !== outcomes.length) seen = { scored: scored(outcomes, wants), outcomes };
    return seen.scored;
  };
  const run = (tasks: readonly SearchTask[], count: boolean): ReturnType<EvaluateSearch> =>
    evaluate(tasks, {
      finished: () => {
        done += count ? 1 : 0;
        options.progress?.(Math.min(done, all), all, soFar(seen));
      },
      stop,
    });
  const sought = await seek<SearchOutcome>({
    space,
    most,
    seed,
    first: [base],
    patience: PATIENCE,
    stop,
    // Once a variant keeps every rule, others are left off at their first breach.
    evaluate: (points) => {
      const good = seen?.scored.violations.some((violation) => violation === 0) === true;
      const bound = good ? { givenUp: seen!.scored.givenUp } : {};
      return run(
        points.map((point) => ({ edits: editsAt(choices, point), inputs: {}, ...bound })),
        true,
      );
    },
    score: (outcomes) => scoreAll(outcomes).scores,
  });

  const runs = [...sought.runs];
  const empty = emptyStudy(source, choices, options, seed);
  if (runs.length === 0) return { ...empty, stopped: true };
  const scoredNow = (): Scored => scoreAll(runs.map(({ result }) => result));
  const bestOf = ({ scores }: Scored): number[] => frontOf(scores).filter((at) => runs[at]!.result.fault === undefined);
  const found = nearestToBest(bestOf(scoredNow()), scoredNow());
  const evaluateOne = async (point: Point): Promise<SearchOutcome | undefined> =>
    (await run([{ edits: editsAt(choices, point), inputs: {} }], false))[0];
  const winner =
    found === undefined || wants.length > 1
      ? found
      : await simplest(found, { choices, runs, scored: scoredNow(), evaluate: evaluateOne });
  const last = scoredNow();
  const outcomes = runs.map(({ result }) => result);
  const given = new Set(last.givenUp);
  const front = winner === undefined || wants.length > 1 ? bestOf(last) : [winner];
  const titles = new Map<string, NamedLimit>();
  const measuresOf = (point: Point): ReadonlyMap<string, DayMeasure> => {
    const answer = readCabinet(source.file, source.text, editsAt(choices, point));
    const measures = answer.ok ? measureAll(answer.cabinet, trades) : new Map<string, DayMeasure>();
    for (const { id, title, part, day } of measures.values()) titles.set(id, { id, title, part, day });
    return measures;
  };
  const before = measuresOf(base);
  const close = winner === undefined ? [] : closeLimits(measuresOf(runs[winner]!.point), before);
  const named = (id: string): NamedLimit => titles.get(id) ?? unnamed(id);

  const variantOf = (at: number): SearchVariant => {
    const { point, result } = runs[at]!;
    return {
      edits: editsAt(choices, point),
      changes: changesFrom(choices, base, point),
      comesTo: comesTo(result, last),
      ...(result.price === undefined ? {} : { price: result.price }),
      breaks: breaksOf(result, outcomes[0]!, given).map(named),
    };
  };

  // The winner taken apart, and the best varied.
  const undone: Undone[] = [];
  const chances = new Map<number, Pick<SearchVariant, 'chance' | 'unsure'>>();
  if (winner !== undefined && !stop()) {
    const best = runs[winner]!.point;
    const without = changesAt(choices, best).map((choice) => best.with(choice, base[choice]!));
    const known = new Map(runs.map((each, at) => [pointKey(each.point), at] as const));
    const whole = (point: Point): SearchOutcome | undefined => {
      const at = known.get(pointKey(point));
      return at === undefined || outcomes[at]!.abandoned === true ? undefined : outcomes[at];
    };
    const missing = without.filter((point) => whole(point) === undefined);
    const ran = await run(
      missing.map((point) => ({ edits: editsAt(choices, point), inputs: {} })),
      false,
    );
    for (const [at, change] of changesFrom(choices, base, best).entries()) {
      const outcome = whole(without[at]!) ?? ran[missing.indexOf(without[at]!)];
      if (outcome !== undefined)
        undone.push(undoneOf(change, outcome, { outcomes, scored: last, winner, given, named }));
    }
    const varied = [...new Set([0, winner, ...spreadAlong(front, VARIED)])];
    for (const at of samples === 0 ? [] : varied) {
      if (stop()) break;
      chances.set(at, await chanceOf(source, editsAt(choices, runs[at]!.point), { samples, seed, run, given, named }));
    }
  }
  const withChance = (at: number): SearchVariant => ({ ...variantOf(at), ...chances.get(at) });

  return {
    ...empty,
    ran: runs.length,
    abandoned: outcomes.filter(({ abandoned }) => abandoned === true).length,
    failed: outcomes.filter(({ fault }) => fault !== undefined).length,
    faults: [...new Set(outcomes.flatMap(({ fault }) => fault ?? []))].slice(0, 3),
    complete: sought.complete,
    closed: sought.closed,
    base: withChance(0),
    ...(winner === undefined ? {} : { winner: withChance(winner) }),
    keepsAll: winner !== undefined && last.violations[winner] === 0,
    givenUp: last.givenUp.map(named),
    front: [...front].sort((a, b) => last.scores[a]!.costs[0]! - last.scores[b]!.costs[0]!).map(withChance),
    close,
    inTheWay: winner === undefined ? [] : inTheWay({ outcomes, scored: last, winner, given, named }),
    undone,
    next:
      winner === undefined
        ? []
        : nextSteps(outcomes, last, winner, wants, (at) => changesFrom(choices, runs[winner]!.point, runs[at]!.point)),
    cloud: outcomes.flatMap((outcome, at) =>
      outcome.abandoned === true || outcome.fault !== undefined
        ? []
        : [{ comesTo: comesTo(outcome, last), keeps: last.scores[at]!.violation === 0 }],
    ),
    stopped: stop(),
  };
}

function emptyStudy(
  { cabinet }: ReadSource,
  choices: readonly SearchChoice[],
  { wants, samples = SEARCH_SAMPLES }: SearchOptions,
  seed: number,
): SearchStudy {
  return {
    version: 1,
    currency: cabinet.currency,
    wants,
    choices: choices.map(({ id, values, base, assumed }) => ({
      id,
      values: values.map(({ says }) => says),
      asItStands: base,
      assumed,
    })),
    variants: pointsIn(spaceOf(choices)),
    ran: 0,
    abandoned: 0,
    failed: 0,
    faults: [],
    complete: false,
    closed: false,
    base: { edits: [], changes: [], comesTo: {}, breaks: [] },
    keepsAll: false,
    givenUp: [],
    front: [],
    close: [],
    inTheWay: [],
    undone: [],
    next: [],
    cloud: [],
    samples: { asked: samples },
    seed,
    stopped: false,
  };
}

/** The best so far, for a line of progress. */
function soFar(
  seen: { readonly scored: Scored; readonly outcomes: readonly SearchOutcome[] } | undefined,
): SearchProgress | undefined {
  if (seen === undefined) return undefined;
  const front = frontOf(seen.scored.scores);
  const best = nearestToBest(front, seen.scored);
  if (best === undefined) return undefined;
  return {
    keepsAll: seen.scored.violations[best] === 0,
    comesTo: comesTo(seen.outcomes[best]!, seen.scored),
    front: front.length,
  };
}
