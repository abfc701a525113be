import type { QueueCosts } from '@stillair/engine';
import { describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { textWidth } from '../text.ts';
import { type CostOptions, cost } from './cost.ts';

const hall = fixture('hall.yaml');
const diary = `diary: 1
began: 2026-01-01
jobs: [{ on: 2026-11-01 to 2026-11-20, job: bracket, times: 8, failed: 1 }]
`;
const gcode = 'M83\nM104 S245\nM140 S100\nG1 X10 Y10 Z0.2 F6000\nG1 X110 Y40 E900 F1200\nM104 S0\n';
const files = { 'hall.yaml': hall, 'hall.diary.yaml': diary, 'clip.gcode': gcode };

async function run(options: Partial<CostOptions> = {}, jobFile?: string, outside: Parameters<typeof fakeIo>[0] = {}) {
  const io = fakeIo({ files, ...outside });
  const code = await cost('hall.yaml', jobFile, { units: 'metric', samples: 0, ...options }, io);
  return { code, ...io.printed, written: io.written };
}

describe('stillair cost', () => {
  it('tells one job piece by piece, what is not counted, and that the cost trade says the same', async () => {
    const { code, out, err } = await run();
    const text = out.replaceAll(/\s+/g, ' ');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(text).toMatch(/bracket on left, [\d.]+ g of ABS in 6 h, on the day usual\./);
    expect(text).toMatch(/one good job [\d.]+ Hands take/);
    expect(text).toMatch(/as the cost trade says \(cost\/print-cost\/left\.bracket\/usual\)/);
    expect(text).toContain('invented, typical, and never a quote');
    expect(out).not.toMatch(/pay-?back/i);
  });

  it.each([40, 80, 100])('fits a terminal of %d columns', async (columns) => {
    for (const options of [{}, { month: '2026-11' }]) {
      const { out } = await run({ ...options, samples: 8 }, undefined, { columns });
      expect(out.split('\n').filter((line) => textWidth(line) > columns)).toEqual([]);
    }
  });

  it('reckons a job file on its machine, for each of its parts', async () => {
    const { code, out } = await run({ parts: '4' }, 'clip.gcode');
    expect(code).toBe(0);
    expect(out).toMatch(/^clip on left, /m);
    expect(out).toMatch(/^one good part of 4 /m);
    expect(out).toContain('only tails of spools');
  });

  it('tells a month of the diary', async () => {
    const { code, out } = await run({ month: '2026-11' });
    const text = out.replaceAll(/\s+/g, ' ');
    expect(code).toBe(0);
    expect(text).toContain(
      '2026-11-01 to 2026-11-28 by hall.diary.yaml: 8 jobs, of which 1 failed, in 2 d of printing (8 bracket).',
    );
    expect(out).toMatch(/^each job that did not fail /m);
  });

  it('tells a planned week: each job, all of them, and a month of such weeks; by an earlier plan too', async () => {
    const queued = `${hall}queue:
  from: 2026-11-30 7:00
  length: 2 d
  step: 30 min
  present: { daily: 8:00 to 18:00 }
  jobs:
    hooks: { material: ABS, for: 2 h, copies: 2 }
    vase: { material: ABS, job-file: clip.gcode }
`;
    const outside = { files: { ...files, 'hall.yaml': queued } };
    const { code, out, err } = await run({ queue: true, samples: 8 }, undefined, outside);
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^left\.hooks, .* Mon 10:00 /m);
    expect(out).toMatch(/^the week +[\d.]+ +[\d.]+ to [\d.]+$/m);
    expect(out).toMatch(/^a month of such weeks +[\d.]+/m);
    const told = JSON.parse(
      (await run({ queue: true, json: true, csv: 'week.csv' }, undefined, outside)).out,
    ) as QueueCosts;
    expect(told).toMatchObject({ version: 1, file: 'hall.yaml', origin: 20_787 });
    expect(told.jobs.map(({ job }) => job).sort()).toEqual(['hooks', 'hooks (2)', 'vase']);
    const starts = told.jobs.map(({ job: id, machine, start }) => ({ id, machine, start }));
    const earlier = JSON.stringify({ version: 1, jobs: starts, queue: { origin: told.origin } });
    const again = await run({ plan: 'week.json', csv: '-' }, undefined, {
      files: { ...outside.files, 'week.json': earlier },
    });
    expect(again.out.split('\r\n')[0]).toBe('job,machine,material,starts,what,value [EUR],p10,p50,p90');
    expect(again.out).toMatch(/^hooks,left,ABS,2026-11-30 10:00,filament,[\d.]+,,,\r?$/m);
    expect(again.out).toContain(`,,,,total,${Number(told.total.value!.toPrecision(8))},`);
  }, 60_000);

  it('prints JSON and CSV, and writes a file', async () => {
    const { out } = await run({ json: true });
    expect(JSON.parse(out)).toMatchObject({
      version: 1,
      currency: 'EUR',
      file: 'hall.yaml',
      parts: [{ job: 'bracket' }],
    });
    const month = await run({ json: true, month: '2026-11' });
    expect(JSON.parse(month.out)).toMatchObject({ version: 1, month: '2026-11', jobs: 8, diary: 'hall.diary.yaml' });
    const csv = await run({ csv: '-' });
    expect(csv.out.split('\r\n')[0]).toBe('job,machine,material,day,what,value [EUR],p10,p50,p90,a part [EUR]');
    expect(csv.out).toMatch(/^bracket,left,ABS,usual,total,[\d.]+,,,,[\d.]+\r?$/m);
    const both = await run({ json: true, csv: 'parts.csv' });
    expect(JSON.parse(both.out)).toMatchObject({ parts: [{ job: 'bracket' }] });
    expect(both.err).toBe('wrote parts.csv\n');
    expect(both.written.get('parts.csv')).toBe(csv.out.replace(/\r?\n$/, '\r\n'));
    const written = await run({ csv: 'november.csv', month: '2026-11' });
    expect(written.out).toBe('wrote november.csv\n');
    expect(written.written.get('november.csv')).toMatch(/^month,what,value \[EUR\],p10,p50,p90\r\n2026-11,filament,/);
  });

  it.each<[Partial<CostOptions>, string | undefined, string]>([
    [{ job: 'brakcet' }, undefined, 'there is no job "brakcet"; did you mean bracket?'],
    [{ day: 'usaul' }, undefined, 'there is no day "usaul"; did you mean usual?'],
    [{ queue: true }, undefined, 'there is no job that waits in hall.yaml: give it a queue:'],
    [{ queue: true, month: '2026-11' }, undefined, '--queue is of the whole queue: it goes without --month'],
    [{ plan: 'week.json' }, 'clip.gcode', '--plan is of the jobs that wait in the file'],
    [{ month: 'November' }, undefined, '--month: "November" is no month'],
    [{ month: '2026-13' }, undefined, '--month: "2026-13" is no month'],
    [{ month: '2026-11', job: 'bracket' }, undefined, '--month is of the whole diary'],
    [{ machine: 'left' }, undefined, '--machine says how a job file is printed, and none is given'],
    [{ machine: 'lfet' }, 'clip.gcode', 'there is no machine "lfet"; did you mean left?'],
    [{ job: 'bracket' }, 'clip.gcode', 'one of the two'],
    [{ parts: 'four' }, undefined, '--parts: "four" is no whole number'],
    [{}, 'none.gcode', 'cannot read none.gcode'],
  ])('exits 2 on %j %s', async (options, jobFile, complaint) => {
    const { code, err, out } = await run(options, jobFile);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(complaint);
  });

  it('needs a diary for a month', async () => {
    const { code, err } = await run({ month: '2026-11' }, undefined, { files: { 'hall.yaml': hall } });
    expect({ code, err }).toEqual({
      code: 2,
      err: 'stillair cost: cannot read hall.diary.yaml: there is no such file\n',
    });
  });
});
