// A worker's other side: it does single tasks for the one that started it, and keeps what it has read while the work is the same.

import { type CabinetSource, type LogPlan, type Variant, variantRunner } from '@stillair/engine';
import { logsOnDemand, onDemand } from './on-demand.ts';
import type { Help, Helped, Runs } from './protocol.ts';

type Runner = (task: unknown) => unknown;

export function helping(say: (answer: Helped) => void): (help: Help) => void {
  let work = 0;
  let runner: Promise<Runner> | undefined;
  return ({ ticket, work: asked, runs, text, plan, task }) => {
    if (asked !== work || runner === undefined) runner = runnerOf(runs, { file: 'cabinet', text }, plan);
    work = asked;
    // A task that cannot be done is an error of this worker, which the one that asked hears of.
    void runner.then((run) => say({ kind: 'helped', ticket, outcome: run(task) })).catch(thrown);
  };
}

async function runnerOf(runs: Runs, source: CabinetSource, plan: LogPlan | undefined): Promise<Runner> {
  if (runs === 'variants') return variantRunner(source) as (task: Variant) => unknown as Runner;
  if (runs === 'log') return (await logsOnDemand()).logRunner(source, plan!) as Runner;
  const { faultRunner, searchRunner, trialRunner } = await onDemand();
  const runners = { faults: faultRunner, search: searchRunner, trials: trialRunner };
  return runners[runs](source) as Runner;
}

function thrown(error: unknown): void {
  setTimeout(() => {
    throw error;
  }, 0);
}
