// A drift in words: what was held against what, what came of it, and where to look first.

import { formatClock, type UnitSystem } from '../../units/format.ts';
import { sizeText } from '../calibrate/log-words.ts';
import { type DriftColumn, type DriftStudy, LEAST_HOURS } from './drift.ts';

/** Explanations of less than this share of what is off are not worth a name. */
const WORTH = 0.1;

export function driftOpeningText({ log, day, calibratedWith, columns }: DriftStudy): string {
  const { file, dates, firstDay, roomLogged } = log;
  const when = firstDay === undefined ? '' : `, from ${firstDay}`;
  const against = calibratedWith === undefined ? 'which no log has put right' : `put right with ${calibratedWith}`;
  const usual = columns.some(({ noise }) => noise.from === 'this log')
    ? ' How it scatters is taken from the first part of this log.'
    : '';
  const room = roomLogged
    ? ' The room is taken as the log has it: a warm day is no drift.'
    : ' The log does not have the room: a warm day looks like a drift.';
  return `${file}, ${dates} ${dates === 1 ? 'day' : 'days'}${when}, against the day ${day} of the file, ${against}.${usual}${room}`;
}

/** `day 3, 9:00` of the log. */
function momentText(time: number): string {
  return `day ${Math.floor(time / 86_400) + 1}, ${formatClock(time % 86_400)}`;
}

/** When the first chart of a column alarmed, and to which side. */
export function driftAlarmText({ cusum, ewma }: DriftColumn): string {
  const first = Math.min(cusum.alarm ?? Number.POSITIVE_INFINITY, ewma.alarm ?? Number.POSITIVE_INFINITY);
  if (!Number.isFinite(first)) return 'none';
  const side = cusum.side === undefined ? '' : cusum.side === 'up' ? ', too warm or high' : ', too cool or low';
  return `${momentText(first)}${side}`;
}

export function driftVerdictText(study: DriftStudy, units: UnitSystem): string {
  const { drifted, tooShort, onset, passing, columns } = study;
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
  return `Drifted since about ${momentText(time)}${span}: ${column} is ${size} ${shift > 0 ? 'above' : 'below'} what the file says. ${causeText(study)}`;
}

function causeText({ explanations, notToldApart }: DriftStudy): string {
  const [best] = explanations;
  if (best === undefined || best.explains < WORTH) return 'None of what was tried explains it.';
  const names = explanations.filter(({ id }) => notToldApart.includes(id)).map(({ label }) => label);
  return names.length > 1
    ? `${names.join(' and ')} explain it about equally well.`
    : `Best explained by: ${best.label}.`;
}

const ADVICE: readonly (readonly [RegExp, string])[] = [
  [/^loading\./, 'Look at the filter, and change it if it is due.'],
  [/^leakage/, 'Look at seals, doors and joints.'],
  [/^fan-flow/, 'Look at the fan, its grille and what stands before it.'],
  [/^room-temperature/, 'Log the room as well: then a warm day is told from a drift.'],
  [/^offset\./, 'Hold a second thermometer beside the sensor.'],
];

export function driftAdvice({ explanations, notToldApart }: Pick<DriftStudy, 'explanations' | 'notToldApart'>): string {
  const told = explanations.filter(({ id, explains }) => notToldApart.includes(id) && explains >= WORTH);
  const advice = told.flatMap(({ id }) => ADVICE.find(([pattern]) => pattern.test(id))?.[1] ?? []);
  return [
    ...new Set(advice),
    'What the file says of jobs and doors is taken for true: a print that was not in it looks like a drift too.',
  ].join(' ');
}
