// A lower bound of one aim: what tasks would cost if each could start where it is cheapest, with a toll on every slot of every
// resource that rises until they no longer crowd there (Lagrangian relaxation of the capacities; M. L. Fisher, Operations Research
// 21:1114, 1973, and its subgradient steps by Held, Wolfe and Crowder 1974; from memory). Any toll of 0 or more gives a true bound.

import type { Domain, Model } from './model.ts';

export interface Tolls {
  /** By option, by start: cost with the tolls on all that it draws. */
  readonly costs: Float64Array;
  /** What all capacities together take back. */
  readonly back: number;
}

const STEPS = 200;
/** Steps without a better bound after which they are halved. */
const PATIENCE = 12;
const LEAST_STEP = 1e-4;

/** Costs of an aim as they stand. */
export function plainTolls({ options, width }: Model, aim: number): Tolls {
  const costs = new Float64Array(options.length * width);
  for (const [at, option] of options.entries())
    for (let start = 0; start < width; start += 1) costs[at * width + start] = option.costs[aim]![start]!;
  return { costs, back: 0 };
}

/** Least cost of every task over what it may still do, and what they sum up to. */
export function leastOf(
  { optionsOf, width }: Model,
  { allowed, lo, hi }: Domain,
  { costs, back }: Tolls,
): { readonly sum: number; readonly least: Float64Array; readonly option: Int32Array; readonly start: Int32Array } {
  const least = new Float64Array(optionsOf.length).fill(Number.POSITIVE_INFINITY);
  const option = new Int32Array(optionsOf.length);
  const chosen = new Int32Array(optionsOf.length);
  let sum = -back;
  for (const [task, own] of optionsOf.entries()) {
    for (const at of own) {
      const base = at * width;
      for (let start = lo[at]!; start <= hi[at]!; start += 1) {
        if (allowed[base + start] === 0 || costs[base + start]! >= least[task]!) continue;
        least[task] = costs[base + start]!;
        option[task] = at;
        chosen[task] = start;
      }
    }
    sum += least[task]!;
  }
  return { sum, least, option, start: chosen };
}

/** Tolls under which the bound is as high as the steps bring it. `aimed`: a cost known to be reached, which sets the steps' length. */
export function bestTolls(model: Model, domain: Domain, aim: number, aimed: number): Tolls {
  const { capacity, options, horizon, width } = model;
  const scale = capacity.map((most) => Math.max(...most, 1e-300));
  const toll = capacity.map(() => new Float64Array(horizon));
  const plain = plainTolls(model, aim);
  let best = { tolls: plain, sum: leastOf(model, domain, plain).sum };
  let [step, idle] = [1, 0];
  for (let round = 0; round < STEPS && step > LEAST_STEP; round += 1) {
    const tolls = tolled(model, plain, toll, scale);
    const { sum, option, start } = leastOf(model, domain, tolls);
    if (sum > best.sum + 1e-9 * Math.abs(best.sum)) {
      best = { tolls, sum };
      idle = 0;
    } else if (++idle >= PATIENCE) {
      step /= 2;
      idle = 0;
    }
    if (Number.isFinite(aimed) && aimed - best.sum <= 1e-9 * Math.max(1, Math.abs(aimed))) break;
    const crowd = capacity.map((most, at) => most.map((each) => -each / scale[at]!));
    for (const [task, at] of option.entries())
      for (const { resource, from, to, amount } of options[at]!.draws) {
        const end = Math.min(start[task]! + to, horizon);
        for (let slot = start[task]! + from; slot < end; slot += 1)
          crowd[resource]![slot]! += amount / scale[resource]!;
      }
    let norm = 0;
    for (const [at, slots] of crowd.entries())
      for (const [slot, over] of slots.entries()) if (over > 0 || toll[at]![slot]! > 0) norm += over * over;
    if (norm === 0) break;
    const goal = Number.isFinite(aimed) ? aimed : best.sum + Math.max(1, Math.abs(best.sum) * 0.1);
    const along = (step * Math.max(goal - sum, 1e-6)) / norm;
    for (const [at, slots] of crowd.entries())
      for (const [slot, over] of slots.entries()) toll[at]![slot] = Math.max(0, toll[at]![slot]! + along * over);
  }
  return best.tolls;

  function tolled(
    { capacity: most }: Model,
    { costs }: Tolls,
    by: readonly Float64Array[],
    size: readonly number[],
  ): Tolls {
    const summed = by.map((slots) => {
      const sums = new Float64Array(horizon + 1);
      for (let slot = 0; slot < horizon; slot += 1) sums[slot + 1] = sums[slot]! + slots[slot]!;
      return sums;
    });
    const with_ = costs.slice();
    for (const [at, { draws }] of options.entries())
      for (const { resource, from, to, amount } of draws) {
        const sums = summed[resource]!;
        const share = amount / size[resource]!;
        if (sums[horizon] === 0) continue;
        for (let start = 0; start < width; start += 1)
          with_[at * width + start]! +=
            share * (sums[Math.min(start + to, horizon)]! - sums[Math.min(start + from, horizon)]!);
      }
    let back = 0;
    for (const [at, slots] of by.entries())
      for (let slot = 0; slot < horizon; slot += 1) back += (slots[slot]! * most[at]![slot]!) / size[at]!;
    return { costs: with_, back };
  }
}
