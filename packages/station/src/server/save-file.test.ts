import {
  chmodSync,
  linkSync,
  lstatSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { afterAll, afterEach, describe, expect, it } from 'vitest';
import { etagOf } from './disk-file.ts';
import { oneAtATime, saveFile } from './save-file.ts';
import type { Session } from './session.ts';
import { trial } from './trial.ts';

const { folder, write, remove } = trial();
afterAll(remove);
const session: Session = { folder, only: undefined };
const bytes = (text: string) => new TextEncoder().encode(text);
const markOf = (text: string) => etagOf(bytes(text));
const save = (name: string, text: string, expected?: string) => saveFile(session, name, bytes(text), expected);
const isRoot = process.getuid?.() === 0;

afterEach(() => {
  expect(readdirSync(folder, { recursive: true }).filter((name) => String(name).includes('.tmp'))).toEqual([]);
});

describe('saving over a text', () => {
  it('replaces it when it is the one expected', async () => {
    write('a.yaml', 'old');
    expect(await save('a.yaml', 'new', markOf('old'))).toEqual({ kind: 'saved', etag: markOf('new') });
    expect(readFileSync(join(folder, 'a.yaml'), 'utf8')).toBe('new');
  });

  it('leaves another text alone, and tells its mark', async () => {
    write('a.yaml', 'newer');
    expect(await save('a.yaml', 'mine', markOf('old'))).toEqual({ kind: 'other', etag: markOf('newer') });
    expect(readFileSync(join(folder, 'a.yaml'), 'utf8')).toBe('newer');
  });

  it('does not bring back what was taken away', async () => {
    expect(await save('gone.yaml', 'mine', markOf('old'))).toEqual({ kind: 'other', etag: undefined });
    expect(readdirSync(folder)).not.toContain('gone.yaml');
  });

  it.each([0o600, 0o640, 0o664, 0o755])('keeps the mode %o', async (mode) => {
    const path = write('mode.yaml', 'old');
    chmodSync(path, mode);
    await save('mode.yaml', 'new', markOf('old'));
    expect(statSync(path).mode & 0o7777).toBe(mode);
  });

  it.runIf(isRoot)('keeps the owner', async () => {
    const path = write('owned.yaml', 'old');
    const { chownSync } = await import('node:fs');
    chownSync(path, 1234, 4321);
    await save('owned.yaml', 'new', markOf('old'));
    expect(statSync(path)).toMatchObject({ uid: 1234, gid: 4321 });
  });

  it.skipIf(isRoot)('does not get round a file that may not be written', async () => {
    chmodSync(write('kept.yaml', 'old'), 0o444);
    expect(await save('kept.yaml', 'new', markOf('old'))).toMatchObject({
      kind: 'refused',
      problem: 'you have no permission',
    });
  });

  it('writes to where a link leads, and keeps the link', async () => {
    write('inner/target.yaml', 'old');
    symlinkSync('inner/target.yaml', join(folder, 'link.yaml'));
    expect((await save('link.yaml', 'new', markOf('old'))).kind).toBe('saved');
    expect(lstatSync(join(folder, 'link.yaml')).isSymbolicLink()).toBe(true);
    expect(readFileSync(join(folder, 'inner/target.yaml'), 'utf8')).toBe('new');
  });

  it('touches nothing that a link outside leads to', async () => {
    const outside = join(folder, '../outside.yaml');
    writeFileSync(outside, 'old');
    symlinkSync('../outside.yaml', join(folder, 'out.yaml'));
    expect(await save('out.yaml', 'new', markOf('old'))).toEqual({ kind: 'other', etag: undefined });
    expect(await save('out.yaml', 'new')).toEqual({ kind: 'other', etag: undefined });
    expect(readFileSync(outside, 'utf8')).toBe('old');
    rmSync(join(folder, 'out.yaml'));
  });

  it('leaves the old text to whoever holds it under another name', async () => {
    linkSync(write('one.yaml', 'old'), join(folder, 'other.yaml'));
    await save('one.yaml', 'new', markOf('old'));
    expect(readFileSync(join(folder, 'other.yaml'), 'utf8')).toBe('old');
  });
});

describe('saving anew', () => {
  it('makes a file that is not there', async () => {
    expect(await save('fresh.yaml', 'new')).toEqual({ kind: 'saved', etag: markOf('new') });
    expect(readFileSync(join(folder, 'fresh.yaml'), 'utf8')).toBe('new');
    expect(statSync(join(folder, 'fresh.yaml')).nlink).toBe(1);
  });

  it('leaves what is there alone, whatever it is', async () => {
    write('there.yaml', 'old');
    mkdirSync(join(folder, 'folder.yaml'));
    expect(await save('there.yaml', 'new')).toEqual({ kind: 'other', etag: markOf('old') });
    expect(await save('folder.yaml', 'new')).toEqual({ kind: 'other', etag: undefined });
  });

  it('says so when the folder is gone', async () => {
    const gone = { folder: join(folder, 'gone'), only: undefined };
    expect(await saveFile(gone, 'a.yaml', bytes('new'), undefined)).toMatchObject({
      kind: 'refused',
      problem: 'its folder does not exist',
    });
  });
});

it('property: whoever reads during a hundred saves meets a whole text each time', async () => {
  const texts = [1, 2].map((digit) => String(digit).repeat(300_000));
  const path = write('whole.yaml', texts[0]!);
  let saving = true;
  let pieces = 0;
  let reads = 0;
  const reading = (async () => {
    while (saving) {
      reads++;
      if (!texts.includes(await readFile(path, 'utf8'))) pieces++;
    }
  })();
  for (let at = 0; at < 100; at++) {
    expect((await save('whole.yaml', texts[(at + 1) % 2]!, markOf(texts[at % 2]!))).kind).toBe('saved');
  }
  saving = false;
  await reading;
  expect(reads).toBeGreaterThan(10);
  expect(pieces).toBe(0);
});

describe('oneAtATime', () => {
  it('lets only one of many saves over the same text succeed', async () => {
    write('race.yaml', 'old');
    const inTurn = oneAtATime();
    const savings = await Promise.all(
      Array.from({ length: 8 }, (_, at) => inTurn(() => save('race.yaml', `text ${at}`, markOf('old')))),
    );
    expect(savings.filter(({ kind }) => kind === 'saved')).toHaveLength(1);
    expect(readFileSync(join(folder, 'race.yaml'), 'utf8')).toBe('text 0');
  });

  it('goes on after a failure', async () => {
    const inTurn = oneAtATime();
    await expect(inTurn(() => Promise.reject(new Error('broken')))).rejects.toThrow('broken');
    expect(await inTurn(async () => 'next')).toBe('next');
  });
});
