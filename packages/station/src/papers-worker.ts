// A worker thread that makes all papers of the one cabinet file that it was started with, as one zip. Whoever wants no more of it
// ends the thread, and with it those that it has started.

import { parentPort, workerData } from 'node:worker_threads';
import { judge, makePaper, papers, type ReadSource, readCabinet, type UnitSystem } from '@stillair/engine';
import { zipSync } from 'fflate';
import type { SetFile } from './io.ts';
import { filesOf } from './papers/files.ts';
import { VERSION } from './version.ts';
import { openEvaluator } from './workers.ts';

/** What the thread is started with. */
export interface PapersStart {
  readonly file: string;
  readonly text: string;
  readonly units: UnitSystem;
}

export type PapersSaid =
  | { readonly done: number; readonly all: number; readonly what: string }
  | { readonly zip: Uint8Array<ArrayBuffer> };

const say = (said: PapersSaid): void => parentPort?.postMessage(said);

/** The same files as `stillair papers FILE -o FOLDER` writes. */
async function makeAll(source: ReadSource, units: UnitSystem): Promise<readonly SetFile[]> {
  const evaluator = openEvaluator(source, { stop: new AbortController().signal });
  let before = 0;
  const judgement = await judge(source, {
    evaluate: evaluator.evaluate,
    progress: (done, all) => {
      before = all;
      say({ done, all: all + papers.length, what: 'varying inputs and trying remedies' });
    },
  });
  await evaluator.close();
  const files: SetFile[] = [];
  for (const [at, paper] of papers.entries()) {
    say({ done: before + at, all: before + papers.length, what: paper.title });
    const format = units === 'imperial' ? 'letter' : 'a4';
    const made = await makePaper(paper, { source, version: VERSION, units, angle: 'first', format, judgement });
    files.push(...(await filesOf(made, source.cabinet.title)));
  }
  return files;
}

function zipped(files: readonly SetFile[]): Uint8Array<ArrayBuffer> {
  const bytes = (content: SetFile['content']): Uint8Array =>
    typeof content === 'string' ? new TextEncoder().encode(content) : content;
  const entries = Object.fromEntries(files.map(({ name, content }) => [name, bytes(content)]));
  // A zip holds a time without a zone; the earliest it can hold makes the same bytes everywhere.
  return zipSync(entries, { level: 6, mtime: new Date(1980, 0, 1) }) as Uint8Array<ArrayBuffer>;
}

const { file, text, units } = workerData as PapersStart;
const answer = readCabinet(file, text);
if (!answer.ok) throw new Error(answer.complaints[0]?.what ?? 'the file cannot be read');
const { cabinet, origins } = answer;
// What goes wrong on the way ends the thread, and whoever started it hears of that.
void makeAll({ file, text, cabinet, origins }, units).then((files) => say({ zip: zipped(files) }));
