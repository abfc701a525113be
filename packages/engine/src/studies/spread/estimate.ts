// Estimates from samples, with what they may be wrong by for want of samples: what other samples would scatter by.

import { type Band, FEWEST_SAMPLES, quantile } from '../../judge/bands.ts';
import { jackknifeError } from '../../numerics/jackknife.ts';
import { BLOCKS, withoutBlock } from './even-samples.ts';

export interface Estimate {
  readonly value: number;
  /** Standard error, rather too large than too small; absent when too few samples ran to tell. */
  readonly error?: number;
}

export interface EstimatedBand extends Band {
  /** Standard errors of the three. */
  readonly errors?: Band;
}

/** Samples that are there; what did not run is undefined. */
export function present<Value>(samples: readonly (Value | undefined)[]): Value[] {
  return samples.filter((value) => value !== undefined);
}

/** Samples with each block left out; undefined when there would be too few to tell anything. */
function withoutEachBlock<Value>(samples: readonly (Value | undefined)[]): Value[][] | undefined {
  const values = present(samples);
  if (values.length - Math.ceil(values.length / BLOCKS) < FEWEST_SAMPLES) return undefined;
  return Array.from({ length: BLOCKS }, (_, block) => withoutBlock(values, block));
}

export function estimated<Value>(
  samples: readonly (Value | undefined)[],
  of: (values: readonly Value[]) => number,
): Estimate | undefined {
  const values = present(samples);
  if (values.length === 0) return undefined;
  const without = withoutEachBlock(samples);
  return { value: of(values), ...(without === undefined ? {} : { error: jackknifeError(without.map(of)) }) };
}

/** Share of samples that are true. What was never seen in n of them may still happen: its error is not below 1/(n + 2). */
export function chanceOf(samples: readonly (boolean | undefined)[]): Estimate | undefined {
  const share = (values: readonly boolean[]): number => values.filter(Boolean).length / values.length;
  const found = estimated(samples, share);
  if (found?.error === undefined) return found;
  return { value: found.value, error: Math.max(found.error, 1 / (present(samples).length + 2)) };
}

export function meanOf(samples: readonly (number | undefined)[]): Estimate | undefined {
  return estimated(samples, (values) => values.reduce((sum, value) => sum + value, 0) / values.length);
}

/** Undefined for fewer samples than a band needs. */
export function estimatedBand(
  samples: readonly (number | undefined)[],
  logarithmic: boolean = false,
): EstimatedBand | undefined {
  const values = present(samples);
  if (values.length < FEWEST_SAMPLES) return undefined;
  const at = (of: readonly number[], share: number): number => quantile(of, share, logarithmic);
  const band = (of: readonly number[]): Band => ({ p10: at(of, 0.1), p50: at(of, 0.5), p90: at(of, 0.9) });
  const without = withoutEachBlock(samples)?.map(band);
  const error = (key: keyof Band): number => jackknifeError(without!.map((each) => each[key]));
  return {
    ...band(values),
    ...(without === undefined ? {} : { errors: { p10: error('p10'), p50: error('p50'), p90: error('p90') } }),
  };
}
