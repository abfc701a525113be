// When a bed and a hot end have cooled after a job, from the day that was simulated: the bay's own air, not a fixed wait.

import { type Course, valueAt } from '../trades/course.ts';

/** J/K: a block of aluminium or brass with its heater, and how small or large it may be. Common practice, no source. */
export const HOT_END_CAPACITY = { small: 15, usual: 25, large: 40 } as const;
/** Air for which hot-end figures are stated, K. */
const STATED_AIR = 298.15;
const STEP = 5;

/**
 * The last moment at or after `from` at which a course is at or above a level: from then on it stays below, as far as it was looked
 * at. Undefined when it is still above at the end.
 */
export function belowFrom(course: Course, level: number, from: number, until: number): number | undefined {
  const { times } = course;
  const end = Math.min(until, times.at(-1)!);
  if (valueAt(course, end) >= level) return undefined;
  let last: number | undefined;
  const moments = [from, ...[...times].filter((time) => time > from && time < end), end];
  for (let at = moments.length - 1; at > 0; at -= 1) {
    if (valueAt(course, moments[at - 1]!) < level) continue;
    last = at;
    break;
  }
  if (last === undefined) return from;
  let [above, below] = [moments[last - 1]!, moments[last]!];
  for (let halving = 0; halving < 40; halving += 1) {
    const middle = (above + below) / 2;
    if (valueAt(course, middle) >= level) above = middle;
    else below = middle;
  }
  return below;
}

export interface HotEnd {
  /** K, at the end of the job. */
  readonly nozzle: number;
  /** W into the air around it at `at`. */
  readonly watts: number;
  readonly at: number;
  readonly capacity: number;
}

/**
 * When a hot end falls below a level in the air around it: one temperature, small exact steps, C dT/dt = -UA (T - T_air(t)), UA from
 * what it gives to the air while printing. What its own fan carries off besides is not counted: it cools sooner.
 */
export function hotEndBelow(
  { nozzle, watts, at, capacity }: HotEnd,
  air: Course,
  level: number,
  from: number,
  until: number,
): number | undefined {
  const rate = watts / (at - STATED_AIR) / capacity;
  if (!(rate > 0)) return undefined;
  let [temperature, time] = [nozzle, from];
  const end = Math.min(until, air.times.at(-1)!);
  const left = Math.exp(-rate * STEP);
  for (; temperature >= level && time < end; time += STEP) {
    const around = valueAt(air, Math.min(time + STEP / 2, end));
    temperature = around + (temperature - around) * left;
  }
  return temperature < level ? time : undefined;
}
