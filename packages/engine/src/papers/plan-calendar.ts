// A plan as a calendar that other programs read (RFC 5545): an event for every job, and one for each moment at which a socket may go off.
// Times are those of the clock on the wall (floating, as the cabinet file knows no zone). The same plan gives the same bytes; a job keeps
// its UID when it is planned anew, so that a calendar moves it.

import type { Plan, PlannedJob } from '../running/plan.ts';
import { dateOf } from '../units/calendar.ts';
import { formatDuration } from '../units/format.ts';
import { formatMoment } from '../units/week.ts';
import { calendarText, escaped, uidOf } from './calendar-text.ts';

const DAY = 86_400;
const OFF_LENGTH = 300;

/** `title` of the cabinet. Lines end as the format wants them. */
export function planCalendar(plan: Plan, title: string): string {
  return calendarText(
    'plan',
    plan.jobs.flatMap((job) => [...event(plan, title, job), ...offEvent(plan, title, job)]),
  );
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
