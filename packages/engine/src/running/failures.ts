// Share of prints that fail, from a diary that counts them.

import type { Spread } from '../cabinet/origin.ts';
import type { JobRun } from './diary.ts';

export interface FailureShare {
  /** As the file writes it, with its spread. */
  readonly share: string;
  readonly spread: Spread;
  readonly says: string;
}

/** Fewer prints than this say less than common practice does. */
const FEWEST = 20;
const Z90 = 1.2816;
/** Nobody's prints fail more often for good, and the file bears no more. */
const MOST = 0.9;

/**
 * Middle (k + 1/2)/(n + 1) of k failures in n prints, with the spread of a beta distribution of those counts (H. Jeffreys' prior, from
 * memory), its ends by a normal one.
 */
export function failuresOf(runs: readonly JobRun[]): FailureShare | undefined {
  const prints = runs.reduce((sum, { times }) => sum + times, 0);
  const failed = runs.reduce((sum, run) => sum + run.failed, 0);
  if (prints < FEWEST) return undefined;
  const middle = (failed + 0.5) / (prints + 1);
  const deviation = Math.sqrt((middle * (1 - middle)) / (prints + 2));
  const percent = (share: number): number => Number((100 * Math.min(share, MOST)).toPrecision(3));
  const [low, high] = [Math.max(middle - Z90 * deviation, middle / 3), middle + Z90 * deviation];
  return {
    spread: {
      p10: percent(low) / 100,
      p50: percent(middle) / 100,
      p90: percent(high) / 100,
      shape: 'normal',
    },
    share: `${percent(middle)} (${percent(low)} to ${percent(high)}) %`,
    says: `of ${prints} prints in the diary ${failed} failed: ${percent(middle)} % (${percent(low)} to ${percent(high)})`,
  };
}
