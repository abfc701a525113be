// Branch and bound over starts, one aim after the other. Every node takes away what cannot be (propagate), bounds what is left, and
// splits it in parts that leave nothing out; so an ended search is a proof. Its budget is counted in nodes, never in time: the
// same problem gives the same schedule everywhere.

import { bestTolls, leastOf, plainTolls, type Tolls } from './bound.ts';
import { copyOf, type Domain, firstDomain, type Model, modelOf } from './model.ts';
import type { Placing, ScheduleProblem } from './problem.ts';
import { propagate } from './propagate.ts';
import { type Branching, conflictParts, earliestParts } from './split.ts';
import { costOfPlacings, firstPlacings, improved } from './try.ts';

export interface ScheduleOptions {
  /** Nodes for each aim. */
  readonly nodes?: number;
  /**
   * `earliest` starts tasks as early as they fit, or later than that fitting (set times): for aims that no earlier start makes worse.
   * `conflict` is for all others.
   */
  readonly branching?: Branching;
  /** A schedule to begin from, if it is one. */
  readonly from?: readonly Placing[];
}

export interface AimAnswer {
  readonly value: number;
  /** No schedule that keeps the aims before costs less than this. */
  readonly bound: number;
  readonly proved: boolean;
  readonly nodes: number;
}

export type ScheduleAnswer =
  | { readonly found: 'schedule'; readonly placings: readonly Placing[]; readonly aims: readonly AimAnswer[] }
  /** `none`: proved that there is none; `unknown`: none was found with the nodes allowed. */
  | { readonly found: 'none' | 'unknown'; readonly nodes: number };

const NODES = 20_000;
/** Nodes between two turns for others. */
const TURN = 64;
/** Costs closer than this share count as equal. */
const EQUAL = 1e-9;

/** Solves it at once. */
export function schedule(problem: ScheduleProblem, options: ScheduleOptions = {}): ScheduleAnswer {
  const steps = scheduling(problem, options);
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}

/** The same step by step: yields the nodes looked at so far, now and then, so that others get their turn and a person may stop. */
export function* scheduling(
  problem: ScheduleProblem,
  { nodes: budget = NODES, branching = 'conflict', from }: ScheduleOptions = {},
): Generator<number, ScheduleAnswer> {
  const model = modelOf(problem);
  const root = firstDomain(model);
  if (root === undefined || !propagate(model, root)) return { found: 'none', nodes: 0 };
  let best: readonly Placing[] | undefined = firstPlacings(model, from);
  const aims: AimAnswer[] = [];
  const caps: number[] = [];
  let looked = 0;
  for (let aim = 0; aim < model.aims; aim += 1) {
    if (best !== undefined) best = improved(model, best, aim, caps);
    const begun: number = best === undefined ? Number.POSITIVE_INFINITY : costOfPlacings(model, best, aim);
    const tolls = bestTolls(model, root, aim, begun);
    const hunt: Generator<number, Hunt> = hunting(model, { root, aim, caps, tolls, branching, budget, begun, looked });
    let step = hunt.next();
    while (step.done !== true) {
      yield step.value;
      step = hunt.next();
    }
    const { value: found } = step;
    looked += found.nodes;
    best = found.placings ?? best;
    if (best === undefined) return { found: found.proved ? 'none' : 'unknown', nodes: looked };
    const value = costOfPlacings(model, best, aim);
    aims.push({ value, bound: Math.min(found.bound, value), proved: found.proved, nodes: found.nodes });
    caps.push(value);
  }
  return { found: 'schedule', placings: best!, aims };
}

interface Hunted {
  readonly root: Domain;
  readonly aim: number;
  /** What each aim before may cost at most. */
  readonly caps: readonly number[];
  readonly tolls: Tolls;
  readonly branching: Branching;
  readonly budget: number;
  /** Cost of the best schedule known before. */
  readonly begun: number;
  readonly looked: number;
}

interface Hunt {
  readonly placings: readonly Placing[] | undefined;
  readonly bound: number;
  readonly proved: boolean;
  readonly nodes: number;
}

