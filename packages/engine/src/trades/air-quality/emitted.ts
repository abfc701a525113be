// What the day's jobs give off, course by course and in all. Followed on a grid of its own, fine where it changes.

import { burstFactor, tailFactor } from '@stillair/physics';
import type { EmissionCourse } from '../../network/network.ts';
import type { Course } from '../course.ts';
import { integralOf } from '../course.ts';
import type { DayRun } from '../measure.ts';

/** Steps at a course's start and after its first hour, s: burst and tail have time constants of minutes and hours. */
const FINE = 30;
const COARSE = 300;
const FIRST = 3600;

export interface Release {
  readonly machine: string;
  readonly mode: string;
  readonly contaminant: string;
  readonly zone: string;
  /** Units per second. */
  readonly course: Course;
  /** Units over the day. */
  readonly total: number;
  /** When the job begins and ends, s. */
  readonly start: number;
  readonly end: number;
}

export function releasesOf({ record }: DayRun): Release[] {
  const { network, times } = record;
  const last = times[times.length - 1]!;
  return network.schedule.flatMap(({ machine, mode, start, end }) => {
    const emissions = network.machines
      .find(({ name }) => name === machine)
      ?.modes.find(({ name }) => name === mode)?.emissions;
    return (emissions ?? []).flatMap(({ contaminant, zone, rate, ...course }) => {
      if (!(rate > 0) || !(Math.min(end, last) > Math.max(start, 0))) return [];
      const released = releaseCourse(rate, course, start, Math.min(end, last), last);
      return [{ machine, mode, contaminant, zone, course: released, total: integralOf(released), start, end }];
    });
  });
}

/** rate·(1 + (r − 1)·exp(−t/τ)) while the job runs, rate·share·exp(−t/τ) after it. */
function releaseCourse(
  rate: number,
  { burst, tail }: EmissionCourse,
  start: number,
  end: number,
  last: number,
): Course {
  const times: number[] = [];
  const values: number[] = [];
  const follow = (from: number, to: number, at: (time: number) => number): void => {
    for (let time = from; time < to; time += time - from < FIRST ? FINE : COARSE) {
      times.push(time);
      values.push(at(time));
    }
    times.push(to);
    values.push(at(to));
  };
  const begin = Math.max(start, 0);
  follow(begin, end, (time) => rate * (burst === undefined ? 1 : burstFactor(time - start, burst.ratio, burst.time)));
  if (tail !== undefined && last > end)
    follow(end, last, (time) => rate * tailFactor(time - end, tail.share, tail.time));
  return { times: Float64Array.from(times), values: Float64Array.from(values) };
}

/** Units of one contaminant over the day, from all jobs. */
export function emittedOf(releases: readonly Release[], contaminant: string): number {
  return releases.reduce((sum, release) => sum + (release.contaminant === contaminant ? release.total : 0), 0);
}
