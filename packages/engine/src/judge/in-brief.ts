// Findings as lists show them. Steps and remedies may be worked out only when they are asked for, and nobody asks it of hundreds.

import type { Measure } from '../trades/measure.ts';
import type { BriefFinding } from './finding.ts';
import { verdictOf } from './verdict.ts';

const REASONS: readonly string[] = ['steps', 'remedies'];

/** Plain data, without the reason. */
export function inBrief<Told extends Measure>(told: Told): Omit<Told, 'steps' | 'remedies'> {
  const keys = Object.keys(told).filter((key) => !REASONS.includes(key));
  return Object.fromEntries(keys.map((key) => [key, told[key as keyof Told]])) as Omit<Told, 'steps' | 'remedies'>;
}

/** What its nominal value alone says of a measure. */
export function briefByValue(measure: Measure, id: string, day: string): BriefFinding {
  const verdict = verdictOf(measure.value, undefined, measure.limit);
  return { ...inBrief(measure), id, day, verdict, drivers: [], tried: [] };
}
