// What a job file comes to, and the way from there into a day of the cabinet file.

import { formatDuration, formatQuantity, type UnitSystem } from '@stillair/engine';
import { useState } from 'preact/compat';
import type { JobRead } from '../engine/protocol.ts';
import { VerdictMark, verdictWord } from '../remarks/verdict-mark.tsx';
import type { AnswerProps } from './answer.ts';
import { Choice } from './controls.tsx';
import { UnreadableView } from './unreadable-view.tsx';

export function JobView({ result, ...props }: AnswerProps<'job'>) {
  if ('unreadable' in result) return <UnreadableView {...result} />;
  return <Read {...props} read={result} />;
}

type ReadProps = Omit<AnswerProps<'job'>, 'result'> & { readonly read: JobRead };

function Read({ read, ...props }: ReadProps) {
  const { units } = props;
  const { file, job, report } = read;
  return (
    <>
      <p>
        {file}: {job.moves} moves in {job.lines} lines.
      </p>
      <table className="answer">
        <tbody>
          {rowsOf(read, units).map(([what, value]) => (
            <tr key={what}>
              <th scope="row">{what}</th>
              <td>{value}</td>
            </tr>
          ))}
          {report.checks.map(({ id, title, value, missing, verdict }) => (
            <tr key={id}>
              <th scope="row">
                {title}, on {report.machine}
              </th>
              <td>
                <VerdictMark verdict={verdict} />
                <span className="word">{verdictWord[verdict]}</span>{' '}
                {value === undefined ? `needs ${missing ?? ''}` : formatQuantity('length', value, units)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {job.notes.map((note) => (
        <p key={note} className="rest">
          {note}.
        </p>
      ))}
      {job.unknown.length > 0 && (
        <p className="rest">
          Not understood and left out: {job.unknown.map(({ word, times }) => `${word} ${times} ×`).join(', ')}.
        </p>
      )}
      <IntoDay {...props} read={read} />
      <IntoQueue {...props} read={read} />
    </>
  );
}

/** The job becomes one of a day: only the person knows when it starts. */
function IntoDay({ read, look, current, onEdit }: ReadProps) {
  const days = Object.keys(look.cabinet.days);
  const [day, setDay] = useState(days[0]!);
  const [start, setStart] = useState('09:00');
  const { entry } = read.report;
  if (entry.material === undefined)
    return <p>To put it into a day, say its material above: nothing usual lies near its set-points.</p>;
  const taken = entry.name in (look.cabinet.days[day]?.jobs ?? {});
  return (
    <p className="ask-controls">
      <Choice label="Put it into" value={day} words={days} onChange={setDay} />
      <label>
        from <input type="time" required value={start} onChange={(event) => setStart(event.currentTarget.value)} />
      </label>
      <button
        type="button"
        disabled={!current || start === ''}
        onClick={() =>
          onEdit([{ [taken ? 'set' : 'add']: { [`days.${day}.jobs.${entry.name}`]: { ...read.keys, start } } }])
        }
      >
        {taken ? `put it in place of ${entry.name}` : 'put it in'}
      </button>
      {entry.materialTaken === true && <span>It is taken for {entry.material}: say above if it is another.</span>}
    </p>
  );
}

/** Or it waits: a plan says when it starts. */
function IntoQueue({ read, look, current, onEdit }: ReadProps) {
  const { queue } = look.cabinet;
  const { entry } = read.report;
  if (queue === undefined || entry.material === undefined) return null;
  const taken = entry.name in { ...queue.jobs, ...queue.unread };
  const { start: _start, ...keys } = read.keys;
  return (
    <p className="ask-controls">
      <button
        type="button"
        disabled={!current}
        onClick={() => onEdit([{ [taken ? 'set' : 'add']: { [`queue.jobs.${entry.name}`]: keys } }])}
      >
        {taken ? `put it into the queue in place of ${entry.name}` : 'let it wait in the queue'}
      </button>
    </p>
  );
}

function rowsOf({ job, report }: JobRead, units: UnitSystem): (readonly [string, string])[] {
  const { duration, waits } = job;
  const { mass, material, height, heating } = report;
  const fed = job.filament.reduce((sum, { length }) => sum + length, 0);
  const untimed = waits.heat + waits.homing + waits.pauses + waits.toolChanges;
  return [
    ['lasts', formatDuration(duration.estimate)],
    ['at the least, at the most', `${formatDuration(duration.atSpeed)}, ${formatDuration(duration.stopAndGo)}`],
    ...(heating === undefined
      ? []
      : [
          [
            'bed heating before',
            heating === Number.POSITIVE_INFINITY ? 'never: its heater is too weak' : formatDuration(heating),
          ] as const,
        ]),
    ['waits that the file does not time', String(untimed)],
    ['filament', formatQuantity('length', fed, units)],
    [
      'mass',
      mass === undefined || material === undefined
        ? 'unknown: say its material above'
        : `${formatQuantity('mass', mass, units)} of ${material.name}${material.how === 'nearest' ? ', whose set-points are nearest' : ''}`,
    ],
    ...(height === undefined ? [] : [['height', formatQuantity('length', height, units)] as const]),
  ];
}
