// Findings: what all faces show. One JSON shape, with a version, for every face.

import type { Measure } from '../trades/measure.ts';

/** `holds`: the whole band is inside the limit; `tight`: the limit lies inside the band; `fails`: the whole band is beyond it. */
export type Verdict = 'holds' | 'tight' | 'fails' | 'unknown' | 'told';

export interface Tried {
  readonly says: string;
  /** Edits as they would stand under an option. */
  readonly edits: Measure['remedies'][number]['edits'];
  /** Nominal value with the change. */
  readonly value?: number;
  readonly verdict: Verdict;
  /** Titles of other findings that get worse by a verdict, or better. */
  readonly worsens: readonly string[];
  readonly mends: readonly string[];
}

export interface Finding extends Measure {
  /** `trade/quantity/part/day`. */
  readonly id: string;
  readonly day: string;
  /** `told` for a measure without limit. */
  readonly verdict: Verdict;
  readonly p10?: number;
  readonly p50?: number;
  readonly p90?: number;
  /** Share of samples inside the limit. */
  readonly chance?: number;
  /** Inputs that move it most, as share of its variance, largest first. */
  readonly drivers: readonly { readonly path: string; readonly label: string; readonly share: number }[];
  readonly tried: readonly Tried[];
}

/** A finding as lists show it: how it came about is worked out for the one that is asked about. */
export type BriefFinding = Omit<Finding, 'steps' | 'remedies'>;
