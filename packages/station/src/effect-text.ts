// What a fault or a worn part does to a finding, on one line.

import { type Effect, formatClock, type UnitSystem } from '@stillair/engine';
import { aboutText, bandOf, quantity, shortLimit, unitOf, withoutUnit } from './finding-text.ts';

export interface EffectShown {
  readonly units: UnitSystem;
  /** How many days the file has: with several, the day is named. */
  readonly days: number;
  readonly mark: (source: string) => string;
}

/** `tell` says what stands beside the number: when its limit is passed, or what it was before. */
export function effectText(effect: Effect, { days, units, mark }: EffectShown, tell: 'when' | 'before'): string {
  const { title, unit, value, p10, p90, limit, verdict, was, before } = effect;
  const number = quantity(unit, value, units);
  const band =
    p10 === undefined || p90 === undefined || p10 === p90
      ? ''
      : ` (${withoutUnit(bandOf(unit, p10, p90, units), unitOf(number))})`;
  const word = verdict === 'fails' ? (was === 'fails' ? 'FAILS the more' : 'FAILS') : verdict;
  const from =
    tell === 'when' || before === undefined
      ? ''
      : `${withoutUnit(quantity(unit, before, units), unitOf(number))}, then `;
  const when = tell === 'when' ? whenText(effect) : '';
  return `${word}: ${title}, ${aboutText(effect, days)}: ${from}${number}${band} ${shortLimit(limit, unit, units, number)} ${mark(limit.source)}${when}`;
}

function whenText({ passed, worst }: Effect): string {
  if (passed !== undefined) return `; passed at ${formatClock(passed)}`;
  return worst === undefined ? '' : `; worst at ${formatClock(worst)}`;
}
