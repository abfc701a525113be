// How long is printed in a week, by how often each day of the file comes in a year.

import type { Cabinet } from '../../cabinet/cabinet.ts';

const WEEKS = 52.18;

/**
 * Seconds a week in which anything prints, or one machine; 0 where the file does not say how often its days come.
 * Jobs that run at the same time count once.
 */
export function printingAWeek({ days, costs }: Pick<Cabinet, 'days' | 'costs'>, machine?: string): number {
  return Object.entries(costs.times).reduce((sum, [day, times]) => {
    const jobs = Object.values(days[day]?.jobs ?? {}).filter((job) => machine === undefined || job.machine === machine);
    return sum + (times / WEEKS) * unionLength(jobs.map(({ start, duration }) => [start, start + duration]));
  }, 0);
}

function unionLength(stretches: readonly (readonly [number, number])[]): number {
  let [sum, until] = [0, Number.NEGATIVE_INFINITY];
  for (const [from, to] of [...stretches].sort((a, b) => a[0] - b[0])) {
    sum += Math.max(to - Math.max(from, until), 0);
    until = Math.max(until, to);
  }
  return sum;
}
