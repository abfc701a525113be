// Times as loggers write them: ISO 8601, dates with points or strokes, times of day alone, seconds since 1970. No clock is asked and no
// time zone known: the wall clock of the log counts as it is written.

import { dayNumber } from '../units/calendar.ts';

export interface Stamp {
  /** Days since 1970-01-01; absent for a time of day alone. */
  readonly day?: number;
  /** s after midnight. */
  readonly seconds: number;
  /** Offset from UTC, s, where it is written. */
  readonly offset?: number;
}

export type DateOrder = 'day first' | 'month first';

const CLOCK =
  /^(\d{1,2}):([0-5]\d)(?::([0-5]\d)(?:[.,](\d+))?)?\s*(?:([ap])\.?m\.?)?\s*(Z|UTC|GMT|[+-]\d\d(?::?\d\d)?)?$/i;

/** A time, or undefined for a text that is none. */
export function stampOf(text: string, order: DateOrder = 'day first'): Stamp | undefined {
  const trimmed = text.trim();
  const unix = /^(\d{10})(?:\.\d+)?$|^(\d{13})$/.exec(trimmed);
  if (unix !== null) {
    const seconds = unix[2] === undefined ? Number(trimmed) : Number(trimmed) / 1000;
    return { day: Math.floor(seconds / 86_400), seconds: seconds % 86_400, offset: 0 };
  }
  const date = dateOf(trimmed, order);
  if (date === undefined) return clockOf(trimmed);
  if (date.rest === '') return { day: date.day, seconds: 0 };
  const clock = clockOf(date.rest);
  return clock === undefined ? undefined : { day: date.day, ...clock };
}

function dateOf(text: string, order: DateOrder): { readonly day: number; readonly rest: string } | undefined {
  const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T\s,]+|$)/.exec(text);
  const other = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4}|\d\d)(?:[T\s,]+|$)/.exec(text);
  const match = iso ?? other;
  if (match === null) return undefined;
  const [year, month, day] =
    iso === null
      ? order === 'day first'
        ? [fullYear(other![4]!), Number(other![3]), Number(other![1])]
        : [fullYear(other![4]!), Number(other![1]), Number(other![3])]
      : [Number(iso[1]), Number(iso[2]), Number(iso[3])];
  if (!(month! >= 1 && month! <= 12 && day! >= 1 && day! <= 31)) return undefined;
  return { day: dayNumber(year!, month!, day!), rest: text.slice(match[0].length) };
}

const fullYear = (text: string): number => (text.length === 2 ? 2000 + Number(text) : Number(text));

function clockOf(text: string): Pick<Stamp, 'seconds' | 'offset'> | undefined {
  const match = CLOCK.exec(text.trim());
  if (match === null) return undefined;
  const [, hours, minutes, seconds = '0', part = '', half, zone] = match;
  let hour = Number(hours);
  if (half !== undefined) {
    if (hour < 1 || hour > 12) return undefined;
    hour = (hour % 12) + (half.toLowerCase() === 'p' ? 12 : 0);
  }
  if (hour > 24) return undefined;
  const fraction = part === '' ? 0 : Number(`0.${part}`);
  const time = hour * 3600 + Number(minutes) * 60 + Number(seconds) + fraction;
  return zone === undefined ? { seconds: time } : { seconds: time, offset: offsetOf(zone) };
}

function offsetOf(zone: string): number {
  const match = /^([+-])(\d\d):?(\d\d)?$/.exec(zone);
  if (match === null) return 0;
  return (match[1] === '-' ? -1 : 1) * (Number(match[2]) * 3600 + Number(match[3] ?? 0) * 60);
}

/** Which of day and month comes first in dates such as 3/4/2026: what fits all of them; undefined when both do. */
export function orderOf(texts: readonly string[]): DateOrder | undefined {
  let [dayFirst, monthFirst, seen] = [true, true, false];
  for (const text of texts) {
    const match = /^\s*(\d{1,2})([./-])(\d{1,2})\2\d{2,4}/.exec(text);
    if (match === null) continue;
    seen = true;
    if (Number(match[1]) > 12 || match[2] === '.') monthFirst = false;
    if (Number(match[3]) > 12) dayFirst = false;
  }
  if (!seen || dayFirst === monthFirst) return seen ? undefined : 'day first';
  return dayFirst ? 'day first' : 'month first';
}
