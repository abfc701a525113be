// Jobs that are alike, each kind run once on a day of its own, beside the same day with nothing to print: what a job adds is the
// difference, and what it adds in an hour is what any job of its kind adds.

import type { Cabinet, Edit } from '../cabinet/cabinet.ts';
import { joinPath } from '../cabinet/edit-path.ts';
import type { JobRun } from './diary.ts';

export interface JobKind {
  /** Machine, material and name. */
  readonly key: string;
  readonly job: string;
  readonly machine: string;
  readonly material: string;
  /** Mean of those that ran, at most what fits a day, s. */
  readonly duration: number;
  /** For that duration, kg. */
  readonly mass?: number;
  /** Day of the file on which it is run. */
  readonly day: string;
  /** When it starts there, s: as the job of that name in the file, as it was first entered, else at nine. */
  readonly start: number;
}

const HOUR = 3600;
const DAY = 24 * HOUR;
/** Left of a day after the longest job that is run on it: fans run on, beds cool. */
const REST = 2 * HOUR;
const NINE = 9 * HOUR;

export const keyOfRun = ({ machine, material, job }: Pick<JobRun, 'machine' | 'material' | 'job'>): string =>
  JSON.stringify([machine, material ?? '', job]);

/** Kinds of what ran; what runs on a machine or of a material that the cabinet does not have is of none. */
export function kindsOf(runs: readonly JobRun[], cabinet: Cabinet): JobKind[] {
  const groups = new Map<string, JobRun[]>();
  for (const run of runs) {
    const { machine, material } = run;
    if (material === undefined || cabinet.machines[machine] === undefined) continue;
    if (!Object.hasOwn(cabinet.materials, material)) continue;
    const key = keyOfRun(run);
    groups.set(key, [...(groups.get(key) ?? []), run]);
  }
  return [...groups].map(([key, alike]): JobKind => {
    const { job, machine, material } = alike[0]!;
    const times = sum(alike, (run) => run.times);
    const mean = sum(alike, (run) => run.times * run.duration) / times;
    const duration = Math.min(mean, DAY - REST);
    const known = alike.filter(({ mass }) => mass !== undefined);
    const rate = sum(known, (run) => run.times * run.mass!) / sum(known, (run) => run.times * run.duration);
    const day = dayWith(cabinet, job) ?? Object.keys(cabinet.days)[0]!;
    const began = cabinet.days[day]!.jobs[job]?.start ?? alike.find((run) => run.start !== undefined)?.start ?? NINE;
    const start = Math.floor(Math.max(0, Math.min(began, DAY - REST - duration)) / 60) * 60;
    return {
      key,
      job,
      machine,
      material: material!,
      duration,
      day,
      start,
      ...(known.length === 0 ? {} : { mass: rate * duration }),
    };
  });
}

function sum<Item>(items: readonly Item[], of: (item: Item) => number): number {
  return items.reduce((total, item) => total + of(item), 0);
}

function dayWith({ days }: Cabinet, job: string): string | undefined {
  return Object.keys(days).find((id) => Object.hasOwn(days[id]!.jobs, job));
}

/** As the file writes times of day. */
export function clockText(seconds: number): string {
  return `${Math.floor(seconds / HOUR)}:${String(Math.floor((seconds % HOUR) / 60)).padStart(2, '0')}`;
}

/** The day with this job alone. */
export function kindEdits({ job, machine, material, duration, mass, day, start }: JobKind): Edit[] {
  const entry = {
    machine,
    material,
    start: clockText(start),
    for: `${Math.max(1, Math.round(duration))} s`,
    ...(mass === undefined ? {} : { mass: `${Number((1000 * mass).toPrecision(6))} g` }),
  };
  return [
    { set: { [joinPath(['days', day, 'jobs'])]: { [job]: entry }, [joinPath(['days', day, 'length'])]: '24 h' } },
  ];
}

/** The day with nothing to print. */
export function restEdits(day: string): Edit[] {
  return [{ set: { [joinPath(['days', day, 'jobs'])]: {}, [joinPath(['days', day, 'length'])]: '24 h' } }];
}
