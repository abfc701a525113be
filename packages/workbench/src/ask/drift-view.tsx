// Whether the cabinet still does what its file says, since when it does not, and what would explain it.

import {
  type DriftColumn,
  type DriftStudy,
  driftAdvice,
  formatClock,
  formatNumber,
  LEAST_HOURS,
  placeText,
  sizeText,
  type UnitSystem,
  unknownText,
} from '@stillair/engine';
import type { Drifted } from '../engine/protocol.ts';
import type { AnswerProps } from './answer.ts';
import { LogFaultView, LogPicture, LogRemarks } from './log-words.tsx';
import { PartName } from './part-name.tsx';

export function DriftView({ result, ...props }: AnswerProps<'drift'>) {
  return 'fault' in result ? <LogFaultView {...result} /> : <Known {...props} drifted={result} />;
}

type KnownProps = Omit<AnswerProps<'drift'>, 'result'> & { readonly drifted: Drifted };

function Known(props: KnownProps) {
  const { study, picture } = props.drifted;
  if (study.columns.length === 0) return <LogRemarks remarks={study.log.remarks} />;
  return (
    <>
      <p>{openingText(study)}</p>
      <p>
        <strong>{verdictText(study, props.units)}</strong>
      </p>
      <LogRemarks remarks={study.log.remarks} />
      {study.explanations.length > 0 && <Explanations {...props} />}
      {study.drifted && <p>{driftAdvice(study)}</p>}
      <LogPicture
        picture={picture}
        alt={`${study.log.file} less the day ${study.day}, hour by hour; ${study.drifted ? 'the onset is an upright line' : study.tooShort ? 'it is too short to tell' : 'no drift was found'}`}
      />
      <Columns {...props} />
    </>
  );
}

function Explanations({ drifted: { study }, units }: KnownProps) {
  return (
    <div className="scrolls" tabIndex={0} role="region" aria-label="what would explain it">
      <table className="answer">
        <caption>What would explain it, if it alone changed</caption>
        <thead>
          <tr>
            <th scope="col">Changed</th>
            <th scope="col">From</th>
            <th scope="col">To</th>
            <th scope="col">Explains of what is off</th>
          </tr>
        </thead>
        <tbody>
          {study.explanations.map(({ id, label, unit, was, value, explains, atBound }) => (
            <tr key={id}>
              <th scope="row">{label}</th>
              <td>{unknownText(unit, was, units)}</td>
              <td>{unknownText(unit, value, units)}</td>
              <td>
                {Math.round(100 * explains)} %{atBound ? ', at the end of what it may be' : ''}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function Columns({ drifted: { study }, ...props }: KnownProps) {
  return (
    <div className="scrolls" tabIndex={0} role="region" aria-label="columns of the log">
      <table className="answer">
        <caption>Columns of the log</caption>
        <thead>
          <tr>
            <th scope="col">Column</th>
            <th scope="col">Place</th>
            <th scope="col">Hours</th>
            <th scope="col">Scatter</th>
            <th scope="col">Sum, of its limit</th>
            <th scope="col">Alarm</th>
          </tr>
        </thead>
        <tbody>
          {study.columns.map((column) => (
            <tr key={column.name}>
              <th scope="row">{column.name}</th>
              <td>
                <PartName {...props} says={placeText(column.place)} name={column.place.id} day={study.day} />
              </td>
              <td>{column.hours}</td>
              <td>{sizeText(column, column.noise.spread, props.units)}</td>
              <td>
                {formatNumber(column.cusum.most, 1)} of {formatNumber(column.cusum.limit, 1)}
              </td>
              <td>{alarmText(column)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function openingText({ log, day, calibratedWith, columns }: DriftStudy): string {
  const { file, dates, firstDay, roomLogged } = log;
  const usual = columns.some(({ noise }) => noise.from === 'this log')
    ? ' How it scatters is taken from the first part of this log.'
    : '';
  const room = roomLogged
    ? ' The room is taken as the log has it: a warm day is no drift.'
    : ' The log does not have the room: a warm day looks like a drift.';
  return `${file}, ${dates} ${dates === 1 ? 'day' : 'days'}${firstDay === undefined ? '' : `, from ${firstDay}`}, against the day ${day} of the file, ${calibratedWith === undefined ? 'which no log has put right' : `put right with ${calibratedWith}`}.${usual}${room}`;
}

/** `day 3, 9:00` of the log. */
function momentText(time: number): string {
  return `day ${Math.floor(time / 86_400) + 1}, ${formatClock(time % 86_400)}`;
}

function alarmText({ cusum, ewma }: DriftColumn): string {
  const first = Math.min(cusum.alarm ?? Number.POSITIVE_INFINITY, ewma.alarm ?? Number.POSITIVE_INFINITY);
  if (!Number.isFinite(first)) return 'none';
  const side = cusum.side === undefined ? '' : cusum.side === 'up' ? ', too warm or high' : ', too cool or low';
  return `${momentText(first)}${side}`;
}

function verdictText(
  { drifted, tooShort, onset, passing, columns, explanations, notToldApart }: DriftStudy,
  units: UnitSystem,
): string {
  if (tooShort)
    return `Too short to tell: a shift as large as the scatter takes some ten hours to show, and no column has ${LEAST_HOURS}.`;
  if (passing !== undefined)
    return `No drift that lasts: hours about ${momentText(passing.time)} stand out in ${passing.column}, but what stays since then is less than any hour of a log is known to.`;
  if (!drifted || onset === undefined) {
    const chance = 1 - columns.reduce((none, { falseAlarm }) => none * (1 - falseAlarm), 1);
    return `No drift. A log of this length raises an alarm without a cause with a chance of ${Math.round(100 * chance)} %.`;
  }
  const { column, shift, time, from, to } = onset;
  const size = sizeText(columns.find(({ name }) => name === column)!, Math.abs(shift), units);
  const span = to === from ? '' : ` (between ${momentText(from)} and ${momentText(to)})`;
  const names = explanations.filter(({ id }) => notToldApart.includes(id)).map(({ label }) => label);
  const [best] = explanations;
  const why =
    best === undefined || best.explains < 0.1
      ? 'None of what was tried explains it.'
      : names.length > 1
        ? `${names.join(' and ')} explain it about equally well.`
        : `Best explained by: ${best.label}.`;
  return `Drifted since about ${momentText(time)}${span}: ${column} is ${size} ${shift > 0 ? 'above' : 'below'} what the file says. ${why}`;
}
