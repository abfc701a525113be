// A value that is taken where a file says nothing, with its spread from the 10th to the 90th percentile, and why.

export interface Assumption {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly shape: 'normal' | 'log-normal';
  readonly why: string;
}

/** Its spread is even in the number itself. */
export function normal(value: number, low: number, high: number, why: string): Assumption {
  return { value, low, high, shape: 'normal', why };
}

/** Its spread is even in the logarithm: for what is above 0 and may be half or twice as much. */
export function decades(value: number, low: number, high: number, why: string): Assumption {
  return { value, low, high, shape: 'log-normal', why };
}
