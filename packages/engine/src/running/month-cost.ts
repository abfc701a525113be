// What a month cost, from the diary: each kind of job run once on a day of its own, beside the same day with nothing to print. What a
// job adds to the electricity of the rest is its own; the rest goes on every day of the month.

import type { ReadSource } from '../judge/judge.ts';
import { countedHooks } from '../judge/variants.ts';
import { dayNumber, formatDate } from '../units/calendar.ts';
import { type CostRow, type Drawn, rowOf, type Told } from './cost-rows.ts';
import { type DayMoney, type MoneyRuns, runMoney } from './day-money.ts';
import type { Diary, JobRun } from './diary.ts';
import { type JobKind, keyOfRun, kindEdits, kindsOf, restEdits } from './job-kinds.ts';
import { busyDays } from './load.ts';

export interface MonthCost {
  readonly version: 1;
  readonly currency: string;
  /** `2026-11`, and its first and last day that are counted. */
  readonly month: string;
  readonly first: string;
  readonly last: string;
  readonly jobs: number;
  readonly failed: number;
  /** s of all machines. */
  readonly printing: number;
  readonly rows: readonly CostRow[];
  readonly total: CostRow;
  /** For each job that did not fail; absent when none did. */
  readonly goodJob?: CostRow;
  /** Hands on all jobs, s. */
  readonly hand: CostRow;
  readonly kinds: readonly {
    readonly job: string;
    readonly machine: string;
    readonly material: string;
    readonly times: number;
  }[];
  readonly remarks: readonly string[];
  readonly samples: { readonly asked: number; readonly ran: number };
  readonly stopped: boolean;
}

export interface MonthOptions {
  readonly diary: Diary;
  /** Year and month of the calendar. */
  readonly year: number;
  readonly month: number;
  /** Day as a number: later days are not counted. */
  readonly today: number;
  readonly samples?: number;
  readonly seed?: number;
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
}

const DAY = 86_400;

/** One sample of every day that is asked for. */
interface Runs {
  readonly rest: DayMoney;
  readonly kinds: ReadonlyMap<string, DayMoney>;
}

export async function monthCost(source: ReadSource, options: MonthOptions): Promise<MonthCost> {
  const { cabinet } = source;
  const { diary, year, month, today, samples = 12, seed = 1, progress, stop = () => false } = options;
  const first = dayNumber(year, month, 1);
  const last = Math.min(dayNumber(month === 12 ? year + 1 : year, (month % 12) + 1, 1) - 1, today);
  const runs = diary.jobs.flatMap((run) => within(run, first, last) ?? []);
  const kinds = kindsOf(runs, cabinet);
  const day = Object.keys(cabinet.days)[0]!;
  const all = (1 + kinds.length) * (1 + samples);
  const outcomes = await runMoney(
    source,
    [{ day, edits: restEdits(day) }, ...kinds.map((kind) => ({ day: kind.day, edits: kindEdits(kind) }))],
    {
      samples,
      seed,
      hooks: countedHooks(() => all, progress, stop),
    },
  );
  const [rest, ...ofKinds] = outcomes;
  const times = runs.reduce((sum, run) => sum + run.times, 0);
  const failed = runs.reduce((sum, run) => sum + run.failed, 0);
  const printing = runs.reduce((sum, run) => sum + run.times * run.duration, 0);
  const told = {
    version: 1,
    currency: cabinet.currency,
    month: `${year}-${String(month).padStart(2, '0')}`,
    first: formatDate(first),
    last: formatDate(last),
    jobs: times,
    failed,
    printing,
    kinds: kinds.map(({ key, job, machine, material }) => ({
      job,
      machine,
      material,
      times: runs.filter((run) => keyOfRun(run) === key).reduce((sum, run) => sum + run.times, 0),
    })),
    remarks: [
      ...diary.remarks,
      ...strange(runs, kinds),
      ...outcomes.flatMap((one, at) =>
        one !== undefined && 'fault' in one
          ? [`${kinds[at - 1]?.job ?? 'a day with nothing to print'} could not be run: ${one.fault}`]
          : [],
      ),
    ],
    stopped: stop(),
  } as const;
  if (rest === undefined || 'fault' in rest) {
    const nothing: CostRow = { id: 'total', says: 'the month', missing: 'it could not be run' };
    return { ...told, rows: [], total: nothing, hand: nothing, samples: { asked: samples, ran: 0 } };
  }
  const drawn = drawnOf(rest, kinds, ofKinds);
  const days = last + 1 - first;
  const busy = busyDays(runs, first, Math.max(days, 1)).reduce((sum, value) => sum + value, 0);
  const rows = rowsOf({ runs, days, busy, times }).map((row) => rowOf(drawn, row));
  const sum = ({ of }: { readonly of: (runs: Runs) => number | undefined }, at: Runs): number => of(at) ?? 0;
  const totalOf = (at: Runs): number =>
    rowsOf({ runs, days, busy, times }).reduce((total, row) => total + sum(row, at), 0);
  const good = times - failed;
  return {
    ...told,
    rows,
    total: rowOf(drawn, { id: 'total', says: 'the month', of: totalOf }),
    ...(good > 0
      ? {
          goodJob: rowOf(drawn, { id: 'good-job', says: 'each job that did not fail', of: (at) => totalOf(at) / good }),
        }
      : {}),
    hand: rowOf(drawn, { id: 'hand', says: 'hands on all jobs, s', of: ({ rest: of }) => of.hand * times }),
    samples: { asked: samples, ran: drawn.samples.length },
  };
}

