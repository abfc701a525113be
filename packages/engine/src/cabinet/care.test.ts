import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import type { CareTask } from './care.ts';
import { parseCareInterval } from './care-interval.ts';
import { careTasksOf } from './care-tasks.ts';
import { formatComplaint } from './complaint.ts';
import { readCabinet } from './read-cabinet.ts';

const HOUR = 3600;
const examples = join(import.meta.dirname, '../../../../examples');
const school = readFileSync(join(examples, 'school-locker.yaml'), 'utf8');
const library = readFileSync(join(examples, 'tool-library.yaml'), 'utf8');

function tasks(text: string): CareTask[] {
  const answer = readCabinet('cabinet.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(formatComplaint).join('\n'));
  return careTasksOf(answer.cabinet, answer.origins);
}

function complaint(text: string): string {
  const answer = readCabinet('cabinet.yaml', text);
  return answer.ok ? '' : answer.complaints.map(formatComplaint).join('\n');
}

describe('intervals of care', () => {
  it('exact: hours of printing are seconds, weeks are days, years are months', () => {
    expect(parseCareInterval('400 h or 2 weeks')).toMatchObject({
      printing: { value: 400 * HOUR },
      days: { value: 14 },
    });
    expect(parseCareInterval('2 years or 60 Pa')).toMatchObject({ months: { value: 24 }, pressure: 60 });
    expect(parseCareInterval('never')).toEqual({});
  });

  it('exact: a range is a spread', () => {
    expect(parseCareInterval('200 to 500 h')).toMatchObject({ printing: { low: 200 * HOUR, high: 500 * HOUR } });
  });

  it.each([
    ['soon', 'is no interval', 0],
    ['6 months or 3 fortnights', 'is no interval', 12],
    ['0 h', 'is not above 0', 0],
    ['6 months or 1 year', 'a second time', 12],
    ['9000 years', 'longer than any cabinet', 0],
    ['x h', 'x', 0],
  ])('refuses "%s" and says where', (text, what, at) => {
    expect(parseCareInterval(text)).toMatchObject({ what: expect.stringContaining(what) as string, at });
  });
});

describe('what wants care', () => {
  it('property: every part that wears is there once for each thing that is done to it, each with a source', () => {
    for (const text of [school, library]) {
      const all = tasks(text);
      expect(new Set(all.map(({ id }) => id)).size).toBe(all.length);
      expect(all.filter(({ source }) => source.length < 10)).toEqual([]);
      expect(all.filter(({ interval }) => Object.keys(interval).length === 0)).toEqual([]);
    }
  });

  it('exact: a cable that moves with a bed is only where a bed moves', () => {
    const cables = tasks(library).filter(({ part }) => part.startsWith('bed cable'));
    expect(cables.map(({ part }) => part)).toEqual(['bed cable gable', 'bed cable ridge']);
  });

  it('exact: filters and carbon are counted by the hours that costs: pays for, with their spread', () => {
    const change = tasks(library).find(({ id }) => id === 'carbon exhaust change')!;
    expect(change.interval.printing).toMatchObject({ value: 320 * HOUR, low: 200 * HOUR, high: 500 * HOUR });
    const own = tasks(library.replace('  failures: 6 %', '  failures: 6 %\n  carbon-life: 90 h'));
    expect(own.find(({ id }) => id === 'carbon exhaust change')!.interval.printing).toMatchObject({ value: 90 * HOUR });
  });

  it('exact: desiccant is where a spool hangs in a box of its own air', () => {
    expect(
      tasks(library)
        .filter(({ kind }) => kind === 'desiccant')
        .map(({ part }) => part),
    ).toEqual(['desiccant gears-nylon']);
  });

  it('exact: the file goes before practice, and takes care away', () => {
    const own = tasks(`${school}care:\n  filter outlet: { change: 300 h or 6 months, check: never }\n`);
    const filter = own.filter(({ part }) => part === 'filter outlet');
    expect(filter).toMatchObject([
      { action: 'change', own: true, source: 'the cabinet file', interval: { months: { value: 6 } } },
    ]);
  });

  it('says of care for what is not there where it stands and what is near', () => {
    expect(complaint(`${school}care:\n  filter outlett: { change: 300 h }\n`)).toMatch(
      /care-unknown\n.*filter outlett[\s\S]*to mend: did you mean "filter outlet"\?$/,
    );
    expect(complaint(`${school}care:\n  seal door: { change: 1 year }\n`)).toContain(
      'nobody is asked to change "seal door"',
    );
    expect(complaint(`${school}care:\n  seal door: { check: soon }\n`)).toContain('"soon" is no interval');
  });

  it('leaves care be for what an option takes out', () => {
    const text = `${school}care:\n  filter outlet: { change: 300 h }\n`;
    expect(readCabinet('cabinet.yaml', text, [{ remove: ['air.outlet.parts.0'] }])).toMatchObject({ ok: true });
  });
});
