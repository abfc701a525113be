// Dates of the calendar as whole days, counted from 1970-01-01: what a diary is written in. No clock and no time zone is asked.

import { fault, show, type TextFault } from './quantity.ts';

const ALLOWED = 'a date as year-month-day, such as 2026-03-01';
/** Days from 0000-03-01 to 1970-01-01, and of 400 years of the Gregorian calendar, which then begins again. */
const BEFORE_1970 = 719_468;
const ERA = 146_097;

/** Days in a mean month of the Gregorian calendar: 400 years have 146 097 days. */
const MEAN_MONTH: number = ERA / 4800;

/**
 * Days from 1970-01-01 to a date of the Gregorian calendar. Years begin in March, so that a leap day is the last of its year.
 *
 * @example The first day, and a leap day
 * ```ts
 * dayNumber(1970, 1, 1); // => 0
 * dayNumber(2000, 3, 1) - dayNumber(2000, 2, 28); // => 2
 * ```
 */
export function dayNumber(year: number, month: number, day: number): number {
  const from = month > 2 ? year : year - 1;
  const era = Math.floor(from / 400);
  const yearOfEra = from - era * 400;
  const dayOfYear = Math.floor((153 * ((month + 9) % 12) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * ERA + dayOfEra - BEFORE_1970;
}

/** Year, month and day of a day's number. */
export function dateOf(number: number): readonly [year: number, month: number, day: number] {
  const shifted = number + BEFORE_1970;
  const era = Math.floor(shifted / ERA);
  const dayOfEra = shifted - era * ERA;
  const leaps = Math.floor(dayOfEra / 1460) - Math.floor(dayOfEra / 36_524) + Math.floor(dayOfEra / 146_096);
  const yearOfEra = Math.floor((dayOfEra - leaps) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shiftedMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const day = dayOfYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1;
  const month = ((shiftedMonth + 2) % 12) + 1;
  return [yearOfEra + era * 400 + (month <= 2 ? 1 : 0), month, day];
}

/**
 * The day that a text names.
 *
 * @example A date, and none
 * ```ts
 * parseDate('1970-01-31'); // => 30
 * typeof parseDate('2026-02-30'); // => object
 * ```
 */
export function parseDate(text: string): number | TextFault {
  const match = /^\s*(\d{4})-(\d\d?)-(\d\d?)\s*$/.exec(text);
  const wrong = (what: string, mend: string): TextFault =>
    fault('date-wrong', 0, Math.max(1, text.length), what, ALLOWED, mend);
  if (match === null) return wrong(`${show(text)} is no date`, 'write year, month and day with hyphens between');
  const [year, month, day] = match.slice(1).map(Number) as [number, number, number];
  const number = dayNumber(year, month, day);
  const [, sameMonth, sameDay] = dateOf(number);
  if (month < 1 || month > 12 || sameMonth !== month || sameDay !== day || year < 1900)
    return wrong(`${show(text)} is not in the calendar`, 'look the day up again');
  return number;
}

/**
 * First and last day of `2026-03-01 to 2026-03-31`; one date is both.
 *
 * @example A month
 * ```ts
 * parsePeriod('2026-03-01 to 2026-03-31')[1] - parsePeriod('2026-03-01')[0]; // => 30
 * ```
 */
export function parsePeriod(text: string): readonly [first: number, last: number] | TextFault {
  const sign = /\s+to\s+|\s*(?:\.\.+|…|–)\s*/.exec(text);
  const first = parseDate(sign === null ? text : text.slice(0, sign.index));
  if (typeof first !== 'number') return first;
  if (sign === null) return [first, first];
  const at = sign.index + sign[0].length;
  const last = parseDate(text.slice(at));
  if (typeof last !== 'number') return { ...last, at };
  if (last >= first) return [first, last];
  return fault('date-wrong', at, text.length - at, 'it ends before it begins', ALLOWED, 'change the two about');
}

/**
 * A day as year-month-day (ISO 8601).
 *
 * @example The day before the first
 * ```ts
 * formatDate(-1); // => 1969-12-31
 * ```
 */
export function formatDate(number: number): string {
  const [year, month, day] = dateOf(Math.floor(number));
  return [String(year).padStart(4, '0'), String(month).padStart(2, '0'), String(day).padStart(2, '0')].join('-');
}

/** The same day of a later month, or that month's last; a part of a month as days of a mean one. */
export function addMonths(number: number, months: number): number {
  const whole = Math.floor(months);
  const [year, month, day] = dateOf(number);
  const index = year * 12 + month - 1 + whole;
  const [inYear, inMonth] = [Math.floor(index / 12), (index % 12) + 1];
  const length = dayNumber(inMonth === 12 ? inYear + 1 : inYear, (inMonth % 12) + 1, 1) - dayNumber(inYear, inMonth, 1);
  return dayNumber(inYear, inMonth, Math.min(day, length)) + Math.round((months - whole) * MEAN_MONTH);
}
