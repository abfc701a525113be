// A profile's value and slope at a moment. At a time given twice the later point rules: a jump has happened.

import type { Profile } from '../units/profile.ts';

/** Index of the last point at or before `time`; -1 before the first. */
function pointBefore(course: Profile, time: number): number {
  let low = -1;
  let high = course.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (course[middle]![0] <= time) low = middle;
    else high = middle;
  }
  return low;
}

/** Value at `time`: straight between points, constant before the first and after the last. */
export function courseValue(course: Profile, time: number): number {
  const index = pointBefore(course, time);
  if (index < 0) return course[0]![1];
  const [t0, v0] = course[index]!;
  const next = course[index + 1];
  return next === undefined ? v0 : v0 + ((next[1] - v0) * (time - t0)) / (next[0] - t0);
}

/** Slope per second just after `time`. */
export function courseSlope(course: Profile, time: number): number {
  const index = pointBefore(course, time);
  const next = course[index + 1];
  if (index < 0 || next === undefined) return 0;
  const [t0, v0] = course[index]!;
  return (next[1] - v0) / (next[0] - t0);
}
