// The tasks of a study of logs: its threads are started with the plan that it makes, and anew for another one.

import { type CabinetSource, type EvaluateLog, type LogPlan, logRunner } from '@stillair/engine';
import { type EvaluatorOptions, openTasks } from './workers.ts';

export interface LogEvaluator {
  readonly evaluate: (plan: LogPlan) => EvaluateLog;
  readonly close: () => Promise<void>;
}

export function openLogEvaluator(source: CabinetSource, options: EvaluatorOptions): LogEvaluator {
  const opened: { readonly close: () => Promise<void> }[] = [];
  return {
    evaluate: (plan) => {
      const one = openTasks({ runs: 'log', source, plan }, logRunner(source, plan), options);
      opened.push(one);
      return one.evaluate;
    },
    close: async () => {
      await Promise.all(opened.map(({ close }) => close()));
    },
  };
}
