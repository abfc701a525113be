// The level at a person's place over the day, from what runs when.

import { fanShares } from '../air-ways.ts';
import type { DayRun } from '../measure.ts';
import { fansIn } from '../plant.ts';
import { type Heard, heardBy } from './places.ts';

/** Sound power of a fan goes with this power of its speed: 50 lg n. */
const SPEED_POWER = 5;
const DAY = 86_400;

/** Between two rows of the record nothing switches: one level. */
export interface Stretch {
  /** s */
  readonly start: number;
  readonly length: number;
  /** A-weighted power of all sources together. */
  readonly power: number;
}

export type Window = readonly [start: number, end: number];

/** Share of each source's full power in the stretch that ends with a row. */
export function sharesAt(run: DayRun, heard: readonly Heard[]): (row: number) => number[] {
  const { times } = run.record;
  const jobs = Object.values(run.cabinet.days[run.day]!.jobs);
  const courses = heard.map(({ source }) => {
    if (source.kind === 'machine') {
      const mine = jobs.filter(({ machine }) => machine === source.id);
      return (row: number): number => {
        const middle = (times[row - 1]! + times[row]!) / 2;
        return mine.some(({ start, duration }) => middle >= start && middle < start + duration) ? 1 : source.idle;
      };
    }
    const { values } = fanShares(run, source.id)[source.index]!;
    const speed = fansIn(run.cabinet.paths[source.id]!)[source.index]!.speed ** SPEED_POWER;
    return (row: number): number =>
      (speed * (Math.max(values[row - 1]!, 0) ** SPEED_POWER + Math.max(values[row]!, 0) ** SPEED_POWER)) / 2;
  });
  return (row) => courses.map((share) => share(row));
}

const stretches = new WeakMap<DayRun['record'], Map<string, readonly Stretch[]>>();

export function stretchesOf(run: DayRun, person: string): readonly Stretch[] {
  const known = stretches.get(run.record) ?? new Map<string, readonly Stretch[]>();
  stretches.set(run.record, known);
  const before = known.get(person);
  if (before !== undefined) return before;
  const heard = heardBy(run.cabinet, person);
  const shares = sharesAt(run, heard);
  const { times } = run.record;
  const made: Stretch[] = [];
  for (let row = 1; row < times.length; row += 1) {
    const length = times[row]! - times[row - 1]!;
    if (!(length > 0)) continue;
    let power = 0;
    for (const [at, share] of shares(row).entries()) power += share * heard[at]!.power;
    made.push({ start: times[row - 1]!, length, power });
  }
  known.set(person, made);
  return made;
}

/** The parts of the stretches that lie in some hours of the day; an end may lie beyond midnight. */
export function inHours(all: readonly Stretch[], hours: readonly Window[]): Stretch[] {
  return all.flatMap((stretch) => {
    const days = Math.ceil((stretch.start + stretch.length) / DAY);
    const pieces: Stretch[] = [];
    for (let day = -1; day <= days; day += 1)
      for (const [from, to] of hours) {
        const start = Math.max(stretch.start, from + day * DAY);
        const end = Math.min(stretch.start + stretch.length, to + day * DAY);
        if (end - start > 1e-9) pieces.push({ ...stretch, start, length: end - start });
      }
    return pieces;
  });
}

/** Equivalent level: the mean of the powers, dB(A). */
export function meanLevel(all: readonly Stretch[]): number {
  let [energy, time] = [0, 0];
  for (const { power, length } of all) {
    energy += power * length;
    time += length;
  }
  return 10 * Math.log10(energy / time);
}

export function loudestOf(all: readonly Stretch[]): Stretch {
  let loudest = all[0]!;
  for (const stretch of all) if (stretch.power > loudest.power) loudest = stretch;
  return loudest;
}

/** Shares of the sources' full power in a stretch. */
export function sharesIn(run: DayRun, heard: readonly Heard[], { start, length }: Stretch): number[] {
  const { times } = run.record;
  const middle = start + length / 2;
  let row = 1;
  while (row < times.length - 1 && times[row]! < middle) row += 1;
  return sharesAt(run, heard)(row);
}

export const levelOf = (power: number): number => 10 * Math.log10(power);
