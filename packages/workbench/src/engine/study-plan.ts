// The week's plan of the jobs that wait, with its picture and its calendar.

import {
  plan,
  planCalendar,
  planPicture,
  type ReadSource,
  type Trial,
  type TrialTask,
  trialRunner,
} from '@stillair/engine';
import { type Hands, turn } from './hands.ts';
import type { Results, Wishes } from './protocol.ts';

export async function planWeek(
  source: ReadSource,
  { units = 'metric' }: Wishes,
  hands: Hands,
  { progress, stop }: { readonly progress: (done: number, all: number) => void; readonly stop: () => boolean },
): Promise<Results['plan']> {
  const { text, cabinet } = source;
  if (cabinet.queue === undefined) throw new Error('no job waits: the file has no queue');
  const made = await plan(source, {
    progress,
    stop,
    pause: turn,
    evaluate: hands.spread<TrialTask, Trial>({ runs: 'trials', text, here: trialRunner(source) }),
  });
  const names = { title: cabinet.title, machines: Object.keys(cabinet.machines), units };
  return { plan: made, picture: planPicture(made, names), calendar: planCalendar(made, cabinet.title) };
}
