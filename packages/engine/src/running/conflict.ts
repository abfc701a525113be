// Demands that cannot hold together: a set of them from which none can be taken without the rest becoming possible. Found by
// taking out one after the other (deletion filtering; J. W. Chinneck and E. W. Dravnieks, ORSA Journal on Computing 3:157, 1991, from memory).
// There may be other such sets, and a smaller one.

import { scheduling } from '../numerics/schedule/search.ts';
import { formatDuration } from '../units/format.ts';
import { formatMoment } from '../units/week.ts';
import { type WeekWish, weekOf } from './week.ts';

export interface Demand {
  readonly id: string;
  readonly says: string;
}

export interface Conflict {
  readonly demands: readonly Demand[];
  /** False when a schedule was not found for some set, but not proved to be missing either. */
  readonly proved: boolean;
}

const NODES = 3000;

/**
 * Undefined when all demands, deadlines among them, can hold together, or that could not be told, or the person has stopped it. `pause`
 * lets others have their turn.
 */
export async function conflictOf(
  wish: WeekWish,
  stop: () => boolean,
  pause: () => Promise<void>,
): Promise<Conflict | undefined> {
  const demands = demandsOf(wish);
  let proved = true;
  const cannot = async (kept: readonly Demand[]): Promise<boolean> => {
    const without = new Set(demands.filter((demand) => !kept.includes(demand)).map(({ id }) => id));
    const { problem } = weekOf({ ...wish, without, dueHard: true });
    if (problem.tasks.length === 0) return false;
    const steps = scheduling(problem, { nodes: NODES });
    let step = steps.next();
    while (step.done !== true && !stop()) {
      await pause();
      step = steps.next();
    }
    const found = step.done === true ? step.value.found : 'unknown';
    if (found === 'unknown') proved = false;
    return found === 'none';
  };
  if (!(await cannot(demands))) return undefined;
  let kept: readonly Demand[] = demands;
  // Halves first: most demands have nothing to do with it.
  for (let size = Math.ceil(kept.length / 2); size >= 1; size = size === 1 ? 0 : Math.ceil(size / 2)) {
    for (let at = 0; at < kept.length; ) {
      const without = kept.filter((_, index) => index < at || index >= at + size);
      await pause();
      if (stop()) return undefined;
      if (await cannot(without)) kept = without;
      else at += size;
    }
  }
  return { demands: kept, proved };
}

/** Everything that is asked of the week, what a person would give up last first. */
function demandsOf(wish: WeekWish): Demand[] {
  const { cabinet, jobs } = wish;
  const { origin, until, from, presentFrom } = cabinet.queue!;
  const open = jobs.filter(({ fixed }) => fixed === undefined);
  const week = weekOf({ ...wish, dueHard: true });
  const moment = (time: number): string => formatMoment(origin, time);
  return [
    ...open.map(({ id, job }) => ({
      id: `job:${id}`,
      says: `${id} is printed, ${formatDuration(job.duration)} on ${job.machines.join(' or ')}, between ${moment(Math.max(from, wish.now))} and ${moment(until)}`,
    })),
    ...open.flatMap(({ id, job }) =>
      job.due === undefined ? [] : [{ id: `due:${id}`, says: `${id} is done by ${moment(job.due)}` }],
    ),
    ...open.flatMap(({ id, job }) =>
      job.earliest === undefined
        ? []
        : [{ id: `earliest:${id}`, says: `${id} does not begin before ${moment(job.earliest)}` }],
    ),
    {
      id: 'present',
      says: `somebody is there when a job starts and while its first layer is watched (${presentFrom})`,
    },
    ...week.resources.filter(({ id }) => !id.startsWith('machine:')).map(({ id, says }) => ({ id, says })),
    ...week.rules.filter(({ id }) => id.startsWith('cut:')).map(({ id, says }) => ({ id, says })),
  ];
}
