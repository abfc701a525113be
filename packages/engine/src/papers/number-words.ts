// Findings as words on paper: value, band, limit, in the units of whoever reads it.

import type { Finding } from '../judge/finding.ts';
import { formatBand, formatQuantity, type UnitSystem } from '../units/format.ts';
import type { KindName } from '../units/unit-table.ts';

type Numbers = Pick<Finding, 'unit' | 'value' | 'p10' | 'p90' | 'missing'>;

export const amount = (unit: string, value: number, units: UnitSystem): string =>
  formatQuantity(unit as KindName, value, units);

export function valueWords({ unit, value, missing }: Numbers, units: UnitSystem): string {
  return value === undefined ? `unknown: ${missing ?? 'an input is missing'}` : amount(unit, value, units);
}

/** From the 10th to the 90th percentile; empty where nothing moves the value. */
export function bandWords({ unit, p10, p90 }: Numbers, units: UnitSystem): string {
  return p10 === undefined || p90 === undefined || p10 === p90 ? '' : formatBand(unit as KindName, p10, p90, units);
}

export function limitWords({ limit, unit }: Pick<Finding, 'limit' | 'unit'>, units: UnitSystem): string {
  if (limit === undefined) return '';
  return `${limit.kind === 'at-most' ? 'at most' : 'at least'} ${amount(unit, limit.value, units)}`;
}

/** Of one question about one part on several days: the worst verdict, and of these the value nearest its limit. */
export function worstOf(findings: readonly Finding[]): Finding | undefined {
  const rank = { fails: 4, tight: 3, unknown: 2, holds: 1, told: 0 };
  return [...findings].sort(
    (a, b) => rank[b.verdict] - rank[a.verdict] || (b.better === 'higher' ? -1 : 1) * ((b.value ?? 0) - (a.value ?? 0)),
  )[0];
}
