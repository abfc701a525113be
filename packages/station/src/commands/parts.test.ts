import { describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { textWidth } from '../text.ts';
import { parts } from './parts.ts';

async function run(words: readonly string[], options = {}, columns = 80) {
  const io = fakeIo({ columns });
  return { code: await parts(words, options, io), ...io.printed };
}

describe('stillair parts', () => {
  it('lists every part by name, within the width of the terminal', async () => {
    const { code, out } = await run([], {}, 60);
    expect(code).toBe(0);
    expect(out).toMatch(/^fans$/m);
    expect(out).toContain('moving bed 220');
    for (const line of out.split('\n')) expect(textWidth(line)).toBeLessThanOrEqual(60);
  });

  it('tells one part in full, with its source', async () => {
    const { out } = await run(['fan', '92', 'QUIET']);
    expect(out).toMatch(/^fans:\n {2}axial 92 mm quiet:\n/);
    expect(out).toContain('source: ');
  });

  it.each([
    ['bend', /wide 90 degree/],
    ['grille', /insect mesh/],
    ['muffler', /lined box/],
    ['lamp', /LED strip/],
  ])('finds by what a part is: %s', async (word, kind) => {
    const { code, out } = await run([word]);
    expect(code).toBe(0);
    expect(out).toMatch(kind);
  });

  it('prints JSON that parses, and nothing else, with --json', async () => {
    const { out } = await run(['ABS'], { json: true });
    expect(JSON.parse(out)).toMatchObject({ version: 1, parts: [{ group: 'materials', kind: 'ABS' }] });
  });

  it('exits 2 and offers the nearest words when there is no such part', async () => {
    const { code, err, out } = await run(['blwer']);
    expect(code).toBe(2);
    expect(err).toBe('stillair parts: no part has the words "blwer"; did you mean blower?\n');
    expect(out).toBe('');
  });
});
