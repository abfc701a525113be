// What parts cost: of the days, of the queue as it would be planned, or of a month by the diary that the person picked.

import {
  monthCost,
  type PlanOutcome,
  type PlanTask,
  parseDate,
  partCosts,
  plan,
  planRunner,
  queueCosts,
  type ReadSource,
  readDiary,
} from '@stillair/engine';
import { type Hands, type Hooks, turn } from './hands.ts';
import type { Results, Wishes } from './protocol.ts';
import { withJobFiles } from './study-queue.ts';

export function costsOf(source: ReadSource, wishes: Wishes, hands: Hands, hooks: Hooks): Promise<Results['partCosts']> {
  switch (wishes.of) {
    case 'queue':
      return ofQueue(source, wishes, hands, hooks);
    case 'month':
      return ofMonth(source, wishes, hooks);
    default:
      return ofDays(source, wishes, hooks);
  }
}

async function ofDays(
  source: ReadSource,
  { samples, days }: Wishes,
  { progress, stop }: Hooks,
): Promise<Results['partCosts']> {
  const costs = await partCosts(source, { samples, progress, stop, ...(days === undefined ? {} : { days }) });
  return { of: 'days', costs };
}

async function ofQueue(asked: ReadSource, wishes: Wishes, hands: Hands, hooks: Hooks): Promise<Results['partCosts']> {
  const source = await withJobFiles(asked, wishes, hooks);
  if ('unreadable' in source) return source;
  const evaluate = hands.spread<PlanTask, PlanOutcome>({ runs: 'trials', text: source.text, here: planRunner(source) });
  const { jobs } = await plan(source, { ...hooks, pause: turn, evaluate });
  if (jobs.length === 0)
    throw new Error('there is no plan whose cost could be told; “When does each job run?” says why');
  return {
    of: 'queue',
    costs: await queueCosts(source, { ...hooks, evaluate, starts: jobs, samples: wishes.samples }),
  };
}

async function ofMonth(
  source: ReadSource,
  { file, today = '', month = '', samples }: Wishes,
  { progress, stop }: Hooks,
): Promise<Results['partCosts']> {
  const day = parseDate(today);
  if (typeof day !== 'number') throw new Error(`the date is not understood: ${day.what}`);
  if (file === undefined) throw new Error('no diary was picked');
  const answer = readDiary(file.name, await file.text(), source.cabinet, day);
  if (!answer.ok) return { unreadable: file.name, complaints: answer.complaints };
  const [year, number] = month.split('-').map(Number);
  if (!(year! > 0) || !(number! >= 1 && number! <= 12)) throw new Error('no month was given');
  const costs = await monthCost(source, {
    diary: answer.diary,
    year: year!,
    month: number!,
    today: day,
    samples,
    progress,
    stop,
  });
  return { of: 'month', costs };
}
