import { beforeAll, describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { textWidth } from '../text.ts';
import { type PareOptions, pare } from './pare.ts';

const hall = fixture('hall.yaml');
const quick: PareOptions = { units: 'metric', samples: 0, workers: 1 };

async function run(options: Partial<PareOptions>, outside: Parameters<typeof fakeIo>[0] = {}) {
  const io = fakeIo({ files: { 'hall.yaml': hall }, ...outside });
  return { code: await pare('hall.yaml', { ...quick, ...options }, io), ...io.printed };
}

describe('stillair pare', () => {
  let usual: Awaited<ReturnType<typeof run>>;
  beforeAll(async () => {
    usual = await run({});
  }, 60_000);

  it('says of each part what misses it, and that a part may be there for what nobody asked', () => {
    const text = usual.out.replaceAll(/\s+/g, ' ');
    expect(text).toMatch(
      /^Two machines in the hall cupboard Of \d+ parts that were taken out, each alone, no finding misses \d+\./,
    );
    expect(text).toContain('may still be there for a fault (stillair faults)');
    expect(text).toMatch(/fan of exhaust.*, then (?:FAILS|tight)/);
    expect({ code: usual.code, err: usual.err }).toEqual({ code: 0, err: '' });
  });

  it.each([40, 80])('fits a terminal of %d columns', async (columns) => {
    const { out } = await run({}, { columns });
    expect(out.split('\n').filter((line) => textWidth(line) > columns)).toEqual([]);
  });

  it('prints one JSON object with --json, of an option with --option', async () => {
    const { out } = await run({ json: true, option: 'strong-fan' });
    const answer = JSON.parse(out) as { parts: { id: string; says: string }[] };
    expect(answer).toMatchObject({ version: 1, file: 'hall.yaml', option: 'strong-fan', stopped: false });
    expect(answer.parts.find(({ id }) => id === 'air.exhaust.parts.1')!.says).toContain('axial 92 mm strong');
  });

  it('exits 2 and says which options there are', async () => {
    const { code, err } = await run({ option: 'weak-fan' });
    expect({ code, err }).toEqual({
      code: 2,
      err: 'stillair pare: there is no option "weak-fan"; there are: strong-fan, large-filter\n',
    });
  });

  it('exits 130 when stopped', async () => {
    const stopping = new AbortController();
    stopping.abort();
    expect((await run({}, { stop: stopping.signal })).code).toBe(130);
  });
});
