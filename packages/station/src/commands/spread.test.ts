import { beforeAll, describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { textWidth } from '../text.ts';
import { type SpreadOptions, spread } from './spread.ts';

const hall = fixture('hall.yaml');
const quick: SpreadOptions = { units: 'metric', samples: 16, seed: 1, shares: 0, workers: 1 };

async function run(options: Partial<SpreadOptions>, outside: Parameters<typeof fakeIo>[0] = {}) {
  const io = fakeIo({ files: { 'hall.yaml': hall }, ...outside });
  return { code: await spread('hall.yaml', { ...quick, ...options }, io), ...io.printed, written: io.written };
}

describe('stillair spread', () => {
  let usual: Awaited<ReturnType<typeof run>>;
  beforeAll(async () => {
    usual = await run({ shares: 2, svg: 'sure.svg' });
  }, 60_000);

  it('leads with what the options change, then open verdicts, then what to measure', () => {
    const text = usual.out.replaceAll(/\s+/g, ' ');
    expect(text).toMatch(/^Two machines in the hall cupboard 16 samples of \d+ uncertain inputs\./);
    const places = ['What the options change', 'verdicts that are', 'Shares of the variance', 'What to measure'].map(
      (head) => usual.out.toLowerCase().indexOf(head.toLowerCase()),
    );
    expect(places.every((place) => place > 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    expect(text).toMatch(/strong-fan: a stronger fan .* (?:better|worse) in/);
    expect(usual.code).toBe(1);
    expect(usual.err).toBe('wrote sure.svg\n');
    expect(usual.written.get('sure.svg')).toMatch(/^<svg .*Two machines/s);
  });

  it('marks every source of a limit and lists it; promises nothing', () => {
    const marked = new Set([...usual.out.matchAll(/[≤≥][^[]*\[(\d+)\]/g)].map(([, number]) => number));
    const listed = new Set([...usual.out.matchAll(/^ *\[(\d+)\] \S/gm)].map(([, number]) => number));
    expect(marked.size).toBeGreaterThan(0);
    expect(listed).toEqual(marked);
    expect(usual.out).toContain('not of what the model leaves out');
    expect(usual.out.replaceAll(/\s+/g, ' ')).not.toMatch(/\b(?:un)?[sS]afe(?:ly|ty)?\b|NaN|undefined/);
  });

  it('prints one JSON object with --json, of one option and one day when asked', async () => {
    const { out, err } = await run({ json: true, option: 'large-filter', day: 'usual', samples: 8 });
    const answer = JSON.parse(out) as { options: { id: string }[]; findings: { id: string }[] };
    expect(answer).toMatchObject({
      version: 1,
      file: 'hall.yaml',
      cabinet: 'Two machines in the hall cupboard',
      days: ['usual'],
      samples: { asked: 8, ran: 8 },
      stopped: false,
    });
    expect(answer.options.map(({ id }) => id)).toEqual(['as it stands', 'large-filter']);
    expect(err).toBe('');
  }, 30_000);

  it.each([40, 100])(
    'fits a terminal of %d columns',
    async (columns) => {
      const { out } = await run({ option: 'strong-fan' }, { columns });
      expect(out.split('\n').filter((line) => textWidth(line) > columns)).toEqual([]);
    },
    30_000,
  );

  it('exits 2 and says which days and options there are, and where it cannot write', async () => {
    expect(await run({ day: 'usul' })).toMatchObject({
      code: 2,
      err: 'stillair spread: there is no day "usul"; did you mean usual?\n',
      out: '',
    });
    expect((await run({ option: 'strong-fun' })).err).toContain('did you mean strong-fan?');
    const lost = await run({ samples: 0, svg: '/nowhere/a.svg' });
    expect(lost.code).toBe(2);
    expect(lost.err).toContain('cannot write /nowhere/a.svg: its folder does not exist');
  });

  it('says that it was stopped, and tells what ran', async () => {
    const stop = new AbortController();
    stop.abort();
    const { code, err } = await run({}, { stop: stop.signal });
    expect(code).toBe(130);
    expect(err).toContain('Stopped: 0 of 16 samples ran');
  });
});
