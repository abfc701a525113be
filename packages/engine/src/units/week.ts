// Moments of a week as people write them: a day of the week or a date, and a time. No time zones: the clock on the wall is meant.

import { dateOf, parseDate } from './calendar.ts';
import { parseClock } from './clock.ts';
import { fault, isFault, show, type TextFault } from './quantity.ts';

const DAY = 86_400;

export const weekdays = ['Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat', 'Sun'] as const;
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

/** A moment as it was written: on a date, or on a day of the week. */
export interface Moment {
  /** Days since 1970-01-01. */
  readonly date?: number;
  /** 0 is Monday. */
  readonly weekday?: number;
  /** s after midnight. */
  readonly clock: number;
}

/** Day of the week of a day since 1970-01-01, which was a Thursday; 0 is Monday. */
export function weekdayNumber(number: number): number {
  return (((number + 3) % 7) + 7) % 7;
}

const FORM = 'a day of the week or a date, and a time: Tue 18:00, or 2026-12-01 18:00';

/**
 * `Tue 18:00` or `2026-12-01 18:00`.
 *
 * @example Both forms
 * ```ts
 * parseMoment('Tue 18:00').weekday; // => 1
 * parseMoment('2026-12-01 18:00').date; // => 20788
 * ```
 */
export function parseMoment(text: string): Moment | TextFault {
  const match = /^\s*(\S+)\s+(\S.*?)\s*$/.exec(text);
  if (match === null)
    return fault(
      'moment-wrong',
      0,
      Math.max(1, text.length),
      `${show(text)} does not say a day and a time`,
      FORM,
      'write both, with a space between',
    );
  const [, first = '', second = ''] = match;
  const clock = parseClock(second);
  if (typeof clock !== 'number') return { ...clock, at: text.indexOf(second), allowed: FORM };
  const date = parseDay(first);
  if (isFault(date)) return { ...date, at: text.indexOf(first) };
  return { ...date, clock };
}

/** A date with its time, and no day of the week: where a plan begins. */
export function parseDatedMoment(text: string): Moment | TextFault {
  const moment = parseMoment(text);
  if (isFault(moment) || moment.date !== undefined) return moment;
  return fault(
    'moment-wrong',
    0,
    Math.max(1, text.length),
    `${show(text)} names no date`,
    'a date and a time: 2026-11-30 7:00',
    'write year, month and day',
  );
}

function parseDay(text: string): Pick<Moment, 'date' | 'weekday'> | TextFault {
  if (/^\d{4}-/.test(text)) {
    const date = parseDate(text);
    return typeof date === 'number' ? { date } : { ...date, allowed: FORM };
  }
  const weekday = weekdayOf(text);
  if (weekday >= 0) return { weekday };
  return fault(
    'moment-wrong',
    0,
    Math.max(1, text.length),
    `${show(text)} is neither a day of the week nor a date`,
    FORM,
    `write one of ${weekdays.join(', ')}, or a date such as 2026-12-01`,
  );
}

/** Monday as 0, from its first three letters or more; -1 for anything else. */
function weekdayOf(text: string): number {
  const low = text.toLowerCase();
  const whole = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];
  return low.length < 3 ? -1 : whole.findIndex((name) => name.startsWith(low));
}

/**
 * `Tue 9:00 to Thu 18:00`.
 *
 * @example From one day to another
 * ```ts
 * parseMoments('Tue 9:00 to Thu 18:00').to.weekday; // => 3
 * ```
 */
export function parseMoments(text: string): { readonly from: Moment; readonly to: Moment } | TextFault {
  const match = /^(.*\S)\s+to\s+(\S.*)$/.exec(text);
  if (match === null)
    return fault(
      'moments-wrong',
      0,
      Math.max(1, text.length),
      `${show(text)} does not say from when to when`,
      'two moments: Tue 9:00 to Thu 18:00',
      'write both, with "to" between them',
    );
  const [, first = '', second = ''] = match;
  const from = parseMoment(first);
  if (isFault(from)) return from;
  const to = parseMoment(second);
  return isFault(to) ? { ...to, at: (to.at ?? 0) + text.length - second.length } : { from, to };
}

