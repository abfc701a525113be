// A care task in words: when it is due, and by what.

import { formatQuantity } from '../units/format.ts';
import type { CareRow } from './care.ts';

/** `2027-03-01 (2027-02-10 to 2027-04-02)` */
export function dueText({ p10, p50, p90, verdict }: CareRow): string {
  if (verdict === 'unknown') return 'unknown';
  if (p50 === undefined) return p10 === undefined ? 'not in 20 years' : `after ${p10}`;
  return p10 === p90 ? p50 : `${p50} (${p10 ?? 'now'} to ${p90 ?? 'later'})`;
}

/** What has used up most of its interval, and when it was last done; what is missing where that cannot be told. */
export function dueByText({ criteria, last, missing, verdict }: CareRow): string {
  if (verdict === 'unknown') return missing ?? '';
  const [first] = criteria;
  const since = last === undefined ? 'never done' : `last ${last}`;
  if (first === undefined) return since;
  const { by, used, of, share } = first;
  switch (by) {
    case 'printing':
      return `${hours(used)} of ${hours(of)} of printing; ${since}`;
    case 'calendar':
      return `${Math.round(used)} of ${Math.round(of)} days; ${since}`;
    case 'pressure':
      return `read ${formatQuantity('pressure', used)} of ${formatQuantity('pressure', of)}; ${since}`;
    case 'life':
      return `${formatQuantity('share', share)} of its life by what it caught; ${since}`;
  }
}

const hours = (seconds: number): string => `${Math.round(seconds / 3600)} h`;
