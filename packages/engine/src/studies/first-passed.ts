// When a limit is passed for the first time, for what has a temperature at every moment; of means over hours only the worst is known.

import { temperatureOf } from '../trades/air-ways.ts';
import { firstReaching, valueAt } from '../trades/course.ts';
import type { DayRun, Measure } from '../trades/measure.ts';

/**
 * A measure says its value and its moment, not whose temperature it is: it is that of the one column of the record which has that
 * value at that moment.
 */
export function firstPassed(run: DayRun, { unit, value, limit, at }: Measure): number | undefined {
  if (unit !== 'temperature' || value === undefined || at === undefined || limit?.kind !== 'at-most') return undefined;
  if (value <= limit.value) return undefined;
  for (const name of run.record.temperatures.names) {
    const course = temperatureOf(run, name);
    if (Math.abs(valueAt(course, at) - value) > 1e-6) continue;
    const first = firstReaching(course, limit.value, 'below');
    if (first !== undefined && first <= at) return first;
  }
  return undefined;
}
