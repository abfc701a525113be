// Running tasks of a cabinet on all cores: variants, faults and others. Outcomes are the same however many cores there are.
// Who calls brings the function that runs a task, so that a command loads no other study's.

import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { type CabinetSource, type LogPlan, type Outcome, type Variant, variantRunner } from '@stillair/engine';
import { openPool, type Pool } from './pool.ts';

/** The compiled worker; beside the sources there is none, and everything runs in this thread. */
const WORKER = new URL('./variant-worker.js', import.meta.url);

/**
 * Each thread must load the engine and warm it up, about a second of work, and variants seem longer at first than those to come
 * will be: with less than this left, ms, threads would only delay.
 */
const WORTH_THREADS = 3000;
/** How long variants are run here to see how long one takes, ms. */
const TRIAL = 400;

/**
 * Time that this process has computed, ms. By the clock on the wall a machine busy with something else would make small work
 * look large, and threads would then be started on processors that are not free.
 */
function computed(): number {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
}

type Batch<Task, Result> = (
  tasks: readonly Task[],
  hooks: { readonly finished: () => void; readonly stop: () => boolean },
) => Promise<readonly (Result | undefined)[]>;

export interface Tasks<Task, Result> {
  readonly evaluate: Batch<Task, Result>;
  readonly close: () => Promise<void>;
}

export interface EvaluatorOptions {
  /** Threads; 0 or 1 runs everything in this one. Unless given: one a core, and only for work that is worth them. */
  readonly workers?: number | undefined;
  readonly stop: AbortSignal;
  /** ms of work done so far. */
  readonly now?: () => number;
}

/** What a worker is started with: which tasks it is given, and the file that they are of. */
export interface WorkerStart {
  readonly runs: 'variants' | 'faults' | 'search' | 'trials' | 'log';
  readonly source: CabinetSource;
  /** Of a log: what is read of the cabinet, and when. */
  readonly plan?: LogPlan;
}

export function openEvaluator(source: CabinetSource, options: EvaluatorOptions): Tasks<Variant, Outcome> {
  return openTasks({ runs: 'variants', source }, variantRunner(source), options);
}

/** `runHere` runs a task in this thread as those that are started with `start` run it in theirs. */
export function openTasks<Task, Result>(
  start: WorkerStart,
  runHere: (task: Task) => Result,
  options: EvaluatorOptions,
): Tasks<Task, Result> {
  const { stop, now = computed, workers = availableParallelism() } = options;
  let pool: Pool<Task, Result> | undefined;

  const evaluate: Batch<Task, Result> = async (tasks, hooks) => {
    const outcomes: (Result | undefined)[] = [];
    const begun = now();
    let quickest = Number.POSITIVE_INFINITY; // the first ones also warm the engine up: they say little of those to come
    const threads = workers > 1 && existsSync(WORKER);
    const asked = options.workers !== undefined;
    for (const task of tasks) {
      if (stop.aborted || hooks.stop()) break;
      const started = now();
      const left = quickest * (tasks.length - outcomes.length);
      if (threads && (asked || pool !== undefined || (started - begun > TRIAL && left > WORTH_THREADS))) break;
      outcomes.push(runHere(task));
      quickest = Math.min(quickest, now() - started);
      hooks.finished();
      await new Promise((resolve) => setImmediate(resolve)); // lets Ctrl-C in
    }
    const rest = tasks.slice(outcomes.length);
    if (rest.length === 0 || stop.aborted || hooks.stop()) return [...outcomes, ...rest.map(() => undefined)];
    pool ??= openPool(WORKER, Math.min(workers, rest.length), start, stop);
    return [...outcomes, ...(await pool.run(rest, () => hooks.finished()))];
  };
  return { evaluate, close: async () => pool?.close() };
}
