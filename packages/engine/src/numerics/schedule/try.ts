// Schedules without a search: a list of tasks, one after the other where each fits best; and what moving one or two of them gains.

import type { Model } from './model.ts';
import type { Placing, ScheduleProblem } from './problem.ts';

/** What has been placed so far draws this. */
interface Board {
  readonly drawn: readonly Float64Array[];
  readonly placed: (Placing | undefined)[];
}

export function costOfPlacings({ optionsOf, options }: Model, placings: readonly Placing[], aim: number): number {
  return placings.reduce((sum, { way, start }, task) => sum + options[optionsOf[task]![way]!]!.costs[aim]![start]!, 0);
}

/** Tasks in the first slot that more is drawn in than there is, or that an order is not kept between; undefined when all fit. */
export function firstCrowd(model: Model, placings: readonly Placing[]): readonly number[] | undefined {
  const { problem, optionsOf, options, capacity, horizon } = model;
  const chosen = placings.map(({ way }, task) => options[optionsOf[task]![way]!]!);
  for (const { before, after, lag, from } of problem.orders ?? []) {
    const earliest = placings[before]!.start + lag + (from === 'end' ? chosen[before]!.length : 0);
    if (placings[after]!.start < earliest) return [before, after];
  }
  const drawn = capacity.map(() => new Float64Array(horizon));
  for (const [task, { draws }] of chosen.entries()) draw(drawn, draws, placings[task]!.start, horizon, 1);
  let [worst, at] = [horizon, -1];
  for (const [resource, most] of capacity.entries())
    for (let slot = 0; slot < worst; slot += 1)
      if (drawn[resource]![slot]! > most[slot]!) [worst, at] = [slot, resource];
  if (at < 0) return undefined;
  return chosen.flatMap(({ draws }, task) =>
    draws.some(
      ({ resource, from, to }) =>
        resource === at && placings[task]!.start + from <= worst && worst < placings[task]!.start + to,
    )
      ? [task]
      : [],
  );
}

function draw(
  drawn: readonly Float64Array[],
  draws: Model['options'][number]['draws'],
  start: number,
  horizon: number,
  sign: 1 | -1,
): void {
  for (const { resource, from, to, amount } of draws) {
    const end = Math.min(start + to, horizon);
    for (let slot = start + from; slot < end; slot += 1) drawn[resource]![slot]! += sign * amount;
  }
}

/** Slots above which a draw finds no room, by resource, and whether a start is free of them all. */
function freeStart(
  { capacity, horizon }: Model,
  { drawn }: Board,
  draws: Model['options'][number]['draws'],
  start: number,
): boolean {
  return draws.every(({ resource, from, to, amount }) => {
    const [used, most] = [drawn[resource]!, capacity[resource]!];
    const end = Math.min(start + to, horizon);
    for (let slot = start + from; slot < end; slot += 1) if (used[slot]! + amount > most[slot]!) return false;
    return true;
  });
}

/** The start that costs least, aims in their order, then the earliest; what went before stays. */
function place(model: Model, board: Board, task: number, aims: readonly number[]): Placing | undefined {
  const { problem, optionsOf, options, horizon } = model;
  let best: (Placing & { readonly costs: readonly number[] }) | undefined;
  for (const at of optionsOf[task]!) {
    const { length, draws, costs, way } = options[at]!;
    const { starts } = problem.tasks[task]!.ways[way]!;
    const [from, to] = windowOf(model, board, task, length);
    for (let start = Math.max(from, 0); start <= Math.min(to, horizon - length); start += 1) {
      if (starts?.[start] === 0) continue;
      const price = [...aims.map((aim) => costs[aim]![start]!), start + length];
      if (best !== undefined && !isLess(price, best.costs)) continue;
      if (freeStart(model, board, draws, start)) best = { way, start, costs: price };
    }
  }
  return best === undefined ? undefined : { way: best.way, start: best.start };
}

