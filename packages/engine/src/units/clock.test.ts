import { describe, expect, it } from 'vitest';
import { dailyProfile, parseClock, parseWindow, windowsOfDay } from './clock.ts';
import { parseMoney } from './money.ts';

describe('times of day', () => {
  it('exact: hours and minutes, seconds, and hours of the next day', () => {
    expect(parseClock('9:00')).toBe(32_400);
    expect(parseClock('09:00')).toBe(32_400);
    expect(parseClock('9:00:30')).toBe(32_430);
    expect(parseClock('26:30')).toBe(95_400);
  });

  it.each([
    ['9', 'write 9:00'],
    ['9 pm', 'write 21:00'],
    ['12:30 am', 'write 0:30'],
    ['9.30', 'write 9:30'],
    ['9:75', 'write hours and minutes, such as 9:00 or 21:30'],
    ['noon', 'write hours and minutes, such as 9:00 or 21:30'],
  ])('exact: %j is refused, with advice', (text, mend) => {
    expect(parseClock(text)).toMatchObject({ code: 'time-wrong', mend });
  });

  it('exact: windows, over midnight too', () => {
    expect(parseWindow('9:00 to 17:00')).toEqual([32_400, 61_200]);
    expect(parseWindow('22:00 to 6:00')).toEqual([79_200, 108_000]);
    expect(parseWindow('9:00')).toMatchObject({ code: 'window-wrong' });
    expect(parseWindow('9:00 to 9:00')).toMatchObject({ code: 'window-wrong' });
    expect(parseWindow('9:00 to 5 pm')).toMatchObject({ code: 'time-wrong', at: 8 });
  });

  it('exact: a daily profile goes on over midnight in a straight line', () => {
    const points = [
      [6 * 3600, 290],
      [18 * 3600, 296],
    ] as const;
    expect(dailyProfile(points)).toEqual([[0, 293], ...points, [86_400, 293]]);
    expect(dailyProfile([[0, 290], points[1]]).at(-1)).toEqual([86_400, 290]);
    expect(dailyProfile([...points, [86_400, 291]]).at(-1)).toEqual([86_400, 291]);
    expect(dailyProfile([[3600, 290]])).toEqual([[0, 290]]);
  });
});

describe('windows of a day', () => {
  it('exact: a window over midnight is an evening and a morning', () => {
    expect(windowsOfDay([[79_200, 108_000]])).toEqual([
      [0, 21_600],
      [79_200, 86_400],
    ]);
    expect(windowsOfDay([[32_400, 61_200]])).toEqual([[32_400, 61_200]]);
  });
});

describe('money', () => {
  it('exact: amounts, ranges and what they are paid for', () => {
    expect(parseMoney('12 EUR')).toEqual({ low: 12, high: 12, currency: 'EUR', per: 'piece' });
    expect(parseMoney('€ 12')).toMatchObject({ low: 12, currency: 'EUR' });
    expect(parseMoney('30 to 45 EUR/m2')).toEqual({ low: 30, high: 45, currency: 'EUR', per: 'm2' });
    expect(parseMoney('0.30 USD/kWh')).toMatchObject({ low: 0.3, currency: 'USD', per: 'kWh' });
    expect(parseMoney('12')).toMatchObject({ code: 'money-wrong' });
    expect(parseMoney('-3 EUR')).toMatchObject({ code: 'money-wrong' });
    expect(parseMoney('1,50 EUR')).toMatchObject({ code: 'decimal-comma' });
  });
});
