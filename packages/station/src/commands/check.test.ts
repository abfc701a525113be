import { beforeAll, describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { textWidth } from '../text.ts';
import { tradeNames } from '../trade-names.ts';
import { type CheckOptions, check } from './check.ts';

const hall = fixture('hall.yaml');
const quick: CheckOptions = { units: 'metric', samples: 4, workers: 1 };
const escapes = new RegExp(`${String.fromCharCode(27)}\\[\\d+m`, 'g');

async function run(options: Partial<CheckOptions>, outside: Parameters<typeof fakeIo>[0] = {}, file = 'hall.yaml') {
  const io = fakeIo({ files: { 'hall.yaml': hall }, ...outside });
  return { code: await check(file, { ...quick, ...options }, io), ...io.printed };
}

describe('stillair check', () => {
  let usual: Awaited<ReturnType<typeof run>>;
  beforeAll(async () => {
    usual = await run({});
  });

  it('exits 1 when something fails, and says what, by how much, whose limit it is, and what was found to mend it', () => {
    expect(usual.code).toBe(1);
    expect(usual.out).toMatch(/^Two machines in the hall cupboard\nOf \d+ checks /);
    expect(usual.out).toMatch(/\n1\. FAILS {2}\S/);
    expect(usual.out).toMatch(/at (most|least) [\d.]+ \S+\n/);
    expect(usual.out).toMatch(/\n {3}limit: /);
    expect(usual.out).toMatch(/\n {3}to mend: [^(]*\(then (holds|tight)\)/);
    expect(usual.err).toBe('');
  });

  it('says what matters in at most five remarks, and where the rest is', () => {
    expect(usual.out.match(/^\d+\. /gm)?.length).toBeLessThanOrEqual(5);
    expect(usual.out).toMatch(/\n {2}stillair explain hall\.yaml [a-z-]+\/[a-z0-9-]+\/\S+\/(?:usual|standing)\n$/);
  });

  it('tells the source of a limit once for each cause, and two findings of it at most', () => {
    for (const remark of usual.out.split(/\n(?=\d+\. )/).slice(1)) {
      const text = remark.replaceAll(/\s+/g, ' ');
      const sources = text.split(' limit: ').slice(1);
      expect(new Set(sources).size, remark).toBe(sources.length);
      // What cannot be told names its missing key in place of a number and its limit.
      expect((text.match(/at (most|least) /g) ?? []).length, remark).toBeLessThanOrEqual(2);
    }
  });

  it('says what is assumed, and that the bands come from it', () => {
    const text = usual.out.replaceAll(/\s+/g, ' ');
    expect(text).toMatch(/ \d+ numbers the file does not give are assumed and \d+ more scatter; the bands /);
  });

  it.each([40, 80, 100])('fits a terminal of %d columns', async (columns) => {
    const { out } = await run({ all: true, samples: 0 }, { columns });
    const wide = out.split('\n').filter((line) => textWidth(line) > columns && !line.startsWith('  stillair '));
    expect(wide).toEqual([]);
  });

  it('says the same with colour as without', async () => {
    const coloured = await run({}, { colour: true });
    expect(coloured.out).not.toBe(usual.out);
    expect(coloured.out.replaceAll(escapes, '')).toBe(usual.out);
  });

  it('never calls a cabinet what only its checks can be called', async () => {
    const { out } = await run({ all: true, samples: 0 });
    expect(out).not.toMatch(/\b(?:un)?safe(?:ly|ty)?\b/i);
  });

  it('lists every finding with --all, and every source that it marks', async () => {
    const { out } = await run({ all: true });
    const marked = new Set([...out.matchAll(/[≤≥].*\[(\d+)\]/g)].map(([, number]) => number));
    const told = new Set([...out.matchAll(/^ *\[(\d+)\] \S/gm)].map(([, number]) => number));
    expect(marked.size).toBeGreaterThan(3);
    expect(told).toEqual(marked);
  });

  it('prints one JSON object, and nothing else, with --json', async () => {
    const { out, err, code } = await run({ json: true });
    const answer = JSON.parse(out) as { version: number; findings: { id: string; trade: string; verdict: string }[] };
    expect(answer).toMatchObject({ version: 1, file: 'hall.yaml', stopped: false, samples: { asked: 4, ran: 4 } });
    expect(answer).toMatchObject({ warnings: [], spread: { assumed: expect.any(Number) } });
    expect(answer.findings.filter(({ id }) => !/^[a-z-]+\/[a-z0-9-]+\/[^/]+\/(?:usual|standing)$/.test(id))).toEqual(
      [],
    );
    expect(new Set(answer.findings.map(({ trade }) => trade))).toEqual(new Set(tradeNames));
    expect(answer.findings.some(({ verdict }) => verdict === 'fails')).toBe(code === 1);
    expect(err).toBe('');
  });

  it('judges one trade alone with --trade', async () => {
    const { out } = await run({ json: true, samples: 0, trade: 'draught' });
    const { findings } = JSON.parse(out) as { findings: { trade: string }[] };
    expect(new Set(findings.map(({ trade }) => trade))).toEqual(new Set(['draught']));
  });

  it.each([
    [{ trade: 'drought' }, 'stillair check: there is no trade "drought"; did you mean draught?\n'],
    [{ day: 'wusual' }, 'stillair check: there is no day "wusual"; did you mean usual?\n'],
    [{ day: 'sunday' }, 'stillair check: there is no day "sunday"; there are: usual, standing\n'],
  ])('exits 2 on %j and says what there is', async (options, message) => {
    const { code, err, out } = await run({ samples: 0, ...options });
    expect({ code, err, out }).toEqual({ code: 2, err: message, out: '' });
  });

  it('exits 2, points at line and column, and computes nothing when the file is wrong', async () => {
    const { code, err, out } = await run({}, { files: { 'hall.yaml': hall.replace('80 mm round', '80 kg round') } });
    expect(code).toBe(2);
    expect(err).toMatch(/^hall\.yaml:10:\d+ {2}error {2}[a-z-]+\n/);
    expect(err).toMatch(/\n1 fault in hall\.yaml; nothing was computed\.\n$/);
    expect(out).toBe('');
  });

  it('exits 2 when there is no such file', async () => {
    const { code, err } = await run({}, {}, 'hal.yaml');
    expect({ code, err }).toEqual({ code: 2, err: 'stillair check: cannot read hal.yaml: there is no such file\n' });
  });

  it('exits 130 when stopped, and says that what it prints is partial', async () => {
    const stopping = new AbortController();
    stopping.abort();
    const { code, err, out } = await run({}, { stop: stopping.signal });
    expect(code).toBe(130);
    expect(err).toBe('Stopped: 0 of 4 samples ran; bands and remedies are partial or missing.\n');
    expect(out).toContain('Two machines in the hall cupboard');
  });

  it('property: gives the same text twice', async () => {
    expect((await run({})).out).toBe(usual.out);
  });
});
