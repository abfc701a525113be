// Saving a text so that a reader, or a power cut, meets the old text or the new one and never a piece of either,
// and so that nobody's newer text is replaced unseen.

import { randomUUID } from 'node:crypto';
import { access, constants, type FileHandle, link, open, rename, rm } from 'node:fs/promises';
import { dirname, join } from 'node:path';
import { codeOf, fileProblem } from '../read-file.ts';
import { type DiskFile, etagOf, type Found, findFile } from './disk-file.ts';
import type { Session } from './session.ts';

export type Saving =
  | { readonly kind: 'saved'; readonly etag: string }
  /** What is on disk is not what was expected: its mark, or undefined when nothing is there. */
  | { readonly kind: 'other'; readonly etag: string | undefined }
  | { readonly kind: 'refused'; readonly problem: string; readonly diskFull: boolean };

/** File systems without hard links answer so. */
const NO_LINKS: readonly string[] = ['EPERM', 'ENOTSUP', 'EOPNOTSUPP', 'ENOSYS'];

/**
 * Puts `bytes` in the place of the text with the mark `expected`; undefined when there is to be none yet. The file keeps
 * its mode, and its owner where that can be kept. Between the last look at the old text and the change of name lies a
 * moment in which another program's save would be lost: no file system call that Node has closes it.
 */
export async function saveFile(
  session: Session,
  name: string,
  bytes: Uint8Array,
  expected: string | undefined,
): Promise<Saving> {
  const before = await findFile(session, name);
  if (before.kind === 'unfit') return refused(before.problem);
  if (markOf(before) !== expected) return { kind: 'other', etag: markOf(before) };
  const old = before.kind === 'file' ? before : undefined;
  const target = old?.path ?? join(session.folder, name);
  const fresh = join(dirname(target), `.stillair-${randomUUID()}.tmp`);
  try {
    if (old !== undefined) await access(target, constants.W_OK); // a change of name would not ask
    await writeThrough(fresh, bytes, old);
    const now = await findFile(session, name);
    if (markOf(now) !== expected) return { kind: 'other', etag: markOf(now) };
    if (old !== undefined) await rename(fresh, target);
    else if (!(await putAnew(fresh, target))) return { kind: 'other', etag: markOf(await findFile(session, name)) };
    await writeFolderThrough(dirname(target));
    return { kind: 'saved', etag: etagOf(bytes) };
  } catch (error) {
    return { ...refused(fileProblem(error)), diskFull: ['ENOSPC', 'EDQUOT'].includes(codeOf(error)) };
  } finally {
    await rm(fresh, { force: true });
  }
}

/** Lets pieces of work begin only when those before have ended. */
export function oneAtATime(): <T>(work: () => Promise<T>) => Promise<T> {
  let last: Promise<unknown> = Promise.resolve();
  return (work) => {
    const turn = last.then(work);
    last = turn.catch(() => undefined);
    return turn;
  };
}

function markOf(found: Found): string | undefined {
  return found.kind === 'file' ? found.etag : undefined;
}

function refused(problem: string): { kind: 'refused'; problem: string; diskFull: boolean } {
  return { kind: 'refused', problem, diskFull: false };
}

/** Writes a file that is not there yet, down to the disk. It is never open to more readers than the old one was. */
async function writeThrough(path: string, bytes: Uint8Array, old: DiskFile | undefined): Promise<void> {
  const file = await open(path, 'wx', old === undefined ? 0o666 : 0o600);
  try {
    await file.writeFile(bytes);
    if (old !== undefined) await takeAfter(file, old);
    await file.sync();
  } finally {
    await file.close();
  }
}

async function takeAfter(file: FileHandle, { facts }: DiskFile): Promise<void> {
  const { uid, gid } = await file.stat();
  if (uid !== facts.uid || gid !== facts.gid) await file.chown(facts.uid, facts.gid).catch(() => undefined);
  await file.chmod(facts.mode & 0o7777);
}

/** Gives a file its name unless that is taken, and tells whether it got it. */
async function putAnew(fresh: string, target: string): Promise<boolean> {
  try {
    await link(fresh, target);
    return true;
  } catch (error) {
    if (codeOf(error) === 'EEXIST') return false;
    if (!NO_LINKS.includes(codeOf(error))) throw error;
  }
  await rename(fresh, target);
  return true;
}

/** The new name is on disk too once the folder is. Not every system can be asked for that. */
async function writeFolderThrough(path: string): Promise<void> {
  try {
    const folder = await open(path, 'r');
    try {
      await folder.sync();
    } finally {
      await folder.close();
    }
  } catch {
    // The text itself is on disk; only its name might be lost in a power cut.
  }
}
