// What care is due as a calendar that other programs read (RFC 5545): a whole day for each thing, in the order of their dates. What is
// overdue stands on today. A thing keeps its UID when its date moves, so that a calendar moves it.

import type { CareRow, CareStudy } from '../running/care.ts';
import { formatDate, parseDate } from '../units/calendar.ts';
import { calendarText, escaped, uidOf } from './calendar-text.ts';

export function careCalendar(study: CareStudy, title: string): string {
  return calendarText(
    'care',
    study.tasks.flatMap((row) => event(row, study.today, title)),
  );
}

function event(row: CareRow, today: string, title: string): string[] {
  const { id, says, p10, p50, p90, source } = row;
  if (p50 === undefined) return [];
  const overdue = p50 < today;
  const description = [
    overdue
      ? `overdue since ${p50}`
      : p10 === p90
        ? `due ${p50}`
        : `due ${p50}, from ${p10 ?? 'now'} to ${p90 ?? 'much later'}`,
    `how often: ${source}`,
  ];
  const day = overdue ? today : p50;
  return [
    'BEGIN:VEVENT',
    `UID:${uidOf(`${title}/care/${id}`)}`,
    `DTSTAMP:${plain(today)}T000000Z`,
    `DTSTART;VALUE=DATE:${plain(day)}`,
    `DTEND;VALUE=DATE:${plain(formatDate((parseDate(day) as number) + 1))}`,
    `SUMMARY:${escaped(says)}`,
    `DESCRIPTION:${escaped(description.join('\n'))}`,
    `LOCATION:${escaped(title)}`,
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

const plain = (date: string): string => date.replaceAll('-', '');
