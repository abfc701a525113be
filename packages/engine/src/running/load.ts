// What has run, day by day, and what may run from now on: hours of each machine, hours in which anything prints, and how much of
// each filter's and carbon's life that took. The weeks to come are drawn from the weeks that were.

import type { Cabinet } from '../cabinet/cabinet.ts';
import { bayOfEnd, connectedBays } from '../trades/plant.ts';
import type { Diary, JobRun } from './diary.ts';

/** `cabinet`, `machine left`, `path exhaust`, `stage air.exhaust.0`: what is counted. */
export type LoadKey = string;

export interface Load {
  /** First day of the series. */
  readonly first: number;
  /** The day up to which they reach, itself not in them. */
  readonly today: number;
  /** A value a day: seconds, or share of a life. */
  readonly daily: ReadonlyMap<LoadKey, Float64Array>;
  /** The last weeks, a value a week, the latest first. */
  readonly weeks: ReadonlyMap<LoadKey, readonly number[]>;
  readonly from: 'diary' | 'few weeks' | 'costs.times';
  readonly jobs: number;
}

/** Share of a life that a job takes of each stage, and that a day takes on which nothing prints. */
export interface StageUse {
  readonly ofRun: (run: JobRun) => Readonly<Record<string, number>>;
  readonly ofRest: Readonly<Record<string, number>>;
}

const DAY = 86_400;
const WEEK = 7;
const YEAR = 365.25;
/** Weeks that are looked back upon: half a year. */
const WEEKS = 26;
/** With fewer weeks than this, what comes may be half or twice as much. */
export const FEW_WEEKS = 4;

export const loadKey = (counts: { readonly machine?: string; readonly path?: string }): LoadKey =>
  counts.machine !== undefined
    ? `machine ${counts.machine}`
    : counts.path !== undefined
      ? `path ${counts.path}`
      : 'cabinet';
export const stageKey = (stage: string): LoadKey => `stage ${stage}`;

/** Jobs as `costs.times` has them come, evenly over the year before today or since the cabinet began. */
export function usualRuns({ days, costs }: Cabinet, began: number, today: number): JobRun[] {
  const first = Math.min(began, today - Math.round(YEAR));
  const years = (today - first) / YEAR;
  return Object.entries(costs.times).flatMap(([day, times]) =>
    Object.entries(days[day]?.jobs ?? {}).map(([job, { machine, material, duration, mass }]) => ({
      first,
      last: today - 1,
      times: times * years,
      job,
      machine,
      material,
      duration,
      mass,
      failed: 0,
    })),
  );
}

/** Undefined when neither the diary nor `costs.times` says anything of jobs. */
export function loadOf(diary: Diary | undefined, cabinet: Cabinet, today: number, use: StageUse): Load | undefined {
  const recorded = diary?.jobs ?? [];
  const began = diary?.began ?? today;
  const runs = recorded.length > 0 ? recorded : usualRuns(cabinet, began, today);
  if (runs.length === 0) return undefined;
  const first = Math.min(began, ...runs.map((run) => run.first));
  const series = new Map<LoadKey, Float64Array>();
  const length = Math.max(today + 1 - first, 1);
  const put = (key: LoadKey, of: (run: JobRun) => number, which: readonly JobRun[], rest = 0): void => {
    const values = new Float64Array(length).fill(rest);
    for (const run of which) spreadOver(values, run, first, of(run));
    series.set(key, values);
  };
  const machines = [...new Set([...Object.keys(cabinet.machines), ...runs.map(({ machine }) => machine)])];
  for (const machine of machines)
    put(
      loadKey({ machine }),
      ({ times, duration }) => times * duration,
      runs.filter((run) => run.machine === machine),
    );
  series.set('cabinet', busyDays(runs, first, length));
  for (const path of Object.keys(cabinet.paths))
    series.set(
      loadKey({ path }),
      busyDays(
        runs.filter((run) => meets(cabinet, run.machine, path)),
        first,
        length,
      ),
    );
  for (const [stage, rest] of Object.entries(use.ofRest))
    put(stageKey(stage), (run) => use.ofRun(run)[stage] ?? 0, runs, rest);
  const begins = Math.min(...runs.map((run) => run.first));
  const count = Math.min(WEEKS, Math.floor((today - begins) / WEEK));
  const from = recorded.length === 0 ? 'costs.times' : count < FEW_WEEKS ? 'few weeks' : 'diary';
  return {
    first,
    today,
    daily: series,
    weeks: weeksOf(series, first, today, from === 'few weeks' ? begins : undefined, count),
    from,
    jobs: recorded.reduce((sum, { times }) => sum + times, 0),
  };
}

/** Whole weeks before today; with too few of them, one week that is the mean of all days. */
function weeksOf(
  series: ReadonlyMap<LoadKey, Float64Array>,
  first: number,
  today: number,
  begins: number | undefined,
  count: number,
): Map<LoadKey, readonly number[]> {
  const sum = (values: Float64Array, from: number, to: number): number => {
    let total = 0;
    for (let day = from; day < to; day += 1) total += values[day - first] ?? 0;
    return total;
  };
  return new Map(
    [...series].map(([key, values]) => [
      key,
      begins === undefined
        ? Array.from({ length: count }, (_, week) => sum(values, today - WEEK * (week + 1), today - WEEK * week))
        : [(WEEK * sum(values, begins, today + 1)) / Math.max(today + 1 - begins, WEEK)],
    ]),
  );
}

/** An amount, evenly over the days of a run. */
function spreadOver(values: Float64Array, { first: from, last }: JobRun, first: number, amount: number): void {
  const share = amount / (last - from + 1);
  for (let day = from; day <= last; day += 1) {
    const at = day - first;
    if (at >= 0 && at < values.length) values[at] = values[at]! + share;
  }
}

/**
 * Seconds in which anything prints. Jobs whose start is known count once where they overlap; those that nobody timed are taken to
 * run on all their machines at the same time, as a day's jobs mostly do.
 */
export function busyDays(runs: readonly JobRun[], first: number, length: number): Float64Array {
  const values = new Float64Array(length);
  const timed = runs
    .filter(({ start, times, first: from, last }) => start !== undefined && times === 1 && from === last)
    .map((run) => ({ run, at: run.first * DAY + run.start! }))
    .sort((a, b) => a.at - b.at);
  let until = Number.NEGATIVE_INFINITY;
  for (const { run, at } of timed) {
    const end = at + run.duration;
    spreadOver(values, run, first, Math.max(end - Math.max(at, until), 0));
    until = Math.max(until, end);
  }
  const known = new Set(timed.map(({ run }) => run));
  const untimed = runs.filter((run) => !known.has(run));
  const ofMachines = [...new Set(untimed.map(({ machine }) => machine))].map((machine) => {
    const own = new Float64Array(length);
    for (const run of untimed) if (run.machine === machine) spreadOver(own, run, first, run.times * run.duration);
    return own;
  });
  for (let day = 0; day < length; day += 1)
    values[day] = values[day]! + Math.max(0, ...ofMachines.map((own) => own[day]!));
  return values;
}

/** Whether a machine's air meets an air path; one that is gone is taken to have met them all. */
function meets(cabinet: Cabinet, machine: string, path: string): boolean {
  const bay = cabinet.machines[machine]?.bay;
  if (bay === undefined) return true;
  const reached = connectedBays(cabinet, bay);
  const { from, to } = cabinet.paths[path]!;
  return [from, to].some((end) => reached.includes(bayOfEnd(cabinet, end) ?? end));
}
