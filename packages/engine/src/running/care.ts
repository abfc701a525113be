// What is due, what is overdue, what comes next; and what the findings say when overdue parts are taken to be as worn as they may be.

import type { CareTask } from '../cabinet/care.ts';
import { careTasksOf } from '../cabinet/care-tasks.ts';
import { judge, type ReadSource } from '../judge/judge.ts';
import { countedHooks } from '../judge/variants.ts';
import { type Effect, effectsOf } from '../studies/effects.ts';
import {
  type EvaluateFaults,
  evaluateFaultsHere,
  type FaultOutcome,
  type FaultTask,
  faultTrades,
} from '../studies/run-fault.ts';
import type { Trade } from '../trades/measure.ts';
import { formatDate } from '../units/calendar.ts';
import { type Ageing, ageingOf } from './ageing.ts';
import { type Criterion, type Due, dueOf } from './care-due.ts';
import type { Diary } from './diary.ts';
import { type JobKind, kindEdits, kindsOf, restEdits } from './job-kinds.ts';
import { type Load, loadKey, loadOf, usualRuns } from './load.ts';
import { type KindRun, lifeBands, stageUseOf } from './stage-use.ts';
import { drawnTimelines, middleTimeline, type Timeline } from './timeline.ts';

/** Dates are year-month-day. */
export interface CareRow extends Omit<Due, 'last' | 'criteria' | 'p10' | 'p50' | 'p90'> {
  readonly id: string;
  readonly part: string;
  readonly action: CareTask['action'];
  readonly says: string;
  readonly source: string;
  readonly own?: true;
  readonly last?: string;
  readonly p10?: string;
  readonly p50?: string;
  readonly p90?: string;
  readonly criteria: readonly (Omit<Criterion, 'due'> & { readonly due?: string })[];
  /** What an overdue part is taken to be like. */
  readonly ageing?: Ageing;
  /** Findings that are worse for it, worst first. */
  readonly effects?: readonly Effect[];
  /** Why its ageing could not be run. */
  readonly fault?: string;
}

export interface CareStudy {
  readonly version: 1;
  readonly today: string;
  readonly began?: string;
  /** What the hours come from, and how many hours a week anything printed. */
  readonly load?: {
    readonly from: Load['from'];
    readonly jobs: number;
    /** Seconds a week, each week's own, the latest first. */
    readonly weeks: readonly number[];
    /** Seconds of printing of each machine since the cabinet began. */
    readonly machines: Readonly<Record<string, number>>;
  };
  /** Soonest first; what is not known last. */
  readonly tasks: readonly CareRow[];
  /** All that is overdue at once; absent when fewer than two such parts change a finding. */
  readonly together?: readonly Effect[];
  readonly remarks: readonly string[];
  readonly samples: { readonly asked: number; readonly ran: number; readonly faults: readonly string[] };
  readonly stopped: boolean;
}

export interface CareOptions {
  readonly diary?: Diary;
  /** Day as a number (units/calendar.ts). */
  readonly today: number;
  readonly samples?: number;
  readonly seed?: number;
  readonly evaluate?: EvaluateFaults;
  readonly trades?: readonly Trade[];
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
}

export const CARE_SAMPLES = 24;
/** Ways in which the weeks may go on. They are sums alone, and take no day to be run. */
const WAYS = 200;

