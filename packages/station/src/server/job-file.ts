// A job file that a saved cabinet file names, for the page that plans with it. Nothing else of the folder can be had: the path must stand
// in the queue of that file, lie below its folder, and be no link that leads out.

import { constants } from 'node:fs';
import { type FileHandle, open, realpath } from 'node:fs/promises';
import { join } from 'node:path';
import { readCabinet } from '@stillair/engine';
import { textOf } from '../read-file.ts';
import { problem } from './answers.ts';
import { findFile } from './disk-file.ts';
import { isInside, type Session } from './session.ts';

const CAREFULLY = constants.O_RDONLY | (constants.O_NOFOLLOW ?? 0) | (constants.O_NONBLOCK ?? 0);
const PIECE = 256 * 1024;

export async function jobFile(session: Session | undefined, name: string, path: string): Promise<Response> {
  const found = session === undefined ? undefined : await findFile(session, name);
  if (session === undefined || found?.kind !== 'file') return problem(404, 'there is no such file');
  const reading = textOf(found.bytes);
  const answer = reading.ok ? readCabinet(name, reading.text) : undefined;
  if (answer?.ok !== true) return problem(409, `${name} has faults as it is saved: mend and save it first`);
  const named = Object.values(answer.cabinet.queue?.unread ?? {}).some((job) => job.path === path);
  if (!named) return problem(404, `the queue of ${name}, as it is saved, names no such job file: save it first`);
  const place = await realpath(join(session.folder, path)).catch(() => undefined);
  if (place === undefined || !isInside(session.folder, place)) return problem(404, 'there is no such file');
  const file = await open(place, CAREFULLY).catch(() => undefined);
  if (file === undefined) return problem(404, 'there is no such file');
  const facts = await file.stat();
  if (!facts.isFile()) {
    await file.close();
    return problem(404, 'there is no such file');
  }
  return new Response(streamOf(file), {
    headers: {
      'Content-Type': 'application/octet-stream',
      'Content-Length': String(facts.size),
      'Cache-Control': 'no-store',
    },
  });
}

/** Piece by piece as they are asked for; closed at the end, and when nobody reads on. */
function streamOf(file: FileHandle): ReadableStream<Uint8Array> {
  return new ReadableStream({
    async pull(controller) {
      try {
        const memory = new Uint8Array(PIECE);
        const { bytesRead } = await file.read(memory, 0, PIECE);
        if (bytesRead > 0) {
          controller.enqueue(memory.subarray(0, bytesRead));
          return;
        }
        await file.close();
        controller.close();
      } catch (error) {
        await file.close().catch(() => undefined);
        controller.error(error);
      }
    },
    async cancel() {
      await file.close();
    },
  });
}
