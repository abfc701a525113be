// Prices of electricity that change over the day.

import type { Profile } from '../units/profile.ts';
import { type Course, integralOf, within } from './course.ts';

const DAY = 86_400;

/** Money for a course of power, at the price of each of its moments. */
export function costOf(course: Course, tariff: Profile): number {
  const [only] = tariff;
  if (only !== undefined && tariff.length === 1) return only[1] * integralOf(course);
  const [start, end] = [course.times[0]!, course.times.at(-1)!];
  let sum = 0;
  for (let day = Math.floor(start / DAY); day * DAY < end; day += 1)
    for (const [at, [from, price]] of tariff.entries()) {
      const a = Math.max(day * DAY + from, start);
      const b = Math.min(day * DAY + (tariff[at + 1]?.[0] ?? DAY), end);
      if (b > a) sum += price * integralOf(within(course, a, b));
    }
  return sum;
}
