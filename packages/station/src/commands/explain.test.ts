import { describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { textWidth } from '../text.ts';
import { explain } from './explain.ts';

async function run(finding: string, samples = 0) {
  const io = fakeIo({ files: { 'hall.yaml': fixture('hall.yaml') } });
  return { code: await explain('hall.yaml', finding, { units: 'metric', samples, workers: 1 }, io), ...io.printed };
}

describe('stillair explain', () => {
  it('tells one finding by its id: numbers, limit, steps with formula and source, where inputs came from, what was tried', async () => {
    const { code, out } = await run('draught/air-speed/left.bracket/usual', 24);
    expect(code).toBe(1);
    expect(out).toMatch(/^air speed at the print\ndraught\/air-speed\/left\.bracket\/usual\n\nFAILS {2}[\d.]+ m\/s/);
    expect(out).toMatch(/\nlimit {2}at most [\d.]+ m\/s: /);
    expect(out).toMatch(/\n {2}1\. \S/);
    expect(out).toMatch(/\n {7}source: \S/);
    expect(out).toMatch(/\n {7}from: .*: (assumed|catalogue|derived|hall\.yaml:\d+)/);
    expect(out).toMatch(/\n\nWhat its spread comes from\n {1,4}\d+ % {2}\S/);
    expect(out).toMatch(/\n\nWhat was tried\n(holds|tight|FAILS)/);
    for (const line of out.split('\n')) expect(textWidth(line)).toBeLessThanOrEqual(80);
  });

  it('points at the line of the file where a given input stands', async () => {
    const { out } = await run('air-speed');
    expect(out).toMatch(/hall\.yaml:\d+ {2}\S/);
  });

  it('takes whole pieces of an id that name one finding only', async () => {
    expect((await run('air-speed')).out).toContain('draught/air-speed/left.bracket/usual');
  });

  it('exits 2 and lists them when the pieces name several', async () => {
    const { code, err, out } = await run('left.bracket');
    expect(code).toBe(2);
    expect(err).toMatch(/^stillair explain: "left\.bracket" names \d+ findings:\n {2}\S+\/left\.bracket\/usual\n/);
    expect(out).toBe('');
  });

  it('exits 2 and offers the nearest ids when there is none', async () => {
    const { code, err } = await run('draught/air-sped/left.bracket/usual');
    expect(code).toBe(2);
    expect(err).toMatch(
      /^stillair explain: there is no finding ".*"; near it are:\n {2}draught\/air-speed\/left\.bracket\/usual\n/,
    );
  });
});
