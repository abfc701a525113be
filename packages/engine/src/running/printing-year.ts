// How long all machines together print in a year.

import type { Cabinet } from '../cabinet/cabinet.ts';
import type { Diary } from './diary.ts';

const YEAR = 365.25;
/** Days of a diary that say something of a year. */
const FEWEST = 28;

/** Machine seconds a year: by the diary's last year, else by `costs.times`; undefined when neither says anything. */
export function printingPerYear(
  cabinet: Cabinet,
  diary: Diary | undefined,
  today: number | undefined,
): number | undefined {
  if (diary !== undefined && today !== undefined && diary.jobs.length > 0) {
    const since = Math.max(Math.round(today - YEAR), Math.min(...diary.jobs.map(({ first }) => first)));
    const days = today - since;
    if (days >= FEWEST) {
      const seconds = diary.jobs.reduce((sum, { first, last, times, duration }) => {
        const inside = Math.max(0, last + 1 - Math.max(first, since));
        return sum + (times * duration * inside) / (last + 1 - first);
      }, 0);
      return (seconds * YEAR) / days;
    }
  }
  const { times } = cabinet.costs;
  if (Object.keys(times).length === 0) return undefined;
  return Object.entries(times).reduce(
    (sum, [day, count]) =>
      sum + count * Object.values(cabinet.days[day]?.jobs ?? {}).reduce((all, { duration }) => all + duration, 0),
    0,
  );
}
