// The week's plan of the jobs that wait, with its picture and its calendar; made anew beside an earlier one where something has changed.

import {
  isFault,
  type KeptStart,
  momentAfter,
  type PlanOptions,
  type PlanOutcome,
  type PlanTask,
  parseMoment,
  plan,
  planCalendar,
  planPicture,
  planRunner,
  type ReadSource,
} from '@stillair/engine';
import { type Hands, type Hooks, turn } from './hands.ts';
import type { Results, Wishes } from './protocol.ts';
import { withJobFiles } from './study-queue.ts';

const DAY = 86_400;

export async function planWeek(
  asked: ReadSource,
  wishes: Wishes,
  hands: Hands,
  { progress, stop }: Hooks,
): Promise<Results['plan']> {
  const source = await withJobFiles(asked, wishes, { progress, stop });
  if ('unreadable' in source) return source;
  const { text, cabinet } = source;
  if (cabinet.queue === undefined) throw new Error('no job waits: the file has no queue');
  const made = await plan(source, {
    ...replanned(source, wishes),
    samples: wishes.samples,
    progress,
    stop,
    pause: turn,
    evaluate: hands.spread<PlanTask, PlanOutcome>({ runs: 'trials', text, here: planRunner(source) }),
  });
  const names = { title: cabinet.title, machines: Object.keys(cabinet.machines), units: wishes.units ?? 'metric' };
  return { plan: made, picture: planPicture(made, names), calendar: planCalendar(made, cabinet.title) };
}

/** From when on, and what of the earlier plan has begun by then. */
export function replanned(
  { cabinet }: ReadSource,
  { now, earlier }: Pick<Wishes, 'now' | 'earlier'>,
): Pick<PlanOptions, 'now' | 'keep' | 'cuts'> {
  if (now === undefined) return {};
  const { origin, from } = cabinet.queue!;
  const moment = parseMoment(now);
  if (isFault(moment)) throw new Error(`the moment is not understood: ${moment.what}; ${moment.mend}`);
  const moved = { now: momentAfter(moment, origin, from) };
  if (earlier === undefined) return moved;
  const shift = (earlier.origin - origin) * DAY;
  const keep = earlier.starts.map(({ id, machine, start }): KeptStart => ({ id, machine, start: start + shift }));
  return { ...moved, keep, cuts: earlier.cuts };
}
