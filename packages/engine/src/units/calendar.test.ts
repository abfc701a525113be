import { describe, expect, it } from 'vitest';
import { addMonths, dateOf, dayNumber, formatDate, parseDate, parsePeriod } from './calendar.ts';

const day = (text: string): number => parseDate(text) as number;

describe('calendar', () => {
  it('cross: every day of four centuries is the one that the language’s own calendar names', () => {
    for (let number = day('1901-01-01'); number < day('2301-01-01'); number += 1)
      if (formatDate(number) !== new Date(number * 86_400_000).toISOString().slice(0, 10))
        expect(formatDate(number)).toBe(number);
  });

  it('exact: 2000-01-01 is 10 957 days after 1970-01-01 (modified Julian days 51 544 and 40 587)', () => {
    expect(dayNumber(2000, 1, 1)).toBe(51_544 - 40_587);
    expect(dateOf(dayNumber(1600, 2, 29))).toEqual([1600, 2, 29]);
  });

  it('exact: months end where they end', () => {
    const later = (text: string, months: number): string => formatDate(addMonths(day(text), months));
    expect(later('2026-08-31', 6)).toBe('2027-02-28');
    expect(later('2027-08-31', 6)).toBe('2028-02-29');
    expect(later('2026-11-28', 12)).toBe('2027-11-28');
    expect(later('2026-12-31', 120)).toBe('2036-12-31');
    expect(later('2026-01-01', 0.5)).toBe('2026-01-16');
  });

  it.each([
    ['2026-02-29', 'is not in the calendar'],
    ['2026-13-01', 'is not in the calendar'],
    ['0026-01-01', 'is not in the calendar'],
    ['28.11.2026', 'is no date'],
    ['', 'is no date'],
  ])('refuses %s', (text, what) => {
    expect(parseDate(text)).toMatchObject({ code: 'date-wrong', what: expect.stringContaining(what) as string });
  });

  it('reads a time from one day to another, and says which half is wrong', () => {
    expect(parsePeriod('2026-03-01 to 2026-03-31')).toEqual([day('2026-03-01'), day('2026-03-31')]);
    expect(parsePeriod('2026-03-01')).toEqual([day('2026-03-01'), day('2026-03-01')]);
    expect(parsePeriod('2026-03-01 to 2026-02-01')).toMatchObject({ at: 14, what: 'it ends before it begins' });
    expect(parsePeriod('2026-03-01 to March')).toMatchObject({ at: 14 });
  });
});
