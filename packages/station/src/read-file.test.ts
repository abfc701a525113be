import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { LARGEST_FILE, readTextFile } from './read-file.ts';

const folder = mkdtempSync(join(tmpdir(), 'stillair-'));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, content: string | Uint8Array): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

it('exact: gives the text, without a byte order mark', async () => {
  expect(await readTextFile(file('good.yaml', '\uFEFFtitle: Wärme\n'))).toEqual({ ok: true, text: 'title: Wärme\n' });
});

it.each([
  ['a missing file', () => join(folder, 'goood.yaml'), 'there is no such file (did you mean good.yaml?)'],
  ['a missing file like no other', () => join(folder, 'zzzzzzzz'), 'there is no such file'],
  ['a folder', () => folder, 'it is a folder, not a file'],
  [
    'a binary file',
    () => file('picture.yaml', new Uint8Array([137, 80, 0, 71])),
    'it is not text: it holds zero bytes',
  ],
  [
    'a file in another wide encoding',
    () => file('wide.yaml', new Uint8Array([255, 254, 97, 0])),
    'it is UTF-16 text; save it again as UTF-8 in your editor',
  ],
  [
    'a file in another encoding',
    () => file('latin.yaml', new Uint8Array([97, 10, 98, 10, 252, 10])),
    'it is not UTF-8 text (line 3); save it again as UTF-8 in your editor',
  ],
  [
    'too large a file',
    () => file('large.yaml', 'x'.repeat(LARGEST_FILE + 1)),
    'it is larger than 8 MB, which no text file here is',
  ],
])('says what is wrong with %s', async (_, path, problem) => {
  expect(await readTextFile(path())).toEqual({ ok: false, problem });
});

it.runIf(process.platform === 'linux')('limit: ends on a device that never ends', async () => {
  expect(await readTextFile('/dev/zero')).toMatchObject({ ok: false });
});
