// A few worker threads that take tasks as they become free; results come back in the order of the tasks, whoever did them.

import { Worker } from 'node:worker_threads';

export interface Pool<Task, Result> {
  /** One result a task, in order; undefined for what was not done when stopped. Rejects with the first fault of a worker. */
  run(tasks: readonly Task[], done?: (count: number) => void): Promise<(Result | undefined)[]>;
  close(): Promise<void>;
}

/** What a worker answers to `{ id, task }`. */
export type Answer<Result> = { readonly id: number } & (
  | { readonly result: Result }
  | { readonly fault: { readonly message: string; readonly stack: string | undefined } }
);

/** Starts `size` workers of the compiled module at `module`, each of which gets `workerData` once. */
export function openPool<Task, Result>(
  module: URL,
  size: number,
  workerData: unknown,
  stop: AbortSignal,
): Pool<Task, Result> {
  const workers = Array.from({ length: size }, () => new Worker(module, { workerData }));
  return {
    run: (tasks, done = () => {}) => spread(workers, tasks, stop, done),
    close: async () => {
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}

function spread<Task, Result>(
  workers: readonly Worker[],
  tasks: readonly Task[],
  stop: AbortSignal,
  done: (count: number) => void,
): Promise<(Result | undefined)[]> {
  return new Promise((resolve, reject) => {
    const results: (Result | undefined)[] = tasks.map(() => undefined);
    let next = 0;
    let finished = 0;
    const undo: (() => void)[] = [];
    const leave = (end: () => void) => {
      for (const step of undo) step();
      end();
    };
    if (tasks.length === 0 || stop.aborted) return resolve(results);
    const stopped = () => leave(() => resolve(results));
    stop.addEventListener('abort', stopped);
    undo.push(() => stop.removeEventListener('abort', stopped));

    for (const worker of workers) {
      const hand = () => {
        if (next < tasks.length) worker.postMessage({ id: next, task: tasks[next++] });
      };
      const answered = (answer: Answer<Result>) => {
        if ('fault' in answer) return leave(() => reject(Object.assign(new Error(answer.fault.message), answer.fault)));
        results[answer.id] = answer.result;
        done(++finished);
        if (finished === tasks.length) leave(() => resolve(results));
        else hand();
      };
      const broken = (error: unknown) => leave(() => reject(error));
      const left = (code: number) => broken(new Error(`a worker thread ended with status ${code}`));
      worker.on('message', answered);
      worker.on('error', broken);
      worker.on('exit', left);
      undo.push(() => worker.off('message', answered).off('error', broken).off('exit', left));
      hand();
    }
  });
}
