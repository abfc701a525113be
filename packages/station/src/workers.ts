// Running variants and faults of a cabinet on all cores. Outcomes are the same however many there are, and whether there are any.

import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import {
  type CabinetSource,
  type Evaluate,
  type EvaluateFaults,
  type EvaluateLog,
  type EvaluatePlan,
  type EvaluateSearch,
  type FaultOutcome,
  type FaultTask,
  faultRunner,
  type LogOutcome,
  type LogPlan,
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

export interface Evaluator {
  readonly evaluate: Evaluate;
  readonly close: () => Promise<void>;
}

export interface FaultEvaluator {
  readonly evaluate: EvaluateFaults;
  readonly close: () => Promise<void>;
}

export interface SearchEvaluator {
  readonly evaluate: EvaluateSearch;
  readonly close: () => Promise<void>;
}

export interface PlanEvaluator {
  readonly evaluate: EvaluatePlan;
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

export function openEvaluator(source: CabinetSource, options: EvaluatorOptions): Evaluator {
  return openSpread<Variant, Outcome>({ runs: 'variants', source }, variantRunner(source), options);
}

export function openFaultEvaluator(source: CabinetSource, options: EvaluatorOptions): FaultEvaluator {
  return openSpread<FaultTask, FaultOutcome>({ runs: 'faults', source }, faultRunner(source), options);
}

export function openSearchEvaluator(source: CabinetSource, options: EvaluatorOptions): SearchEvaluator {
  return openSpread<SearchTask, SearchOutcome>({ runs: 'search', source }, searchRunner(source), options);
}

export function openPlanEvaluator(source: CabinetSource, options: EvaluatorOptions): PlanEvaluator {
  return openSpread<PlanTask, PlanOutcome>({ runs: 'trials', source }, planRunner(source), options);
}

export interface LogEvaluator {
  readonly evaluate: (plan: LogPlan) => EvaluateLog;
  readonly close: () => Promise<void>;
}

/** For a study of logs: its threads are started with the plan that it makes, and anew for another one. */
export function openLogEvaluator(source: CabinetSource, options: EvaluatorOptions): LogEvaluator {
  const opened: { readonly close: () => Promise<void> }[] = [];
  return {
    evaluate: (plan) => {
      const one = openSpread<LogTask, LogOutcome>({ runs: 'log', source, plan }, logRunner(source, plan), options);
      opened.push(one);
      return one.evaluate;
    },
    close: async () => {
      await Promise.all(opened.map(({ close }) => close()));
    },
  };
}

type Batch<Task, Result> = (
  tasks: readonly Task[],
  hooks: Parameters<Evaluate>[1],
) => Promise<readonly (Result | undefined)[]>;

function openSpread<Task, Result>(
  start: WorkerStart,
  runHere: (task: Task) => Result,
  options: EvaluatorOptions,
): { readonly evaluate: Batch<Task, Result>; readonly close: () => Promise<void> } {
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
