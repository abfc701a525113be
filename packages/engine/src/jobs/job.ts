// What a job file comes to. Plain data, SI.

import type { Complaint } from '../cabinet/complaint.ts';

/** What the reader takes for granted where the file does not say it. */
export interface JobRules {
  /** m/s², until the file sets another. */
  readonly acceleration: number;
  /** How far an arc laid into a corner may pass from its point, m: sets the speed of corners. */
  readonly deviation: number;
  /** What `P` of a dwell counts: most printers milliseconds, RS-274 seconds. */
  readonly dwell: 'milliseconds' | 'seconds';
}

export const usualRules: JobRules = { acceleration: 1.5, deviation: 0.00002, dwell: 'milliseconds' };

export type Span = readonly [number, number];

/** Least and greatest place in each direction, m; none where the file never went there. */
export interface Extents {
  readonly x?: Span;
  readonly y?: Span;
  readonly z?: Span;
}

export interface SetPoint {
  /** s after the start, waits left out. */
  readonly at: number;
  readonly what: 'nozzle' | 'bed' | 'chamber';
  readonly tool?: number;
  /** K; none when it is switched off. */
  readonly to?: number;
  /** The machine waits here until it is reached. */
  readonly waits: boolean;
}

export interface JobSummary {
  readonly bytes: number;
  readonly lines: number;
  readonly moves: number;
  /** s; waits for heat, homing, pauses and tool changes are in none of them. */
  readonly duration: {
    /** With acceleration and the speed of each corner, dwells included. */
    readonly estimate: number;
    /** As if every move had its speed from end to end: never shorter. */
    readonly atSpeed: number;
    /** As if it stopped after every move: never longer. */
    readonly stopAndGo: number;
    readonly printing: number;
    readonly travelling: number;
    /** Filament alone, drawn back or fed. */
    readonly filament: number;
    readonly dwell: number;
  };
  /** How often it waits for what the file does not time. */
  readonly waits: {
    readonly heat: number;
    readonly homing: number;
    readonly pauses: number;
    readonly toolChanges: number;
  };
  /** Length fed by each tool, m. */
  readonly filament: readonly { readonly tool: number; readonly length: number }[];
  /** Everywhere the file goes; and where it prints. */
  readonly extents: { readonly all: Extents; readonly printed: Extents };
  /** What moves the bed of a machine whose bed travels in depth: way, m, and how often it turns back. */
  readonly depth: { readonly way: number; readonly reversals: number };
  /** Part fan: mean over all moves and most, 0 to 1. */
  readonly fan: { readonly mean: number; readonly most: number };
  readonly setPoints: readonly SetPoint[];
  /** Set-points beyond the first ones, which are not listed. */
  readonly setPointsMore: number;
  /** What was held longest while moving, K. */
  readonly held: { readonly nozzle?: number; readonly bed?: number; readonly chamber?: number };
  /** Words that were not understood, and how often each stands there; the most frequent first. */
  readonly unknown: readonly { readonly word: string; readonly times: number }[];
  readonly unknownMore: number;
  /** What a person should know of how it was read. */
  readonly notes: readonly string[];
}

export type JobAnswer =
  | { readonly ok: true; readonly job: JobSummary }
  | { readonly ok: false; readonly complaints: readonly Complaint[]; readonly more: number };
