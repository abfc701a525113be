// Writing a whole set of papers into a folder: nothing that somebody else put there is lost, and no reader meets half a file.
// The set remembers itself in `contents.json`: a file is ours while it is listed there and still has the bytes that we gave it.

import { createHash } from 'node:crypto';
import { mkdir, readdir, readFile, rm, rmdir } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import type { SetFile, SetWritten } from '../io.ts';
import { codeOf, fileProblem } from '../read-file.ts';
import { writeWhole } from '../write-whole.ts';

/** Where a set remembers what it wrote. */
export const CONTENTS = 'contents.json';

interface Contents {
  readonly version: 1;
  readonly files: readonly { readonly name: string; readonly bytes: number; readonly sha256: string }[];
}

/**
 * Writes `files` below `folder`, which is made where it is missing. A file that is there and was changed, or never came from
 * here, is left alone with everything else unless `force`. Files of an earlier set that this one no longer has are taken away.
 */
export async function writeSet(
  folder: string,
  files: readonly SetFile[],
  { force }: { readonly force: boolean },
): Promise<SetWritten> {
  const bytes = files.map(({ name, content }) => ({ name, content: Buffer.from(content) }));
  try {
    const before = await contentsIn(folder);
    const known = new Map(before.files.map(({ name, sha256 }) => [name, sha256]));
    const foreign: string[] = [];
    for (const { name, content } of bytes) {
      const there = await markIn(join(folder, name));
      if (there !== undefined && there !== known.get(name) && there !== markOf(content)) foreign.push(name);
    }
    if (foreign.length > 0 && !force) return { ok: false, foreign };
    await mkdir(folder, { recursive: true });
    for (const { name, content } of bytes) {
      await mkdir(dirname(join(folder, name)), { recursive: true });
      await writeWhole(join(folder, name), content);
    }
    const contents: Contents = {
      version: 1,
      files: bytes.map(({ name, content }) => ({ name, bytes: content.length, sha256: markOf(content) })),
    };
    const removed = await sweep(folder, before, new Set(files.map(({ name }) => name)));
    await writeWhole(join(folder, CONTENTS), Buffer.from(`${JSON.stringify(contents, null, 2)}\n`));
    return { ok: true, removed };
  } catch (error) {
    return { ok: false, problem: fileProblem(error) };
  }
}

async function contentsIn(folder: string): Promise<Contents> {
  try {
    const found = JSON.parse(await readFile(join(folder, CONTENTS), 'utf8')) as Partial<Contents>;
    const files = Array.isArray(found.files) ? found.files : [];
    return { version: 1, files: files.filter(({ name }) => typeof name === 'string' && isBelow(name)) };
  } catch (error) {
    if (codeOf(error) === 'ENOENT' || codeOf(error) === 'ENOTDIR' || error instanceof SyntaxError)
      return { version: 1, files: [] };
    throw error;
  }
}

/** A name that somebody wrote into the list by hand must not lead out of the folder. */
function isBelow(name: string): boolean {
  return name !== '' && !name.startsWith('/') && !name.includes('\\') && !name.split('/').includes('..');
}

async function markIn(path: string): Promise<string | undefined> {
  try {
    return markOf(await readFile(path));
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return undefined;
    throw error;
  }
}

function markOf(content: Uint8Array): string {
  return createHash('sha256').update(content).digest('hex');
}

/** Takes away what an earlier set wrote, nobody has changed, and this set no longer has. */
async function sweep(folder: string, before: Contents, now: ReadonlySet<string>): Promise<readonly string[]> {
  const removed: string[] = [];
  for (const { name, sha256 } of before.files) {
    if (now.has(name) || (await markIn(join(folder, name))) !== sha256) continue;
    await rm(join(folder, name));
    removed.push(name);
    const place = dirname(join(folder, name));
    if (place !== folder && (await readdir(place)).length === 0) await rmdir(place);
  }
  return removed;
}
