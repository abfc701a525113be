import { describe, expect, it } from 'vitest';
import type { CareRow, CareStudy } from '../running/care.ts';
import { careCalendar } from './care-calendar.ts';

const row = (id: string, dates: Partial<CareRow>, says = `look at ${id}`): CareRow => ({
  id,
  part: id,
  action: 'check',
  says,
  source: 'common practice, no source; makers’ papers go first',
  criteria: [],
  verdict: 'holds',
  ...dates,
});

const study = (today: string, tasks: readonly CareRow[]): CareStudy => ({
  version: 1,
  today,
  tasks,
  remarks: [],
  samples: { asked: 0, ran: 0, faults: [] },
  stopped: false,
});

const late = row('filter exhaust', { p10: '2026-10-01', p50: '2026-11-01', p90: '2026-11-20' });
const next = row(
  'seal door',
  { p10: '2026-12-01', p50: '2026-12-31', p90: '2027-02-01' },
  'check the seal of door; all of it',
);
const never = row('fan exhaust', { p10: '2045-01-01' });

const lines = (text: string): string[] => text.replaceAll('\r\n ', '').split('\r\n');

describe('the calendar of care', () => {
  const text = careCalendar(study('2026-11-28', [late, next, never]), 'Shed, mine');

  it('exact: whole days in the form of RFC 5545, the overdue on today, the last of a year until the first of the next', () => {
    expect(lines(text).filter((line) => line.startsWith('DT'))).toEqual([
      'DTSTAMP:20261128T000000Z',
      'DTSTART;VALUE=DATE:20261128',
      'DTEND;VALUE=DATE:20261129',
      'DTSTAMP:20261128T000000Z',
      'DTSTART;VALUE=DATE:20261231',
      'DTEND;VALUE=DATE:20270101',
    ]);
    expect(text.startsWith('BEGIN:VCALENDAR\r\nVERSION:2.0\r\nPRODID:')).toBe(true);
    expect(text.endsWith('END:VEVENT\r\nEND:VCALENDAR\r\n')).toBe(true);
    expect(lines(text)).toContain('SUMMARY:check the seal of door\\; all of it');
    expect(lines(text)).toContain('LOCATION:Shed\\, mine');
  });

  it('property: lines end with CRLF and hold 75 octets at most', () => {
    expect(text).not.toMatch(/[^\r]\n|\r[^\n]/);
    expect(text.split('\r\n').filter((line) => new TextEncoder().encode(line).length > 75)).toEqual([]);
  });

  it('property: a thing keeps its name when its date moves, and no two have one', () => {
    const names = (of: string): string[] => lines(of).filter((line) => line.startsWith('UID:'));
    const moved = careCalendar(study('2026-12-05', [late, { ...next, p50: '2027-01-09' }]), 'Shed, mine');
    expect(names(moved)).toEqual(names(text));
    expect(new Set(names(text)).size).toBe(2);
  });
});
