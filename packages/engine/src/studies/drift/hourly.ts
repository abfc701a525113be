// Residuals of a log hour by hour, in standard deviations, with what one hour carries over to the next taken out: only then do the run
// lengths of control charts hold.

import type { Noise } from '../../numerics/serial-noise.ts';

/** One column's residuals by the hour: measured less computed. */
export interface Hourly {
  /** Hours after the log's first midnight, rising; hours without values are left out. */
  readonly hours: readonly number[];
  readonly values: readonly number[];
}

/** Means over hours of at least `fewest` values. */
export function byTheHour(times: readonly number[], values: readonly number[], fewest = 1): Hourly {
  const groups = new Map<number, { sum: number; count: number }>();
  for (const [at, time] of times.entries()) {
    const hour = Math.floor(time / 3600);
    const group = groups.get(hour) ?? { sum: 0, count: 0 };
    groups.set(hour, { sum: group.sum + values[at]!, count: group.count + 1 });
  }
  const kept = [...groups].filter(([, { count }]) => count >= fewest).sort(([a], [b]) => a - b);
  return { hours: kept.map(([hour]) => hour), values: kept.map(([, { sum, count }]) => sum / count) };
}

/**
 * What is new in each hour, in standard deviations: z = (r − φᵏ r₋₁) / (σ √(1 − φ²ᵏ)), k hours after the one before, with r less its
 * usual mean. A mean that shifts by Δ shifts z by Δ (1 − φ) / (σ √(1 − φ²)) only: what is carried over hides a drift as it hides an error.
 */
export function innovations({ hours, values }: Hourly, { spread, carry }: Noise, mean = 0): Float64Array {
  return Float64Array.from(values, (value, at) => {
    const here = value - mean;
    if (at === 0) return here / spread;
    const kept = carry ** (hours[at]! - hours[at - 1]!);
    return (here - kept * (values[at - 1]! - mean)) / (spread * Math.sqrt(Math.max(1 - kept * kept, 1e-6)));
  });
}

/** Mean, deviation and correlation of neighbours of the hours up to one; the correlation lies in 0 … 0.95. */
export function settledNoise(
  { hours, values }: Hourly,
  until: number,
): Noise & { readonly mean: number; readonly count: number } {
  const early = values.filter((_, at) => hours[at]! < until);
  const count = early.length;
  const mean = early.reduce((sum, each) => sum + each, 0) / Math.max(count, 1);
  const square = early.reduce((sum, each) => sum + (each - mean) ** 2, 0) / Math.max(count - 1, 1);
  let both = 0;
  let pairs = 0;
  for (let at = 1; at < values.length && hours[at]! < until; at += 1) {
    if (hours[at]! - hours[at - 1]! !== 1) continue;
    both += (values[at]! - mean) * (values[at - 1]! - mean);
    pairs += 1;
  }
  const raw = pairs > 2 && square > 0 ? both / pairs / square : 0;
  // Few hours tell the correlation too small by about (1 + 3 φ) / n (M. G. Kendall 1954).
  const carry = Math.min(0.95, Math.max(0, raw + (1 + 3 * raw) / Math.max(count, 1)));
  return { mean, spread: Math.sqrt(square), carry, count };
}
