// A study that may take long: on all cores, with a line of progress, and stopped when the person asks.

import type { Io } from './io.ts';
import { progressLine } from './progress.ts';

/** What every such study of the engine is given. */
export interface StudyHooks<Evaluate> {
  readonly evaluate: Evaluate;
  readonly progress: (done: number, all: number, more?: string) => void;
  readonly stop: () => boolean;
}

/** Whatever comes of the study, its threads are closed and its line is wiped. `what` is said while it runs. */
export async function longStudy<Evaluate, Result>(
  evaluator: { readonly evaluate: Evaluate; readonly close: () => Promise<void> },
  what: string,
  io: Io,
  study: (hooks: StudyHooks<Evaluate>) => Promise<Result>,
): Promise<Result> {
  try {
    return await study({
      evaluate: evaluator.evaluate,
      progress: progressLine(io, what),
      stop: () => io.stop.aborted,
    });
  } finally {
    io.progress('');
    await evaluator.close();
  }
}
