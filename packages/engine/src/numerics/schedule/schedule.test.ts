import { describe, expect, it } from 'vitest';
import { randomStream } from '../random.ts';
import { equalMachines, jobShop, printersUnderCap, project } from './instances.ts';
import { modelOf } from './model.ts';
import type { Placing, ScheduleProblem, Task } from './problem.ts';
import { type ScheduleAnswer, schedule, scheduling } from './search.ts';
import { shortestSchedule } from './shortest.ts';
import { firstCrowd } from './try.ts';

/** Least costs, aim after aim, over every schedule that there is. */
function byEnumeration(problem: ScheduleProblem): readonly number[] | undefined {
  const model = modelOf(problem);
  const { tasks, horizon, aims = 1 } = problem;
  let best: number[] | undefined;
  const chosen: Placing[] = [];
  const go = (task: number): void => {
    if (task === tasks.length) {
      if (firstCrowd(model, chosen) !== undefined) return;
      const costs = Array.from({ length: aims }, (_, aim) =>
        chosen.reduce((sum, { way, start }, at) => sum + (tasks[at]!.ways[way]!.costs?.[aim]?.[start] ?? 0), 0),
      );
      const differs = best === undefined ? 0 : costs.findIndex((cost, at) => cost !== best![at]);
      if (best === undefined || (differs >= 0 && costs[differs]! < best[differs]!)) best = costs;
      return;
    }
    for (const [way, { length, starts }] of tasks[task]!.ways.entries())
      for (let start = 0; start + length <= horizon; start += 1)
        if (starts?.[start] !== 0) {
          chosen[task] = { way, start };
          go(task + 1);
        }
  };
  go(0);
  return best;
}

/** Small, crowded, with two machines, a peak at the start, hours of less power, shut starts, two aims, an order. */
function anyProblem(seed: number): ScheduleProblem {
  const random = randomStream(seed);
  const upTo = (most: number): number => Math.floor(random() * (most + 1));
  const horizon = 8 + upTo(3);
  const tasks = Array.from({ length: 4 }, (): Task => {
    const length = 2 + upTo(2);
    const peak = 2 + upTo(3);
    const ways = Array.from({ length: 1 + upTo(1) }, (_, machine) => ({
      length,
      draws: [
        { resource: machine, from: 0, to: length + 1, amount: 1 },
        { resource: 2, from: 0, to: 1, amount: peak },
        { resource: 2, from: 1, to: length, amount: 1 + upTo(1) },
      ],
      starts: Uint8Array.from({ length: horizon + 1 }, () => (random() < 0.8 ? 1 : 0)),
      costs: [
        Float64Array.from({ length: horizon + 1 }, (_, start) => (start + length > 6 ? 1 : 0)),
        Float64Array.from({ length: horizon + 1 }, () => upTo(9)),
      ],
    }));
    return { ways };
  });
  return {
    horizon,
    tasks,
    aims: 2,
    resources: [
      { capacity: 1 },
      { capacity: 1 },
      { capacity: Array.from({ length: horizon }, (_, slot) => (slot < 4 ? 5 : 4)) },
    ],
    orders: [{ before: 0, after: 1, lag: upTo(2), from: random() < 0.5 ? 'end' : 'start' }],
  };
}

const valuesOf = (answer: ScheduleAnswer): readonly number[] | undefined =>
  answer.found === 'schedule' ? answer.aims.map(({ value }) => value) : undefined;

describe('the scheduler', () => {
  it('cross: finds the costs that enumeration finds, or proves that there is no schedule, on sixty small problems', () => {
    let without = 0;
    for (let seed = 1; seed <= 60; seed += 1) {
      const problem = anyProblem(seed);
      const answer = schedule(problem);
      const best = byEnumeration(problem);
      expect([seed, valuesOf(answer)]).toEqual([seed, best]);
      if (answer.found === 'schedule') {
        expect(answer.aims.every(({ proved, bound, value }) => proved && Math.abs(bound - value) < 1e-6)).toBe(true);
        expect(firstCrowd(modelOf(problem), answer.placings)).toBeUndefined();
      } else {
        without += 1;
        expect(answer.found).toBe('none');
      }
    }
    expect(without).toBeGreaterThan(0);
    expect(without).toBeLessThan(60);
  }, 30_000);

  it('exact: shortest first gives the least sum of ends on one machine (Smith’s rule), and weights turn it', () => {
    const lengths = [5, 2, 7, 3, 4];
    const weights = [5, 1, 1, 3, 4];
    const least = (weighted: boolean): number => {
      const order = [...lengths.keys()].sort((a, b) =>
        weighted ? lengths[a]! / weights[a]! - lengths[b]! / weights[b]! : lengths[a]! - lengths[b]!,
      );
      let [time, sum] = [0, 0];
      for (const at of order) {
        time += lengths[at]!;
        sum += time * (weighted ? weights[at]! : 1);
      }
      return sum;
    };
    for (const weighted of [false, true]) {
      const tasks = lengths.map(
        (length, at): Task => ({
          ways: [
            {
              length,
              draws: [{ resource: 0, from: 0, to: length, amount: 1 }],
              costs: [
                Float64Array.from({ length: 31 }, (_, start) => (start + length) * (weighted ? weights[at]! : 1)),
              ],
            },
          ],
        }),
      );
      const answer = schedule({ horizon: 30, tasks, resources: [{ capacity: 1 }] });
      expect(valuesOf(answer)).toEqual([least(weighted)]);
      expect(answer.found === 'schedule' && answer.aims[0]!.proved).toBe(true);
    }
  });

  it('cross: both ways of branching prove the same shortest lengths, and with a watt less than 850 W it takes 50 min more', () => {
    for (const [cap, slots] of [
      [1000, 9],
      [850, 9],
      [849, 14],
      [550, 15],
    ] as const)
      for (const branching of ['earliest', 'conflict'] as const)
        expect(shortestSchedule(printersUnderCap(cap), { branching })).toMatchObject({ length: slots, proved: true });
    for (const problem of [project(80), jobShop(100)]) {
      const [a, b] = (['earliest', 'conflict'] as const).map((branching) => shortestSchedule(problem, { branching }));
      expect([a!.length, a!.proved]).toEqual([b!.length, b!.proved]);
    }
  });

  it('property: proves that no schedule exists when the machine has an hour too little', () => {
    const lengths = [4, 5, 6];
    expect(schedule(equalMachines(1, lengths, 15)).found).toBe('schedule');
    expect(schedule(equalMachines(1, lengths, 14)).found).toBe('none');
  });

  it('property: a budget of nodes that is too small leaves an honest gap, and never a bound above the optimum', () => {
    const start = [...jobShop(100).tasks.keys()].map(() => ({ way: 0, start: 0 }));
    const few = shortestSchedule(jobShop(100), { nodes: 5, from: start })!;
    expect(few.proved).toBe(false);
    expect(few.bound).toBeLessThanOrEqual(55);
    expect(few.length).toBeGreaterThanOrEqual(55);
  });

  it('property: the same problem gives the same schedule, at once or step by step', () => {
    const problem = anyProblem(2);
    const steps = scheduling(problem, {});
    let step = steps.next();
    while (step.done !== true) step = steps.next();
    expect(step.value).toEqual(schedule(problem));
  });

  it('property: begins from a schedule that it is given, and is never worse than it', () => {
    const free = schedule(anyProblem(2));
    if (free.found !== 'schedule') throw new Error('problem 2 has a schedule');
    const again = schedule(anyProblem(2), { nodes: 0, from: free.placings });
    expect(valuesOf(again)).toEqual(valuesOf(free));
  });
});