/**
 * Days of the week of `Mon to Fri`, `Sat` or `daily`.
 *
 * @example Over the end of the week
 * ```ts
 * parseWeekdays('Fri to Mon').join(' '); // => 4 5 6 0
 * ```
 */
export function parseWeekdays(text: string): readonly number[] | TextFault {
  if (/^\s*daily\s*$/i.test(text)) return [0, 1, 2, 3, 4, 5, 6];
  const [first, last] = text.split(/\s+to\s+/).map((each) => weekdayOf(each.trim()));
  if (first === undefined || first < 0 || (last !== undefined && last < 0))
    return fault(
      'weekday-wrong',
      0,
      Math.max(1, text.length),
      `${show(text)} names no days of the week`,
      'Mon, Mon to Fri, or daily',
      `write ${weekdays.join(', ')}, with "to" between the first and the last`,
    );
  const length = last === undefined ? 1 : ((last - first + 7) % 7) + 1;
  return Array.from({ length }, (_, at) => (first + at) % 7);
}

/** The first moment of the kind at or after `from`, in s after midnight of the day `origin`. */
export function momentAfter({ date, weekday, clock }: Moment, origin: number, from: number): number {
  if (date !== undefined) return (date - origin) * DAY + clock;
  const ahead = (weekday! - weekdayNumber(origin) + 7) % 7;
  const first = ahead * DAY + clock;
  return first >= from ? first : first + 7 * DAY;
}

/** Hours that come back on days of the week, as stretches between two times, joined where they touch. */
export function hoursOfWeek(
  hours: readonly { readonly days: readonly number[]; readonly windows: readonly (readonly [number, number])[] }[],
  origin: number,
  from: number,
  until: number,
): readonly (readonly [number, number])[] {
  const found: [number, number][] = [];
  for (let day = Math.floor(from / DAY) - 1; day * DAY < until; day += 1) {
    const weekday = weekdayNumber(origin + day);
    for (const { days, windows } of hours)
      if (days.includes(weekday))
        for (const [start, end] of windows) {
          const [a, b] = [Math.max(from, day * DAY + start), Math.min(until, day * DAY + end)];
          if (b > a) found.push([a, b]);
        }
  }
  found.sort((a, b) => a[0] - b[0]);
  const joined: [number, number][] = [];
  for (const [start, end] of found) {
    const last = joined.at(-1);
    if (last !== undefined && start <= last[1]) last[1] = Math.max(last[1], end);
    else joined.push([start, end]);
  }
  return joined;
}

/**
 * `Tue 9:30`: a moment in the week after midnight of a day.
 *
 * @example Monday, 2026-11-30
 * ```ts
 * formatMoment(20787, 86400 + 34200); // => Tue 9:30
 * ```
 */
export function formatMoment(origin: number, seconds: number): string {
  const { day, clock } = dayAndClock(origin, seconds);
  return `${weekdays[weekdayNumber(day)]} ${clock}`;
}

/**
 * The same with its date, where a day of the week may be one of two: `Tue 1 Dec 9:30`.
 *
 * @example Seven days after the start
 * ```ts
 * formatDatedMoment(20787, 7 * 86400 + 34200); // => Mon 7 Dec 9:30
 * ```
 */
export function formatDatedMoment(origin: number, seconds: number): string {
  const { day, clock } = dayAndClock(origin, seconds);
  return `${formatDay(day)} ${clock}`;
}

function dayAndClock(origin: number, seconds: number): { readonly day: number; readonly clock: string } {
  const minutes = Math.round(seconds / 60);
  const day = Math.floor(minutes / 1440);
  const left = minutes - day * 1440;
  return { day: origin + day, clock: `${Math.floor(left / 60)}:${String(left % 60).padStart(2, '0')}` };
}

/** `Tue 1 Dec` */
export function formatDay(number: number): string {
  const [, month, day] = dateOf(number);
  return `${weekdays[weekdayNumber(number)]} ${day} ${months[month - 1]}`;
}
