// Every single fault: what it comes to, and what of the file acts. What nothing catches stands first.

import { catchText, type Effect, type FaultRow, STANDING } from '@stillair/engine';
import { useState } from 'preact/compat';
import type { AnswerProps } from './answer.ts';
import { AnswerTable } from './answer-table.tsx';
import { EffectLine } from './effect-line.tsx';
import { PartName } from './part-name.tsx';

const groups = [
  { caught: 'nothing', head: 'Nothing in the file catches these' },
  { caught: 'late', head: 'Caught too late' },
  { caught: 'in time', head: 'Caught in time' },
] as const;

export function FaultsView(props: AnswerProps<'faults'>) {
  const { faults, protection } = props.result;
  const ran = faults.filter(({ notRun, fault }) => notRun !== true && fault === undefined);
  const acting = ran.filter(({ effects }) => effects.length > 0);
  const idle = ran.filter(({ effects }) => effects.length === 0);
  const open = acting.filter(({ caught }) => caught === 'nothing');
  return (
    <>
      <p>
        Of {faults.length} single faults {ran.length === faults.length ? '' : `${ran.length} were run; `}
        {acting.length} make a finding worse. Nothing in the file catches {open.length} of these.
        {protection === undefined
          ? ' The file does not say what protects the cabinet (protection:), so that nothing is counted as catching.'
          : ''}
      </p>
      {acting.length > 0 && (
        <AnswerTable
          label="faults, what nothing catches first"
          heads={['Class', 'Fault', 'What it comes to', 'What acts', 'Then']}
        >
          {groups.map(({ caught, head }) => (
            <Group key={caught} {...props} head={head} rows={acting.filter((row) => row.caught === caught)} />
          ))}
        </AnswerTable>
      )}
      {idle.length > 0 && <p className="rest">No finding is worse for: {idle.map(({ says }) => says).join('; ')}.</p>}
      {faults
        .filter(({ fault }) => fault !== undefined)
        .map(({ id, says, fault }) => (
          <p key={id} className="rest">
            Could not be run: {says}: {fault}
          </p>
        ))}
    </>
  );
}

function Group({
  head,
  rows,
  ...props
}: AnswerProps<'faults'> & { readonly head: string; readonly rows: readonly FaultRow[] }) {
  if (rows.length === 0) return null;
  return (
    <tbody>
      <tr className="group">
        <th colSpan={5} scope="rowgroup">
          {head} ({rows.length})
        </th>
      </tr>
      {rows.map((row) => (
        <FaultLine key={row.id} {...props} row={row} />
      ))}
    </tbody>
  );
}

function FaultLine({ row, ...props }: AnswerProps<'faults'> & { readonly row: FaultRow }) {
  const { units, current, onKeep } = props;
  const [all, setAll] = useState(false);
  const { severity, says, part, edits, effects, catches } = row;
  const [worst] = effects as [Effect, ...Effect[]];
  const day = worst.day === STANDING ? undefined : worst.day;
  return (
    <tr>
      <td>{severity}</td>
      <th scope="row">
        <PartName {...props} says={says} name={part ?? worst.part} day={day} time={worst.passed ?? worst.worst} />
      </th>
      <td>
        {(all ? effects : [worst]).map((effect) => (
          <EffectLine key={effect.id} effect={effect} units={units} days={props.result.days.length} />
        ))}
        {effects.length > 1 && (
          <button type="button" className="quiet" aria-expanded={all} onClick={() => setAll(!all)}>
            {all ? 'only the worst' : `${effects.length - 1} more`}
          </button>
        )}
      </td>
      <td>{catches.map(catchText).join('; ')}</td>
      <td>
        {current && (
          <button type="button" className="quiet" onClick={() => onKeep(says, edits)}>
            keep as an option
          </button>
        )}
      </td>
    </tr>
  );
}