/** Part of the search tree that is still to be looked at. */
export interface Node {
  readonly domain: Domain;
  /** By option: the start at which it was put off; it is not tried again before that has moved. */
  readonly putOff: Int32Array | undefined;
  readonly bound: number;
}

function* hunting(
  model: Model,
  { root, aim, caps, tolls, branching, budget, begun, looked }: Hunted,
): Generator<number, Hunt> {
  let best = begun;
  let placings: readonly Placing[] | undefined;
  let nodes = 0;
  const earlier = caps.map((_, each) => plainTolls(model, each));
  const open: Node[] = [
    {
      domain: copyOf(root),
      putOff: branching === 'earliest' ? new Int32Array(model.options.length).fill(-1) : undefined,
      bound: leastOf(model, root, tolls).sum,
    },
  ];
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    if (node.bound >= below(best)) continue;
    if (nodes >= budget) {
      open.push(node);
      break;
    }
    nodes += 1;
    if (nodes % TURN === 0) yield looked + nodes;
    const { domain } = node;
    if (!settle(model, domain, tolls, below(best), earlier, caps)) continue;
    const { sum, option, start } = leastOf(model, domain, tolls);
    const parts =
      node.putOff === undefined
        ? conflictParts(model, domain, tolls, { option, start })
        : earliestParts(model, domain, node.putOff);
    if (parts.placings !== undefined) {
      const met = parts.placings;
      const value = costOfPlacings(model, met, aim);
      // Each task's cheapest start may be one of those that the aims before allow, and all together still be dearer than they do.
      if (value < below(best) && caps.every((cap, each) => costOfPlacings(model, met, each) <= withRounding(cap))) {
        best = value;
        placings = met;
      }
    }
    for (const part of parts.further.toReversed()) open.push({ ...part, bound: Math.max(node.bound, sum) });
  }
  const bound = open.reduce((least, node) => Math.min(least, node.bound), best);
  return { placings, bound, proved: open.length === 0, nodes };
}

/** Anything at least this dear is no better. */
function below(best: number): number {
  return Number.isFinite(best) ? best - EQUAL * Math.max(1, Math.abs(best)) : best;
}

function withRounding(cap: number): number {
  return cap + EQUAL * Math.max(1, Math.abs(cap));
}

/** Takes away what cannot be or cannot be better, until nothing more follows; false when nothing is left. */
function settle(
  model: Model,
  domain: Domain,
  tolls: Tolls,
  most: number,
  earlier: readonly Tolls[],
  caps: readonly number[],
): boolean {
  for (;;) {
    if (!propagate(model, domain)) return false;
    let taken = 0;
    for (const [aim, plain] of earlier.entries()) {
      const dear = takeDear(model, domain, plain, withRounding(caps[aim]!));
      if (dear < 0) return false;
      taken += dear;
    }
    const dear = Number.isFinite(most) ? takeDear(model, domain, tolls, most) : 0;
    if (dear < 0) return false;
    if (taken + dear === 0) return true;
  }
}

/** Takes out starts with which the sum could not come to `most` or less; how many, or -1 when nothing is left. */
function takeDear(model: Model, domain: Domain, tolls: Tolls, most: number): number {
  const { options, width } = model;
  const { allowed, lo, hi } = domain;
  const { sum, least } = leastOf(model, domain, tolls);
  if (sum > most) return -1;
  let taken = 0;
  for (const [at, { task }] of options.entries()) {
    const base = at * width;
    const room = most - sum + least[task]!;
    for (let start = lo[at]!; start <= hi[at]!; start += 1)
      if (allowed[base + start] === 1 && tolls.costs[base + start]! > room) {
        allowed[base + start] = 0;
        taken += 1;
      }
    if (taken === 0) continue;
    while (lo[at]! <= hi[at]! && allowed[base + lo[at]!] === 0) lo[at]! += 1;
    while (lo[at]! <= hi[at]! && allowed[base + hi[at]!] === 0) hi[at]! -= 1;
  }
  return taken;
}
