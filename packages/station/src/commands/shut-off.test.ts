import { describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { textWidth } from '../text.ts';
import { type ShutOffCommandOptions, shutOff } from './shut-off.ts';

const hall = fixture('hall.yaml');

async function run(options: Partial<ShutOffCommandOptions> = {}, outside: Parameters<typeof fakeIo>[0] = {}) {
  const io = fakeIo({ files: { 'hall.yaml': hall }, ...outside });
  return { code: await shutOff('hall.yaml', { units: 'metric', ...options }, io), ...io.printed };
}

describe('stillair shut-off', () => {
  it('gives the time, the time after the start, and the rule for a switch, with limits and their sources', async () => {
    const { code, out, err } = await run();
    const text = out.replaceAll(/\s+/g, ' ');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(text).toMatch(/below 45 °C \(common practice, 3 K below [^)]*48 °C, EN ISO 13732-1 \(2008\), from memory\)/);
    expect(text).toContain('and the hot end below 50 °C (common practice, no printed source)');
    expect(text).toMatch(/left\.(?:bracket)? 15:00 100 °C \d+ min \d+ min \d+ min 15:\d\d 6 h \d+ min/);
    expect(text).toMatch(/left 8 W [\d.]+ W \d+ s \d+ W [\d.]+ W \d+ min/);
    expect(out).not.toMatch(/\b(?:un)?safe(?:ly|ty)?\b/i);
  });

  it.each([40, 80, 100])('fits a terminal of %d columns', async (columns) => {
    const { out } = await run({}, { columns });
    expect(out.split('\n').filter((line) => textWidth(line) > columns)).toEqual([]);
  });

  it('prints one JSON object with --json, in SI', async () => {
    const answer = JSON.parse((await run({ json: true })).out) as {
      version: number;
      jobs: { off: number; bed: { first: number } }[];
    };
    expect(answer).toMatchObject({ version: 1, file: 'hall.yaml', days: ['usual'] });
    expect(answer.jobs[0]!.off).toBeGreaterThan(15 * 3600);
    expect(answer.jobs[0]!.bed.first).toBeCloseTo(373.15, 0);
  });

  it('exits 3 and says so when a bed is not seen to cool down', async () => {
    const warm = hall.replace('temperature: 21 °C', 'temperature: 46 °C, held: yes');
    const { code, out } = await run({}, { files: { 'hall.yaml': warm } });
    expect(code).toBe(3);
    expect(out.replaceAll(/\s+/g, ' ')).toContain('Leave its power on until somebody has looked.');
  });

  it('takes the jobs that wait, each alone, and their job files', async () => {
    const queued = `${hall}queue:\n  from: 2026-11-30 7:00\n  jobs: { hooks: { material: PLA, for: 2 h }, vase: { material: ABS, job-file: vase.gcode } }\n`;
    const files = {
      'hall.yaml': queued,
      'vase.gcode': 'M83\nM140 S100\nM104 S245\nG1 X10 Y10 Z0.2 F6000\nG1 X110 E900 F1\nM104 S0\n',
    };
    const { code, out, err } = await run({ queue: true }, { files });
    expect({ code, err }).toEqual({ code: 0, err: '' });
    const text = out.replaceAll(/\s+/g, ' ');
    expect(text).toContain('Each job that waits is begun alone at 9:00');
    expect(text).toMatch(/left\.vase \d+:\d+ 100 °C/);
    expect(await run({ queue: true, day: 'usual' }, { files })).toMatchObject({ code: 2 });
    expect((await run({ queue: true })).err).toContain('there is no job that waits in ');
  });

  it('exits 2 and says which days there are', async () => {
    expect(await run({ day: 'wusual' })).toMatchObject({
      code: 2,
      err: 'stillair shut-off: there is no day "wusual"; did you mean usual?\n',
    });
  });
});
