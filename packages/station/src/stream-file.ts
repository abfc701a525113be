// Reading a file of any size in pieces: only one piece is ever held.

import { type FileHandle, open, stat } from 'node:fs/promises';
import type { Stream } from './io.ts';
import { pathProblem } from './read-file.ts';

const PIECE = 256 * 1024;

export async function streamFile(path: string): Promise<Stream> {
  try {
    const found = await stat(path);
    if (found.isDirectory()) throw Object.assign(new Error('folder'), { code: 'EISDIR' });
    return { ok: true, bytes: found.size, pieces: piecesOf(await open(path, 'r')) };
  } catch (error) {
    return { ok: false, problem: await pathProblem(error, path, /./) };
  }
}

/** The same memory is filled again for each piece. */
async function* piecesOf(file: FileHandle): AsyncGenerator<Uint8Array> {
  const memory = new Uint8Array(PIECE);
  try {
    for (;;) {
      const { bytesRead } = await file.read(memory, 0, PIECE);
      if (bytesRead === 0) return;
      yield memory.subarray(0, bytesRead);
    }
  } finally {
    await file.close();
  }
}
