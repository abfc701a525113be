// Job files that the queue names, for a page that has no disk: those that the person handed in, else those of the local server.

import { type OpenedJobFile, type ReadSource, readQueueFiles } from '@stillair/engine';
import { handedIn } from './handed-in.ts';
import type { Hooks } from './hands.ts';
import type { Unreadable, Wishes } from './protocol.ts';

/** The cabinet with what its job files say, or what was wrong with them. */
export async function withJobFiles(
  source: ReadSource,
  { jobFiles = [], served }: Pick<Wishes, 'jobFiles' | 'served'>,
  { progress, stop }: Hooks,
): Promise<ReadSource | Unreadable> {
  const answer = await readQueueFiles(source, {
    open: async (path) => {
      const picked = handedIn(jobFiles, path);
      if (picked !== undefined) return { ok: true, bytes: picked.size, pieces: piecesOf(picked.stream()) };
      return served === undefined ? { ok: false, problem: 'it was not handed in' } : fromServer(served, path);
    },
    progress: (done, all) => progress(Math.floor(done), Math.ceil(all)),
    stop,
  });
  if (answer.ok) return answer.source;
  if ('stopped' in answer) throw new Error('it was stopped before the job files were read');
  return { unreadable: 'The queue', complaints: answer.complaints };
}

async function fromServer(served: string, path: string): Promise<OpenedJobFile> {
  try {
    const answer = await fetch(`${served}&path=${encodeURIComponent(path)}`);
    if (!answer.ok || answer.body === null) {
      const { problem = answer.statusText } = (await answer.json().catch(() => ({}))) as { readonly problem?: string };
      return { ok: false, problem };
    }
    return { ok: true, bytes: Number(answer.headers.get('content-length') ?? 0), pieces: piecesOf(answer.body) };
  } catch {
    return { ok: false, problem: 'the local server does not answer; is it still running?' };
  }
}

async function* piecesOf(stream: ReadableStream<Uint8Array>): AsyncGenerator<Uint8Array> {
  const reader = stream.getReader();
  try {
    for (;;) {
      const { done, value } = await reader.read();
      if (done) return;
      yield value;
    }
  } finally {
    await reader.cancel();
  }
}
