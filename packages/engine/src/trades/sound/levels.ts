// The level at a person's place over the day, from what runs when.

import { fanShares } from '../air-ways.ts';
import { keptWith } from '../kept.ts';
import type { DayRun } from '../measure.ts';
import { fansIn } from '../plant.ts';
import { zeros } from '../zeros.ts';
import { type Heard, heardBy } from './places.ts';
import type { Source } from './sources.ts';

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

/** Share of each source's full power, in the stretch that ends with a row. */
export function sharesOf(run: DayRun, heard: readonly Heard[]): Float64Array[] {
  return heard.map(({ source }) => (source.kind === 'machine' ? machineShares(run, source) : fanSharesOf(run, source)));
}

function machineShares(run: DayRun, { id, idle }: Source): Float64Array {
  const { times } = run.record;
  const shares = zeros(times.length).fill(idle);
  for (const { machine, start, duration } of Object.values(run.cabinet.days[run.day]!.jobs)) {
    if (machine !== id) continue;
    for (let row = 1; row < shares.length; row += 1) {
      const middle = (times[row - 1]! + times[row]!) / 2;
      if (middle >= start && middle < start + duration) shares[row] = 1;
    }
  }
  return shares;
}

function fanSharesOf(run: DayRun, { id, index }: Source): Float64Array {
  const { values } = fanShares(run, id)[index]!;
  const speed = fansIn(run.cabinet.paths[id]!)[index]!.speed ** SPEED_POWER;
  const shares = zeros(values.length);
  for (let row = 1; row < shares.length; row += 1)
    shares[row] =
      (speed * (Math.max(values[row - 1]!, 0) ** SPEED_POWER + Math.max(values[row]!, 0) ** SPEED_POWER)) / 2;
  return shares;
}

export function stretchesOf(run: DayRun, person: string): readonly Stretch[] {
  return keptWith(run, `stretches of sound:${person}`, () => {
    const { times } = run.record;
    const heard = heardBy(run.cabinet, person);
    const powers = zeros(times.length);
    for (const [at, shares] of sharesOf(run, heard).entries()) {
      const { power } = heard[at]!;
      for (let row = 1; row < powers.length; row += 1) powers[row]! += shares[row]! * power;
    }
    const made: Stretch[] = [];
    for (let row = 1; row < times.length; row += 1) {
      const start = times[row - 1]!;
      const length = times[row]! - start;
      if (length > 0) made.push({ start, length, power: powers[row]! });
    }
    return made;
  });
}

/** The parts of the stretches that lie in some hours of the day; an end may lie beyond midnight. */
export function inHours(all: readonly Stretch[], hours: readonly Window[]): Stretch[] {
  const pieces: Stretch[] = [];
  for (const stretch of all) {
    const days = Math.ceil((stretch.start + stretch.length) / DAY);
    for (let day = -1; day <= days; day += 1)
      for (const window of hours) {
        const start = Math.max(stretch.start, window[0] + day * DAY);
        const end = Math.min(stretch.start + stretch.length, window[1] + day * DAY);
        if (end - start > 1e-9) pieces.push({ start, length: end - start, power: stretch.power });
      }
  }
  return pieces;
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
  return sharesOf(run, heard).map((shares) => shares[row]!);
}

export const levelOf = (power: number): number => 10 * Math.log10(power);
