// When an amount that adds up with use is reached: in what has run already, or in one of many ways in which the weeks may go on.

import { sampleColumn, valueAt } from '../judge/samples.ts';
import { randomStream, textSeed } from '../numerics/random.ts';
import { FEW_WEEKS, type Load, type LoadKey } from './load.ts';

export interface Timeline {
  /** How much since a day, today included. */
  readonly used: (key: LoadKey, since: number) => number;
  /** Day on which that much since a day has come together; Infinity when it has not in twenty years. */
  readonly reached: (key: LoadKey, since: number, amount: number) => number;
}

/** Weeks looked ahead. */
const AHEAD = 1044;
const WEEK = 7;
/** What nobody recorded may be 0.6 or 1.6 of it, and half or twice of what few weeks say: judgement. */
const ASSUMED = { p10: 0.6, p50: 1, p90: 1.6, shape: 'log-normal' } as const;
const OF_FEW = { p10: 0.5, p50: 1, p90: 2, shape: 'log-normal' } as const;

/** As it was, going on as the mean of the weeks that were. */
export function middleTimeline(load: Load): Timeline {
  const means = new Map([...load.weeks].map(([key, weeks]) => [key, mean(weeks)] as const));
  return timeline(load, 1, (key) => {
    const step = means.get(key) ?? 0;
    return (week) => step * (week + 1);
  });
}

/**
 * Ways in which it may go on: weeks drawn with replacement from a set of weeks that is itself drawn from those that were, so that a
 * short or an uneven past makes for a wide future (the bootstrap of B. Efron, Ann. Statist. 7 (1979) 1-26, from memory).
 */
export function drawnTimelines(load: Load, count: number, seed: number): Timeline[] {
  const weeks = [...load.weeks.values()][0]?.length ?? 0;
  const few = load.from !== 'diary' || weeks < FEW_WEEKS;
  const factors = sampleColumn('load', count, seed).map((u) =>
    few ? valueAt(load.from === 'costs.times' ? ASSUMED : OF_FEW, u) : 1,
  );
  return factors.map((factor, at) => {
    const random = randomStream((textSeed(`weeks ${at}`) ^ Math.imul(seed, 0x9e3779b9)) >>> 0);
    const pick = (): number => Math.floor(random() * weeks);
    const set = Array.from({ length: weeks }, pick);
    const order = Array.from({ length: AHEAD }, () => set[pick()] ?? 0);
    const sums = new Map<LoadKey, Float64Array>();
    // The past of what was recorded is known; only what was assumed for it may have been otherwise.
    return timeline(load, load.from === 'costs.times' ? factor : 1, (key) => {
      const known = sums.get(key) ?? running(load.weeks.get(key) ?? [], order, factor);
      sums.set(key, known);
      return (week) => known[week]!;
    });
  });
}

function running(weeks: readonly number[], order: readonly number[], factor: number): Float64Array {
  const sums = new Float64Array(order.length);
  let sum = 0;
  for (const [week, from] of order.entries()) {
    sum += factor * (weeks[from] ?? 0);
    sums[week] = sum;
  }
  return sums;
}

function timeline(load: Load, past: number, ahead: (key: LoadKey) => (week: number) => number): Timeline {
  const { first, today, daily } = load;
  const sums = new Map<LoadKey, Float64Array>();
  /** Sum of the days before the day of an index. */
  const summed = (key: LoadKey): Float64Array => {
    const known = sums.get(key);
    if (known !== undefined) return known;
    const values = daily.get(key) ?? new Float64Array(today + 1 - first);
    const before = new Float64Array(values.length + 1);
    for (let at = 0; at < values.length; at += 1) before[at + 1] = before[at]! + past * values[at]!;
    sums.set(key, before);
    return before;
  };
  const upTo = (before: Float64Array, day: number): number =>
    before[Math.min(Math.max(day - first, 0), before.length - 1)]!;
  const used = (key: LoadKey, since: number): number => {
    const before = summed(key);
    return before.at(-1)! - upTo(before, since);
  };
  return {
    used,
    reached: (key, since, amount) => {
      const before = summed(key);
      const goal = upTo(before, since) + amount;
      if (before.at(-1)! >= goal) return first + firstAtLeast((at) => before[at]!, before.length, goal) - 1;
      const left = goal - before.at(-1)!;
      const sumOf = ahead(key);
      const week = firstAtLeast(sumOf, AHEAD, left);
      if (week >= AHEAD) return Number.POSITIVE_INFINITY;
      const [low, high] = [week === 0 ? 0 : sumOf(week - 1), sumOf(week)];
      return today + Math.ceil(WEEK * (week + (left - low) / (high - low)));
    },
  };
}

/** First index from 0 whose value, which never falls, is at least a goal; `count` when none is. */
function firstAtLeast(value: (at: number) => number, count: number, goal: number): number {
  let [low, high] = [0, count];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (value(middle) >= goal) high = middle;
    else low = middle + 1;
  }
  return low;
}

function mean(values: readonly number[]): number {
  return values.length === 0 ? 0 : values.reduce((sum, value) => sum + value, 0) / values.length;
}