function isLess(a: readonly number[], b: readonly number[]): boolean {
  for (const [at, value] of a.entries()) {
    const other = b[at]!;
    if (Math.abs(value - other) > 1e-9 * Math.max(1, Math.abs(other))) return value < other;
  }
  return false;
}

/** Starts between what is placed already, by the orders. */
function windowOf(
  { problem, optionsOf, options }: Model,
  { placed }: Board,
  task: number,
  length: number,
): [number, number] {
  let [from, to] = [0, Number.POSITIVE_INFINITY];
  const lengthOf = (other: number): number => options[optionsOf[other]![placed[other]!.way]!]!.length;
  for (const { before, after, lag, from: end } of problem.orders ?? []) {
    if (after === task && placed[before] !== undefined)
      from = Math.max(from, placed[before].start + lag + (end === 'end' ? lengthOf(before) : 0));
    if (before === task && placed[after] !== undefined)
      to = Math.min(to, placed[after].start - lag - (end === 'end' ? length : 0));
  }
  return [from, to];
}

function emptyBoard({ capacity, horizon, optionsOf }: Model): Board {
  return { drawn: capacity.map(() => new Float64Array(horizon)), placed: optionsOf.map(() => undefined) };
}

function put(model: Model, board: Board, task: number, placing: Placing, sign: 1 | -1): void {
  const { draws } = model.options[model.optionsOf[task]![placing.way]!]!;
  draw(board.drawn, draws, placing.start, model.horizon, sign);
  board.placed[task] = sign > 0 ? placing : undefined;
}

/**
 * The list rule: tasks in the order of the list, each at the earliest start at which it fits (R. L. Graham, SIAM Journal on Applied
 * Mathematics 17:416, 1969). Undefined when one fits nowhere.
 */
export function listSchedule(
  model: Model,
  list: readonly number[],
  aims: readonly number[] = [],
): readonly Placing[] | undefined {
  const board = emptyBoard(model);
  for (const task of list) {
    const placing = place(model, board, task, aims);
    if (placing === undefined) return undefined;
    put(model, board, task, placing, 1);
  }
  return board.placed as Placing[];
}

/** The best of a few lists, or of a schedule that was there before. */
export function firstPlacings(model: Model, from: readonly Placing[] | undefined): readonly Placing[] | undefined {
  const { options, optionsOf, aims } = model;
  const tasks = [...optionsOf.keys()];
  const length = tasks.map((task) => Math.max(...optionsOf[task]!.map((at) => options[at]!.length)));
  const ways = tasks.map((task) => optionsOf[task]!.length);
  const slack = tasks.map((task) => lastFree(model, task));
  const byOrder = followers(model);
  const lists = [
    [...tasks].sort((a, b) => slack[a]! - slack[b]!),
    [...tasks].sort((a, b) => length[b]! - length[a]!),
    [...tasks].sort((a, b) => ways[a]! - ways[b]! || length[b]! - length[a]!),
    tasks,
  ].map((list) => inOrder(list, byOrder));
  const every = Array.from({ length: aims }, (_, aim) => aim);
  const tried = lists.flatMap((list) =>
    [every, []].flatMap((wanted) => {
      const placings = listSchedule(model, list, wanted);
      return placings === undefined ? [] : [placings];
    }),
  );
  if (from !== undefined && isSchedule(model, from)) tried.unshift(from);
  const costs = (placings: readonly Placing[]): number[] => every.map((aim) => costOfPlacings(model, placings, aim));
  return tried.reduce<readonly Placing[] | undefined>(
    (best, each) => (best === undefined || isLess(costs(each), costs(best)) ? each : best),
    undefined,
  );
}

function isSchedule(model: Model, placings: readonly Placing[]): boolean {
  const { problem, optionsOf, options, horizon } = model;
  return (
    placings.length === optionsOf.length &&
    placings.every(({ way, start }, task) => {
      const at = optionsOf[task]![way];
      if (at === undefined || start < 0 || start + options[at]!.length > horizon) return false;
      return problem.tasks[task]!.ways[way]!.starts?.[start] !== 0;
    }) &&
    firstCrowd(model, placings) === undefined
  );
}

