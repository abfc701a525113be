// A calibration in words: what was wrong with the log, what it says of each unknown, what it cannot tell, what to read next.

import {
  type CalibratedColumn,
  type CalibratedUnknown,
  type CalibrationStudy,
  formatClock,
  formatDuration,
  formatNumber,
  type LogRemark,
  placeText,
  type ReadSource,
  remarkText,
  sizeText,
  type UnitSystem,
  unknownText,
} from '@stillair/engine';
import { inkFor } from '../ink.ts';
import type { Io } from '../io.ts';
import { table } from '../table.ts';
import { hanging } from '../text.ts';

export function calibrationText(
  { cabinet }: ReadSource,
  study: CalibrationStudy,
  options: { readonly units: UnitSystem; readonly write?: boolean },
  io: Io,
): string {
  const ink = inkFor(io);
  const { units } = options;
  const { log, unknowns, columns, next } = study;
  const width = io.columns;
  return [
    `${ink.strong(cabinet.title)}\n${hanging('', openingOf(study), width)}`,
    remarksText(log.remarks, width),
    unknowns.length === 0 ? '' : `${ink.strong('What the log says')}\n${unknownTable(unknowns, units, width)}`,
    hanging('', meaningOf(study), width),
    columns.length === 0 ? '' : `${ink.strong('Measured less computed')}\n${columnTable(columns, units, width)}`,
    apartText(study, width),
    study.notFitted.length === 0 ? '' : hanging('', `Not fitted: ${grouped(study.notFitted)}.`, width),
    next === undefined
      ? unknowns.length === 0
        ? ''
        : hanging(
            '',
            'No single reading of a dial on this day would tell much more; a day with other jobs would.',
            width,
          )
      : hanging('', nextText(study, next, units), width),
    unknowns.length === 0 ? '' : hanging('', keepText(study, options.write === true), width),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function openingOf({ log, columns, day }: CalibrationStudy): string {
  const dates =
    log.firstDay === undefined ? '' : log.dates > 1 ? `, ${log.dates} days from ${log.firstDay}` : `, ${log.firstDay}`;
  const values = columns.reduce((sum, { values: count }) => sum + count, 0);
  const room = log.roomLogged ? ' The room is taken as the log has it.' : '';
  return `${log.file}${dates}: ${values === 1 ? '1 value' : `${values} values`}${columns.some(({ noise }) => noise !== undefined) ? ` (means over ${formatDuration(log.slot)})` : ''} against the day ${day}.${room}`;
}

export function remarksText(remarks: readonly LogRemark[], width: number): string {
  if (remarks.length === 0) return '';
  const lines = remarks.map((remark) => hanging('- ', remarkText(remark), width));
  return ['Of the log:', ...lines].join('\n');
}

function unknownTable(unknowns: readonly CalibratedUnknown[], units: UnitSystem, width: number): string {
  const number = (unit: string, value: number): string => unknownText(unit, value, units);
  return table(
    [
      { head: 'unknown', least: 16 },
      { head: 'the file', align: 'right', least: 7 },
      { head: 'the log', align: 'right', least: 7 },
      { head: '95 % interval', least: 13 },
      { head: 'with what was not fitted', least: 13 },
    ],
    unknowns.map(({ label, unit, was, value, low, high, lowAll, highAll, atBound }) => [
      `${label}${atBound ? ' (at the end of what it may be)' : ''}`,
      number(unit, was),
      number(unit, value),
      `${number(unit, low)} to ${number(unit, high)}`,
      `${number(unit, lowAll)} to ${number(unit, highAll)}`,
    ]),
    width,
  );
}

function meaningOf({ unknowns, prior, converged }: CalibrationStudy): string {
  if (unknowns.length === 0) return 'The log shows none of the unknowns well enough to fit it.';
  const said = prior
    ? 'What the file says of each unknown counts as one more observation, as the readings are few: the intervals lean on it.'
    : 'What the file says of the unknowns does not count; only bounds are taken from it.';
  const known =
    'Intervals hold as far as the model does: what the day was like, which jobs ran and where the sensors hang is taken from the file.';
  return `${said} ${known}${converged ? '' : ' The fit did not settle: the values are the best found, their intervals a guess.'}`;
}

function columnTable(columns: readonly CalibratedColumn[], units: UnitSystem, width: number): string {
  return table(
    [
      { head: 'column', least: 8 },
      { head: 'place', least: 8 },
      { head: 'values', align: 'right' },
      { head: 'before', align: 'right', least: 7 },
      { head: 'after', align: 'right', least: 7 },
      { head: 'noise', align: 'right', least: 7 },
    ],
    columns.map((column) => {
      const { name, place, values, before, after, noise, assumedNoise } = column;
      const size = (value: number): string => sizeText(column, value, units);
      return [
        name,
        placeText(place),
        String(values),
        size(before),
        size(after),
        noise === undefined ? `${size(assumedNoise!)} (taken)` : size(noise.spread),
      ];
    }),
    width,
  );
}

function apartText({ apart, unknowns }: CalibrationStudy, width: number): string {
  const name = (id: string): string => unknowns.find((unknown) => unknown.id === id)?.label ?? id;
  return apart
    .map(({ ids, correlation }) =>
      hanging(
        '',
        `The log cannot tell ${ids.map(name).join(' and ')} apart${ids.length === 2 && Math.abs(correlation) < 1 ? ` (correlation ${formatNumber(correlation, 2)}): ${correlation < 0 ? 'more of one and less of the other' : 'more of both'} fits about as well` : ''}.`,
        width,
      ),
    )
    .join('\n');
}

function grouped(left: CalibrationStudy['notFitted']): string {
  const byWhy = new Map<string, string[]>();
  for (const { label, why } of left) byWhy.set(why, [...(byWhy.get(why) ?? []), label]);
  return [...byWhy].map(([why, labels]) => `${labels.join(', ')} (${why})`).join('; ');
}

function nextText(
  { unknowns }: CalibrationStudy,
  next: NonNullable<CalibrationStudy['next']>,
  units: UnitSystem,
): string {
  const { place, kind, time, noise, narrows } = next;
  const what =
    kind === 'temperature'
      ? place.what === 'bay'
        ? 'the air at the top of '
        : 'the temperature at '
      : 'the power of ';
  const label = unknowns.find(({ id }) => id === narrows.id)?.label ?? narrows.id;
  const share = Math.round(100 * (1 - narrows.after / narrows.before));
  return `Read next: ${what}${placeText(place)} at ${formatClock(time)}, to ${sizeText({ kind }, noise, units)}. It would narrow ${label} by ${share} %.`;
}

function keepText({ edits, unknowns }: CalibrationStudy, written: boolean): string {
  const lasting = edits.length > 0;
  const room = unknowns.some(({ id }) => id === 'room-temperature')
    ? ' The room of that day is not kept: it does not last.'
    : '';
  if (!lasting) return `Nothing of it belongs into the file.${room}`;
  return `${written ? 'The values are kept in the file, with their spread and the name of the log.' : 'To keep the values in the file, with their spread and the name of the log: --write.'}${room}`;
}
