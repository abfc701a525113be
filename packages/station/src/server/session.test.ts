import { mkdirSync, symlinkSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { belongs, isInside, listFiles, openSession, placeOf, type Session } from './session.ts';
import { trial } from './trial.ts';

const { folder, write, remove } = trial();
afterAll(remove);
const session: Session = { folder, only: undefined };

write('hall.yaml', 'title: Hall\n');
write('attic.yml', 'title: Attic\n');
write('notes.txt', 'no cabinet\n');
write('.hidden.yaml', 'title: Hidden\n');
write('inner/deep.yaml', 'title: Deep\n');
mkdirSync(join(folder, 'folder.yaml'));
symlinkSync('inner/deep.yaml', join(folder, 'linked.yaml'));
symlinkSync('../secret.yaml', join(folder, 'leads-out.yaml'));
symlinkSync('nowhere.yaml', join(folder, 'leads-nowhere.yaml'));
symlinkSync('..', join(folder, 'up'));

describe('a folder', () => {
  it('has its visible YAML files, and links to files inside it', async () => {
    const files = await listFiles(session);
    expect(files.map(({ name }) => name)).toEqual(['attic.yml', 'hall.yaml', 'linked.yaml']);
    expect(files[1]).toEqual({ name: 'hall.yaml', changed: expect.any(Number), bytes: 12 });
  });

  it('follows a link to its target inside', async () => {
    expect(await placeOf(session, 'linked.yaml')).toBe(join(folder, 'inner/deep.yaml'));
  });

  it.each(['leads-out.yaml', 'leads-nowhere.yaml', 'missing.yaml'])('has no place for %s', async (name) => {
    expect(await placeOf(session, name)).toBeUndefined();
  });

  it.each([
    '',
    '.',
    '..',
    '.yaml',
    '.hidden.yaml',
    'notes.txt',
    '../secret.yaml',
    'inner/deep.yaml',
    'inner\\deep.yaml',
    'up/secret.yaml',
    '/etc/hosts.yaml',
    'C:\\hosts.yaml',
    'hall.yaml:stream.yaml',
    'hall.yaml\0.yaml',
    'hall\n.yaml',
    'hall.yaml ',
    '%2e%2e%2fsecret.yaml',
    `${'long'.repeat(63)}.yaml`,
  ])('owns no name like %j', async (name) => {
    expect(await placeOf(session, name)).toBeUndefined();
    if (name !== '%2e%2e%2fsecret.yaml') expect(belongs(session, name)).toBe(false); // that one is a plain name, oddly spelt
  });

  it.each(['Küche 2 (neu).yaml', '-.yml', '棚.yaml'])('may have %s', (name) => {
    expect(belongs(session, name)).toBe(true);
  });

  it('has nothing once it is gone', async () => {
    expect(await listFiles({ folder: join(folder, 'gone'), only: undefined })).toEqual([]);
  });
});

describe('opening', () => {
  it('takes one file alone', async () => {
    const opening = await openSession(join(folder, 'hall.yaml'));
    expect(opening).toEqual({ ok: true, session: { folder, only: 'hall.yaml' } });
    if (!opening.ok) return;
    expect((await listFiles(opening.session)).map(({ name }) => name)).toEqual(['hall.yaml']);
    expect(await placeOf(opening.session, 'attic.yml')).toBeUndefined();
  });

  it('takes what a link that was named leads to', async () => {
    expect(await openSession(join(folder, 'linked.yaml'))).toEqual({
      ok: true,
      session: { folder: join(folder, 'inner'), only: 'deep.yaml' },
    });
  });

  it('says what is wrong', async () => {
    write('picture.yaml', new Uint8Array([137, 80, 0]));
    const wrong = async (name: string) => ({ name, ...(await openSession(join(folder, name))) });
    expect(await wrong('hal.yaml')).toMatchObject({
      ok: false,
      problem: `cannot open ${join(folder, 'hal.yaml')}: there is no such file (did you mean hall.yaml?)`,
    });
    expect(await wrong('picture.yaml')).toMatchObject({
      ok: false,
      problem: `cannot read ${join(folder, 'picture.yaml')}: it is not text: it holds zero bytes`,
    });
  });
});

it.each([
  ['/a/b', '/a/b/c', true],
  ['/a/b', '/a/b/..c', true],
  ['/a/b', '/a/b', false],
  ['/a/b', '/a/bc', false],
  ['/a/b', '/a', false],
  ['/', '/a', true],
])('exact: inside %s lies %s: %s', (home, path, inside) => {
  expect(isInside(home, path)).toBe(inside);
});
