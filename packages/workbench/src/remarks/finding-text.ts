// Findings in words, the same wherever the page shows them.

import {
  type BriefFinding,
  formatBand,
  formatClock,
  formatQuantity,
  type KindName,
  STANDING,
  type UnitSystem,
} from '@stillair/engine';

export function valueText({ value, unit }: Pick<BriefFinding, 'value' | 'unit'>, units: UnitSystem): string {
  return value === undefined ? 'unknown' : formatQuantity(unit as KindName, value, units);
}

export function bandText({ p10, p90, unit }: Pick<BriefFinding, 'p10' | 'p90' | 'unit'>, units: UnitSystem): string {
  return p10 === undefined || p90 === undefined || p10 === p90 ? '' : formatBand(unit as KindName, p10, p90, units);
}

export function limitText({ limit, unit }: Pick<BriefFinding, 'limit' | 'unit'>, units: UnitSystem): string {
  if (limit === undefined) return '';
  return `${limit.kind === 'at-most' ? 'at most' : 'at least'} ${formatQuantity(unit as KindName, limit.value, units)}`;
}

/** Part, day where there are several, and moment. */
export function placeText({ part, day, at }: Pick<BriefFinding, 'part' | 'day' | 'at'>, days: number): string {
  const pieces = [
    part.replaceAll('.', ', '),
    ...(days > 1 && day !== STANDING ? [day] : []),
    ...(at === undefined ? [] : [formatClock(at)]),
  ];
  return pieces.join(' · ');
}
