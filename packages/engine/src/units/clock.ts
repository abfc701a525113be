// Times of day as people write them, and profiles over the day.

import type { Profile } from './profile.ts';
import { fault, isFault, show, type TextFault } from './quantity.ts';

const DAY = 86_400;

/**
 * Seconds after midnight of `9:00`, `21:30` or `9:00:30`. Hours beyond 24 are the next day: `26:30`.
 *
 * @example Half past nine in the evening
 * ```ts
 * parseClock('21:30'); // => 77400
 * ```
 */
export function parseClock(text: string): number | TextFault {
  const match = /^\s*(\d{1,3}):([0-5]\d)(?::([0-5]\d))?\s*$/.exec(text);
  if (match !== null) return Number(match[1]) * 3600 + Number(match[2]) * 60 + Number(match[3] ?? 0);
  const meridiem = /^\s*(\d{1,2})(?::(\d\d))?\s*([ap])\.?m\.?\s*$/i.exec(text);
  const bare = /^\s*(\d{1,2})(?:\s*h|\.(\d\d))?\s*$/.exec(text);
  let mend = 'write hours and minutes, such as 9:00 or 21:30';
  if (meridiem !== null) {
    const hour = (Number(meridiem[1]) % 12) + (meridiem[3]!.toLowerCase() === 'p' ? 12 : 0);
    mend = `write ${hour}:${meridiem[2] ?? '00'}`;
  } else if (bare !== null) mend = `write ${bare[1]}:${bare[2] ?? '00'}`;
  return fault(
    'time-wrong',
    0,
    Math.max(1, text.length),
    `${show(text)} is no time of day`,
    'hours and minutes of the day, such as 9:00 or 21:30',
    mend,
  );
}

/**
 * Start and end of `9:00 to 17:00`; an end before the start is on the next day.
 *
 * @example Over midnight
 * ```ts
 * parseWindow('22:00 to 6:00')[1]; // => 108000
 * ```
 */
export function parseWindow(text: string): readonly [number, number] | TextFault {
  const sign = /\s+to\s+|\s*(?:\.\.+|…|–)\s*|\s+-\s+/.exec(text);
  if (sign === null) {
    return fault(
      'window-wrong',
      0,
      Math.max(1, text.length),
      `${show(text)} has no "to"`,
      'two times of day, such as 9:00 to 17:00',
      'write both times with "to" between them',
    );
  }
  const startsAt = parseClock(text.slice(0, sign.index));
  if (typeof startsAt !== 'number') return startsAt;
  const endAt = sign.index + sign[0].length;
  const ends = parseClock(text.slice(endAt));
  if (typeof ends !== 'number') return isFault(ends) ? { ...ends, at: endAt } : ends;
  if (ends === startsAt) {
    return fault(
      'window-wrong',
      0,
      text.length,
      `${show(text)} lasts no time`,
      'an end after the start',
      'give 0:00 to 24:00 for the whole day',
    );
  }
  return [startsAt, ends > startsAt ? ends : ends + DAY];
}

/**
 * A course that repeats every day, as points from 0 to 24 h: straight lines between the points, and the last point of the day
 * leads to the first of the next.
 */
export function dailyProfile(points: Profile): Profile {
  if (points.length <= 1) return [[0, points[0]?.[1] ?? 0]];
  const sorted = [...points].sort((a, b) => a[0] - b[0]);
  const [firstTime, firstValue] = sorted[0]!;
  const [lastTime, lastValue] = sorted.at(-1)!;
  const gap = firstTime + DAY - lastTime;
  const midnight = gap <= 0 ? firstValue : lastValue + ((firstValue - lastValue) * (DAY - lastTime)) / gap;
  const start = firstTime === 0 ? [] : [[0, midnight] as const];
  return [...start, ...sorted.filter(([time]) => time < DAY), [DAY, midnight]];
}

/** Windows within one day: one over midnight becomes an evening and a morning. In order of time. */
export function windowsOfDay(windows: readonly (readonly [number, number])[]): readonly (readonly [number, number])[] {
  return windows
    .flatMap(([start, end]) =>
      end <= DAY ? [[start, end] as const] : [[start, DAY] as const, [0, end - DAY] as const],
    )
    .sort((a, b) => a[0] - b[0]);
}