export async function care(source: ReadSource, options: CareOptions): Promise<CareStudy> {
  const { cabinet, origins } = source;
  const { diary, today, samples = CARE_SAMPLES, seed = 1, progress, stop = () => false } = options;
  const evaluate = options.evaluate ?? evaluateFaultsHere(source, options.trades);
  const days = Object.keys(cabinet.days);
  const recorded = diary?.jobs ?? [];
  const kinds = kindsOf(recorded.length > 0 ? recorded : usualRuns(cabinet, today - 1, today), cabinet);
  const kindDays = [...new Set(kinds.map(({ day }) => day))];
  let all = samples + kinds.length + kindDays.length;
  const hooks = countedHooks(() => all, progress, stop);
  const run = (tasks: readonly FaultTask[]): Promise<readonly (FaultOutcome | undefined)[]> => evaluate(tasks, hooks);

  const judgement = await judge(source, {
    samples,
    seed,
    remedies: false,
    trades: faultTrades(options.trades),
    evaluate: (variants) => run(variants.map((variant) => ({ ...variant, days }))),
    stop,
  });
  const { runs, faults } = await runKinds(kinds, kindDays, run);
  const load = loadOf(diary, cabinet, today, stageUseOf(runs));
  const middle = load === undefined ? undefined : middleTimeline(load);
  const drawn = load === undefined ? [] : drawnTimelines(load, WAYS, seed);
  const lives = lifeBands(judgement.findings);
  const dues = careTasksOf(cabinet, origins).map((task) => ({
    task,
    due: dueOf({ task, diary, today, middle, drawn: drawn.length > 0 ? drawn : withoutLoad(), lives, seed }),
  }));

  const aged = dues.flatMap(({ task, due }) => {
    const ageing = due.p50 !== undefined && due.p50 < today ? ageingOf(task, due.criteria, cabinet) : undefined;
    return ageing === undefined ? [] : [{ id: task.id, ageing }];
  });
  const tasksOf = (ageings: readonly Ageing[]): FaultTask => ({
    edits: ageings.flatMap(({ edits }) => edits),
    ...(ageings.some(({ otherwise }) => otherwise !== undefined)
      ? { otherwise: ageings.flatMap(({ edits, otherwise = edits }) => otherwise) }
      : {}),
    inputs: {},
    days,
  });
  // One part's care may be overdue in two ways, a test and a change: it is worn once.
  const once = aged.filter(
    ({ ageing }, at) =>
      aged.findIndex((other) => JSON.stringify(other.ageing.edits) === JSON.stringify(ageing.edits)) === at,
  );
  all += aged.length + (once.length > 1 ? 1 : 0);
  const outcomes = await run([
    ...aged.map(({ ageing }) => tasksOf([ageing])),
    ...(once.length > 1 ? [tasksOf(once.map(({ ageing }) => ageing))] : []),
  ]);
  const { findings } = judgement;
  const rows = dues.map(({ task, due }): CareRow => {
    const at = aged.findIndex(({ id }) => id === task.id);
    return { ...rowOf(task, due), ...(at < 0 ? {} : wornOf(aged[at]!.ageing, outcomes[at])) };
  });
  const together = outcomes[aged.length];
  return {
    version: 1,
    today: formatDate(today),
    ...(diary === undefined ? {} : { began: formatDate(diary.began) }),
    ...(load === undefined || middle === undefined ? {} : { load: loadTold(load, middle) }),
    tasks: rows.sort((a, b) => rank(a) - rank(b) || (a.p50 ?? '9').localeCompare(b.p50 ?? '9')),
    ...(together === undefined || together.fault !== undefined ? {} : { together: effectsOf(together, findings) }),
    remarks: [...(diary?.remarks ?? []), ...faults],
    samples: judgement.samples,
    stopped: stop(),
  };

  function wornOf(ageing: Ageing, outcome: FaultOutcome | undefined): Partial<CareRow> {
    if (outcome === undefined) return { ageing };
    if (outcome.fault !== undefined) return { ageing, fault: outcome.fault };
    return { ageing, effects: effectsOf(outcome, findings) };
  }
}

/** Intervals of the calendar have a spread even where nothing is known of jobs: ways without any. */
function withoutLoad(): Timeline[] {
  return Array.from({ length: WAYS }, () => NOTHING);
}
const NOTHING: Timeline = { used: () => 0, reached: () => Number.POSITIVE_INFINITY };

async function runKinds(
  kinds: readonly JobKind[],
  days: readonly string[],
  run: (tasks: readonly FaultTask[]) => Promise<readonly (FaultOutcome | undefined)[]>,
): Promise<{ readonly runs: readonly KindRun[]; readonly faults: readonly string[] }> {
  const outcomes = await run([
    ...days.map((day) => ({ edits: restEdits(day), inputs: {}, days: [day] })),
    ...kinds.map((kind) => ({ edits: kindEdits(kind), inputs: {}, days: [kind.day] })),
  ]);
  const asked: readonly Omit<KindRun, 'numbers'>[] = [
    ...days.map((day) => ({ day })),
    ...kinds.map((kind) => ({ kind, day: kind.day })),
  ];
  return {
    runs: asked.flatMap((one, at) => {
      const numbers = outcomes[at];
      return numbers === undefined || numbers.fault !== undefined ? [] : [{ ...one, numbers }];
    }),
    faults: asked.flatMap(({ kind }, at) => {
      const fault = outcomes[at]?.fault;
      return fault === undefined ? [] : [`${kind?.job ?? 'a day with nothing to print'} could not be run: ${fault}`];
    }),
  };
}

function rowOf({ id, part, action, says, source, own }: CareTask, due: Due): CareRow {
  const { last, p10, p50, p90, criteria, ...rest } = due;
  const date = (name: string, day: number | undefined): object =>
    day === undefined ? {} : { [name]: formatDate(day) };
  return {
    id,
    part,
    action,
    says,
    source,
    ...(own === undefined ? {} : { own }),
    ...date('last', last),
    ...date('p10', p10),
    ...date('p50', p50),
    ...date('p90', p90),
    criteria: criteria.map(({ due: day, ...criterion }) => ({ ...criterion, ...date('due', day) })),
    ...rest,
  };
}

const rank = ({ verdict }: CareRow): number => (verdict === 'unknown' ? 1 : 0);

function loadTold(load: Load, middle: Timeline): NonNullable<CareStudy['load']> {
  const machines = [...load.daily.keys()].filter((key) => key.startsWith('machine '));
  return {
    from: load.from,
    jobs: load.jobs,
    weeks: load.weeks.get(loadKey({})) ?? [],
    machines: Object.fromEntries(machines.map((key) => [key.slice('machine '.length), middle.used(key, load.first)])),
  };
}
