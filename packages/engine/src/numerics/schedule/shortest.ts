// The earliest time by which everything is done: a last task that waits for all others, and costs its start.

import type { Order, Placing, ScheduleProblem, Task } from './problem.ts';
import { type ScheduleOptions, schedule } from './search.ts';

export interface Shortest {
  /** Slots until the last task ends. */
  readonly length: number;
  readonly bound: number;
  readonly proved: boolean;
  readonly nodes: number;
  readonly placings: readonly Placing[];
}

/**
 * The shortest schedule of tasks, with no other aim.
 *
 * @param problem - Its horizon is the longest that is looked at; costs of its ways are not looked at.
 * @returns The schedule, or undefined when none was found within the horizon.
 *
 * @example Five pieces of work for two people, longest first, take 7; at best they take 6
 * ```ts
 * const tasks = [3, 3, 2, 2, 2].map((length) => ({
 *   ways: [{ length, draws: [{ resource: 0, from: 0, to: length, amount: 1 }] }],
 * }));
 * shortestSchedule({ horizon: 12, tasks, resources: [{ capacity: 2 }] }).length; // => 6
 * ```
 */
export function shortestSchedule(
  { horizon, tasks, resources, orders = [] }: ScheduleProblem,
  options: ScheduleOptions = {},
): Shortest | undefined {
  const last = tasks.length;
  const cost = Float64Array.from({ length: horizon + 1 }, (_, slot) => slot);
  const end: Task = { ways: [{ length: 0, draws: [], costs: [cost] }] };
  const plain = tasks.map(({ ways }): Task => ({ ways: ways.map((way) => ({ ...way, costs: [] })) }));
  const after = tasks.map((_, before): Order => ({ before, after: last, lag: 0, from: 'end' }));
  const answer = schedule(
    { horizon, tasks: [...plain, end], resources, orders: [...orders, ...after] },
    { branching: 'earliest', ...options },
  );
  if (answer.found !== 'schedule') return undefined;
  const [{ value, bound, proved, nodes }] = answer.aims as [(typeof answer.aims)[number]];
  return { length: value, bound, proved, nodes, placings: answer.placings.slice(0, last) };
}
