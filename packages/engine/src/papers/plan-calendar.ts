// A plan as a calendar that other programs read (RFC 5545): an event for every job, and one for each moment at which a socket may go off.
// Times are those of the clock on the wall (floating, as the cabinet file knows no zone). The same plan gives the same bytes; a job keeps
// its UID when it is planned anew, so that a calendar moves it.

import { textSeed } from '../numerics/random.ts';
import type { Plan, PlannedJob } from '../running/plan.ts';
import { dateOf } from '../units/calendar.ts';
import { formatDuration } from '../units/format.ts';
import { formatMoment } from '../units/week.ts';

const DAY = 86_400;
/** Octets of a line before it is folded (RFC 5545, 3.1). */
const LINE = 75;
const OFF_LENGTH = 300;

/** `title` of the cabinet. Lines end as the format wants them. */
export function planCalendar(plan: Plan, title: string): string {
  const lines = [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//stillair//plan 1//EN',
    'CALSCALE:GREGORIAN',
    ...plan.jobs.flatMap((job) => [...event(plan, title, job), ...offEvent(plan, title, job)]),
    'END:VCALENDAR',
  ];
  return `${lines.map(folded).join('\r\n')}\r\n`;
}

function event(plan: Plan, title: string, job: PlannedJob): string[] {
  const { origin } = plan.queue;
  const { id, machine, material, start, end, due, watched, late } = job;
  const says = [
    `${material} on ${machine}, ${formatDuration(end - start)}`,
    `somebody is there until ${formatMoment(origin, watched)}`,
    ...(due === undefined ? [] : [`due ${formatMoment(origin, due)}${late ? ', which it misses' : ''}`]),
    ...(job.off === undefined ? [] : [`its socket may go off from ${formatMoment(origin, job.off)}`]),
  ];
  return vevent(plan, `${title}/${id}`, start, end, `${machine}: ${id}`, says.join('\n'), title);
}

/** A short event, so that it can remind; in the calendar it makes nobody busy. */
function offEvent(plan: Plan, title: string, { id, machine, off }: PlannedJob): string[] {
  if (off === undefined) return [];
  const says = `Reckoned: bed and hot end are cool after ${id}. Look before you switch off; fans of the cabinet run on.`;
  return vevent(plan, `${title}/${id}/off`, off, off + OFF_LENGTH, `${machine}: its socket may go off`, says, title);
}

function vevent(
  { queue: { origin }, now }: Plan,
  key: string,
  start: number,
  end: number,
  summary: string,
  description: string,
  location: string,
): string[] {
  return [
    'BEGIN:VEVENT',
    `UID:${uidOf(key)}`,
    `DTSTAMP:${stamp(origin, now)}Z`,
    `DTSTART:${stamp(origin, start)}`,
    `DTEND:${stamp(origin, end)}`,
    `SUMMARY:${escaped(summary)}`,
    `DESCRIPTION:${escaped(description)}`,
    `LOCATION:${escaped(location)}`,
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

/** 128 bits from a text, in the form of RFC 9562 for such (version 8). */
function uidOf(key: string): string {
  const hex = ['a', 'b', 'c', 'd'].map((salt) => textSeed(`${salt}:${key}`).toString(16).padStart(8, '0')).join('');
  return `${hex.slice(0, 8)}-${hex.slice(8, 12)}-8${hex.slice(13, 16)}-a${hex.slice(17, 20)}-${hex.slice(20)}`;
}

/** `20261130T093000` */
function stamp(origin: number, seconds: number): string {
  const whole = Math.round(seconds);
  const day = Math.floor(whole / DAY);
  const [year, month, of] = dateOf(origin + day);
  const left = whole - day * DAY;
  const two = (number: number): string => String(number).padStart(2, '0');
  const clock = `${two(Math.floor(left / 3600))}${two(Math.floor(left / 60) % 60)}${two(left % 60)}`;
  return `${String(year).padStart(4, '0')}${two(month)}${two(of)}T${clock}`;
}

/** Text of a property (RFC 5545, 3.3.11); what no text may hold is left out. */
function escaped(text: string): string {
  return Array.from(text)
    .filter((sign) => sign >= ' ' || sign === '\n')
    .join('')
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replaceAll('\n', '\\n');
}

/** Lines of more than 75 octets go on behind a line end and a space; no sign is torn apart. */
function folded(line: string): string {
  const pieces: string[] = [];
  let [piece, octets] = ['', 0];
  for (const sign of line) {
    const size = octetsOf(sign);
    if (octets + size > LINE) {
      pieces.push(piece);
      [piece, octets] = [' ', 1];
    }
    piece += sign;
    octets += size;
  }
  return [...pieces, piece].join('\r\n');
}

function octetsOf(sign: string): number {
  const code = sign.codePointAt(0)!;
  return code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
}
