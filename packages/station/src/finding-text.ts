// Findings in words and numbers, the same wherever a command shows them.

import {
  type BriefFinding,
  formatBand,
  formatClock,
  formatQuantity,
  type KindName,
  type Limit,
  STANDING,
  type UnitSystem,
} from '@stillair/engine';

/** `52 °C`, or that it is not known. */
export function valueText(finding: BriefFinding, units: UnitSystem): string {
  return finding.value === undefined ? 'unknown' : quantity(finding.unit, finding.value, units);
}

/** From the 10th to the 90th percentile, empty without a band or where nothing moves the value. */
export function bandText({ p10, p90, unit }: BriefFinding, units: UnitSystem): string {
  return p10 === undefined || p90 === undefined || p10 === p90 ? '' : bandOf(unit, p10, p90, units);
}

/** `at most 45 °C`, empty without a limit. */
export function limitText({ limit, unit }: BriefFinding, units: UnitSystem): string {
  if (limit === undefined) return '';
  return `${limit.kind === 'at-most' ? 'at most' : 'at least'} ${quantity(unit, limit.value, units)}`;
}

/** Value, band and limit as one phrase, the band in the unit of the value: `52 °C at 14:50 (47 to 58), at most 45 °C`. */
export function numbersText(finding: BriefFinding, units: UnitSystem): string {
  if (finding.value === undefined) return finding.missing ?? 'an input is missing';
  const value = valueText(finding, units);
  const band = withoutUnit(bandText(finding, units), unitOf(value));
  const at = finding.at === undefined ? '' : ` at ${formatClock(finding.at)}`;
  const limit = limitText(finding, units);
  return `${value}${at}${band === '' ? '' : ` (${band})`}${limit === '' ? '' : `, ${limit}`}`;
}

/** The limit beside a value that shows its unit: `≤ 45`. */
export function shortLimit(limit: Limit, unit: string, units: UnitSystem, beside: string): string {
  return `${limit.kind === 'at-most' ? '≤' : '≥'} ${withoutUnit(quantity(unit, limit.value, units), unitOf(beside))}`;
}

/** The unit of a value as it was written. */
export function unitOf(text: string): string {
  return text.replace(/^[-\d.e]+ ?/, '');
}

/** `12 to 40` where the unit stands nearby; text in another unit is left whole. */
export function withoutUnit(text: string, unit: string): string {
  return unit !== '' && text.endsWith(` ${unit}`) ? text.slice(0, -unit.length - 1) : text;
}

/** A number that a trade handed over with the name of its unit kind. */
export function quantity(kind: string, value: number, units: UnitSystem): string {
  return formatQuantity(kind as KindName, value, units);
}

/** `left.bracket`, with its day when the file has more than one. */
export function aboutText({ part, day }: Pick<BriefFinding, 'part' | 'day'>, days: number): string {
  return days > 1 && day !== STANDING ? `${part}, ${day}` : part;
}

export function bandOf(kind: string, low: number, high: number, units: UnitSystem): string {
  return formatBand(kind as KindName, low, high, units);
}
