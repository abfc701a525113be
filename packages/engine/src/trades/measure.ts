// What a trade says about one part on one day, from one run. It knows nothing of spread, verdicts or other runs.

import type { Cabinet, Edit } from '../cabinet/cabinet.ts';
import { NO_DAY } from '../cabinet/check-days.ts';
import type { DayRecord } from '../day/record.ts';
import type { Assembly } from '../network/assembly.ts';

/** One simulated day of a cabinet. */
export interface DayRun {
  readonly cabinet: Cabinet;
  /** Id of the day in the cabinet. */
  readonly day: string;
  readonly assembly: Assembly;
  readonly record: DayRecord;
}

/** Where a limit comes from and what stands it. */
export interface Limit {
  /** Stable id; a person may set it under `limits:` of the cabinet file. */
  readonly id: string;
  readonly kind: 'at-most' | 'at-least';
  /** SI, same unit as the value. */
  readonly value: number;
  readonly source: string;
  /** A guideline for rooms where people live, an occupational value, a maker's or trade's rule, or the person's own wish. */
  readonly standing: 'living room' | 'occupational' | 'trade' | 'own';
}

/** One step of the reason: from inputs to the number. */
export interface Step {
  readonly text: string;
  readonly value?: number;
  readonly unit?: string;
  /** Formula and its source, when the step is one. */
  readonly formula?: string;
  readonly source?: string;
  /** Paths of inputs in the cabinet: the face shows their origin. */
  readonly inputs?: readonly string[];
}

/** A change that might mend it; the judge tries it. */
export interface Remedy {
  readonly says: string;
  readonly edits: readonly Edit[];
}

/**
 * Steps, remedies and cause may be getters: a study that asks for a thousand values never asks how they came about.
 * `measureDay` makes plain data of them.
 */
export interface Measure {
  /** `heat`, `airflow`, `draught`, `air-quality` … */
  readonly trade: string;
  /** Stable, kebab-case: `peak-air`. With trade, part and day it makes the finding's id `trade/quantity/part/day`. */
  readonly quantity: string;
  /** Id of the part it is about; dots for parts of parts. */
  readonly part: string;
  /** The question in plain words, as a row title: `hottest air at the print`. */
  readonly title: string;
  /** SI; absent when an input is missing. */
  readonly value?: number;
  /** Which input is missing and how to give it, when `value` is absent. */
  readonly missing?: string;
  /** Unit kind of engine/units: how it is shown. */
  readonly unit: string;
  /** Spans decades: bands and differences are taken in logarithms. */
  readonly logarithmic?: boolean;
  readonly limit?: Limit;
  /** When it happens, s, if it has a moment. */
  readonly at?: number;
  readonly steps: readonly Step[];
  readonly remedies: readonly Remedy[];
  /** Findings with one cause are told together: `not enough air`, `leaks bypass the filter`. */
  readonly cause?: string;
  /** 0…1: how much it matters when it fails; health and fire 1, comfort 0.3. */
  readonly weight: number;
  /** Which way is better, for comparison: lower or higher values. */
  readonly better?: 'lower' | 'higher';
  /** Told in `compare` even without a limit. */
  readonly compared?: boolean;
}

/** Stands for the day in the id of a finding that no day changes. */
export const STANDING: string = NO_DAY;

/** A trade asked about the course of a day. */
export interface DayTrade extends TradeName {
  measure(run: DayRun): readonly Measure[];
}

/** One thing that is asked of a cabinet, whatever the day. */
export type StandingQuestion = (cabinet: Cabinet) => readonly Measure[];

/** A trade asked what the cabinet is, whatever the day: once a cabinet. */
export interface StandingTrade extends TradeName {
  readonly standing: StandingQuestion & {
    /** What is asked one by one: a change of the cabinet moves the answers of few. */
    readonly questions?: readonly StandingQuestion[];
  };
}

export function asks(...questions: readonly StandingQuestion[]): StandingTrade['standing'] {
  return Object.assign((cabinet: Cabinet) => questions.flatMap((question) => question(cabinet)), { questions });
}

/** A trade: everything one tradesperson is asked, of either kind or of both. */
export type Trade = TradeName & Partial<DayTrade> & Partial<StandingTrade>;

interface TradeName {
  readonly id: string;
  readonly title: string;
}
