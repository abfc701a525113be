// Where the numbers of a cabinet came from.

import type { Span } from './complaint.ts';

/** How uncertain an input is: 10th, 50th and 90th percentile; log-normal where positive and spanning decades, else normal. */
export interface Spread {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
  readonly shape: 'normal' | 'log-normal';
}

export type Origin =
  /** `measured`: the log that gave it. */
  | { readonly kind: 'given'; readonly where: Span; readonly spread?: Spread; readonly measured?: string }
  | { readonly kind: 'catalogue'; readonly part: string; readonly source: string; readonly spread?: Spread }
  | { readonly kind: 'derived'; readonly how: string; readonly spread?: Spread }
  | { readonly kind: 'assumed'; readonly why: string; readonly spread: Spread };

/** By the number's path in the cabinet: `room.airChangesPerHour`, `faces.back.build.layers.0.thickness`. */
export type Origins = ReadonlyMap<string, Origin>;
