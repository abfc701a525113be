// How what is left of a search is split in parts that leave nothing out.

import type { Tolls } from './bound.ts';
import { copyOf, type Domain, type Model, trim } from './model.ts';
import type { Placing } from './problem.ts';
import { firstCrowd } from './try.ts';

export type Branching = 'earliest' | 'conflict';

export interface Part {
  readonly domain: Domain;
  readonly putOff: Int32Array | undefined;
}

export interface Parts {
  /** A schedule that was met on the way. */
  readonly placings?: readonly Placing[];
  /** The most promising first. */
  readonly further: readonly Part[];
}

/** Keeps only one start of one option of its task. */
function fixed(model: Model, domain: Domain, option: number, start: number): Domain {
  const copy = copyOf(domain);
  for (const other of model.optionsOf[model.options[option]!.task]!)
    if (other !== option) copy.hi[other] = copy.lo[other]! - 1;
  copy.lo[option] = start;
  copy.hi[option] = start;
  return copy;
}

function isFixed({ optionsOf }: Model, { lo, hi }: Domain, task: number): boolean {
  let left = 0;
  for (const at of optionsOf[task]!) left += Math.max(0, hi[at]! - lo[at]! + 1);
  return left === 1;
}

function placingsOf({ optionsOf, options }: Model, { lo, hi }: Domain): Placing[] {
  return optionsOf.map((own) => {
    const at = own.find((each) => lo[each]! <= hi[each]!)!;
    return { way: options[at]!.way, start: lo[at]! };
  });
}

/**
 * Set times: the task that can start first starts then, or is put off until that moment is no longer its earliest. A schedule in
 * which it would start later than it could, with all others as they are, is no better than one in which it starts there.
 */
export function earliestParts(model: Model, domain: Domain, putOff: Int32Array): Parts {
  const { options } = model;
  const { lo, hi } = domain;
  let [pick, done] = [-1, true];
  for (let at = 0; at < options.length; at += 1) {
    if (lo[at]! > hi[at]! || isFixed(model, domain, options[at]!.task)) continue;
    done = false;
    if (putOff[at] === lo[at]) continue;
    if (pick < 0 || lo[at]! < lo[pick]! || (lo[at] === lo[pick] && hi[at]! < hi[pick]!)) pick = at;
  }
  if (done) return { placings: placingsOf(model, domain), further: [] };
  if (pick < 0) return { further: [] };
  const later = putOff.slice();
  later[pick] = lo[pick]!;
  return {
    further: [
      { domain: fixed(model, domain, pick, lo[pick]!), putOff },
      { domain: copyOf(domain), putOff: later },
    ],
  };
}

/**
 * Every task where it is cheapest: when they fit so, that is a schedule. One that is in the way of another (or the one that has most
 * to lose) is then tried at that start, before it, after it, and in its other ways.
 */
export function conflictParts(
  model: Model,
  domain: Domain,
  tolls: Tolls,
  wanted: { readonly option: Int32Array; readonly start: Int32Array },
): Parts {
  const { optionsOf, options } = model;
  const placings = optionsOf.map((_, task) => ({
    way: options[wanted.option[task]!]!.way,
    start: wanted.start[task]!,
  }));
  const crowd = firstCrowd(model, placings);
  const loose = optionsOf.flatMap((_, task) => (isFixed(model, domain, task) ? [] : [task]));
  const met = crowd === undefined ? { placings } : {};
  if (loose.length === 0) return { ...met, further: [] };
  const among = crowd === undefined ? loose : loose.filter((task) => crowd.includes(task));
  const task = largestRegret(model, domain, tolls, among.length === 0 ? loose : among, wanted.option, wanted.start);
  const [option, start] = [wanted.option[task]!, wanted.start[task]!];
  const parts: Part[] = [{ domain: fixed(model, domain, option, start), putOff: undefined }];
  const others = optionsOf[task]!.filter((at) => at !== option && domain.lo[at]! <= domain.hi[at]!);
  const within = (from: number, to: number): void => {
    const copy = copyOf(domain);
    for (const at of others) copy.hi[at] = copy.lo[at]! - 1;
    copy.lo[option] = from;
    copy.hi[option] = to;
    trim(copy, option, model.width);
    if (copy.lo[option]! <= copy.hi[option]!) parts.push({ domain: copy, putOff: undefined });
  };
  within(domain.lo[option]!, start - 1);
  within(start + 1, domain.hi[option]!);
  if (others.length > 0) {
    const copy = copyOf(domain);
    copy.hi[option] = copy.lo[option]! - 1;
    parts.push({ domain: copy, putOff: undefined });
  }
  return { ...met, further: parts };
}

/** The task that loses most when its cheapest start, and those beside it, are not to be had. */
function largestRegret(
  { optionsOf, width }: Model,
  { allowed, lo, hi }: Domain,
  { costs }: Tolls,
  among: readonly number[],
  option: Int32Array,
  start: Int32Array,
): number {
  let [pick, most] = [among[0]!, Number.NEGATIVE_INFINITY];
  for (const task of among) {
    const least = costs[option[task]! * width + start[task]!]!;
    let second = Number.POSITIVE_INFINITY;
    for (const at of optionsOf[task]!)
      for (let each = lo[at]!; each <= hi[at]!; each += 1) {
        if (allowed[at * width + each] === 0 || (at === option[task] && each === start[task])) continue;
        second = Math.min(second, costs[at * width + each]!);
      }
    if (second - least > most) [pick, most] = [task, second - least];
  }
  return pick;
}
