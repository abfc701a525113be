import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { formatComplaint } from '../cabinet/complaint.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { randomStream } from '../numerics/random.ts';
import { parseDate } from '../units/calendar.ts';
import { appendEntry } from './append-diary.ts';
import type { Diary } from './diary.ts';
import { readDiary } from './read-diary.ts';

const examples = join(import.meta.dirname, '../../../../examples');
const shed = readFileSync(join(examples, 'winter-shed.yaml'), 'utf8');
const answer = readCabinet('shed.yaml', shed);
if (!answer.ok) throw new Error('the example cannot be read');
const { cabinet } = answer;
const today = parseDate('2026-11-28') as number;
const day = (text: string): number => parseDate(text) as number;
const head = 'diary: 1\nbegan: 2025-05-10\n';

function read(text: string): Diary {
  const diary = readDiary('shed.diary.yaml', text, cabinet, today);
  if (!diary.ok) throw new Error(diary.complaints.map(formatComplaint).join('\n'));
  return diary.diary;
}

const complaints = (text: string): string => {
  const diary = readDiary('shed.diary.yaml', text, cabinet, today);
  return diary.ok ? '' : diary.complaints.map(formatComplaint).join('\n');
};

describe('a diary', () => {
  it('is in order of its dates, whatever the order of its lines', () => {
    const { done } = read(
      `${head}done:\n  - { on: 2026-02-01, part: seal door, did: checked }\n  - { on: 2026-01-01, part: filter exhaust, did: measured, reading: 21 Pa }\n`,
    );
    expect(done).toEqual([
      { on: day('2026-01-01'), part: 'filter exhaust', did: 'measure', reading: 21 },
      { on: day('2026-02-01'), part: 'seal door', did: 'check' },
    ]);
  });

  it('takes what a job of the days of the file says where the entry says nothing', () => {
    expect(read(`${head}jobs: [{ on: 2026-01-05, job: mount }]\n`).jobs).toEqual([
      {
        first: day('2026-01-05'),
        last: day('2026-01-05'),
        times: 1,
        job: 'mount',
        machine: 'heron',
        material: 'ABS',
        start: 9 * 3600,
        duration: 7 * 3600,
        mass: 0.13,
        failed: 0,
      },
    ]);
  });

  it('tells of parts and machines that are not there (any more), and counts them as history', () => {
    const { remarks, done } = read(
      `${head}done: [{ on: 2026-01-05, part: filter exaust, did: changed }, { on: 2026-01-05, part: seal door, did: dried }]\njobs: [{ on: 2026-01-06, job: old thing, machine: wren, for: 2 h }]\n`,
    );
    expect(done).toHaveLength(2);
    expect(remarks).toEqual([
      'line 3: "filter exaust" is no part of this cabinet (any more) and is not counted; did you mean "filter exhaust"?',
      'line 3: nobody asks that "seal door" is dried; it is counted as nothing',
      'line 4: "wren" is no machine of this cabinet (any more): its hours count for filters alone',
    ]);
  });

  it('says everything that is wrong at once, with place, what is allowed and how to mend it', () => {
    const text = `diary: 1
began: 2025-05-10
done:
  - { on: 2026-12-24, part: seal door, did: checked }
  - { on: 2026-01-05, part: seal door, did: repaired }
  - { on: 5 January, part: seal door, did: checked }
jobs:
  - { on: 2026-01-06, job: mont }
  - { on: 2026-01-06, job: mount, times: 2, failed: 3 }
notes: none
`;
    expect(complaints(text)).toBe(`shed.diary.yaml:4:11  error  date-ahead
   4 |   - { on: 2026-12-24, part: seal door, did: checked }
     |           ^^^^^^^^^^ 2026-12-24 has not come yet: today is 2026-11-28
  allowed: days up to today
  to mend: write the day on which it was; what is planned stands nowhere here
shed.diary.yaml:5:45  error  word-unknown
   5 |   - { on: 2026-01-05, part: seal door, did: repaired }
     |                                             ^^^^^^^^ "repaired" is none of the words known here
  allowed: changed, checked, cleaned, tested, lubricated, dried or measured
  to mend: write changed, checked, cleaned, tested, lubricated, dried or measured
shed.diary.yaml:6:11  error  date-wrong
   6 |   - { on: 5 January, part: seal door, did: checked }
     |           ^^^^^^^^^ "5 January" is no date
  allowed: a date as year-month-day, such as 2026-03-01
  to mend: write year, month and day with hyphens between
shed.diary.yaml:8:28  error  key-missing
   8 |   - { on: 2026-01-06, job: mont }
     |                            ^^^^ no day of the cabinet file has a job "mont", and there is no "for" here
  allowed: how long it took, such as 6 h
  to mend: add for:, or did you mean "mount"?
shed.diary.yaml:9:53  error  value-out-of-bounds
   9 |   - { on: 2026-01-06, job: mount, times: 2, failed: 3 }
     |                                                     ^ 3 of 2 cannot have failed
  allowed: at most 2
  to mend: count the failed ones in times: too
shed.diary.yaml:10:1  error  key-unknown
  10 | notes: none
     | ^^^^^ "notes" is no key of a diary
  allowed: diary, title, began, done or jobs
  to mend: take it out, or begin it with _ to keep it for yourself`);
  });

  it('needs its version and its beginning', () => {
    expect(complaints('done: []\n')).toContain('to mend: write diary: 1 in the first line');
    expect(complaints('diary: 1\n')).toContain('there is no "began" in the file');
    expect(complaints('diary: 2\nbegan: 2025-01-01\n')).toContain('version 2 is not known here');
  });

  it.each([
    ['winter-shed', 0],
    ['tool-library', 0],
    ['school-locker', 1],
  ])('property: the diary beside the example %s is read without a complaint', (name, remarks) => {
    const file = readCabinet(name, readFileSync(join(examples, `${name}.yaml`), 'utf8'));
    if (!file.ok) throw new Error('the example cannot be read');
    const text = readFileSync(join(examples, `${name}.diary.yaml`), 'utf8');
    const diary = readDiary(name, text, file.cabinet, today);
    expect(diary).toMatchObject({ ok: true });
    if (diary.ok) expect(diary.diary.remarks).toHaveLength(remarks);
  });
});

it('property: a diary with any of its characters changed, doubled or left out is read or complained of, and never thrown at', () => {
  const text = readFileSync(join(examples, 'winter-shed.diary.yaml'), 'utf8');
  const random = randomStream(7);
  const signs = '{}[]:,-#"\'0129 \n*&!|>xé';
  const pick = (most: number): number => Math.floor(random() * most);
  let understood = 0;
  for (let trial = 0; trial < 400; trial += 1) {
    let changed = text;
    for (let change = pick(3) + 1; change > 0; change -= 1) {
      const at = pick(changed.length);
      const by = [signs[pick(signs.length)]!, '', changed[at]!.repeat(2)][pick(3)]!;
      changed = changed.slice(0, at) + by + changed.slice(at + 1);
    }
    const diary = readDiary('shed.diary.yaml', changed, cabinet, today);
    if (diary.ok) understood += 1;
    else expect(diary.complaints.every(({ what, where }) => what !== '' && where.line > 0)).toBe(true);
    appendEntry(changed, 'jobs', { on: '2026-11-28', job: 'mount' });
  }
  expect(understood).toBeGreaterThan(20);
});
