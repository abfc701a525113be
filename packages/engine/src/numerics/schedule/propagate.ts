// Takes starts away that cannot be part of any schedule, until nothing more follows: orders, then what tasks that cannot move any
// more leave of each resource (time-tabling), then who must come first on a resource for one (edge finding).

import { anyLeft, type Domain, keepWithin, type Model, onlyOption, trim } from './model.ts';
import { placeOnSingles } from './single.ts';

/** False when some task has nowhere left. */
export function propagate(model: Model, domain: Domain): boolean {
  for (;;) {
    const before = counted(domain);
    if (!keepOrders(model, domain) || !keepCapacity(model, domain) || !placeOnSingles(model, domain)) return false;
    if (counted(domain) === before) return true;
  }
}

/** Changes whenever the end of an option moves. */
function counted({ lo, hi }: Domain): number {
  let sum = 0;
  for (let at = 0; at < lo.length; at += 1) sum += lo[at]! <= hi[at]! ? hi[at]! - lo[at]! + 1 : 0;
  return sum;
}

function keepOrders(model: Model, domain: Domain): boolean {
  const { orders = [] } = model.problem;
  let moved = true;
  while (moved) {
    moved = false;
    for (const { before, after, lag, from } of orders) {
      const [first, last] = [model.optionsOf[before]!, model.optionsOf[after]!];
      const after_ = (at: number): number => lag + (from === 'end' ? model.options[at]!.length : 0);
      let earliest = Number.POSITIVE_INFINITY;
      for (const at of first)
        if (domain.lo[at]! <= domain.hi[at]!) earliest = Math.min(earliest, domain.lo[at]! + after_(at));
      let latest = Number.NEGATIVE_INFINITY;
      for (const at of last) {
        if (domain.lo[at]! > domain.hi[at]!) continue;
        if (domain.lo[at]! < earliest) {
          if (!keepWithin(model, domain, at, earliest, domain.hi[at]!)) return false;
          moved = true;
        }
        if (domain.lo[at]! <= domain.hi[at]!) latest = Math.max(latest, domain.hi[at]!);
      }
      for (const at of first) {
        if (domain.lo[at]! > domain.hi[at]! || domain.hi[at]! <= latest - after_(at)) continue;
        if (!keepWithin(model, domain, at, domain.lo[at]!, latest - after_(at))) return false;
        moved = true;
      }
    }
  }
  return true;
}

/** What tasks draw in slots that they cover wherever they start. */
function surelyDrawn(model: Model, { lo, hi }: Domain, only: readonly number[]): Float64Array[] {
  const drawn = model.capacity.map(() => new Float64Array(model.horizon));
  for (const at of only) {
    if (at < 0) continue;
    for (const { resource, from, to, amount } of model.options[at]!.draws) {
      const end = Math.min(lo[at]! + to, model.horizon);
      for (let slot = hi[at]! + from; slot < end; slot += 1) drawn[resource]![slot]! += amount;
    }
  }
  return drawn;
}

function keepCapacity(model: Model, domain: Domain): boolean {
  const { capacity, options, horizon, optionsOf } = model;
  const only = optionsOf.map((_, task) => onlyOption(model, domain, task));
  const drawn = surelyDrawn(model, domain, only);
  const least = new Float64Array(capacity.length);
  for (const [resource, most] of capacity.entries()) {
    const used = drawn[resource]!;
    let tightest = Number.POSITIVE_INFINITY;
    for (let slot = 0; slot < horizon; slot += 1) {
      const left = most[slot]! - used[slot]!;
      if (left < tightest) tightest = left;
      if (used[slot]! > 0 && left < 0) return false;
    }
    least[resource] = tightest;
  }
  for (let at = 0; at < options.length; at += 1) {
    if (domain.lo[at]! > domain.hi[at]!) continue;
    const alone = only[options[at]!.task] === at;
    for (const draw of options[at]!.draws) {
      if (draw.amount <= least[draw.resource]!) continue;
      takeBlocked(model, domain, at, draw, drawn[draw.resource]!, alone);
      if (domain.lo[at]! > domain.hi[at]!) break;
    }
    if (domain.lo[at]! > domain.hi[at]! && !anyLeft(model, domain, options[at]!.task)) return false;
  }
  return true;
}

/** Starts at which a draw would cover a slot that has no room for it. */
function takeBlocked(
  { horizon, width, capacity }: Model,
  domain: Domain,
  at: number,
  { resource, from, to, amount }: Model['options'][number]['draws'][number],
  used: Float64Array,
  alone: boolean,
): void {
  const { allowed, lo, hi } = domain;
  const [first, last] = [lo[at]!, hi[at]!];
  // Its own sure part is among what is drawn already.
  const own: readonly [number, number] = alone ? [last + from, Math.min(first + to, horizon)] : [0, 0];
  const most = capacity[resource]!;
  const base = at * width;
  let near = Number.POSITIVE_INFINITY;
  for (let slot = Math.min(last + to, horizon) - 1; slot >= first + from; slot -= 1) {
    if (used[slot]! + amount > most[slot]! && !(slot >= own[0] && slot < own[1])) near = slot;
    const start = slot - from;
    if (start <= last && near < start + to) allowed[base + start] = 0;
  }
  trim(domain, at, width);
}
