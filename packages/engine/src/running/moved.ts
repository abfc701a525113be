// What a plan made anew does with the jobs of an earlier one: which stay, which move and why, which are new and which have gone.

import type { Placing } from '../numerics/schedule/problem.ts';
import { formatMoment } from '../units/week.ts';
import { listed } from '../units/words.ts';
import type { KeptStart, PlannedJob } from './plan.ts';
import type { Week } from './week.ts';
import { whyNotAt } from './why.ts';

export interface MovedJob {
  readonly id: string;
  readonly what: 'begun' | 'stays' | 'moved' | 'new' | 'gone';
  /** Where the earlier plan has it, s after the midnight before the plan begins. */
  readonly before?: { readonly machine: string; readonly start: number };
  readonly now?: { readonly machine: string; readonly start: number };
  /** Of one that moved: what stands against its earlier place. */
  readonly because?: string;
}

export function movedJobs(
  earlier: readonly KeptStart[],
  jobs: readonly PlannedJob[],
  week: Week,
  placings: readonly Placing[],
): MovedJob[] {
  const told = jobs.map(({ id, machine, start, how }): MovedJob => {
    const before = earlier.find((each) => each.id === id);
    const now = { machine, start };
    if (before === undefined) return { id, what: 'new', now };
    const was = { machine: before.machine, start: before.start };
    const there = was.machine === machine && Math.abs(was.start - start) < week.step / 2;
    if (there) return { id, what: how === 'kept' ? 'begun' : 'stays', before: was, now };
    const task = week.jobs.findIndex((job) => job.id === id);
    const because = task < 0 ? 'the file pins it there' : whyNotAt(week, placings, task, was).because;
    return { id, what: 'moved', before: was, now, because };
  });
  const gone = earlier
    .filter(({ id }) => !jobs.some((job) => job.id === id))
    .map(({ id, machine, start }): MovedJob => ({ id, what: 'gone', before: { machine, start } }));
  return [...told, ...gone];
}

/** What stands before the jobs that moved: which have begun, and how many are where they were. */
export function movedHead(moved: readonly MovedJob[]): string {
  const begun = moved.filter(({ what }) => what === 'begun').map(({ id }) => id);
  const stay = moved.filter(({ what }) => what === 'stays').length;
  const one = begun.length === 1;
  const first =
    begun.length === 0
      ? 'nothing has begun'
      : `${listed(begun)} ${one ? 'has' : 'have'} begun and ${one ? 'stays' : 'stay'}`;
  const rest = begun.length + stay === moved.length ? '.' : ':';
  return `Against the earlier plan: ${first}, ${stay} ${stay === 1 ? 'job is where it was' : 'jobs are where they were'}${rest}`;
}

/** `vase: Tue 9:00 on left, was Mon 18:00: left prints hooks`; undefined for one that is where it was. */
export function movedText({ id, what, before, now, because }: MovedJob, origin: number): string | undefined {
  const place = ({ machine, start }: { readonly machine: string; readonly start: number }): string =>
    `${formatMoment(origin, start)} on ${machine}`;
  switch (what) {
    case 'moved':
      return `${id}: ${place(now!)}, was ${place(before!)}: ${because ?? ''}`;
    case 'new':
      return `${id}: ${place(now!)}, is new`;
    case 'gone':
      return `${id}: is no longer in the queue, was ${place(before!)}`;
    case 'begun':
    case 'stays':
      return undefined;
  }
}
