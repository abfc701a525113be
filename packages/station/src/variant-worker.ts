// A worker thread that runs variants, or faults, of the one cabinet file it was started with.

import { parentPort, workerData } from 'node:worker_threads';
import {
  type FaultOutcome,
  type FaultTask,
  faultRunner,
  type Outcome,
  type Variant,
  variantRunner,
} from '@stillair/engine';
import type { Answer } from './pool.ts';
import type { WorkerStart } from './workers.ts';

type Task = Variant | FaultTask;
type Result = Outcome | FaultOutcome;

const { runs, source } = workerData as WorkerStart;
const run = (runs === 'faults' ? faultRunner(source) : variantRunner(source)) as (task: Task) => Result;

parentPort?.on('message', ({ id, task }: { readonly id: number; readonly task: Task }) => {
  parentPort?.postMessage(answer(id, task));
});

function answer(id: number, task: Task): Answer<Result> {
  try {
    return { id, result: run(task) };
  } catch (error) {
    const { message, stack } = error instanceof Error ? error : new Error(String(error));
    return { id, fault: { message, stack } };
  }
}
