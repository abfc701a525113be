import { beforeAll, describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { textWidth } from '../text.ts';
import { type FaultsOptions, faults } from './faults.ts';

const hall = fixture('hall.yaml');
const guarded = `${hall}protection: { chain: { warm: { what: reset thermostat, bay: lower, opens-at: 43 °C } }, latch: yes }\n`;
const quick: FaultsOptions = { units: 'metric', samples: 0, workers: 1 };

async function run(options: Partial<FaultsOptions>, outside: Parameters<typeof fakeIo>[0] = {}) {
  const io = fakeIo({ files: { 'hall.yaml': hall }, ...outside });
  return { code: await faults('hall.yaml', { ...quick, ...options }, io), ...io.printed };
}

describe('stillair faults', () => {
  let usual: Awaited<ReturnType<typeof run>>;
  beforeAll(async () => {
    usual = await run({});
  }, 60_000);

  it('counts the faults, tells first what nothing catches, and says that the file names no protection', () => {
    const text = usual.out.replaceAll(/\s+/g, ' ');
    expect(text).toMatch(/^Two machines in the hall cupboard Of \d+ single faults \d+ make a finding worse\./);
    expect(text).toContain('The file does not say what protects the cabinet (protection:)');
    expect(text).toContain('no substitute for local codes');
    expect(usual.out).toMatch(/\nNothing in the file catches these\n/);
    expect(usual.out).not.toMatch(/Caught in time|what acts/);
    expect(usual.err).toBe('');
  });

  it('marks every source of a limit and lists it; promises nothing', () => {
    const marked = new Set([...usual.out.matchAll(/[≤≥][^[]*\[(\d+)\]/g)].map(([, number]) => number));
    const told = new Set([...usual.out.matchAll(/^ *\[(\d+)\] \S/gm)].map(([, number]) => number));
    expect(marked.size).toBeGreaterThan(1);
    expect(told).toEqual(marked);
    expect(usual.out).not.toMatch(/\b(?:un)?safe(?:ly|ty)?\b/i);
  });

  it.each([40, 80, 100])('fits a terminal of %d columns', async (columns) => {
    const { out } = await run({ all: true }, { columns });
    expect(out.split('\n').filter((line) => textWidth(line) > columns)).toEqual([]);
  });

  it('tells what acts, when, and how long before the limit is passed', async () => {
    const { out } = await run(
      {},
      { files: { 'hall.yaml': guarded.replace('title:', 'limits: { bay-air: 45 °C }\ntitle:') } },
    );
    const text = out.replaceAll(/\s+/g, ' ');
    expect(out).toMatch(/\nCaught in time\n/);
    expect(text).toMatch(/warm \(reset/);
    expect(text).toMatch(/ cuts at .*before/);
  });

  it('prints one JSON object, and nothing else, with --json', async () => {
    const { out, err } = await run({ json: true });
    const answer = JSON.parse(out) as {
      version: number;
      faults: { id: string; caught: string; effects: { limit: { source: string } }[] }[];
    };
    expect(answer).toMatchObject({
      version: 1,
      file: 'hall.yaml',
      days: ['usual'],
      stopped: false,
      samples: { asked: 0 },
    });
    expect(answer.faults.find(({ id }) => id === 'fan stopped/exhaust')).toBeDefined();
    expect(answer.faults.flatMap(({ effects }) => effects).every(({ limit }) => limit.source.length > 5)).toBe(true);
    expect(err).toBe('');
  });

  it('exits 2 and says which days there are', async () => {
    const { code, err, out } = await run({ day: 'wusual' });
    expect({ code, err, out }).toEqual({
      code: 2,
      err: 'stillair faults: there is no day "wusual"; did you mean usual?\n',
      out: '',
    });
  });

  it('exits 130 when stopped, and says what is missing', async () => {
    const stopping = new AbortController();
    stopping.abort();
    const { code, err } = await run({}, { stop: stopping.signal });
    expect(code).toBe(130);
    expect(err).toMatch(/^Stopped: (\d+) of \1 faults were not run/);
  });
});
