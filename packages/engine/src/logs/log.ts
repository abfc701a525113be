// A log: what sensors of the real cabinet said and when, in SI, on the clock of the log; and all that was wrong with its text.

import type { Place } from './places.ts';

export type LogKind = 'temperature' | 'humidity' | 'power' | 'concentration';

/** Something that was wrong with a log, or that had to be guessed. */
export interface LogRemark {
  /** Stable, kebab-case. */
  readonly code: string;
  readonly what: string;
  /** What was done about it. */
  readonly done: string;
  /** Line of the file at which it shows first. */
  readonly line?: number;
  /** How many rows it concerns. */
  readonly count?: number;
  readonly column?: string;
}

/** One value of one column. */
export interface Reading {
  /** s after midnight of the log's first day. */
  readonly time: number;
  /** SI. */
  readonly value: number;
}

export interface LogColumn {
  /** As the log writes it, without its unit. */
  readonly name: string;
  readonly kind: LogKind;
  readonly place: Place;
  /** Rising in time, no two at one time. */
  readonly readings: readonly Reading[];
}

export interface Log {
  readonly version: 1;
  readonly file: string;
  /** Its first day, such as 2026-11-20; absent when rows have times of day alone. */
  readonly firstDay?: string;
  readonly columns: readonly LogColumn[];
  readonly remarks: readonly LogRemark[];
}

/** Why nothing can be read from it. */
export interface LogFault {
  readonly fault: string;
  readonly mend: string;
}
