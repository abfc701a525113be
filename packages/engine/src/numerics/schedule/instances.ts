// Published instances as problems of this scheduler.

import { ft06, j30 } from './instances.data.ts';
import type { Order, ScheduleProblem, Task } from './problem.ts';

const MACHINES = 6;

/** A job shop: operations of a job one after another, a machine for one operation at a time. */
export function jobShop(horizon: number): ScheduleProblem {
  const tasks: Task[] = [];
  const orders: Order[] = [];
  for (const job of ft06)
    for (let at = 0; at < job.length; at += 2) {
      const [resource, length] = [job[at]!, job[at + 1]!];
      if (at > 0) orders.push({ before: tasks.length - 1, after: tasks.length, lag: 0, from: 'end' });
      tasks.push({ ways: [{ length, draws: [{ resource, from: 0, to: length, amount: 1 }] }] });
    }
  return { horizon, tasks, orders, resources: Array.from({ length: MACHINES }, () => ({ capacity: 1 })) };
}

/** A project: activities that wait for others and draw from four resources. */
export function project(horizon: number): ScheduleProblem {
  return {
    horizon,
    resources: j30.capacity.map((capacity) => ({ capacity })),
    tasks: j30.activities.map(([length, use]) => ({
      ways: [{ length, draws: use.map((amount, resource) => ({ resource, from: 0, to: length, amount })) }],
    })),
    orders: j30.activities.flatMap(([, , followers], before) =>
      followers.map((after): Order => ({ before, after: after - 1, lag: 0, from: 'end' })),
    ),
  };
}

/** Equal machines: each piece of work needs any one of them. */
export function equalMachines(machines: number, lengths: readonly number[], horizon: number): ScheduleProblem {
  return {
    horizon,
    resources: [{ capacity: machines }],
    tasks: lengths.map((length) => ({
      ways: [{ length, draws: [{ resource: 0, from: 0, to: length, amount: 1 }] }],
    })),
  };
}

/** Four printers that heat with 400 W for one slot of ten minutes and print with 150 W for the slots given, under a cap in watts. */
export function printersUnderCap(cap: number, prints: readonly number[] = [6, 6, 6, 6], horizon = 28): ScheduleProblem {
  return {
    horizon,
    resources: [{ capacity: cap }],
    tasks: prints.map((print) => ({
      ways: [
        {
          length: 1 + print,
          draws: [
            { resource: 0, from: 0, to: 1, amount: 400 },
            { resource: 0, from: 1, to: 1 + print, amount: 150 },
          ],
        },
      ],
    })),
  };
}
