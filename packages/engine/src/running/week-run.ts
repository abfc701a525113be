// The planned week, simulated: what it comes to hour by hour, which limits it breaks, and what that teaches the plan.

import type { Cabinet } from '../cabinet/cabinet.ts';
import type { Band } from '../judge/bands.ts';
import type { Verdict } from '../judge/finding.ts';
import { measureDay, runDay } from '../judge/pipeline.ts';
import { verdictOf } from '../judge/verdict.ts';
import { bayCourse, temperatureOf } from '../trades/air-ways.ts';
import { type Course, courseFrom, largest, valueAt, within } from '../trades/course.ts';
import { cabinetPower, circuitCurrent } from '../trades/draws.ts';
import type { DayRun, Measure } from '../trades/measure.ts';
import { sharesOf } from '../trades/sound/levels.ts';
import { heardBy } from '../trades/sound/places.ts';
import { formatQuantity } from '../units/format.ts';
import type { KindName } from '../units/unit-table.ts';
import { formatMoment } from '../units/week.ts';
import { dayOfQueue, jobOn, PLAN_DAY, planTrades, type Trial } from './queue-trial.ts';
import type { Cut, WeekJob } from './week.ts';

const DAY = 86_400;
const HOUR = 3600;
/** The week is looked at for so long after its last job, s. */
const AFTER = 3 * HOUR;
/** A job is kept from a time of day by so much on either side of the moment at which it broke a limit, s. */
const AROUND = HOUR / 2;

export interface Placed {
  readonly job: WeekJob;
  readonly machine: string;
  /** s after the origin's midnight. */
  readonly start: number;
  readonly end: number;
}

export interface PlanCheck {
  /** `trade/quantity/part` */
  readonly id: string;
  readonly title: string;
  readonly part: string;
  readonly unit: string;
  readonly value?: number;
  readonly limit: NonNullable<Measure['limit']>;
  readonly verdict: Verdict;
  /** s after the origin's midnight. */
  readonly at?: number;
  /** Of common samples, where they were asked for. */
  readonly p10?: number;
  readonly p50?: number;
  readonly p90?: number;
  /** Share of the samples that keep the limit. */
  readonly chance?: number;
  /** A job of it breaks this limit all by itself too: no plan mends that. */
  readonly alone: boolean;
}

export interface PlanHour {
  /** Start of the hour, s after the origin's midnight. */
  readonly time: number;
  /** Most in the hour: W, A, K by bay, dB(A) by person. */
  readonly power: number;
  readonly current: number;
  readonly air: Readonly<Record<string, number>>;
  readonly noise: Readonly<Record<string, number>>;
  /** The same of common samples, where they were asked for. */
  readonly bands?: HourBands;
}

export interface HourBands {
  readonly power: Band;
  readonly current: Band;
  readonly air: Readonly<Record<string, Band>>;
  readonly noise: Readonly<Record<string, Band>>;
}

export interface WeekRun {
  readonly cabinet: Cabinet;
  readonly run: DayRun;
  /** s from the run's start to the origin's midnight: what was started before must lie in it too. */
  readonly shift: number;
}

/** `until`: when it ends, s after the origin's midnight, or with its last job where that is later; unless given, some hours after that. */
export function runWeek(cabinet: Cabinet, placed: readonly Placed[], until?: number): WeekRun {
  const queue = cabinet.queue!;
  const first = Math.min(0, ...placed.map(({ start }) => start));
  const shift = -Math.floor(first / DAY) * DAY;
  const ends = placed.map(({ end }) => end);
  const last = until === undefined ? Math.max(queue.from + DAY, ...ends) + AFTER : Math.max(until, ...ends);
  const jobs = Object.fromEntries(
    placed.map(({ job, machine, start }) => [job.id, jobOn(job.job, machine, start + shift)]),
  );
  const week = { ...cabinet, days: { [PLAN_DAY]: dayOfQueue(cabinet, jobs, last + shift) } };
  return { cabinet: week, run: runDay(week, PLAN_DAY), shift };
}

