// From sampled values to a band: 10th, 50th and 90th percentile, and how often a limit is kept.

import type { Limit } from '../trades/measure.ts';

export interface Band {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** Fewer values than this give no band: the 10th percentile would be a guess. */
export const FEWEST_SAMPLES = 8;

/**
 * Quantile of values by straight lines between order statistics at (k − 1)/(n − 1) (type 7 of R. J. Hyndman & Y. Fan,
 * The American Statistician 50 (1996) 361-365); in logarithms when asked for and all values are positive.
 */
export function quantile(values: readonly number[], share: number, logarithmic: boolean = false): number {
  if (values.length === 0) throw new RangeError('quantile: values is empty; it must hold at least one number');
  const sorted = [...values].sort((a, b) => a - b);
  const place = (sorted.length - 1) * share;
  const low = sorted[Math.floor(place)]!;
  const high = sorted[Math.ceil(place)]!;
  const part = place - Math.floor(place);
  return logarithmic && low > 0 ? low * (high / low) ** part : low + (high - low) * part;
}

export function bandOf(values: readonly number[], logarithmic: boolean = false): Band | undefined {
  if (values.length < FEWEST_SAMPLES) return undefined;
  return {
    p10: quantile(values, 0.1, logarithmic),
    p50: quantile(values, 0.5, logarithmic),
    p90: quantile(values, 0.9, logarithmic),
  };
}

/** Moves a band as a change moves the nominal value: by the difference, or by the ratio when values span decades. */
export function shiftedBand(band: Band, from: number, to: number, logarithmic: boolean = false): Band {
  if (logarithmic && from > 0 && to > 0) {
    const ratio = to / from;
    return { p10: band.p10 * ratio, p50: band.p50 * ratio, p90: band.p90 * ratio };
  }
  const step = to - from;
  return { p10: band.p10 + step, p50: band.p50 + step, p90: band.p90 + step };
}

export function keeps(limit: Limit, value: number): boolean {
  return limit.kind === 'at-most' ? value <= limit.value : value >= limit.value;
}

/** Share of values inside the limit. */
export function chanceInside(limit: Limit, values: readonly number[]): number {
  return values.filter((value) => keeps(limit, value)).length / values.length;
}
