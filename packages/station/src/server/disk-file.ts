// One file of a session as it is on disk at this moment: its bytes, and the mark by which one text is told from another.

import { createHash } from 'node:crypto';
import type { Stats } from 'node:fs';
import { constants, open } from 'node:fs/promises';
import { codeOf, fileProblem, LARGEST_FILE, TOO_LARGE } from '../read-file.ts';
import { placeOf, type Session } from './session.ts';

export interface DiskFile {
  readonly kind: 'file';
  readonly path: string;
  readonly bytes: Uint8Array<ArrayBuffer>;
  readonly etag: string;
  readonly facts: Stats;
}

export type Found = DiskFile | { readonly kind: 'absent' } | { readonly kind: 'unfit'; readonly problem: string };

/** A link is opened no second time after it was followed, and a pipe without a writer is not waited for. */
const CAREFULLY = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0);

/** Entity tag (RFC 9110, section 8.8.3) of a text: the SHA-256 of its bytes, in quotes. */
export function etagOf(bytes: Uint8Array): string {
  return `"${createHash('sha256').update(bytes).digest('hex')}"`;
}

export async function findFile(session: Session, name: string): Promise<Found> {
  const path = await placeOf(session, name);
  if (path === undefined) return { kind: 'absent' };
  try {
    const file = await open(path, CAREFULLY);
    try {
      const facts = await file.stat();
      if (!facts.isFile()) return { kind: 'absent' };
      if (facts.size > LARGEST_FILE) return { kind: 'unfit', problem: TOO_LARGE };
      const bytes = new Uint8Array(await file.readFile());
      if (bytes.length > LARGEST_FILE) return { kind: 'unfit', problem: TOO_LARGE };
      return { kind: 'file', path, bytes, etag: etagOf(bytes), facts };
    } finally {
      await file.close();
    }
  } catch (error) {
    if (['ENOENT', 'ENOTDIR', 'ELOOP'].includes(codeOf(error))) return { kind: 'absent' };
    return { kind: 'unfit', problem: fileProblem(error) };
  }
}
