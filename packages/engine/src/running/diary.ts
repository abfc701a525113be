// The diary of a cabinet: what was done to it, and which jobs ran, by date. As it is read; days are numbers (units/calendar.ts).

import type { CareAction } from '../cabinet/care.ts';

/** What was done: an action of care, or only a reading taken. */
export type Deed = CareAction | 'measure';

export interface DoneEntry {
  readonly on: number;
  readonly part: string;
  readonly did: Deed;
  /** Pressure loss that was read, Pa. */
  readonly reading?: number;
  readonly note?: string;
}

/** One job, or as many alike as ran within a time, spread evenly over it. */
export interface JobRun {
  readonly first: number;
  readonly last: number;
  readonly times: number;
  readonly job: string;
  readonly machine: string;
  readonly material?: string;
  /** Of the day, s. */
  readonly start?: number;
  /** Of one, s. */
  readonly duration: number;
  /** Of one, kg. */
  readonly mass?: number;
  /** How many of them failed. */
  readonly failed: number;
}

export interface Diary {
  /** From when the cabinet was used with every part new. */
  readonly began: number;
  /** In order of their dates. */
  readonly done: readonly DoneEntry[];
  readonly jobs: readonly JobRun[];
  /** Entries of parts or machines that the cabinet does not have (any more), and what else a person should know. */
  readonly remarks: readonly string[];
}
