// A worker thread that runs variants of the one cabinet file it was started with.

import { parentPort, workerData } from 'node:worker_threads';
import { type CabinetSource, type Outcome, type Variant, variantRunner } from '@stillair/engine';
import type { Answer } from './pool.ts';

const run = variantRunner(workerData as CabinetSource);

parentPort?.on('message', ({ id, task }: { readonly id: number; readonly task: Variant }) => {
  parentPort?.postMessage(answer(id, task));
});

function answer(id: number, task: Variant): Answer<Outcome> {
  try {
    return { id, result: run(task) };
  } catch (error) {
    const { message, stack } = error instanceof Error ? error : new Error(String(error));
    return { id, fault: { message, stack } };
  }
}