/** The part of a run that lies in a time. */
function within(run: JobRun, first: number, last: number): JobRun | undefined {
  const [from, to] = [Math.max(run.first, first), Math.min(run.last, last)];
  if (to < from) return undefined;
  const share = (to + 1 - from) / (run.last + 1 - run.first);
  return { ...run, first: from, last: to, times: run.times * share, failed: run.failed * share };
}

function strange(runs: readonly JobRun[], kinds: readonly JobKind[]): string[] {
  const known = new Set(kinds.map(({ key }) => key));
  const names = runs.filter((run) => !known.has(keyOfRun(run))).map(({ job }) => job);
  return names.length === 0
    ? []
    : [`not counted, as their machine or material is not in the cabinet file: ${[...new Set(names)].join(', ')}`];
}

/** Samples of which every day ran. */
function drawnOf(
  rest: MoneyRuns,
  kinds: readonly JobKind[],
  runs: readonly (MoneyRuns | { readonly fault: string } | undefined)[],
): Drawn<Runs> {
  const good = kinds.flatMap(({ key }, at) => {
    const run = runs[at];
    return run === undefined || 'fault' in run ? [] : [{ key, run }];
  });
  const count = Math.min(rest.samples.length, ...good.map(({ run }) => run.samples.length));
  const at = (pick: (run: MoneyRuns) => DayMoney): Runs => ({
    rest: pick(rest),
    kinds: new Map(good.map(({ key, run }) => [key, pick(run)] as const)),
  });
  return {
    middle: at(({ middle }) => middle),
    samples: Array.from({ length: count }, (_, sample) => at(({ samples }) => samples[sample]!)),
  };
}

interface Counted {
  readonly runs: readonly JobRun[];
  readonly days: number;
  /** s in which anything prints. */
  readonly busy: number;
  readonly times: number;
}

function rowsOf({ runs, days, busy, times }: Counted): Told<Runs>[] {
  /** Over all that ran, an amount of the one job of its kind's day, with the hours that it really took. */
  const over =
    (of: (day: DayMoney, run: JobRun) => number | undefined) =>
    (at: Runs): number | undefined => {
      let sum = 0;
      for (const run of runs) {
        const day = at.kinds.get(keyOfRun(run));
        if (day === undefined) continue;
        const amount = of(day, run);
        if (amount === undefined) return undefined;
        sum += amount;
      }
      return sum;
    };
  const print = (day: DayMoney) => Object.values(day.prints)[0];
  /** Times the hours of a run over those of its kind. */
  const longer = (day: DayMoney, run: JobRun): number =>
    (run.times * run.duration) / (print(day)?.duration ?? run.duration);
  return [
    {
      id: 'filament',
      says: 'filament of all jobs, with what is wasted',
      of: over((day, run) => {
        const one = print(day);
        if (one === undefined) return undefined;
        const perKilogram = (one.filament + one.waste) / one.mass;
        return run.mass === undefined
          ? (one.filament + one.waste) * longer(day, run)
          : run.times * run.mass * perKilogram;
      }),
      missing: 'no price of a filament is known: give prices: for its material',
      source: 'catalogue prices are invented, typical; the file’s own go first',
    },
    {
      id: 'electricity',
      says: 'electricity that the jobs add, as simulated',
      of: (at) => over((day, run) => Math.max(day.electricity - at.rest.electricity, 0) * longer(day, run))(at),
    },
    {
      id: 'standby',
      says: 'electricity of the days themselves: standby, fans, lamps',
      of: ({ rest }) => rest.electricity * days,
    },
    { id: 'wear', says: 'nozzles, belts and plates', of: over((day, run) => day.wear * longer(day, run)) },
    {
      id: 'machine',
      says: 'machines growing old',
      of: over((day, run) => {
        const ageing = print(day)?.ageing;
        return ageing === undefined ? undefined : ageing * longer(day, run);
      }),
      missing: 'nobody said what the machines cost: give prices: for their kinds',
    },
    { id: 'filters', says: 'filters and carbon, by their lives', of: ({ rest }) => rest.filterRate * busy },
    {
      id: 'cabinet',
      says: 'the cabinet itself, written off over its life',
      of: ({ rest }) => (rest.bill === undefined ? undefined : (rest.bill * days * DAY) / rest.cabinetLife),
      missing: 'no price of the cabinet is known: give prices: of its parts',
    },
    {
      id: 'hands',
      says: 'hands on all jobs',
      of: ({ rest }) => (rest.handRate === undefined ? undefined : rest.hand * rest.handRate * times),
      missing: 'your own time, counted as nothing; costs.hand-hour says what an hour of it costs',
    },
  ];
}
