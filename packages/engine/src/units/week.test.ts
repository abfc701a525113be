import { describe, expect, it } from 'vitest';
import { dayNumber } from './calendar.ts';
import { isFault } from './quantity.ts';
import {
  formatDay,
  formatMoment,
  hoursOfWeek,
  momentAfter,
  parseDatedMoment,
  parseMoment,
  parseWeekdays,
  weekdayNumber,
} from './week.ts';

const HOUR = 3600;
const DAY = 86_400;
const monday = dayNumber(2026, 11, 30);

describe('moments of a week', () => {
  it('exact: days of the week, as ISO 8601 counts them (1970-01-01 was a Thursday)', () => {
    expect(weekdayNumber(0)).toBe(3);
    expect(weekdayNumber(monday)).toBe(0);
    expect(weekdayNumber(dayNumber(1969, 12, 28))).toBe(6);
  });

  it('exact: days of the week and dates with a time', () => {
    expect(parseMoment('Tue 18:00')).toEqual({ weekday: 1, clock: 18 * HOUR });
    expect(parseMoment('friday 7:30')).toEqual({ weekday: 4, clock: 7.5 * HOUR });
    expect(parseMoment('2026-12-01 18:00')).toEqual({ date: monday + 1, clock: 18 * HOUR });
    expect(parseDatedMoment('2026-11-30 7:00')).toEqual({ date: monday, clock: 7 * HOUR });
  });

  it.each(['18:00', 'Tu 18:00', 'Tue', '2026-02-29 9:00', '2026-13-01 9:00', 'Tue 25', 'Tue 9pm', ''])(
    'property: %j is told what is wrong with it',
    (text) => {
      const read = parseMoment(text);
      expect(isFault(read) && read.what.length > 5 && read.mend.length > 5).toBe(true);
    },
  );

  it('property: a plan begins on a date', () => {
    expect(isFault(parseDatedMoment('Mon 7:00'))).toBe(true);
  });

  it('exact: days of the week in a row, over Sunday too', () => {
    expect(parseWeekdays('Mon to Fri')).toEqual([0, 1, 2, 3, 4]);
    expect(parseWeekdays('Sat to Mon')).toEqual([5, 6, 0]);
    expect(parseWeekdays('Sun')).toEqual([6]);
    expect(parseWeekdays('daily')).toHaveLength(7);
    expect(isFault(parseWeekdays('weekdays') as object)).toBe(true);
  });

  it('exact: the next such moment, a week later when it is over', () => {
    const from = 7 * HOUR;
    expect(momentAfter({ weekday: 0, clock: 9 * HOUR }, monday, from)).toBe(9 * HOUR);
    expect(momentAfter({ weekday: 0, clock: 6 * HOUR }, monday, from)).toBe(7 * DAY + 6 * HOUR);
    expect(momentAfter({ weekday: 6, clock: 0 }, monday, from)).toBe(6 * DAY);
    expect(momentAfter({ date: monday - 1, clock: 20 * HOUR }, monday, from)).toBe(-4 * HOUR);
  });

  it('exact: hours of the week are cut at both ends and joined where they touch', () => {
    const hours = [
      { days: [0, 1], windows: [[8 * HOUR, 12 * HOUR] as const, [12 * HOUR, 13 * HOUR] as const] },
      { days: [0], windows: [[22 * HOUR, 30 * HOUR] as const] },
    ];
    expect(hoursOfWeek(hours, monday, 9 * HOUR, DAY + 10 * HOUR)).toEqual([
      [9 * HOUR, 13 * HOUR],
      [22 * HOUR, 30 * HOUR],
      [DAY + 8 * HOUR, DAY + 10 * HOUR],
    ]);
  });

  it('exact: moments and days are written as they are read', () => {
    expect(formatMoment(monday, DAY + 9.5 * HOUR)).toBe('Tue 9:30');
    expect(formatMoment(monday, -4 * HOUR)).toBe('Sun 20:00');
    expect(formatDay(monday + 1)).toBe('Tue 1 Dec');
  });
});
