import { beforeAll, describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { textWidth } from '../text.ts';
import { type CompareOptions, compare } from './compare.ts';

async function run(options: Partial<CompareOptions>, outside: Parameters<typeof fakeIo>[0] = {}) {
  const io = fakeIo({ files: { 'hall.yaml': fixture('hall.yaml') }, ...outside });
  const code = await compare('hall.yaml', { units: 'metric', samples: 4, workers: 1, ...options }, io);
  return { code, ...io.printed };
}

describe('stillair compare', () => {
  let usual: Awaited<ReturnType<typeof run>>;
  beforeAll(async () => {
    usual = await run({});
  });

  it('exits as the cabinet stands, names the options by letters with what they cost, and tells who is best for what', () => {
    expect(usual.code).toBe(1);
    expect(usual.out).toMatch(
      /\n {2}A {2}the cabinet as it stands\n {2}B {2}strong-fan: a stronger fan, to buy: \d+ to \d+ EUR\n/,
    );
    expect(usual.out).toMatch(/\n([A-C](, [A-C])*( and [A-C])? .*meets? every limit|No option meets every limit; )/);
    for (const want of ['cool', 'still', 'clean', 'quiet', 'cheap'])
      expect(usual.out).toMatch(new RegExp(`\n {2}${want} `));
    expect(usual.out).toMatch(/\nwhat +A +B +C {2}limit\n/);
  });

  it('fits 80 columns, and tells every source that it marks', () => {
    for (const line of usual.out.split('\n')) expect(textWidth(line)).toBeLessThanOrEqual(80);
    expect(usual.out).toMatch(/\n {1,2}\[1\] \S/);
  });

  it('tells the worst of each question, and every finding only with --all', async () => {
    const all = await run({ all: true });
    expect(all.out.length).toBeGreaterThan(usual.out.length);
    expect(usual.out).toMatch(/Every finding of every option, \d+ rows: --all\n$/);
    expect(all.out).not.toMatch(/--all/);
  });

  it('prints one JSON object, and nothing else, with --json', async () => {
    const { out } = await run({ json: true, samples: 2 });
    const answer = JSON.parse(out) as { sheets: { id: string }[] };
    expect(answer).toMatchObject({ version: 2, file: 'hall.yaml', stopped: false });
    expect(answer.sheets.map(({ id }) => id)).toEqual(['as it stands', 'strong-fan', 'large-filter']);
  });

  it('exits 130 when stopped, and says so', async () => {
    const stopping = new AbortController();
    stopping.abort();
    const { code, err } = await run({}, { stop: stopping.signal });
    expect(code).toBe(130);
    expect(err).toMatch(/^Stopped: /);
  });
});
