// What a planned week costs: it is simulated as planned, each of its jobs is reckoned piece by piece as any part is, and all of them
// together are the whole.

import type { ReadSource } from '../judge/judge.ts';
import { sampleColumn, valueAt } from '../judge/samples.ts';
import { countedHooks, inTurn } from '../judge/variants.ts';
import { type CostRow, rowOf, type Told } from './cost-rows.ts';
import { type DayMoney, type MoneyRuns, moneyInputs } from './day-money.ts';
import type { Diary } from './diary.ts';
import { failuresOf } from './failures.ts';
import { type PartCost, partOf, partPieces, type Sum } from './part-cost.ts';
import type { EvaluatePlan, KeptStart, PlanTask } from './plan.ts';
import { jobsOf } from './plan.ts';
import { printingPerYear } from './printing-year.ts';
import { PLAN_DAY } from './queue-trial.ts';
import type { Placed } from './week-run.ts';
import { runWeekTask, type WeekOutcome, type WeekTask } from './week-sample.ts';

/** A job of the week: its numbers are for one good job, as those of any part. */
export interface QueuePart extends PartCost {
  /** s after the midnight before the plan begins. */
  readonly start: number;
}

export interface QueueCosts {
  readonly version: 1;
  readonly currency: string;
  /** Day on which the plan begins, days since 1970-01-01. */
  readonly origin: number;
  /** What is counted, s after that midnight. */
  readonly from: number;
  readonly until: number;
  /** In the order of their starts. */
  readonly jobs: readonly QueuePart[];
  /** Over all jobs; what they add up to, for one of them, and for a month of such weeks. */
  readonly rows: readonly CostRow[];
  readonly total: CostRow;
  readonly eachJob: CostRow;
  readonly month: CostRow;
  /** Hands on all of them, s. */
  readonly hand: CostRow;
  /** Electricity, wear and filters that the jobs bear, and what running the week costs. */
  readonly running: { readonly jobs: number; readonly week: number };
  /** Jobs whose filament has no price: not counted in anything. */
  readonly unpriced: readonly string[];
  readonly remarks: readonly string[];
  readonly samples: { readonly asked: number; readonly ran: number };
  readonly stopped: boolean;
}

export interface QueueCostOptions {
  /** Where each job starts, as a plan says: those of the queue that it leaves out are not counted. */
  readonly starts: readonly KeptStart[];
  readonly diary?: Diary;
  /** Day as a number; needed with a diary. */
  readonly today?: number;
  readonly samples?: number;
  readonly seed?: number;
  readonly evaluate?: EvaluatePlan;
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
}

export const QUEUE_COST_SAMPLES = 12;
const DAY = 86_400;
const MONTH: number = (365.25 / 12) * DAY;

export async function queueCosts(source: ReadSource, options: QueueCostOptions): Promise<QueueCosts> {
  const { cabinet, origins } = source;
  const { starts, diary, today, samples = QUEUE_COST_SAMPLES, seed = 1, progress, stop = () => false } = options;
  const queue = cabinet.queue!;
  const week = placedAt(starts, queue);
  const failed =
    diary === undefined || origins.get('costs.failures')?.kind !== 'assumed' ? undefined : failuresOf(diary.jobs);
  const evaluate = options.evaluate ?? inTurn((task: PlanTask) => runWeekTask(cabinet, task as WeekTask));
  const columns = new Map<string, readonly number[]>();
  const share = (path: string, at: number): number => {
    const column = columns.get(path) ?? sampleColumn(path, samples, seed);
    columns.set(path, column);
    return column[at]!;
  };
  const tasks = Array.from({ length: 1 + samples }, (_, at): WeekTask => {
    const inputs = at === 0 ? {} : moneyInputs(cabinet, origins, (path) => share(path, at - 1));
    const failures =
      failed === undefined
        ? {}
        : { 'costs.failures': at === 0 ? failed.spread.p50 : valueAt(failed.spread, share('costs.failures', at - 1)) };
    return { week, inputs: { ...inputs, ...failures }, asks: 'money', until: queue.until };
  });
  const outcomes = (await evaluate(
    tasks,
    countedHooks(() => tasks.length, progress, stop),
  )) as readonly (WeekOutcome | undefined)[];
  const [first, ...others] = outcomes;
  const from = Math.min(0, ...week.map(({ start }) => Math.floor(start / DAY) * DAY));
  const told = {
    version: 1,
    currency: cabinet.currency,
    origin: queue.origin,
    from,
    until: from + (first?.length ?? 0),
    stopped: stop(),
  } as const;
  const { money } = first ?? {};
  if (money === undefined) {
    const nothing: CostRow = { id: 'total', says: 'the week', missing: first?.fault ?? 'it was stopped before it ran' };
    return {
      ...told,
      jobs: [],
      rows: [],
      total: nothing,
      eachJob: nothing,
      month: nothing,
      hand: nothing,
      running: { jobs: 0, week: 0 },
      unpriced: [],
      remarks: first?.fault === undefined ? [] : [`the week could not be run: ${first.fault}`],
      samples: { asked: samples, ran: 0 },
    };
  }
  const runs: MoneyRuns = { middle: money, samples: others.flatMap((one) => one?.money ?? []) };
  const perYear = printingPerYear(cabinet, diary, today);
  const priced = week.filter(({ job }) => money.prints[job.id] !== undefined);
  const bare = week.filter((each) => !priced.includes(each)).map(({ job }) => job.id);
  return {
    ...told,
    jobs: priced.map(({ job, start }) => ({ ...partOf(runs, PLAN_DAY, job.id, perYear, 1), start })),
    ...wholeOf(runs, perYear, first!.length!, bare.length),
    unpriced: bare,
    remarks: [
      ...(failed === undefined ? [] : [failed.says]),
      ...(bare.length === 0 ? [] : [`not counted, as nobody said what their filament costs: ${bare.join(', ')}`]),
      ...Object.entries(queue.jobs).flatMap(([id, { remarks = [] }]) => remarks.map((says) => `${id}: ${says}`)),
    ],
    samples: { asked: samples, ran: runs.samples.length },
  };
}

