import { describe, expect, it } from 'vitest';
import type { Plan, PlannedJob } from '../running/plan.ts';
import { planCalendar } from './plan-calendar.ts';
import { planPicture } from './plan-picture.ts';

const HOUR = 3600;

const job = (parts: Partial<PlannedJob>): PlannedJob => ({
  id: 'bracket',
  kind: 'bracket',
  machine: 'left',
  material: 'ABS',
  start: 9 * HOUR,
  end: 15 * HOUR,
  late: false,
  how: 'planned',
  cost: 0.3,
  watched: 9.3 * HOUR,
  why: [],
  off: 15.5 * HOUR,
  ...parts,
});

const planOf = (jobs: readonly PlannedJob[], now = 7 * HOUR): Plan => ({
  version: 1,
  queue: {
    origin: 20_787,
    from: 7 * HOUR,
    until: 7 * HOUR + 3 * 86_400,
    step: 600,
    like: 'usual',
    aims: ['early'],
    present: [[8 * HOUR, 18 * HOUR]],
    presentFrom: 'queue.present',
    down: {},
  },
  now,
  jobs,
  aims: [],
  found: 'yes',
  remarks: [],
  cuts: [],
  learned: [],
  checks: [],
  hours: Array.from({ length: 30 }, (_, at) => ({
    time: (7 + at) * HOUR,
    power: 100 + at,
    current: 1,
    air: { lower: 300 + at / 10 },
    noise: { desk: 30 },
  })),
  trials: [],
  nodes: 1,
  samples: { asked: 0, ran: 0, faults: [] },
  stopped: false,
});

const unfolded = (text: string): string[] => text.replaceAll('\r\n ', '').split('\r\n').slice(0, -1);

/** Reads what RFC 5545 asks of a calendar with nothing but events, or throws. */
function eventsOf(text: string): Map<string, string>[] {
  const encoder = new TextEncoder();
  if (!text.endsWith('\r\n') || /[^\r]\n|\r[^\n]/.test(text)) throw new Error('lines must end with CRLF (3.1)');
  for (const line of text.split('\r\n'))
    if (encoder.encode(line).length > 75) throw new Error(`longer than 75 octets (3.1): ${line}`);
  const lines = unfolded(text);
  if (lines[0] !== 'BEGIN:VCALENDAR' || lines.at(-1) !== 'END:VCALENDAR') throw new Error('no calendar (3.4)');
  const events: Map<string, string>[] = [];
  let event: Map<string, string> | undefined;
  const outside = new Map<string, string>();
  for (const line of lines.slice(1, -1)) {
    const [, name = '', value = ''] = /^([A-Z-]+):(.*)$/.exec(line) ?? [];
    if (name === '') throw new Error(`no property (3.1): ${line}`);
    if (line === 'BEGIN:VEVENT') event = new Map();
    else if (line === 'END:VEVENT') {
      events.push(event!);
      event = undefined;
    } else if ((event ?? outside).has(name)) throw new Error(`${name} twice (3.6.1)`);
    else (event ?? outside).set(name, value);
  }
  if (outside.get('VERSION') !== '2.0' || !outside.has('PRODID'))
    throw new Error('VERSION and PRODID are needed (3.6)');
  for (const each of events) {
    if (!/^\d{8}T\d{6}Z$/.test(each.get('DTSTAMP') ?? '')) throw new Error('DTSTAMP must be UTC (3.8.7.2)');
    for (const name of ['DTSTART', 'DTEND'])
      if (!/^\d{8}T\d{6}$/.test(each.get(name) ?? '')) throw new Error(`${name} must be a date and time (3.3.5)`);
    if (!(each.get('DTEND')! > each.get('DTSTART')!)) throw new Error('DTEND must be later than DTSTART (3.8.2.2)');
    if (!each.has('UID')) throw new Error('UID is needed (3.8.4.7)');
    for (const name of ['SUMMARY', 'DESCRIPTION', 'LOCATION'])
      if (/(?:^|[^\\])(?:\\\\)*[,;]/.test(each.get(name) ?? ''))
        throw new Error(`${name}: comma or semicolon not escaped (3.3.11)`);
  }
  return events;
}

describe('the calendar of a plan', () => {
  const many = planOf([
    job({}),
    job({
      id: 'Öse, groß; 48 h — für die Tür des Schranks im Flur (2)',
      kind: 'Öse',
      start: 26 * HOUR,
      end: 74 * HOUR,
      due: 70 * HOUR,
      late: true,
    }),
  ]);

  it('property: is what RFC 5545 asks, with names of any kind', () => {
    const events = eventsOf(planCalendar(many, 'Küche\\Keller, alles; mögliche\nund mehr 🙂'.repeat(3)));
    expect(events).toHaveLength(4);
    expect(new Set(events.map((event) => event.get('UID'))).size).toBe(4);
  });

  it('exact: starts and ends are those of the plan, on the wall’s clock; what ends past midnight too', () => {
    const [first, off, second] = eventsOf(planCalendar(many, 'Cupboard'));
    expect([first!.get('DTSTART'), first!.get('DTEND')]).toEqual(['20261130T090000', '20261130T150000']);
    expect(off!.get('DTSTART')).toBe('20261130T153000');
    expect([second!.get('DTSTART'), second!.get('DTEND')]).toEqual(['20261201T020000', '20261203T020000']);
    expect(first!.get('DTSTAMP')).toBe('20261130T070000Z');
    expect(second!.get('DESCRIPTION')).toContain('which it misses');
  });

  it('property: a job that is planned anew keeps its UID, and carries a later stamp', () => {
    const [before] = eventsOf(planCalendar(planOf([job({})]), 'Cupboard'));
    const [after] = eventsOf(planCalendar(planOf([job({ start: 11 * HOUR, end: 17 * HOUR })], 10 * HOUR), 'Cupboard'));
    expect(after!.get('UID')).toBe(before!.get('UID'));
    expect(before!.get('UID')).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-8[0-9a-f]{3}-a[0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(after!.get('DTSTAMP')! > before!.get('DTSTAMP')!).toBe(true);
  });

  it('limit: an empty plan is a calendar without events', () => {
    expect(eventsOf(planCalendar(planOf([]), 'Cupboard'))).toEqual([]);
  });
});

describe('the picture of a plan', () => {
  it('property: names every machine and job once, in whole XML, the same bytes twice', () => {
    const draw = () =>
      planPicture(planOf([job({}), job({ id: 'a & b', start: 30 * HOUR, end: 40 * HOUR, due: 41 * HOUR })]), {
        title: 'Cupboard <1>',
        machines: ['left', 'right'],
        units: 'metric',
      });
    const picture = draw();
    expect(picture).toBe(draw());
    expect(picture).not.toMatch(/NaN|undefined|<1>| & /);
    expect(picture).toContain('a &amp; b');
    for (const name of ['left', 'right', 'lower', 'desk', 'Mon 30 Nov', 'Wed 2 Dec'])
      expect(picture).toContain(`>${name}<`);
    expect(picture.match(/class="due"/g)).toHaveLength(1);
    const tags = [...picture.matchAll(/<(\/?)(\w+)[^>]*?(\/?)>/g)];
    const open: string[] = [];
    for (const [, close, name, alone] of tags) {
      if (close === '/') expect(open.pop()).toBe(name);
      else if (alone !== '/') open.push(name!);
    }
    expect(open).toEqual([]);
  });
});
