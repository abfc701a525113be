// What the day's jobs give off, course by course and in all. Followed on a grid of its own, fine where it changes.

import { burstFactor, tailFactor } from '@stillair/physics';
import type { EmissionCourse } from '../../network/network.ts';
import type { Course } from '../course.ts';
import { integralOf } from '../course.ts';
import { keptByKey } from '../kept.ts';
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
  /** Units per second at full rate, 1 a second when settled: one for all that a job gives off with the same burst and tail. */
  readonly shape: Course;
  /** Units per second when settled. */
  readonly rate: number;
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
    if (!(Math.min(end, last) > Math.max(start, 0))) return [];
    return (emissions ?? []).flatMap(({ contaminant, zone, rate, ...emission }) => {
      if (!(rate > 0)) return [];
      const { shape, whole } = shapeOf(emission, start, Math.min(end, last), last);
      return [{ machine, mode, contaminant, zone, shape, rate, total: rate * whole, start, end }];
    });
  });
}

interface Shape {
  readonly shape: Course;
  /** Its integral. */
  readonly whole: number;
}

/** Nothing but a job's times and its material counts: days and variants of a cabinet have many in common. */
const shapes = keptByKey<Shape>();

function shapeOf(emission: EmissionCourse, start: number, end: number, last: number): Shape {
  const { burst, tail } = emission;
  const key = `${burst?.ratio} ${burst?.time} ${tail?.share} ${tail?.time} ${start} ${end} ${last}`;
  return shapes(key, () => {
    const shape = releaseShape(emission, start, end, last);
    return { shape, whole: integralOf(shape) };
  });
}

/** 1 + (r − 1)·exp(−t/τ) while the job runs, share·exp(−t/τ) after it. */
function releaseShape({ burst, tail }: EmissionCourse, start: number, end: number, last: number): Course {
  const during = stepsFrom(Math.max(start, 0), end);
  const after = tail === undefined || !(last > end) ? [] : stepsFrom(end, last);
  const times = Float64Array.from([...during, ...after]);
  const values = new Float64Array(times.length);
  for (let at = 0; at < during.length; at += 1)
    values[at] = burst === undefined ? 1 : burstFactor(times[at]! - start, burst.ratio, burst.time);
  for (let at = during.length; tail !== undefined && at < times.length; at += 1)
    values[at] = tailFactor(times[at]! - end, tail.share, tail.time);
  return { times, values };
}

function stepsFrom(from: number, to: number): number[] {
  const times: number[] = [];
  for (let time = from; time < to; time += time - from < FIRST ? FINE : COARSE) times.push(time);
  times.push(to);
  return times;
}

/** Units of one contaminant over the day, from all jobs. */
export function emittedOf(releases: readonly Release[], contaminant: string): number {
  return releases.reduce((sum, release) => sum + (release.contaminant === contaminant ? release.total : 0), 0);
}
