import { afterEach, describe, expect, it, vi } from 'vitest';
import { papersOfServer } from './server-papers.ts';

const encoder = new TextEncoder();

/** A server that sends these bytes, so many at a time. */
function sends(bytes: Uint8Array, at: number, status = 200): void {
  const pieces = Array.from({ length: Math.ceil(bytes.length / at) }, (_, piece) =>
    bytes.slice(piece * at, (piece + 1) * at),
  );
  const body = new ReadableStream<Uint8Array>({
    pull: (controller) => {
      const next = pieces.shift();
      if (next === undefined) controller.close();
      else controller.enqueue(next);
    },
  });
  vi.stubGlobal('fetch', () => Promise.resolve(new Response(body, { status })));
}

const joined = (...parts: readonly Uint8Array[]): Uint8Array => Uint8Array.from(parts.flatMap((part) => [...part]));
const ask = (told: unknown[] = []) =>
  papersOfServer('text', 'metric', new AbortController().signal, (progress) => told.push(progress));

afterEach(() => vi.unstubAllGlobals());

describe('papers of the local server', () => {
  const zip = Uint8Array.of(80, 75, 10, 123, 10, 255);
  const lines = encoder.encode('{"version":1,"done":1,"all":4,"what":"Cut list"}\n{"version":1,"zip":6}\n');

  it('exact: progress and zip are the same however the bytes are cut', async () => {
    for (const at of [1, 3, 48, 50, 1000]) {
      const told: unknown[] = [];
      sends(joined(lines, zip), at);
      const blob = await ask(told);
      expect([...new Uint8Array(await blob.arrayBuffer())], `${at} at a time`).toEqual([...zip]);
      expect(told).toMatchObject([{ done: 1, all: 4, what: 'Cut list' }]);
    }
  });

  it('property: a refusal, a fault on the way and an answer that breaks off are told in words', async () => {
    sends(encoder.encode('{"version":1,"problem":"being made already"}'), 100, 429);
    await expect(ask()).rejects.toThrow('being made already');
    sends(encoder.encode('{"version":1,"problem":"it took too long"}\n'), 7);
    await expect(ask()).rejects.toThrow('it took too long');
    sends(joined(lines, zip.slice(0, 3)), 7);
    await expect(ask()).rejects.toThrow('before all of it was sent');
    sends(lines.slice(0, 30), 7);
    await expect(ask()).rejects.toThrow('before it was done');
  });
});
