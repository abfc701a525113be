export interface TriedCabinet {
  readonly number: number;
  /** Empty when everything held. */
  readonly faults: readonly string[];
  /** Situations that the day met. */
  readonly met: readonly string[];
  readonly seconds?: number;
  /** Largest difference of a peak from that of an exact run, K, when asked for. */
  readonly apart?: number;
}

/** What became of cabinet `number` under `seed`. */
export function tryCabinet(seed: number, number: number, options?: { readonly peaks?: boolean }): TriedCabinet;