/** Last start that the problem allows, in whichever way. */
function lastFree({ problem, optionsOf, options, horizon }: Model, task: number): number {
  return Math.max(
    ...optionsOf[task]!.map((at) => {
      const { length, way } = options[at]!;
      const { starts } = problem.tasks[task]!.ways[way]!;
      return starts === undefined ? horizon - length : starts.lastIndexOf(1);
    }),
  );
}

function followers({ problem, optionsOf }: Model): readonly (readonly number[])[] {
  const before = optionsOf.map((): number[] => []);
  for (const order of problem.orders ?? []) before[order.after]!.push(order.before);
  return before;
}

/** The list with everything behind what it waits for. */
function inOrder(list: readonly number[], before: readonly (readonly number[])[]): number[] {
  const left = [...list];
  const done: number[] = [];
  while (left.length > 0) {
    const next = left.findIndex((task) => before[task]!.every((other) => !left.includes(other)));
    done.push(...left.splice(Math.max(next, 0), 1));
  }
  return done;
}

/** Takes one task or two out and puts them in again where they cost least, as long as that gains something for the aim. */
export function improved(
  model: Model,
  placings: readonly Placing[],
  aim: number,
  caps: readonly number[],
): readonly Placing[] {
  const tasks = [...model.optionsOf.keys()];
  const groups = [
    ...tasks.map((task) => [task]),
    ...tasks.flatMap((a) => tasks.flatMap((b) => (a === b ? [] : [[a, b]]))),
  ];
  const board = emptyBoard(model);
  for (const [task, placing] of placings.entries()) put(model, board, task, placing, 1);
  const aims = [...caps.keys(), aim];
  const costs = (): number[] => aims.map((each) => costOfPlacings(model, board.placed as Placing[], each));
  let [now, gained] = [costs(), true];
  for (let round = 0; gained && round < MOST_ROUNDS; round += 1) {
    gained = false;
    for (const group of groups) {
      const old = group.map((task) => board.placed[task]!);
      for (const [at, task] of group.entries()) put(model, board, task, old[at]!, -1);
      const fresh = placeAll(model, board, group, [aim, ...caps.keys()]);
      if (fresh !== undefined) {
        const then = costs();
        const kept = caps.every((cap, each) => then[each]! <= cap + 1e-9 * Math.max(1, Math.abs(cap)));
        if (kept && isLess([then.at(-1)!], [now.at(-1)!])) {
          [now, gained] = [then, true];
          continue;
        }
        for (const [at, task] of group.entries()) put(model, board, task, fresh[at]!, -1);
      }
      for (const [at, task] of group.entries()) put(model, board, task, old[at]!, 1);
    }
  }
  // Sums of draws that went in and out again carry rounding: only what fits afresh is handed on.
  const better = board.placed as Placing[];
  return isSchedule(model, better) ? better : placings;
}

const MOST_ROUNDS = 8;

/** Puts a group in one after the other; nothing stays when one of it fits nowhere. */
function placeAll(
  model: Model,
  board: Board,
  group: readonly number[],
  aims: readonly number[],
): Placing[] | undefined {
  const fresh: Placing[] = [];
  for (const [at, task] of group.entries()) {
    const placing = place(model, board, task, aims);
    if (placing === undefined) {
      for (const [before, placed] of fresh.entries()) put(model, board, group[before]!, placed, -1);
      return undefined;
    }
    put(model, board, task, placing, 1);
    fresh[at] = placing;
  }
  return fresh;
}

/** Lays a problem out and runs the list rule on it. */
export function listScheduleOf(problem: ScheduleProblem, model: Model, list: readonly number[]): number {
  const placings = listSchedule(model, list);
  if (placings === undefined) return Number.POSITIVE_INFINITY;
  return Math.max(...placings.map(({ way, start }, task) => start + problem.tasks[task]!.ways[way]!.length));
}