/** Limits of heat, power and sound over the week; worst first. */
export function checksOf({ run, shift }: WeekRun, placed: readonly Placed[], trials: readonly Trial[]): PlanCheck[] {
  return byVerdict(
    [...measureDay(run, planTrades).values()].flatMap(
      ({ trade, quantity, part, title, unit, value, limit, at }): PlanCheck[] => {
        if (limit === undefined) return [];
        const kind = kindPart(part, placed);
        const id = `${trade}/${quantity}/${part}`;
        const alone = trials.some(
          ({ breaks, job, machine }) =>
            breaks.includes(`${trade}/${quantity}/${kind}`) &&
            placed.some((each) => each.job.kind === job && each.machine === machine),
        );
        const verdict = verdictOf(value, undefined, limit);
        return [
          {
            id,
            title,
            part,
            unit,
            limit,
            verdict,
            alone: verdict === 'fails' && alone,
            ...(value === undefined ? {} : { value }),
            ...(at === undefined ? {} : { at: at - shift }),
          },
        ];
      },
    ),
  );
}

const ORDER: readonly Verdict[] = ['fails', 'unknown', 'tight', 'holds', 'told'];

export function byVerdict(checks: readonly PlanCheck[]): PlanCheck[] {
  return [...checks].sort((a, b) => ORDER.indexOf(a.verdict) - ORDER.indexOf(b.verdict));
}

/** The part of a trial that stands for a part of the week: copies of a job are one kind. */
function kindPart(part: string, placed: readonly Placed[]): string {
  const found = placed.find(({ job, machine }) => `${machine}.${job.id}` === part);
  return found === undefined ? part : `${found.machine}.${found.job.kind}`;
}

/** What the first limit that a plan can mend teaches: jobs that may not run together, or a time of day to keep from. */
export function cutFrom(
  checks: readonly PlanCheck[],
  placed: readonly Placed[],
  origin: number,
  known: readonly Cut[],
): Cut | undefined {
  for (const { verdict, alone, at, title, part, value, limit, unit } of checks) {
    // A bay that is too cool is not mended by waiting; a mean over hours has no moment.
    if (verdict !== 'fails' || alone || at === undefined || limit.kind !== 'at-most') continue;
    const running = placed.filter(({ job, start, end }) => job.fixed === undefined && start <= at && at <= end);
    if (running.length === 0) continue;
    const prints = [...new Set(running.map(({ job, machine }) => `${machine}.${job.kind}`))].sort((a, b) =>
      a.localeCompare(b, 'en'),
    );
    const number = (one: number): string => formatQuantity(unit as KindName, one);
    const says = `${title}, ${part}: ${number(value!)} at ${formatMoment(origin, at)} in the simulated week, at most ${number(limit.value)}`;
    const clock = ((at % DAY) + DAY) % DAY;
    const cut: Cut =
      prints.length > 1
        ? { prints, says: `${prints.join(' and ')} do not run together: ${says}` }
        : {
            prints,
            clock: [clock - AROUND, clock + AROUND],
            says: `${prints[0]} does not run at that time of day: ${says}`,
          };
    if (
      !known.some(
        (other) => JSON.stringify(other.prints) === JSON.stringify(cut.prints) && other.clock?.[0] === cut.clock?.[0],
      )
    )
      return cut;
  }
  return undefined;
}

/** The most of each quantity in every hour of the plan. */
export function hoursOf({ run, shift }: WeekRun, from: number, until: number): PlanHour[] {
  const { cabinet, record } = run;
  const end = Math.min(until, record.times.at(-1)! - shift);
  const power = cabinetPower(run);
  const current = circuitCurrent(run);
  const air = Object.keys(cabinet.bays).map(
    (bay) => [bay, bayCourse(run, bay, (zone) => temperatureOf(run, zone))] as const,
  );
  const noise = Object.keys(cabinet.people).map((person) => [person, noiseCourse(run, person)] as const);
  const most = (course: Course, time: number): number => {
    const [a, b] = [time + shift, Math.min(time + HOUR, end) + shift];
    return b > a ? largest(within(course, a, b)).value : valueAt(course, a);
  };
  const hours: PlanHour[] = [];
  for (let time = Math.floor(from / HOUR) * HOUR; time < end; time += HOUR)
    hours.push({
      time,
      power: most(power, time),
      current: most(current, time),
      air: Object.fromEntries(air.map(([bay, course]) => [bay, most(course, time)])),
      noise: Object.fromEntries(
        noise.map(([person, course]) => [person, Math.max(10 * Math.log10(most(course, time)), 0)]),
      ),
    });
  return hours;
}

/** Power ratio at a person's place; both rows of a stretch between two switchings have it. */
function noiseCourse(run: DayRun, person: string): Course {
  const heard = heardBy(run.cabinet, person);
  const shares = sharesOf(run, heard);
  return courseFrom(run.record, (row) => {
    const after = Math.max(row, 1);
    return heard.reduce((sum, { power }, at) => sum + power * shares[at]![after]!, 1e-12);
  });
}
