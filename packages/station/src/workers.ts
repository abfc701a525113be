// Running variants of a cabinet on all cores. Outcomes are the same however many there are, and whether there are any.

import { existsSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { type CabinetSource, type Evaluate, type Outcome, type Variant, variantRunner } from '@stillair/engine';
import { openPool, type Pool } from './pool.ts';

/** The compiled worker; beside the sources there is none, and everything runs in this thread. */
const WORKER = new URL('./variant-worker.js', import.meta.url);

/** A thread must load and warm up the engine first, ms of work: below this much, threads would only delay. */
const WORTH_THREADS = 1000;
/** How long variants are run here to see how long one takes, ms. */
const TRIAL = 150;

export interface Evaluator {
  readonly evaluate: Evaluate;
  readonly close: () => Promise<void>;
}

export interface EvaluatorOptions {
  /** Threads; 0 or 1 runs everything in this one; one a core unless given. */
  readonly workers?: number | undefined;
  readonly stop: AbortSignal;
  readonly now?: () => number;
}

export function openEvaluator(source: CabinetSource, options: EvaluatorOptions): Evaluator {
  const { stop, now = () => performance.now(), workers = availableParallelism() } = options;
  const runHere = variantRunner(source);
  let pool: Pool<Variant, Outcome> | undefined;

  const evaluate: Evaluate = async (variants, hooks) => {
    const outcomes: (Outcome | undefined)[] = [];
    const begun = now();
    let quickest = Number.POSITIVE_INFINITY; // the first ones also warm the engine up: they say little of those to come
    const threads = workers > 1 && existsSync(WORKER);
    for (const variant of variants) {
      if (stop.aborted || hooks.stop()) break;
      const started = now();
      const left = quickest * (variants.length - outcomes.length);
      if (threads && (pool !== undefined || (started - begun > TRIAL && left > WORTH_THREADS))) break;
      outcomes.push(runHere(variant));
      quickest = Math.min(quickest, now() - started);
      hooks.finished();
      await new Promise((resolve) => setImmediate(resolve)); // lets Ctrl-C in
    }
    const rest = variants.slice(outcomes.length);
    if (rest.length === 0 || stop.aborted || hooks.stop()) return [...outcomes, ...rest.map(() => undefined)];
    pool ??= openPool(WORKER, Math.min(workers, rest.length), source, stop);
    return [...outcomes, ...(await pool.run(rest, () => hooks.finished()))];
  };
  return { evaluate, close: async () => pool?.close() };
}
