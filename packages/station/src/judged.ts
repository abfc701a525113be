// Judging a cabinet file for a command: on all cores, with a line of progress, and stopped when the person asks.

import { type Judgement, judge, type ReadSource } from '@stillair/engine';
import type { Io } from './io.ts';
import { progressLine } from './progress.ts';
import { openEvaluator } from './workers.ts';

export interface JudgedOptions {
  readonly samples: number;
  readonly workers?: number;
}

export async function judged(source: ReadSource, { samples, workers }: JudgedOptions, io: Io): Promise<Judgement> {
  const evaluator = openEvaluator(source, { workers, stop: io.stop });
  try {
    return await judge(source, {
      samples,
      evaluate: evaluator.evaluate,
      progress: progressLine(io, 'varying inputs and trying remedies'),
      stop: () => io.stop.aborted,
    });
  } finally {
    io.progress('');
    await evaluator.close();
  }
}

/** Tells what a person should know about the run itself: that it was cut short, or that some samples could not be run. */
export function tellRun({ stopped, samples }: Pick<Judgement, 'stopped' | 'samples'>, io: Io): void {
  if (stopped)
    io.err(`Stopped: ${samples.ran} of ${samples.asked} samples ran; bands and remedies are partial or missing.`);
  const lost = samples.asked - samples.ran;
  if (!stopped && lost > 0) {
    io.err(`${lost} of ${samples.asked} samples could not be run: ${samples.faults.join('; ')}`);
  }
}
