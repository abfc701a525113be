// A value that is taken where a file says nothing, with its spread from the 10th to the 90th percentile, and why.

export interface Assumption {
  readonly value: number;
  readonly low: number;
  readonly high: number;
  readonly shape: 'normal' | 'log-normal';
  readonly why: string;
}
