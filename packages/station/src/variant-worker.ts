// A worker thread that runs variants, faults, a search's variants, jobs and weeks of the queue or dates of a log,
// of the one cabinet file it was started with.

import { parentPort, workerData } from 'node:worker_threads';
import {
  type FaultOutcome,
  type FaultTask,
  faultRunner,
  type LogOutcome,
  type LogTask,
  logRunner,
  type Outcome,
  type PlanOutcome,
  type PlanTask,
  planRunner,
  type SearchOutcome,
  type SearchTask,
  searchRunner,
  type Variant,
  variantRunner,
} from '@stillair/engine';
import type { Answer } from './pool.ts';
import type { WorkerStart } from './workers.ts';

type Task = Variant | FaultTask | SearchTask | PlanTask | LogTask;
type Result = Outcome | FaultOutcome | SearchOutcome | PlanOutcome | LogOutcome;

const { runs, source, plan } = workerData as WorkerStart;
const logOf = (each: typeof source) => logRunner(each, plan!);
const runners = { variants: variantRunner, faults: faultRunner, search: searchRunner, trials: planRunner, log: logOf };
const run = runners[runs](source) as (task: Task) => Result;

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
