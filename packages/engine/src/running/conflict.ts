// Demands that cannot hold together: as few as there are, or when trying ends before that is proved a set from which none can be taken
// without the others becoming possible. There may be other such sets.

import { scheduling } from '../numerics/schedule/search.ts';
import { type CanHold, smallestConflict } from '../numerics/smallest-conflict.ts';
import { formatDuration } from '../units/format.ts';
import { formatDatedMoment, formatMoment } from '../units/week.ts';
import { type WeekWish, weekOf } from './week.ts';

export interface Demand {
  readonly id: string;
  readonly says: string;
}

export interface Conflict {
  readonly demands: readonly Demand[];
  /** False when a schedule was not found for some set, but not proved to be missing either. */
  readonly proved: boolean;
  /** No set of fewer demands conflicts: proved. */
  readonly smallest: boolean;
  /** Every set that conflicts has at least so many demands. */
  readonly atLeast: number;
}

/** What stands before its demands: that they conflict, and whether fewer do. `late`: a plan was found all the same, with a deadline missed. */
export function conflictHead({ demands, proved, smallest, atLeast }: Conflict, late: boolean): string {
  const count = demands.length;
  const what = `These ${count === 1 ? 'demand' : `${count} demands`} cannot${count === 1 ? '' : ' all'} hold${late ? ', so that a deadline is missed' : ''}`;
  const fewer = smallest
    ? 'no fewer conflict'
    : `a smaller set that conflicts was not ruled out${atLeast > 1 ? `, though it has at least ${atLeast}` : ''}`;
  const each = proved
    ? 'without any one of them the others can'
    : 'some of the trials were ended early, so that one of them may have nothing to do with it';
  return count === 1 ? `${what}.` : `${what}; ${each}; ${fewer}:`;
}

const NODES = 3000;
/** Sets of demands that are tried for a smaller one. */
const TRIALS = 400;

/**
 * Undefined when all demands, deadlines among them, can hold together, or that could not be told, or the person has stopped it. `pause`
 * lets others have their turn.
 */
export async function conflictOf(
  wish: WeekWish,
  stop: () => boolean,
  pause: () => Promise<void>,
  trials: number = TRIALS,
): Promise<Conflict | undefined> {
  const demands = demandsOf(wish);
  const canHold = async (kept: readonly number[]): Promise<CanHold> => {
    await pause();
    const without = new Set(demands.map(({ id }) => id));
    for (const at of kept) without.delete(demands[at]!.id);
    const { problem } = weekOf({ ...wish, without, dueHard: true });
    if (problem.tasks.length === 0) return 'yes';
    const steps = scheduling(problem, { nodes: NODES });
    let step = steps.next();
    while (step.done !== true && !stop()) {
      await pause();
      step = steps.next();
    }
    if (step.done !== true || step.value.found === 'unknown') return 'unknown';
    return step.value.found === 'none' ? 'no' : 'yes';
  };
  const found = await smallestConflict(demands.length, canHold, { budget: trials, stop });
  if (found === undefined) return undefined;
  const { set, irreducible, smallest, atLeast } = found;
  return { demands: set.map((at) => demands[at]!), proved: irreducible, smallest, atLeast };
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
      says: `${id} is printed, ${formatDuration(job.duration)} on ${job.machines.join(' or ')}, between ${formatDatedMoment(origin, Math.max(from, wish.now))} and ${formatDatedMoment(origin, until)}`,
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
    ...week.rules
      .filter(({ id }) => id.startsWith('cut:') || id.startsWith('down:'))
      .map(({ id, says }) => ({ id, says })),
  ];
}
