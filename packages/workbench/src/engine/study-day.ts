// Bands about the lines of a day, on all cores.

import {
  type CourseOutcome,
  type CourseTask,
  courseRunner,
  type DayBands,
  dayBands,
  type ReadSource,
} from '@stillair/engine';
import type { Hands } from './hands.ts';
import type { LongQuestion } from './protocol.ts';

export function bandsOfDay(
  source: ReadSource,
  { day, units, samples }: Extract<LongQuestion, { kind: 'dayBands' }>,
  hands: Hands,
  stop: () => boolean,
): Promise<DayBands> {
  const { text } = source;
  const evaluate = hands.spread<CourseTask, CourseOutcome>({ runs: 'courses', text, here: courseRunner(source) });
  return dayBands(source, { day, units, samples, evaluate, stop });
}
