// What two questions about a log have in common: what was wrong with it, sizes of differences, and its picture.

import {
  formatDuration,
  formatNumber,
  formatQuantity,
  type KindName,
  type LogFault,
  type LogKind,
  type LogRemark,
  type UnitSystem,
} from '@stillair/engine';
import { useMemo } from 'preact/compat';

export function LogFaultView({ fault, mend }: LogFault) {
  return (
    <p role="alert">
      Nothing came of it: {inPage(fault)}. To mend: {inPage(mend)}.
    </p>
  );
}

export function LogRemarks({ remarks }: { readonly remarks: readonly LogRemark[] }) {
  if (remarks.length === 0) return null;
  return (
    <>
      <h3>Of the log</h3>
      <ul>
        {remarks.map((remark) => (
          <li key={`${remark.code} ${remark.column ?? ''} ${remark.line ?? ''}`}>{inPage(remarkText(remark))}</li>
        ))}
      </ul>
    </>
  );
}

function remarkText({ what, done, line, count, column }: LogRemark): string {
  const which = [
    ...(count === undefined || count < 2 ? [] : [`${count} times`]),
    ...(line === undefined ? [] : [`line ${line}${count !== undefined && count > 1 ? ' first' : ''}`]),
  ].join(', ');
  return `${column === undefined ? '' : `${column}: `}${what}${which === '' ? '' : ` (${which})`}; ${done}.`;
}

/** Where the words of the command line stand on the page. */
function inPage(text: string): string {
  return text
    .replaceAll(/--column "([^"]*)"/g, '$1, under “columns and clock”')
    .replaceAll('--shift', 'a shift, under “columns and clock”,');
}

export function LogPicture({ picture, alt }: { readonly picture: string | undefined; readonly alt: string }) {
  const address = useMemo(
    () => (picture === undefined ? undefined : `data:image/svg+xml;charset=utf-8,${encodeURIComponent(picture)}`),
    [picture],
  );
  if (address === undefined) return null;
  return (
    <figure className="paper">
      <img src={address} alt={alt} />
    </figure>
  );
}

export function numberText(unit: string, value: number, units: UnitSystem): string {
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
