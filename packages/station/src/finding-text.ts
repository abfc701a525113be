// Findings in words and numbers, the same wherever a command shows them.

import {
  type Finding,
  formatBand,
  formatClock,
  formatQuantity,
  type KindName,
  type UnitSystem,
} from '@stillair/engine';

/** `52 °C`, or that it is not known. */
export function valueText(finding: Finding, units: UnitSystem): string {
  return finding.value === undefined ? 'unknown' : quantity(finding.unit, finding.value, units);
}

/** From the 10th to the 90th percentile, empty without a band. */
export function bandText({ p10, p90, unit }: Finding, units: UnitSystem): string {
  return p10 === undefined || p90 === undefined ? '' : formatBand(unit as KindName, p10, p90, units);
}

/** `at most 45 °C`, empty without a limit. */
export function limitText({ limit, unit }: Finding, units: UnitSystem): string {
  if (limit === undefined) return '';
  return `${limit.kind === 'at-most' ? 'at most' : 'at least'} ${quantity(unit, limit.value, units)}`;
}

/** Value, band and limit as one phrase: `52 °C at 14:50 (47 to 58 °C), at most 45 °C`. */
export function numbersText(finding: Finding, units: UnitSystem): string {
  if (finding.value === undefined) return finding.missing ?? 'an input is missing';
  const band = bandText(finding, units);
  const at = finding.at === undefined ? '' : ` at ${formatClock(finding.at)}`;
  const limit = limitText(finding, units);
  return `${valueText(finding, units)}${at}${band === '' ? '' : ` (${band})`}${limit === '' ? '' : `, ${limit}`}`;
}

/** A number that a trade handed over with the name of its unit kind. */
export function quantity(kind: string, value: number, units: UnitSystem): string {
  return formatQuantity(kind as KindName, value, units);
}

/** `left.bracket`, with its day when the file has more than one. */
export function aboutText({ part, day }: Finding, days: number): string {
  return days > 1 ? `${part}, ${day}` : part;
}
