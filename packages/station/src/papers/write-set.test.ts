import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, it } from 'vitest';
import { CONTENTS, writeSet } from './write-set.ts';

const scratch = mkdtempSync(join(tmpdir(), 'stillair-set-'));
afterAll(() => rmSync(scratch, { recursive: true }));

let folder = '';
let turn = 0;
beforeEach(() => {
  turn += 1;
  folder = join(scratch, `set-${turn}`);
});

const gentle = { force: false };
const list = { name: 'cut-list.pdf', content: 'one' };
const panel = { name: 'dxf/A.dxf', content: Uint8Array.of(1, 2, 3) };
const read = (name: string): string => readFileSync(join(folder, name), 'utf8');

describe('writing a set of papers', () => {
  it('exact: makes the folder, writes every file and what it remembers, and leaves nothing else', async () => {
    expect(await writeSet(folder, [list, panel], gentle)).toEqual({ ok: true, removed: [] });
    const there = readdirSync(folder, { recursive: true, encoding: 'utf8' });
    expect(new Set(there)).toEqual(new Set([CONTENTS, 'cut-list.pdf', 'dxf', 'dxf/A.dxf']));
    expect(read('cut-list.pdf')).toBe('one');
    expect(JSON.parse(read(CONTENTS))).toMatchObject({ version: 1, files: [{ name: 'cut-list.pdf', bytes: 3 }, {}] });
  });

  it('exact: replaces what it wrote itself, and takes away what the set no longer has', async () => {
    await writeSet(folder, [list, panel], gentle);
    expect(await writeSet(folder, [{ ...list, content: 'two' }], gentle)).toEqual({ ok: true, removed: ['dxf/A.dxf'] });
    expect(read('cut-list.pdf')).toBe('two');
    expect(existsSync(join(folder, 'dxf'))).toBe(false);
  });

  it('exact: leaves everything as it is when a file was changed or came from elsewhere, unless forced', async () => {
    await writeSet(folder, [list], gentle);
    writeFileSync(join(folder, 'cut-list.pdf'), 'with my notes');
    mkdirSync(join(folder, 'dxf'));
    writeFileSync(join(folder, 'dxf/A.dxf'), 'of another program');
    const next = [{ ...list, content: 'two' }, panel, { name: 'new.pdf', content: 'x' }];
    expect(await writeSet(folder, next, gentle)).toEqual({ ok: false, foreign: ['cut-list.pdf', 'dxf/A.dxf'] });
    expect([read('cut-list.pdf'), existsSync(join(folder, 'new.pdf'))]).toEqual(['with my notes', false]);
    expect(await writeSet(folder, next, { force: true })).toMatchObject({ ok: true });
    expect(read('cut-list.pdf')).toBe('two');
  });

  it('exact: never takes away what somebody changed, nor anything outside the folder', async () => {
    await writeSet(folder, [list, panel], gentle);
    writeFileSync(join(folder, 'dxf/A.dxf'), 'changed');
    writeFileSync(join(scratch, 'precious'), 'mine');
    const contents = JSON.parse(read(CONTENTS)) as { files: object[] };
    writeFileSync(
      join(folder, CONTENTS),
      JSON.stringify({ ...contents, files: [...contents.files, { name: '../precious', sha256: 'x' }] }),
    );
    expect(await writeSet(folder, [list], gentle)).toEqual({ ok: true, removed: [] });
    expect([read('dxf/A.dxf'), readFileSync(join(scratch, 'precious'), 'utf8')]).toEqual(['changed', 'mine']);
  });

  it('limit: says why a place cannot be written', async () => {
    writeFileSync(join(scratch, 'a-file'), '');
    expect(await writeSet(join(scratch, 'a-file'), [list], gentle)).toMatchObject({ ok: false });
  });
});
