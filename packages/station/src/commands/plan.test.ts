import type { Plan } from '@stillair/engine';
import { beforeAll, describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { textWidth } from '../text.ts';
import { type PlanCommandOptions, planCommand } from './plan.ts';

const hall = fixture('hall.yaml');
const queued = `${hall}queue:
  from: 2026-11-30 7:00
  length: 2 d
  step: 15 min
  present: { Mon to Fri: 8:00 to 18:00 }
  jobs:
    hooks: { material: PLA, for: 2 h, copies: 2, due: Tue 9:00 }
    vase: { material: PETG, for: 3 h, earliest: Tue 8:30 }
`;

async function run(options: Partial<PlanCommandOptions> = {}, outside: Parameters<typeof fakeIo>[0] = {}) {
  const io = fakeIo({ files: { 'hall.yaml': hall, 'queued.yaml': queued }, ...outside });
  const code = await planCommand('queued.yaml', { units: 'metric', workers: 1, samples: 0, ...options }, io);
  return { code, ...io.printed, written: io.written };
}

describe('stillair plan', () => {
  let usual: Awaited<ReturnType<typeof run>>;
  beforeAll(async () => {
    usual = await run();
  }, 60_000);

  it('tells the week as strips, each start with what keeps it there, and what the simulated week breaks', () => {
    const text = usual.out.replaceAll(/\s+/g, ' ');
    expect(usual.err).toBe('');
    expect(text).toContain(
      'From Mon 30 Nov 7:00 to Wed 2 Dec 7:00; first deadlines kept, then done early. No deadline is missed.',
    );
    expect(usual.out).toMatch(/^Mon 30 Nov {2}0 +6 +12 +18$/m);
    expect(usual.out).toMatch(/^left +·+a{4}/m);
    expect(text).toContain('vase: until Tue 8:30 it may not begin before');
    expect(text).toContain('hooks: until Mon 8:00 nobody is there who starts it and watches its first layer');
    expect(text).toMatch(
      /The week as planned was simulated and held against the limits of heat, power and sound: \d+ hold/,
    );
    expect(usual.out).not.toMatch(/\b(?:un)?safe(?:ly|ty)?\b/i);
  });

  it.each([40, 80, 100])('fits a terminal of %d columns', async (columns) => {
    const { out } = await run({}, { columns });
    expect(out.split('\n').filter((line) => textWidth(line) > columns)).toEqual([]);
  });

  it('writes picture and calendar, and takes its own JSON as what has started', async () => {
    const { written } = await run({ svg: 'plan.svg', ics: 'plan.ics' });
    expect(written.get('plan.svg')).toMatch(/^<svg /);
    expect(written.get('plan.ics')).toMatch(/^BEGIN:VCALENDAR\r\n/);
    const { out } = await run({ json: true });
    const first = JSON.parse(out) as { version: number; jobs: { id: string; start: number; how: string }[] };
    expect(first).toMatchObject({ version: 1, file: 'queued.yaml', found: 'yes' });
    const files = { 'queued.yaml': queued, 'before.json': out };
    const again = JSON.parse(
      (await run({ json: true, keep: 'before.json', now: 'Mon 9:00' }, { files })).out,
    ) as typeof first;
    expect(again.jobs[0]).toMatchObject({ id: first.jobs[0]!.id, start: first.jobs[0]!.start, how: 'kept' });
  });

  it.each([
    [{ now: 'noon' }, 'stillair plan: --now: "noon" does not say a day and a time; write both, with a space between\n'],
    [{ now: 'Sun 9:00' }, 'stillair plan: --now: Sun 9:00 is after the plan, which ends at Wed 7:00\n'],
    [{ keep: 'none.json' }, 'stillair plan: cannot read none.json: there is no such file\n'],
    [{ keep: 'hall.yaml' }, 'stillair plan: hall.yaml is no JSON: give what stillair plan --json printed\n'],
    [{ svg: '/nowhere/plan.svg' }, 'stillair plan: cannot write /nowhere/plan.svg: its folder does not exist\n'],
  ] as const)('exits 2 on %j and says why', async (options, err) => {
    expect(await run(options)).toMatchObject({ code: 2, err });
  });

  it('takes from job files what the queue names, and complains of one that is not there', async () => {
    const filed = queued.replace(
      'vase: { material: PETG, for: 3 h,',
      'vase: { material: PETG, job-file: vases/tall.gcode,',
    );
    const gcode = 'M83\nM104 S240\nG1 X10 Y10 Z0.2 F6000\nG1 X110 Y40 E900 F1\nM104 S0\n';
    const good = await run({ json: true }, { files: { 'queued.yaml': filed, 'vases/tall.gcode': gcode } });
    const { jobs } = JSON.parse(good.out) as { jobs: { id: string; start: number; end: number }[] };
    const vase = jobs.find(({ id }) => id === 'vase')!;
    // 104.4 mm at 1 mm a minute.
    expect((vase.end - vase.start) / 60).toBeCloseTo(104.4, 0);
    const bad = await run({}, { files: { 'queued.yaml': filed } });
    expect(bad).toMatchObject({ code: 2, out: '' });
    expect(bad.err).toContain('error  job-file-missing');
    expect(bad.err).toContain('1 fault in queued.yaml or its job files; nothing was computed.');
  }, 60_000);

  it('gives the week its bands when samples are asked for, in words, steps and picture', async () => {
    const { out, written } = await run({ samples: 8, svg: 'week.svg' });
    const text = out.replaceAll(/\s+/g, ' ');
    expect(usual.out.replaceAll(/\s+/g, ' ')).toContain('Middle values only: --samples 24 gives bands.');
    expect(text).toContain('Bands from the 10th to the 90th percentile of 8 samples.');
    expect(out).toMatch(/^air p90 +[▁▂▃▄▅▆▇█]/m);
    expect(written.get('week.svg')).toContain('<polygon ');
    const { checks, hours, samples } = JSON.parse((await run({ samples: 8, json: true })).out) as Plan;
    expect(samples).toEqual({ asked: 8, ran: 8, faults: [] });
    const air = checks.find(({ id }) => id.startsWith('heat/print-air-high/'))!;
    expect(air.p10! < air.p50! && air.p50! < air.p90!).toBe(true);
    expect(hours.every(({ bands }) => bands !== undefined)).toBe(true);
  }, 60_000);

  it('exits 2 when nothing waits', async () => {
    const { code, err } = await run({}, { files: { 'queued.yaml': hall } });
    expect(code).toBe(2);
    expect(err).toContain('there is no job that waits in queued.yaml');
  });

  it('exits 1 when a deadline is missed, and names the demands that cannot hold together', async () => {
    const late = queued.replace('due: Tue 9:00', 'due: Mon 11:00');
    const { code, out } = await run({}, { files: { 'queued.yaml': late } });
    expect(code).toBe(1);
    expect(out.replaceAll(/\s+/g, ' ')).toMatch(
      /These \d demands cannot all hold, so that a deadline is missed; without any one of them the others can; no fewer conflict: - hooks is printed/,
    );
  });

  it('exits 130 when stopped', async () => {
    const stopping = new AbortController();
    stopping.abort();
    expect(await run({}, { stop: stopping.signal })).toMatchObject({ code: 130 });
  });
});
