import { beforeAll, describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { textWidth } from '../text.ts';
import { type SearchOptions, search } from './search.ts';

const hall = `${fixture('hall.yaml')}
# What may change.
search: { free: { air.exhaust.parts.1.fan: [axial 92 mm strong, axial 120 mm quiet], air.intake.hole: [60 mm round, 100 mm round] } }
`;
const quick: SearchOptions = { want: ['quiet'], most: 400, seed: 1, units: 'metric', samples: 0, workers: 1 };

async function run(options: Partial<SearchOptions>, outside: Parameters<typeof fakeIo>[0] = {}) {
  const io = fakeIo({ files: { 'hall.yaml': hall }, ...outside });
  return { code: await search('hall.yaml', { ...quick, ...options }, io), ...io.printed, io };
}

describe('stillair search', () => {
  let usual: Awaited<ReturnType<typeof run>>;
  beforeAll(async () => {
    usual = await run({ want: ['quiet', 'cheap'] });
  }, 60_000);

  it('says what was run, what may change, what the winner comes to and what binds', () => {
    const text = usual.out.replaceAll(/\s+/g, ' ');
    expect(text).toMatch(/^Two machines in the hall cupboard /);
    expect(text).toContain(
      '9 of 9 variants were run (seed 1). All variants were run, so nothing better is among them.',
    );
    expect(text).toContain('no substitute for local codes');
    expect(usual.out).toMatch(/\nWhat may change\n {2}air\.exhaust\.parts\.1\.fan: axial/);
    expect(usual.out).toMatch(/\nWhat it comes to\n/);
    expect(usual.out).not.toContain('this was assumed');
    expect(usual.out).not.toMatch(/\b(?:un)?safe(?:ly|ty)?\b|undefined|NaN/i);
    expect(usual.code).toBe(1);
  });

  it.each([40, 80, 100])('fits a terminal of %d columns', async (columns) => {
    const { out } = await run({}, { columns });
    expect(out.split('\n').filter((line) => textWidth(line) > columns)).toEqual([]);
  });

  it('writes the winner as an option, keeps all else, and the option can be compared', async () => {
    const { io, err } = await run({ want: ['cool'], write: 'airy' });
    const written = io.written.get('hall.yaml');
    expect(err).toContain('wrote option airy into hall.yaml');
    expect(written).toContain('# What may change.');
    expect(written).toMatch(/airy:\s+title: .*found by a search for cool/);
  });

  it('draws the variants, the front and the winner', async () => {
    const { out } = await run({ svg: '-', want: ['quiet', 'cheap'] });
    expect(out).toContain('<svg ');
    expect(out).toContain('>winner</text>');
    expect(out.match(/class="(?:kept|broken)"/g)).toHaveLength(9);
  });

  it('prints one JSON object, and nothing else, with --json', async () => {
    const { out, err } = await run({ json: true });
    expect(JSON.parse(out)).toMatchObject({ version: 1, file: 'hall.yaml', variants: 9, ran: 9, wants: ['quiet'] });
    expect(err).toBe('');
  });

  it('takes what is free from the command line, and complains of what is not right', async () => {
    const { out } = await run({ free: ['air.exhaust.parts.1.speed=[60 %, 80 %]'] });
    expect(out).toContain('27 of 27 variants were run');
    expect(await run({ free: ['air.exhaust'] })).toMatchObject({ code: 2, out: '' });
    const wrong = await run({ free: ['air.exhaust.parts.1.speed=[60 kg]'] });
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain('with "60 kg" for air.exhaust.parts.1.speed');
  });

  it('exits 130 when stopped', async () => {
    const stopping = new AbortController();
    stopping.abort();
    const { code } = await run({}, { stop: stopping.signal });
    expect(code).toBe(130);
  });
});
