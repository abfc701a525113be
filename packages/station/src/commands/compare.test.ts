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
    expect(usual.out).toMatch(/\n +A +B +C\nlimits broken\n +\d+ x/);
  });

  it('fits 80 columns, and tells every source that it marks', () => {
    for (const line of usual.out.split('\n')) expect(textWidth(line)).toBeLessThanOrEqual(80);
    expect(usual.out).toMatch(/\n {1,2}\[1\] \S/);
  });

  it('tells the worst of each question, and every finding only with --all', async () => {
    const all = await run({ all: true });
    expect(all.out.length).toBeGreaterThan(usual.out.length);
    expect(usual.out).toMatch(/\nEvery finding, \d+ rows: --all\n$/);
    expect(all.out).not.toMatch(/--all/);
  });

  it('tells bands and chances only with --bands or --all', async () => {
    expect(usual.out).not.toMatch(/^90 % /m);
    for (const options of [{ bands: true }, { all: true }]) {
      const { out } = await run({ ...options, samples: 10 });
      expect(out).toMatch(/^90 % .*\n10 % .*\nkept .* %$/m);
    }
  });

  it('says of a part without a price that it has none, and does not call it cheapest', async () => {
    const warmer = 'heats.warmer: { what: heater, bay: upper, power: 150 W, holds: 38 °C }';
    const text = `${fixture('hall.yaml')}  warm: { title: a heater, edits: [{ add: { ${warmer} } }] }\n`;
    const { out } = await run({ samples: 2 }, { files: { 'hall.yaml': text } });
    expect(out).toMatch(/\n {2}D {2}warm: a heater, price not known\n/);
    expect(out).toMatch(/\n {2}cheap {2}A 100 % /);
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
