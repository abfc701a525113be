// A worker thread that runs variants, faults, a search's variants, jobs and weeks of the queue or dates of a log,
// of the one cabinet file it was started with. It loads only what runs its own kind of task.

import { parentPort, workerData } from 'node:worker_threads';
import type { Answer } from './pool.ts';
import type { WorkerStart } from './workers.ts';

type Run = (task: never) => unknown;

const run = runnerOf(workerData as WorkerStart);

parentPort?.on('message', ({ id, task }: { readonly id: number; readonly task: never }) => {
  void answer(id, task).then((answered) => parentPort?.postMessage(answered));
});

function runnerOf({ runs, source, plan }: WorkerStart): Promise<Run> {
  switch (runs) {
    case 'variants':
      return import('./runners/variants.ts').then(({ variantRunner }) => variantRunner(source));
    case 'faults':
      return import('./runners/faults.ts').then(({ faultRunner }) => faultRunner(source));
    case 'search':
      return import('./runners/search.ts').then(({ searchRunner }) => searchRunner(source));
    case 'trials':
      return import('./runners/trials.ts').then(({ planRunner }) => planRunner(source));
    case 'log':
      return import('./runners/log.ts').then(({ logRunner }) => logRunner(source, plan!));
  }
}

async function answer(id: number, task: never): Promise<Answer<unknown>> {
  try {
    return { id, result: (await run)(task) };
  } catch (error) {
    const { message, stack } = error instanceof Error ? error : new Error(String(error));
    return { id, fault: { message, stack } };
  }
}
