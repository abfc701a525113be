import { describe, expect, it } from 'vitest';
import { fakeIo } from '../fake-io.ts';
import { fixture } from '../fixture-files.ts';
import { type PapersOptions, papers } from './papers.ts';

const hall = fixture('hall.yaml');
const usual: PapersOptions = {
  out: 'papers',
  only: 'cut-list',
  angle: 'first',
  paper: 'a4',
  units: 'metric',
  samples: 0,
  workers: 1,
};

async function run(options: Partial<PapersOptions> = {}, files: Record<string, string> = {}) {
  const io = fakeIo({ files: { 'hall.yaml': hall, ...files } });
  return { code: await papers('hall.yaml', { ...usual, ...options }, io), sets: io.sets, ...io.printed };
}

describe('stillair papers', () => {
  it('writes what was asked for, lists it, and promises nothing', async () => {
    const { code, out, err, sets } = await run();
    expect([code, err]).toEqual([code === 3 ? 3 : 0, '']);
    expect([...sets.keys()]).toEqual(expect.arrayContaining(['papers/cut-list.pdf', 'papers/svg/cut-list-1.svg']));
    expect(out).toMatch(/^Two machines in the hall cupboard: \d+ files in papers\n/);
    expect(out).toContain('no substitute for local codes');
    expect(out).not.toMatch(/\bsafe\b/i);
  });

  it('gives the same bytes twice', async () => {
    const [one, two] = [await run(), await run()];
    expect([...one.sets].map(([name, content]) => [name, Buffer.from(content).toString('base64')])).toEqual(
      [...two.sets].map(([name, content]) => [name, Buffer.from(content).toString('base64')]),
    );
  });

  it('puts file, version and caution on every sheet, and a date only when asked', async () => {
    const sheets = async (options: Partial<PapersOptions>): Promise<string[]> =>
      [...(await run(options)).sets].flatMap(([name, content]) => (name.endsWith('.svg') ? [String(content)] : []));
    for (const sheet of await sheets({})) {
      for (const said of ['hall.yaml', 'stillair 0.1.0', 'lengths in', 'check every size'])
        expect(sheet.replaceAll('</text>', ' ')).toContain(said);
      expect(sheet).not.toContain('>date<');
    }
    expect((await sheets({ date: '2 May' })).every((sheet) => sheet.includes('2 May'))).toBe(true);
  });

  it.each([
    [{ only: 'cutlist' }, {}, 'stillair papers: there is no paper "cutlist"; did you mean cut-list?\n'],
    [{ option: 'strong-fans' }, {}, 'stillair papers: there is no option "strong-fans"; did you mean strong-fan?\n'],
    [{ out: '/nowhere/x' }, {}, 'stillair papers: cannot write into /nowhere/x: its folder does not exist\n'],
    [
      {},
      { 'papers/cut-list.pdf': 'mine' },
      'stillair papers: papers holds cut-list.pdf, changed since or not from here; nothing was written (--force replaces)\n',
    ],
  ])('exits 2 on %j and says why', async (options, files, message) => {
    const { code, err, sets } = await run(options, files);
    expect({ code, err, written: sets.size }).toEqual({ code: 2, err: message, written: 0 });
  });

  it('prints one JSON object with --json', async () => {
    const { out } = await run({ json: true, force: true }, { 'papers/cut-list.pdf': 'mine' });
    expect(JSON.parse(out)).toMatchObject({ version: 1, folder: 'papers', papers: [{ id: 'cut-list' }] });
  });
});
