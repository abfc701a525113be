// Why a job starts when it does: what stands against each earlier start on its machine, with all other jobs where they are.

import type { Placing } from '../numerics/schedule/problem.ts';
import type { Week } from './week.ts';

/** A stretch of earlier starts, and what stands against them; the latest first. */
export interface Why {
  /** s after the origin's midnight. */
  readonly from: number;
  readonly to: number;
  /** Id of the rule, or `aim` where it could start but something it is planned for would be worse. */
  readonly rule: string;
  readonly because: string;
}

const MOST = 3;

export function whyThen(week: Week, placings: readonly Placing[], task: number): Why[] {
  const { way, start } = placings[task]!;
  const used = usedBy(week, placings, task);
  const found: Why[] = [];
  for (let slot = start - 1; slot >= 0 && found.length < MOST; ) {
    const reason = reasonAt(week, placings, used, task, way, slot);
    let first = slot;
    while (first > 0 && reasonAt(week, placings, used, task, way, first - 1).because === reason.because) first -= 1;
    found.push({ from: week.zero + first * week.step, to: week.zero + (slot + 1) * week.step, ...reason });
    // Before this nothing is of interest: it was over, or not allowed yet.
    if (reason.rule === 'now' || reason.rule === 'earliest') break;
    slot = first - 1;
  }
  return found;
}

/** What stands against a start elsewhere, with all other jobs where they are now; the slots of the plan are taken as they lie. */
export function whyNotAt(
  week: Week,
  placings: readonly Placing[],
  task: number,
  { machine, start }: { readonly machine: string; readonly start: number },
): Pick<Why, 'rule' | 'because'> {
  const way = week.options[task]!.findIndex((option) => option.machine === machine);
  if (way < 0) return { rule: 'machine', because: `it may not run on ${machine} any more` };
  const slot = Math.round((start - week.zero) / week.step);
  if (slot < 0 || slot > week.slots) return { rule: 'end', because: 'that is not in the plan any more' };
  return reasonAt(week, placings, usedBy(week, placings, task), task, way, slot);
}

/** Draws of all others and of what is fixed. */
function usedBy({ problem, slots }: Week, placings: readonly Placing[], but: number): Float64Array[] {
  const used = problem.resources.map(() => new Float64Array(slots));
  for (const [task, { way, start }] of placings.entries()) {
    if (task === but) continue;
    for (const { resource, from, to, amount } of problem.tasks[task]!.ways[way]!.draws)
      for (let slot = start + from; slot < Math.min(start + to, slots); slot += 1) used[resource]![slot]! += amount;
  }
  return used;
}

function reasonAt(
  week: Week,
  placings: readonly Placing[],
  used: readonly Float64Array[],
  task: number,
  way: number,
  start: number,
): Pick<Why, 'rule' | 'because'> {
  const { problem, options, rules, resources, slots } = week;
  const code = options[task]![way]!.against[start]!;
  if (code > 0) return { rule: rules[code - 1]!.id, because: rules[code - 1]!.says };
  for (const { resource, from, to, amount } of problem.tasks[task]!.ways[way]!.draws) {
    const { capacity } = problem.resources[resource]!;
    for (let slot = start + from; slot < Math.min(start + to, slots); slot += 1) {
      const most = typeof capacity === 'number' ? capacity : capacity[slot]!;
      if (used[resource]![slot]! + amount <= most + 1e-9 * Math.abs(most)) continue;
      const { id, says } = resources[resource]!;
      return { rule: id, because: `${says}${besides(week, placings, task, resource, slot)}` };
    }
  }
  return { rule: 'aim', because: betterLater(week, task, { way, start }, placings[task]!) };
}

/** Which others draw there. */
function besides(
  { problem, jobs, fixed, resources, zero, step }: Week,
  placings: readonly Placing[],
  task: number,
  resource: number,
  slot: number,
): string {
  const others = jobs.flatMap(({ id }, at) => {
    const { way, start } = placings[at]!;
    const draws = problem.tasks[at]!.ways[way]!.draws.filter((draw) => draw.resource === resource);
    return at !== task && draws.some(({ from, to }) => start + from <= slot && slot < start + to) ? [id] : [];
  });
  const pinned = fixed
    .filter(({ fixed: at, job }) => {
      const [from, end] = [at!.start, at!.start + job.duration];
      return (
        from <= zero + (slot + 1) * step && zero + slot * step < end && !resources[resource]!.id.startsWith('machine:')
      );
    })
    .map(({ id }) => id);
  const names = [...others, ...pinned];
  if (names.length === 0)
    return resources[resource]!.id.startsWith('machine:') ? ' a job that is pinned, or cools' : '';
  const machine = resources[resource]!.id.startsWith('machine:');
  return machine ? ` ${names.join(', ')}, or cools and is cleared of its air after it` : ` beside ${names.join(', ')}`;
}

/** It could start then: what it is planned for would be worse. */
function betterLater({ problem, queue }: Week, task: number, there: Placing, now: Placing): string {
  const costAt = ({ way, start }: Placing, aim: number): number =>
    problem.tasks[task]!.ways[way]!.costs?.[aim]?.[start] ?? 0;
  const names = ['deadlines', ...queue.aims];
  for (const aim of names.keys()) {
    const more = costAt(there, aim) - costAt(now, aim);
    if (more > 1e-9) return `it could, but ${AIM_WORDS[names[aim]!]!(more)}`;
  }
  return 'it could as well; nothing is gained or lost by it';
}

const AIM_WORDS: Readonly<Record<string, (more: number) => string>> = {
  deadlines: () => 'its deadline would be missed',
  cost: () => 'its electricity would cost more then',
  quiet: () => 'more of its noise would fall into the hours in which somebody is there',
  early: () => 'it would be done later',
};
