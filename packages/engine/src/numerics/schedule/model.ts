// A problem laid out flat for the search: every way of every task is an option; what is still possible is a bit for each option and start.

import { ROUNDING, type ScheduleProblem, type Way } from './problem.ts';

export interface Option {
  readonly task: number;
  readonly way: number;
  readonly length: number;
  readonly draws: Way['draws'];
  /** By aim, by start. */
  readonly costs: readonly ArrayLike<number>[];
}

export interface Model {
  readonly problem: ScheduleProblem;
  readonly horizon: number;
  /** Starts of an option: 0 … horizon. */
  readonly width: number;
  readonly options: readonly Option[];
  readonly optionsOf: readonly (readonly number[])[];
  /** By resource, by slot, with the room for rounding added. */
  readonly capacity: readonly Float64Array[];
  /** Resources of which no two tasks can ever draw at once. */
  readonly single: readonly number[];
  readonly aims: number;
}

/** What is still possible. An option that is out has `lo` above `hi`. */
export interface Domain {
  readonly allowed: Uint8Array;
  readonly lo: Int32Array;
  readonly hi: Int32Array;
}

export function modelOf(problem: ScheduleProblem): Model {
  const { horizon, tasks, resources, aims = 1 } = problem;
  const width = horizon + 1;
  const free = new Float64Array(width);
  const options = tasks.flatMap(({ ways }, task) =>
    ways.map(
      ({ length, draws, costs = [] }, way): Option => ({
        task,
        way,
        length,
        draws: draws.filter(({ amount, from, to }) => amount > 0 && to > from),
        costs: Array.from({ length: aims }, (_, aim) => costs[aim] ?? free),
      }),
    ),
  );
  const capacity = resources.map(({ capacity: given }) =>
    Float64Array.from({ length: horizon }, (_, slot) => {
      const most = typeof given === 'number' ? given : given[slot]!;
      return most + ROUNDING * Math.abs(most);
    }),
  );
  return {
    problem,
    horizon,
    width,
    options,
    optionsOf: tasks.map((_, task) => options.flatMap((option, at) => (option.task === task ? [at] : []))),
    capacity,
    single: resources.flatMap((_, resource) => (isSingle(options, resource, capacity[resource]!) ? [resource] : [])),
    aims,
  };
}

/** Each option draws once, and the two smallest draws do not go together in any slot. */
function isSingle(options: readonly Option[], resource: number, capacity: Float64Array): boolean {
  const amounts = options.flatMap(({ draws }) => {
    const own = draws.filter((draw) => draw.resource === resource);
    return own.length > 1 ? [Number.NEGATIVE_INFINITY] : own.map(({ amount }) => amount);
  });
  if (amounts.length < 2) return false;
  const [least, next] = amounts.sort((a, b) => a - b) as [number, number];
  return capacity.every((most) => least + next > most);
}

/** Everything that the problem itself allows; undefined when a task cannot be placed at all. */
export function firstDomain({ problem, options, optionsOf, width, horizon }: Model): Domain | undefined {
  const allowed = new Uint8Array(options.length * width);
  const lo = new Int32Array(options.length);
  const hi = new Int32Array(options.length).fill(-1);
  for (const [at, { task, way, length }] of options.entries()) {
    const { starts } = problem.tasks[task]!.ways[way]!;
    for (let start = 0; start + length <= horizon; start += 1)
      if (starts === undefined || starts[start] === 1) allowed[at * width + start] = 1;
    hi[at] = horizon - length;
    trim({ allowed, lo, hi }, at, width);
  }
  const possible = optionsOf.every((own) => own.some((at) => lo[at]! <= hi[at]!));
  return possible ? { allowed, lo, hi } : undefined;
}

export function copyOf({ allowed, lo, hi }: Domain): Domain {
  return { allowed: allowed.slice(), lo: lo.slice(), hi: hi.slice() };
}

/** Moves the ends of an option's starts inwards to what is allowed. */
export function trim({ allowed, lo, hi }: Domain, option: number, width: number): void {
  const base = option * width;
  let [first, last] = [lo[option]!, hi[option]!];
  while (first <= last && allowed[base + first] === 0) first += 1;
  while (last >= first && allowed[base + last] === 0) last -= 1;
  lo[option] = first;
  hi[option] = last;
}

/** The one option that a task has left, or -1. */
export function onlyOption({ optionsOf }: Model, { lo, hi }: Domain, task: number): number {
  let only = -1;
  for (const at of optionsOf[task]!) {
    if (lo[at]! > hi[at]!) continue;
    if (only >= 0) return -1;
    only = at;
  }
  return only;
}

/** Cuts an option's starts to a range; false when the task has nothing left. */
export function keepWithin(model: Model, domain: Domain, option: number, from: number, to: number): boolean {
  const { lo, hi } = domain;
  if (from <= lo[option]! && to >= hi[option]!) return true;
  lo[option] = Math.max(lo[option]!, from);
  hi[option] = Math.min(hi[option]!, to);
  trim(domain, option, model.width);
  return lo[option]! <= hi[option]! || anyLeft(model, domain, model.options[option]!.task);
}

/** Some way of the task is still possible. */
export function anyLeft({ optionsOf }: Model, { lo, hi }: Domain, task: number): boolean {
  return optionsOf[task]!.some((at) => lo[at]! <= hi[at]!);
}
