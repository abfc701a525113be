// The studies that the page can ask for, each by its name: loaded into the worker when the first is asked for.

import {
  care,
  compare,
  type FaultOutcome,
  type FaultTask,
  faultRunner,
  faults,
  frontPicture,
  type Outcome,
  pare,
  type ReadSource,
  type SearchOutcome,
  type SearchTask,
  search,
  searchRunner,
  spread as spreadOf,
  type Variant,
  variantRunner,
} from '@stillair/engine';
import type { Hands, Hooks, Spread } from './hands.ts';
import { logsOnDemand, queueOnDemand } from './on-demand.ts';
import type { Results, Runs, StudyName, Wishes } from './protocol.ts';
import { keepOutcomes, seldom } from './so-far.ts';
import { careBy } from './study-care.ts';
import { readJobFile } from './study-job.ts';
import { makePapers } from './study-papers.ts';

export interface StudyHooks<Name extends StudyName> extends Hooks {
  /** Told now and then of what there is so far. */
  readonly soFar: (result: Results[Name]) => void;
}

type Ask<Task, Result, Name extends StudyName> = (
  evaluate: Spread<Task, Result>,
  hooks: Hooks,
) => Promise<Results[Name]>;

export function study<Name extends StudyName>(
  name: Name,
  source: ReadSource,
  wishes: Wishes,
  hands: Hands,
  hooks: StudyHooks<Name>,
): Promise<Results[Name]> {
  return studies[name](source, wishes, hands, hooks);
}

const studies: {
  readonly [Name in StudyName]: (
    source: ReadSource,
    wishes: Wishes,
    hands: Hands,
    hooks: StudyHooks<Name>,
  ) => Promise<Results[Name]>;
} = {
  compare: (source, { samples }, hands, hooks) =>
    ofVariants<'compare'>(source, hands, hooks, (evaluate, its) => compare(source, { samples, evaluate, ...its })),
  spread: (source, { samples, days }, hands, hooks) =>
    ofVariants<'spread'>(source, hands, hooks, (evaluate, its) =>
      spreadOf(source, { samples, evaluate, ...(days === undefined ? {} : { days }), ...its }),
    ),
  search: (source, { wants = ['quiet'], units = 'metric' }, hands, hooks) =>
    spread<SearchTask, SearchOutcome, 'search'>(
      'search',
      source,
      hands,
      hooks,
      searchRunner(source),
      async (evaluate, its) => {
        const found = await search(source, { wants, evaluate, ...its });
        return { study: found, picture: frontPicture(found, source.cabinet.title, units) };
      },
    ),
  pare: (source, { samples }, hands, hooks) =>
    ofVariants<'pare'>(source, hands, hooks, (evaluate, its) => pare(source, { samples, evaluate, ...its })),
  faults: (source, { samples, days }, hands, hooks) =>
    spread<FaultTask, FaultOutcome, 'faults'>('faults', source, hands, hooks, faultRunner(source), (evaluate, its) =>
      faults(source, { samples, evaluate, ...(days === undefined ? {} : { days }), ...its }),
    ),
  care: async (source, wishes, hands, hooks) => {
    const ready = await careBy(source, wishes);
    if ('unreadable' in ready) return ready;
    const { samples } = wishes;
    return spread<FaultTask, FaultOutcome, 'care'>(
      'faults',
      source,
      hands,
      hooks,
      faultRunner(source),
      (evaluate, its) => care(source, { ...ready, samples, evaluate, ...its }),
    );
  },
  shutOff: async (...asked) => (await queueOnDemand()).shutOffBy(...asked),
  partCosts: async (...asked) => (await queueOnDemand()).costsOf(...asked),
  plan: async (...asked) => (await queueOnDemand()).planWeek(...asked),
  calibrate: async (...asked) => (await logsOnDemand()).calibrateBy(...asked),
  drift: async (...asked) => (await logsOnDemand()).driftBy(...asked),
  job: readJobFile,
  papers: makePapers,
};

function ofVariants<Name extends StudyName>(
  source: ReadSource,
  hands: Hands,
  hooks: StudyHooks<Name>,
  ask: Ask<Variant, Outcome, Name>,
): Promise<Results[Name]> {
  return spread('variants', source, hands, hooks, variantRunner(source), ask);
}

function spread<Task, Result, Name extends StudyName>(
  runs: Runs,
  { text }: ReadSource,
  hands: Hands,
  { progress, stop, soFar }: StudyHooks<Name>,
  here: (task: Task) => Result,
  ask: Ask<Task, Result, Name>,
): Promise<Results[Name]> {
  const known = keepOutcomes<Task, Result>();
  const tell = seldom(
    async () => soFar(await ask(known.evaluate, { progress: () => undefined, stop: () => false })),
    () => performance.now(),
  );
  return ask(hands.spread({ runs, text, here, heard: known.heard }), {
    stop,
    progress: (done, all) => {
      progress(done, all);
      tell();
    },
  });
}