/** Jobs of the queue where the plan puts them. */
function placedAt(starts: readonly KeptStart[], queue: NonNullable<ReadSource['cabinet']['queue']>): Placed[] {
  return jobsOf(queue, [], queue.from)
    .flatMap((job): Placed[] => {
      const at = starts.find(({ id }) => id === job.id);
      return at === undefined ? [] : [{ job, machine: at.machine, start: at.start, end: at.start + job.job.duration }];
    })
    .sort((a, b) => a.start - b.start);
}

const SAYS: Readonly<Record<string, string>> = {
  filament: 'filament of all jobs',
  electricity: 'electricity of the machines, as simulated',
  standby: 'electricity of standby, fans and lamps over the week',
  wear: 'nozzles, belts and plates',
  machine: 'machines growing old',
  filters: 'filters and carbon, by their lives',
  cabinet: 'the cabinet itself, by the hours of its machines',
  hands: 'hands on all jobs',
};

function wholeOf(
  runs: MoneyRuns,
  perYear: number | undefined,
  length: number,
  without: number,
): Pick<QueueCosts, 'rows' | 'total' | 'eachJob' | 'month' | 'hand' | 'running'> {
  /** Over all jobs of a week; unknown where it is of one. */
  const over =
    (of: (sum: Sum) => number | undefined) =>
    (day: DayMoney): number | undefined => {
      let sum = 0;
      for (const print of Object.values(day.prints)) {
        const amount = of({ print, day });
        if (amount === undefined) return undefined;
        sum += amount;
      }
      return sum;
    };
  const row = (told: Told<DayMoney>): CostRow => rowOf(runs, told);
  const pieces = partPieces(perYear);
  const rows = pieces.map(({ of, ...told }) => row({ ...told, says: SAYS[told.id] ?? told.says, of: over(of) }));
  const total = (day: DayMoney): number => pieces.reduce((sum, { of }) => sum + (over(of)(day) ?? 0), 0);
  const count = Object.keys(runs.middle.prints).length;
  const less = without === 0 ? '' : `, without ${without === 1 ? '1 job' : `${without} jobs`}`;
  const { electricity, filters, wear } = runs.middle;
  return {
    rows,
    total: row({
      id: 'total',
      says: `the week${less}`,
      of: (day) => (count === 0 ? undefined : total(day)),
      missing: 'nobody said what the filament of its jobs costs: give prices: for their materials',
    }),
    eachJob: row({
      id: 'each-job',
      says: 'each of its good jobs',
      of: (day) => (count === 0 ? undefined : total(day) / count),
    }),
    month: row({
      id: 'month',
      says: `a month of such weeks${less}`,
      of: (day) => (count === 0 ? undefined : (total(day) * MONTH) / length),
    }),
    hand: row({ id: 'hand', says: 'hands on all jobs, s', of: (day) => (day.hand * count) / (1 - day.failures) }),
    running: {
      jobs: Object.values(runs.middle.prints).reduce(
        (sum, print) => sum + print.own + print.shared + print.wear + print.filters,
        0,
      ),
      week: electricity + filters + wear,
    },
  };
}
