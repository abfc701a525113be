// A plan that was made before, as `stillair plan --json` printed it.

import type { Cut, KeptStart, Plan } from '@stillair/engine';
import type { Io } from './io.ts';

const DAY = 86_400;

export interface EarlierPlan {
  /** Counted from the midnight before the queue's plan begins. */
  readonly starts: readonly KeptStart[];
  /** What its weeks taught. */
  readonly cuts: readonly Cut[];
}

/** Or what is wrong with it. */
export async function earlierPlan(path: string, origin: number, io: Io): Promise<EarlierPlan | string> {
  const reading = await io.read(path);
  if (!reading.ok) return `cannot read ${path}: ${reading.problem}`;
  let earlier: Partial<Plan>;
  try {
    earlier = JSON.parse(reading.text) as Partial<Plan>;
  } catch {
    return `${path} is no JSON: give what stillair plan --json printed`;
  }
  if (earlier?.version !== 1 || !Array.isArray(earlier.jobs) || typeof earlier.queue?.origin !== 'number')
    return `${path} is no plan of version 1: give what stillair plan --json printed`;
  const shift = (earlier.queue.origin - origin) * DAY;
  return {
    starts: earlier.jobs.map(({ id, machine, start }) => ({ id, machine, start: start + shift })),
    cuts: earlier.cuts ?? [],
  };
}
