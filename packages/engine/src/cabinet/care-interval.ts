// Intervals of care as people write them: `400 h or 6 months`, `3 to 6 months`, `60 Pa`, `never`.

import { fault, isFault, parseQuantity, show, type TextFault } from '../units/quantity.ts';
import type { Assumption } from './assumption.ts';
import type { CareInterval } from './care.ts';

export const INTERVAL_FORM =
  'hours of printing, days, weeks, months or years, or a pressure, with "or" between: 400 h or 6 months; or never';

const OWN = 'the cabinet file';
const HOUR = 3600;

const UNITS: Readonly<Record<string, readonly [key: 'printing' | 'months' | 'days' | 'pressure', factor: number]>> = {
  h: ['printing', HOUR],
  hour: ['printing', HOUR],
  day: ['days', 1],
  week: ['days', 7],
  month: ['months', 1],
  year: ['months', 12],
  Pa: ['pressure', 1],
};

/** Hundred years, and far more printing than any machine does. */
const LONGEST = { printing: 3.6e9, months: 1200, days: 36_525, pressure: 5000 } as const;

/**
 * Reads an interval; whichever of its parts comes first counts.
 *
 * @example Two of them, and one with its spread
 * ```ts
 * parseCareInterval('400 h or 6 months').printing.value; // => 1440000
 * parseCareInterval('3 to 6 months').months.high; // => 6
 * ```
 */
export function parseCareInterval(text: string): CareInterval | TextFault {
  if (text.trim() === 'never') return {};
  const interval: { -readonly [K in keyof CareInterval]: CareInterval[K] } = {};
  let at = 0;
  for (const piece of text.split(/\s+or\s+/)) {
    const start = text.indexOf(piece, at);
    at = start + piece.length;
    const wrong = (what: string): TextFault =>
      fault('interval-wrong', start, Math.max(1, piece.length), what, INTERVAL_FORM, 'write a number and one of these');
    const match = /^\s*(.*?)\s*([A-Za-z]+)\s*$/.exec(piece);
    const name = match?.[2] ?? '';
    const unit = UNITS[name] ?? UNITS[name.replace(/s$/, '')];
    if (match === null || unit === undefined) return wrong(`${show(piece)} is no interval`);
    const number = parseQuantity('number', match[1]!);
    if (isFault(number)) return { ...number, at: start + number.at, allowed: INTERVAL_FORM };
    const [key, factor] = unit;
    const { value, low = value, high = value } = number;
    if (!(low > 0)) return wrong(`${show(piece)} is not above 0`);
    if (high * factor > LONGEST[key]) return wrong(`${show(piece)} is longer than any cabinet lasts`);
    if (interval[key] !== undefined) return wrong(`${show(piece)} says the same kind of interval a second time`);
    if (key === 'pressure') interval.pressure = value;
    else interval[key] = spread(value * factor, low * factor, high * factor);
  }
  return interval;
}

function spread(value: number, low: number, high: number): Assumption {
  return { value, low, high, shape: 'log-normal', why: OWN };
}
