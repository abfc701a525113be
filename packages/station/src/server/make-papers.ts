// All papers of a text that the page sends, as one zip: computed in a thread of its own, told on the way, and ended with it when the
// asker goes. The answer is lines of JSON, each with a version: how far it is, then `zip` with its size, and right after that line the zip.

import { existsSync } from 'node:fs';
import { Worker } from 'node:worker_threads';
import { readCabinet } from '@stillair/engine';
import type { Context } from 'hono';
import type { PapersSaid, PapersStart } from '../papers-worker.ts';
import { LARGEST_FILE, TOO_LARGE, textOf } from '../read-file.ts';
import { problem, VERSION } from './answers.ts';
import { readBody } from './body.ts';
import { isPlainText } from './put-file.ts';

/** The compiled worker: from the sources there is none. */
const WORKER = new URL('./papers-worker.js', import.meta.url);
/** Beside the sources and what the compiler writes, the worker lies a folder above this module; in the bundle beside it. */
const WORKER_ABOVE = new URL('../papers-worker.js', import.meta.url);

/** Far above what any cabinet takes, ms: whatever still runs then has gone wrong. */
const LONGEST = 600_000;

export type StartPapers = (start: PapersStart, heard: Heard) => Started;

export interface Heard {
  readonly said: (said: PapersSaid) => void;
  readonly broke: (error: Error) => void;
}

export interface Started {
  readonly end: () => void;
}

export function makePapers(
  ended: AbortSignal,
  start: StartPapers = startThread,
): (context: Context) => Promise<Response> {
  // It takes all cores: a second one would only make both slower.
  let busy = false;
  return async ({ req }) => {
    const units = req.query('units') ?? 'metric';
    if (units !== 'metric' && units !== 'imperial') return problem(400, 'units are metric or imperial');
    if (!isPlainText(req.header('content-type'), req.header('content-encoding')))
      return problem(415, 'it is not sent as plain UTF-8 text');
    const bytes = await readBody(req.raw, LARGEST_FILE);
    if (bytes === undefined) return problem(413, `no papers were made: ${TOO_LARGE}`);
    const reading = textOf(bytes);
    if (!reading.ok) return problem(422, `no papers were made: ${reading.problem}`);
    const answer = readCabinet('cabinet', reading.text);
    if (!answer.ok) return problem(422, `no papers were made: ${answer.complaints[0]?.what ?? 'the text has faults'}`);
    if (busy) return problem(429, 'papers are being made already; wait for them, or stop them');
    busy = true;
    const headers = { 'Content-Type': 'application/octet-stream', 'Cache-Control': 'no-store' };
    const asked: PapersStart = { file: 'cabinet', text: reading.text, units };
    const free = (): void => {
      busy = false;
    };
    return new Response(papersStream(asked, start, ended, free), { headers });
  };
}

function papersStream(
  asked: PapersStart,
  start: StartPapers,
  ended: AbortSignal,
  free: () => void,
): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  const line = (facts: object): Uint8Array => encoder.encode(`${JSON.stringify({ version: VERSION, ...facts })}\n`);
  let close = () => {};
  return new ReadableStream<Uint8Array>({
    start(controller) {
      let open = true;
      close = () => {
        if (!open) return;
        open = false;
        clearTimeout(late);
        ended.removeEventListener('abort', broken);
        started.end();
        free();
      };
      const finish = (...last: readonly Uint8Array[]): void => {
        if (!open) return;
        for (const piece of last) controller.enqueue(piece);
        close();
        controller.close();
      };
      const started = start(asked, {
        said: (said) => {
          if (!open) return;
          if ('zip' in said) finish(line({ zip: said.zip.length }), said.zip);
          else controller.enqueue(line(said));
        },
        broke: (error) => finish(line({ problem: error.message })),
      });
      const broken = () => finish(line({ problem: 'the server was closed' }));
      const late = setTimeout(() => finish(line({ problem: 'it took too long' })), LONGEST);
      ended.addEventListener('abort', broken);
      if (ended.aborted) broken();
    },
    cancel: () => close(),
  });
}

function startThread(workerData: PapersStart, { said, broke }: Heard): Started {
  const worker = new Worker([WORKER, WORKER_ABOVE].find((place) => existsSync(place)) ?? WORKER, { workerData });
  worker.on('message', said);
  worker.on('error', (error) => broke(error instanceof Error ? error : new Error(String(error))));
  worker.on('exit', (code) => broke(new Error(`the thread ended with status ${code}`)));
  return { end: () => void worker.terminate() };
}
