import type { Profile } from '../units/profile.ts';

const DAY = 86400;

/**
 * A course over one day, carried on over `length` seconds: day after day the same, straight from each day's last point to the
 * next day's first. A course of one point is a constant.
 */
export function repeatDaily(course: Profile, length: number): Profile {
  if (course.length <= 1) return course;
  const points: (readonly [number, number])[] = [];
  const [firstTime, firstValue] = course[0]!;
  const [lastTime, lastValue] = course.at(-1)!;
  // Value at midnight, on the straight line from the last point over midnight to the first.
  const gap = firstTime + DAY - lastTime;
  const midnight = gap <= 0 ? firstValue : lastValue + ((firstValue - lastValue) * (DAY - lastTime)) / gap;
  for (let start = 0; start < length; start += DAY) {
    if (firstTime > 0) points.push([start, midnight]);
    for (const [time, value] of course) if (time < DAY) points.push([start + time, value]);
    points.push([start + DAY, midnight]);
  }
  return points.filter(([time], index) => index === 0 || time > points[index - 1]![0]);
}

/** Windows of one day, every day. A window over midnight (end ≤ start) is split. */
export function repeatWindows(
  windows: readonly (readonly [number, number])[],
  length: number,
): (readonly [number, number])[] {
  const whole: (readonly [number, number])[] = [];
  for (let start = 0; start < length; start += DAY) {
    for (const [from, to] of windows) {
      if (to > from) whole.push([start + from, Math.min(start + to, length)]);
      else whole.push([start, start + to], [start + from, start + DAY]);
    }
  }
  return mergeWindows(whole.filter(([from, to]) => to > from && from < length));
}

/** Sorted, without overlaps. */
export function mergeWindows(windows: readonly (readonly [number, number])[]): (readonly [number, number])[] {
  const merged: [number, number][] = [];
  for (const [from, to] of [...windows].sort((a, b) => a[0] - b[0])) {
    const last = merged.at(-1);
    if (last !== undefined && from <= last[1]) last[1] = Math.max(last[1], to);
    else merged.push([from, to]);
  }
  return merged;
}
