import { beforeAll, describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { textWidth } from '../text.ts';
import { type CareOptions, care } from './care.ts';

const hall = fixture('hall.yaml');
const diary = `# ours
diary: 1
began: 2025-10-01
done:
  - { on: 2026-11-01, part: bay lower, did: cleaned } # with a brush
jobs:
  - { on: 2025-10-05 to 2026-11-27, job: bracket, times: 90 }
`;
const quick: CareOptions = { units: 'metric', samples: 0, workers: 1 };
const files = { 'hall.yaml': hall, 'hall.diary.yaml': diary };

async function run(options: Partial<CareOptions>, outside: Parameters<typeof fakeIo>[0] = {}) {
  const io = fakeIo({ files, ...outside });
  const code = await care('hall.yaml', { ...quick, ...options }, io);
  return { code, ...io.printed, written: io.written };
}

describe('stillair care', () => {
  let usual: Awaited<ReturnType<typeof run>>;
  beforeAll(async () => {
    usual = await run({});
  }, 60_000);

  it('counts what is overdue today by the clock, and says what the hours come from', () => {
    const text = usual.out.replaceAll(/\s+/g, ' ');
    expect(text).toMatch(
      /things that want care \d+ are overdue on 2026-11-28 .* by hall\.diary\.yaml \(since 2025-10-01\)/,
    );
    expect(text).toContain('by the last 26 weeks of the diary');
    expect(text).toContain('local codes and licensed practice go before them');
    expect(usual.out).toMatch(/\nOverdue\n[\s\S]*\nNext\n[\s\S]*\nWhat overdue parts do to the findings\n/);
    expect(usual).toMatchObject({ code: 1, err: '' });
  });

  it('marks the source of every interval and limit, and lists it; promises nothing', () => {
    const marked = new Set([...usual.out.matchAll(/\[(\d+)\](?=$|\n| {2})/gm)].map(([, number]) => number));
    const told = new Set([...usual.out.matchAll(/^ *\[(\d+)\] \S/gm)].map(([, number]) => number));
    expect(told.size).toBeGreaterThan(2);
    expect([...marked].filter((number) => !told.has(number))).toEqual([]);
    expect(usual.out).not.toMatch(/\b(?:un)?safe(?:ly|ty)?\b/i);
  });

  it.each([40, 80, 100])('fits a terminal of %d columns', async (columns) => {
    const { out } = await run({ all: true }, { columns });
    expect(out.split('\n').filter((line) => textWidth(line) > columns)).toEqual([]);
  });

  it('prints one JSON object with --json, dates as year-month-day', async () => {
    const { out, err } = await run(
      { json: true, today: '2026-06-01', diary: 'early.yaml' },
      {
        files: { 'hall.yaml': hall, 'early.yaml': 'diary: 1\nbegan: 2026-05-01\n' },
      },
    );
    const answer = JSON.parse(out) as { tasks: { id: string; p50?: string; verdict: string }[] };
    expect(answer).toMatchObject({
      version: 1,
      today: '2026-06-01',
      diary: 'early.yaml',
      cabinet: 'Two machines in the hall cupboard',
    });
    expect(answer.tasks.find(({ id }) => id === 'bay lower clean')).toMatchObject({
      p50: '2026-08-01',
      verdict: 'holds',
    });
    expect(answer.tasks.find(({ id }) => id === 'belts left check')).toMatchObject({ verdict: 'unknown' });
    expect(err).toBe('');
  });

  it('writes the dates as a calendar, and prints it', async () => {
    const { written, err } = await run({ ics: 'care.ics' });
    expect(err).toBe('wrote care.ics\n');
    expect(written.get('care.ics')).toMatch(
      /^BEGIN:VCALENDAR\r\n[\s\S]*SUMMARY:clean lower\r\n[\s\S]*END:VCALENDAR\r\n$/,
    );
    const { out } = await run({ ics: '-' });
    expect(out).toBe(written.get('care.ics'));
  });

  it('lists what wants care without a diary, says how to begin one, and exits 3', async () => {
    const { code, out } = await run({}, { files: { 'hall.yaml': hall } });
    expect(code).toBe(3);
    expect(out.replaceAll(/\s+/g, ' ')).toContain('There is no diary (hall.diary.yaml)');
    expect(out).toContain('--began');
  });

  it('enters what was done below the last entry, and leaves every other character alone', async () => {
    const { code, out, written } = await run({ done: 'filter exhaust replaced', on: '2026-11-20', reading: '21 Pa' });
    expect({ code, out }).toEqual({
      code: 0,
      out: 'hall.diary.yaml, done:\n  - { on: 2026-11-20, part: filter exhaust, did: changed, reading: 21 Pa }\n',
    });
    expect(written.get('hall.diary.yaml')).toBe(
      diary.replace('brush\n', 'brush\n  - { on: 2026-11-20, part: filter exhaust, did: changed, reading: 21 Pa }\n'),
    );
  });

  it('enters a job that ran, and begins a diary that is not there', async () => {
    const { code, written } = await run(
      { ran: 'bracket', on: '2026-11-01 to 2026-11-20', times: '4', failed: '1', began: '2026-01-01' },
      { files: { 'hall.yaml': hall } },
    );
    expect(code).toBe(0);
    expect(written.get('hall.diary.yaml')).toMatch(
      /began: 2026-01-01 .*\njobs:\n {2}- \{ on: 2026-11-01 to 2026-11-20, job: bracket, times: 4, failed: 1 \}\n$/,
    );
  });

  it.each<[Partial<CareOptions>, string]>([
    [
      { done: 'filter exhuast changed' },
      'nothing in this cabinet is called "filter exhuast"; did you mean "filter exhaust changed"?',
    ],
    [{ done: 'filter exhaust' }, 'does not end with what was done: changed, checked'],
    [{ done: 'filter exhaust changed', on: '20.11.2026' }, '--on: "20.11.2026" is no date'],
    [{ done: 'filter exhaust changed', on: '2026-12-24' }, '2026-12-24 has not come yet'],
    [{ done: 'filter exhaust changed', reading: '21' }, 'write 21 Pa if that is what is meant'],
    [{ ran: 'vase' }, 'there is no "for" here'],
    [{ ran: 'bracket', times: 'many' }, '--times: "many" is no whole number'],
    [{ reading: '21 Pa' }, '--reading says more of what --done or --ran enters'],
    [{ today: 'tomorrow' }, '--today: "tomorrow" is no date'],
    [{ done: 'filter exhaust changed', began: '2025-01-01' }, '--began is for a first entry'],
    [{ diary: 'none.yaml' }, 'cannot read none.yaml: there is no such file'],
  ])('exits 2 on %j and writes nothing', async (options, complaint) => {
    const { code, err, out, written } = await run(options);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(complaint);
    expect(written.size).toBe(0);
  });
});
