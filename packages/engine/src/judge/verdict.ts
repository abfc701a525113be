// A verdict from a value, its band and its limit.

import type { Limit } from '../trades/measure.ts';
import { type Band, keeps } from './bands.ts';
import type { Verdict } from './finding.ts';

/**
 * `holds` when nominal value and band lie inside the limit, `fails` when all lie beyond it, `tight` between.
 * Without a band the nominal value decides alone. No limit: `told`; no value: `unknown`.
 */
export function verdictOf(value: number | undefined, band: Band | undefined, limit: Limit | undefined): Verdict {
  if (value === undefined || Number.isNaN(value)) return 'unknown';
  if (limit === undefined) return 'told';
  const inside = [value, ...(band === undefined ? [] : [band.p10, band.p90])].map((end) => keeps(limit, end));
  if (inside.every(Boolean)) return 'holds';
  return inside.some(Boolean) ? 'tight' : 'fails';
}

const RANKS: Readonly<Record<Verdict, number>> = { told: 0, holds: 0, unknown: 1, tight: 2, fails: 3 };

/** Order of verdicts from best to worst. */
export function rankOf(verdict: Verdict): number {
  return RANKS[verdict];
}
