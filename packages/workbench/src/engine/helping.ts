// A worker's other side: it does single tasks for the one that started it, and keeps what it has read for the last pieces of work:
// two may run at once.

import { type CabinetSource, type LogPlan, type Variant, variantRunner } from '@stillair/engine';
import { logsOnDemand, onDemand, queueOnDemand } from './on-demand.ts';
import type { Help, Helped, Runs } from './protocol.ts';

type Runner = (task: unknown) => unknown;

/** Pieces of work that are remembered. */
const KEPT = 3;

export function helping(say: (answer: Helped) => void): (help: Help) => void {
  const runners = new Map<number, Promise<Runner>>();
  return ({ ticket, work, runs, text, plan, task }) => {
    const runner = runners.get(work) ?? runnerOf(runs, { file: 'cabinet', text }, plan);
    runners.set(work, runner);
    for (const old of runners.keys()) if (old <= work - KEPT) runners.delete(old);
    // A task that cannot be done is an error of this worker, which the one that asked hears of.
    void runner.then((run) => say({ kind: 'helped', ticket, outcome: run(task) })).catch(thrown);
  };
}

async function runnerOf(runs: Runs, source: CabinetSource, plan: LogPlan | undefined): Promise<Runner> {
  if (runs === 'variants') return variantRunner(source) as (task: Variant) => unknown as Runner;
  if (runs === 'log') return (await logsOnDemand()).logRunner(source, plan!) as Runner;
  if (runs === 'trials') return (await queueOnDemand()).planRunner(source) as Runner;
  const { courseRunner, faultRunner, searchRunner } = await onDemand();
  const runners = { courses: courseRunner, faults: faultRunner, search: searchRunner };
  return runners[runs](source) as Runner;
}

function thrown(error: unknown): void {
  setTimeout(() => {
    throw error;
  }, 0);
}
