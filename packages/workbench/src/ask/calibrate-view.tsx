// What a log puts right: each unknown with its interval, how far the file was off before and after, what it cannot tell, what to read next.

import {
  type CalibratedColumn,
  type CalibratedUnknown,
  type CalibrationStudy,
  formatClock,
  formatNumber,
  placeText,
  sizeText,
  unknownText,
} from '@stillair/engine';
import type { Calibrated } from '../engine/protocol.ts';
import type { AnswerProps } from './answer.ts';
import { AnswerTable } from './answer-table.tsx';
import { LogFaultView, LogPicture, LogRemarks } from './log-words.tsx';
import { PartName } from './part-name.tsx';

export function CalibrateView({ result, ...props }: AnswerProps<'calibrate'>) {
  return 'fault' in result ? <LogFaultView {...result} /> : <Known {...props} calibrated={result} />;
}

type KnownProps = Omit<AnswerProps<'calibrate'>, 'result'> & { readonly calibrated: Calibrated };

function Known(props: KnownProps) {
  const { study, picture } = props.calibrated;
  if (study.stopped) return <LogRemarks remarks={study.log.remarks} />;
  return (
    <>
      <p>{openingText(study)}</p>
      <LogRemarks remarks={study.log.remarks} />
      {study.unknowns.length > 0 && <Unknowns {...props} />}
      <p>{meaningText(study)}</p>
      {study.apart.map(({ ids, correlation }) => (
        <p key={ids.join(' ')}>
          The log cannot tell {ids.map((id) => labelOf(study, id)).join(' and ')} apart
          {ids.length === 2 && Math.abs(correlation) < 1
            ? ` (correlation ${formatNumber(correlation, 2)}): ${correlation < 0 ? 'more of one and less of the other fits about as well' : 'more of both fits about as well'}`
            : ''}
          .
        </p>
      ))}
      <NextReading {...props} />
      <Keep {...props} />
      <LogPicture
        picture={picture}
        alt={`${study.log.file} over the day ${study.day}: measured as dots, the file before as a dashed line and after as a full one; how far each is off stands in the table below`}
      />
      <Columns {...props} />
      {study.notFitted.length > 0 && <p className="rest">Not fitted: {leftText(study)}.</p>}
    </>
  );
}

function Unknowns({ calibrated: { study }, units }: KnownProps) {
  const text = ({ unit }: CalibratedUnknown, value: number): string => unknownText(unit, value, units);
  return (
    <AnswerTable
      label="what the log says of each unknown"
      caption="What the log says"
      heads={['Unknown', 'The file', 'The log', '95 % interval', 'With what was not fitted']}
    >
      <tbody>
        {study.unknowns.map((unknown) => (
          <tr key={unknown.id}>
            <th scope="row">
              {unknown.label}
              {unknown.atBound ? ' (at the end of what it may be)' : ''}
            </th>
            <td>{text(unknown, unknown.was)}</td>
            <td>{text(unknown, unknown.value)}</td>
            <td>
              {text(unknown, unknown.low)} to {text(unknown, unknown.high)}
            </td>
            <td>
              {text(unknown, unknown.lowAll)} to {text(unknown, unknown.highAll)}
            </td>
          </tr>
        ))}
      </tbody>
    </AnswerTable>
  );
}

function Columns({ calibrated: { study }, ...props }: KnownProps) {
  const { units } = props;
  const text = (column: CalibratedColumn, value: number): string => sizeText(column, value, units);
  return (
    <AnswerTable
      label="how far each column is off"
      caption="Measured less computed, root of the mean square"
      heads={['Column', 'Place', 'Values', 'Before', 'After', 'Noise']}
    >
      <tbody>
        {study.columns.map((column) => (
          <tr key={column.name}>
            <th scope="row">{column.name}</th>
            <td>
              <PartName {...props} says={placeText(column.place)} name={column.place.id} day={study.day} />
            </td>
            <td>{column.values}</td>
            <td>{text(column, column.before)}</td>
            <td>{text(column, column.after)}</td>
            <td>
              {column.noise === undefined
                ? `${text(column, column.assumedNoise ?? 0)} (taken)`
                : text(column, column.noise.spread)}
            </td>
          </tr>
        ))}
      </tbody>
    </AnswerTable>
  );
}

function NextReading({ calibrated: { study }, ...props }: KnownProps) {
  const { next, unknowns } = study;
  if (unknowns.length === 0) return null;
  if (next === undefined)
    return <p>No single reading of a dial on this day would tell much more; a day with other jobs would.</p>;
  const { place, kind, time, noise, narrows } = next;
  const what =
    kind !== 'temperature' ? 'the power of' : place.what === 'bay' ? 'the air at the top of' : 'the temperature at';
  return (
    <p>
      Read next: {what} <PartName {...props} says={placeText(place)} name={place.id} day={study.day} time={time} /> at{' '}
      {formatClock(time)}, to {sizeText({ kind }, noise, props.units)}. It would narrow {labelOf(study, narrows.id)} by{' '}
      {Math.round(100 * (1 - narrows.after / narrows.before))} %.
    </p>
  );
}

/** The same changes of the file as the command's own. */
function Keep({ calibrated: { study }, current, onEdit }: KnownProps) {
  if (study.unknowns.length === 0) return null;
  const room = study.unknowns.some(({ id }) => id === 'room-temperature')
    ? ' The room of that day is not kept: it does not last.'
    : '';
  if (study.edits.length === 0) return <p>Nothing of it belongs into the file.{room}</p>;
  return (
    <p className="ask-controls">
      <button type="button" disabled={!current} onClick={() => onEdit(study.edits)}>
        write the values into the text
      </button>
      <span>
        With their spread and the name of the log; undo takes them out again. Under Day the log stays over the lines.
        {room}
      </span>
    </p>
  );
}

function openingText({ log, columns, day }: CalibrationStudy): string {
  const { file, firstDay, dates, roomLogged } = log;
  const from = firstDay === undefined ? '' : dates > 1 ? `, ${dates} days from ${firstDay}` : `, ${firstDay}`;
  const values = columns.reduce((sum, { values: count }) => sum + count, 0);
  return `${file}${from}: ${values === 1 ? '1 value' : `${values} values`} in ${columns.map(({ name }) => name).join(', ')} against the day ${day}.${roomLogged ? ' The room is taken as the log has it.' : ''}`;
}

function meaningText({ unknowns, prior, converged }: CalibrationStudy): string {
  if (unknowns.length === 0) return 'The log shows none of the unknowns well enough to fit it.';
  const said = prior
    ? 'What the file says of each unknown counts as one more observation, as the readings are few: the intervals lean on it.'
    : 'What the file says of the unknowns does not count; only bounds are taken from it.';
  return `${said} Intervals hold as far as the model does: what the day was like, which jobs ran and where the sensors hang is taken from the file.${converged ? '' : ' The fit did not settle: the values are the best found, their intervals a guess.'}`;
}

function labelOf({ unknowns }: CalibrationStudy, id: string): string {
  return unknowns.find((unknown) => unknown.id === id)?.label ?? id;
}

function leftText({ notFitted }: CalibrationStudy): string {
  const byWhy = new Map<string, string[]>();
  for (const { label, why } of notFitted) byWhy.set(why, [...(byWhy.get(why) ?? []), label]);
  return [...byWhy].map(([why, labels]) => `${labels.join(', ')} (${why})`).join('; ');
}
