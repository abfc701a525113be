// What the studies of a log tell, in words: values of unknowns, sizes of differences, and what was wrong with the log.

import type { LogKind, LogRemark } from '../../logs/log.ts';
import { formatDuration, formatNumber, formatQuantity, type UnitSystem } from '../../units/format.ts';
import type { KindName } from '../../units/unit-table.ts';

/** A value of an unknown of a fit. */
export function unknownText(unit: string, value: number, units: UnitSystem): string {
  if (unit === 'number') return formatNumber(value, 2);
  return unit === 'duration' ? formatDuration(value) : formatQuantity(unit as KindName, value, units);
}

/** A difference of a column's kind. */
export function sizeText({ kind }: { readonly kind: LogKind }, value: number, units: UnitSystem): string {
  if (kind === 'temperature') return formatQuantity('temperature-difference', value, units);
  if (kind === 'power') return formatQuantity('power', value, units);
  if (kind === 'humidity') return formatQuantity('share', value, units);
  return `factor ${formatNumber(Math.exp(value), 2)}`;
}

/** What was wrong, how often and from which line on, and what was done about it. */
export function remarkText({ what, done, line, count, column }: LogRemark): string {
  const which = [
    ...(count === undefined || count < 2 ? [] : [`${count} times`]),
    ...(line === undefined ? [] : [`line ${line}${count !== undefined && count > 1 ? ' first' : ''}`]),
  ].join(', ');
  return `${column === undefined ? '' : `${column}: `}${what}${which === '' ? '' : ` (${which})`}; ${done}.`;
}
