// Which parts no finding would miss, what they would save, and which of them can go together.

import { formatQuantity, type KindName, type Miss, type PareRow, savesText } from '@stillair/engine';
import { placeText } from '../remarks/finding-text.ts';
import { VerdictMark, verdictWord } from '../remarks/verdict-mark.tsx';
import type { AnswerProps } from './answer.ts';
import { AnswerTable } from './answer-table.tsx';
import { PartName } from './part-name.tsx';

export function PareView(props: AnswerProps<'pare'>) {
  const { result, current, onKeep } = props;
  const { parts, together, edits, unknown, currency } = result;
  const ran = parts.filter(({ fault, notRun }) => fault === undefined && notRun !== true);
  const idle = ran.filter(({ misses }) => misses.length === 0);
  const called = (id: string): string => parts.find((part) => part.id === id)?.says ?? id;
  const rows = [...ran].sort((a, b) => Math.min(a.misses.length, 1) - Math.min(b.misses.length, 1));
  return (
    <>
      <p>
        Of {ran.length} parts that were taken out, each alone, no finding misses {idle.length}. Protection is never
        taken out.
        {unknown > 0 ? ` ${unknown} findings cannot be told and can miss nothing.` : ''}
      </p>
      {together.length > 1 && (
        <p>
          These can go together: {together.map(called).join('; ')}.{' '}
          {current && (
            <button type="button" className="quiet" onClick={() => onKeep('without what nothing misses', edits)}>
              keep as an option
            </button>
          )}
        </p>
      )}
      {rows.length > 0 && (
        <AnswerTable label="parts that were taken out" heads={['Part', `Saves, ${currency}`, 'What misses it', 'Then']}>
          <tbody>
            {rows.map((row) => (
              <PareLine key={row.id} {...props} row={row} />
            ))}
          </tbody>
        </AnswerTable>
      )}
      {parts
        .filter(({ fault }) => fault !== undefined)
        .map(({ id, says, fault }) => (
          <p key={id} className="rest">
            Cannot be taken out alone: {says}: {fault}
          </p>
        ))}
    </>
  );
}

function PareLine({ row, ...props }: AnswerProps<'pare'> & { readonly row: PareRow }) {
  const { look, current, onKeep } = props;
  const { id, says, edits, misses } = row;
  const days = look.days.length;
  return (
    <tr>
      <th scope="row">
        <PartName {...props} says={says} name={id} />
      </th>
      <td>{savesText(row)}</td>
      <td>
        {misses.length === 0
          ? 'no finding'
          : misses.slice(0, 2).map((miss) => <MissLine key={miss.id} miss={miss} days={days} units={props.units} />)}
        {misses.length > 2 ? ` and ${misses.length - 2} more` : ''}
      </td>
      <td>
        {current && edits !== undefined && (
          <button type="button" className="quiet" onClick={() => onKeep(`without ${says}`, edits)}>
            keep as an option
          </button>
        )}
      </td>
    </tr>
  );
}

function MissLine({
  miss,
  days,
  units,
}: { readonly miss: Miss; readonly days: number } & Pick<AnswerProps<'pare'>, 'units'>) {
  const { title, part, day, unit, before, value, was, verdict } = miss;
  const told = (number: number | undefined): string =>
    number === undefined ? 'unknown' : formatQuantity(unit as KindName, number, units);
  return (
    <p className={`effect ${verdict}`}>
      <VerdictMark verdict={verdict} />
      {title}, {placeText({ part, day }, days)}: {told(before)}, then <strong>{told(value)}</strong>{' '}
      <span className="word">
        {was === verdict ? `${verdictWord[verdict]} the more` : `${verdictWord[was]}, then ${verdictWord[verdict]}`}
      </span>
    </p>
  );
}
