// When a piece of care is due: whichever of its intervals comes first, by the middle of what is known and by what is not.

import type { Assumption } from '../cabinet/assumption.ts';
import type { CareTask } from '../cabinet/care.ts';
import { quantile } from '../judge/bands.ts';
import type { Verdict } from '../judge/finding.ts';
import { sampleColumn, valueAt } from '../judge/samples.ts';
import { addMonths } from '../units/calendar.ts';
import type { Diary, DoneEntry } from './diary.ts';
import { type LoadKey, loadKey, stageKey } from './load.ts';
import type { LifeBand } from './stage-use.ts';
import type { Timeline } from './timeline.ts';

export type DueBy = 'printing' | 'calendar' | 'pressure' | 'life';

/** One reason why a part may be due, in SI; days of the calendar in days, shares of a life as they are. */
export interface Criterion {
  readonly by: DueBy;
  readonly used: number;
  readonly of: number;
  /** `used` over `of`: of a pressure, from the clean loss to the last one. */
  readonly share: number;
  /** By the middle of everything, day; absent beyond twenty years. */
  readonly due?: number;
}

export interface Due {
  /** When it was last done; absent when it never was. */
  readonly last?: number;
  /** Soonest first. */
  readonly criteria: readonly Criterion[];
  /** 10th, 50th and 90th percentile, day; what lies beyond twenty years is absent. */
  readonly p10?: number;
  readonly p50?: number;
  readonly p90?: number;
  readonly verdict: Verdict;
  /** What is not known, and how to give it. */
  readonly missing?: string;
}

export interface DueQuestion {
  readonly task: CareTask;
  readonly diary: Diary | undefined;
  readonly today: number;
  readonly middle: Timeline | undefined;
  readonly drawn: readonly Timeline[];
  readonly lives: ReadonlyMap<string, LifeBand>;
  readonly seed: number;
}

const AHEAD = Math.round(20 * 365.25);

export function dueOf(question: DueQuestion): Due {
  const { task, diary, today, middle, drawn, seed } = question;
  if (diary === undefined)
    return {
      criteria: [],
      verdict: 'unknown',
      missing: 'there is no diary: it says since when the cabinet is used and what was done',
    };
  const done = diary.done.filter(({ part }) => part === task.part);
  const last = done.filter(({ did }) => did === task.action || did === 'change').at(-1)?.on;
  const since = last ?? diary.began;
  const readings = readingsSince(done);
  const columns = columnsOf(task, drawn.length, seed, question.lives);
  const at = (timeline: Timeline | undefined, sample?: number): Criterion[] =>
    criteriaOf(question, since, readings, timeline, (name, spread) =>
      sample === undefined ? spread.value : columns(name, spread)[sample]!,
    );
  const criteria = at(middle).sort((a, b) => dayOf(a) - dayOf(b));
  const told = last === undefined ? {} : { last };
  if (criteria.length === 0)
    return {
      ...told,
      criteria,
      verdict: 'unknown',
      missing:
        task.interval.printing === undefined
          ? 'nothing was read: enter what its pressure loss is'
          : 'how much is printed is not known: enter jobs in the diary, or give costs.times',
    };
  const days = drawn.map((timeline, sample) => Math.min(...at(timeline, sample).map(dayOf)));
  const nominal = dayOf(criteria[0]!);
  const all = days.length === 0 ? [nominal] : days;
  // What never comes lies beyond every day that does.
  const ends = all.map((day) => Math.min(day, today + AHEAD + 1));
  const [p10, p50, p90] = [0.1, 0.5, 0.9].map((share) => Math.round(quantile(ends, share)));
  const within = (name: 'p10' | 'p50' | 'p90', day: number): object => (day > today + AHEAD ? {} : { [name]: day });
  const verdict: Verdict = p90! < today ? 'fails' : p10! <= today ? 'tight' : 'holds';
  return { ...told, criteria, ...within('p10', p10!), ...within('p50', p50!), ...within('p90', p90!), verdict };
}

const dayOf = ({ due }: Criterion): number => due ?? Number.POSITIVE_INFINITY;

/** Readings since the part was last changed, that day's own included. */
function readingsSince(done: readonly DoneEntry[]): readonly (DoneEntry & { readonly reading: number })[] {
  const changed = done.findLastIndex(({ did }) => did === 'change');
  return done
    .slice(Math.max(changed, 0))
    .filter((entry): entry is DoneEntry & { reading: number } => entry.reading !== undefined);
}

type Picked = (name: string, spread: Pick<Assumption, 'value' | 'low' | 'high'>) => number;

function criteriaOf(
  { task, today, lives }: DueQuestion,
  since: number,
  readings: readonly (DoneEntry & { readonly reading: number })[],
  timeline: Timeline | undefined,
  pick: Picked,
): Criterion[] {
  const { interval, counts } = task;
  const found: Criterion[] = [];
  const put = (by: DueBy, used: number, of: number, due: number): void => {
    const known = due <= today + AHEAD ? { due } : {};
    found.push({ by, used, of, share: used / of, ...known });
  };
  if (interval.months !== undefined) {
    const due = addMonths(since, pick('months', interval.months));
    put('calendar', today - since, due - since, due);
  }
  if (interval.days !== undefined) {
    const days = Math.round(pick('days', interval.days));
    put('calendar', today - since, days, since + days);
  }
  if (timeline === undefined) return found;
  const amount = (by: DueBy, key: LoadKey, limit: number): void =>
    put(by, timeline.used(key, since), limit, timeline.reached(key, since, limit));
  const pressure = task.action === 'change' ? pressureOf(task, readings, timeline, today) : undefined;
  if (pressure !== undefined) found.push(pressure);
  // What was measured goes before what is usual and what was reckoned, but not before the person's own hours.
  const usual = pressure === undefined || task.own === true;
  if (interval.printing !== undefined && usual)
    amount('printing', loadKey(counts), pick('printing', interval.printing));
  if (task.action !== 'change' || pressure !== undefined) return found;
  if (task.about !== undefined && (task.kind === 'filter' || task.kind === 'carbon')) {
    const { low, high } = lives.get(task.about) ?? { low: 1, high: 1 };
    amount('life', stageKey(task.about), pick('life', { value: 1, low, high }));
  }
  return found;
}

/** Twice the first loss that was read, or what the file says; it grows with the hours as it did from the first reading to the last. */
function pressureOf(
  { interval, counts }: CareTask,
  readings: readonly (DoneEntry & { readonly reading: number })[],
  timeline: Timeline,
  today: number,
): Criterion | undefined {
  const [first, last] = [readings[0], readings.at(-1)];
  if (first === undefined || last === undefined) return undefined;
  const limit = interval.pressure ?? (readings.length > 1 ? 2 * first.reading : undefined);
  if (limit === undefined) return undefined;
  const told = { by: 'pressure', used: last.reading, of: limit, share: last.reading / limit } as const;
  if (last.reading >= limit) return { ...told, due: last.on };
  const key = loadKey(counts);
  const hours = timeline.used(key, first.on) - timeline.used(key, last.on);
  const growth = (last.reading - first.reading) / hours;
  if (!(growth > 0)) return readings.length > 1 ? told : undefined;
  const due = timeline.reached(key, last.on, (limit - last.reading) / growth);
  return due <= today + AHEAD ? { ...told, due } : told;
}

/** Sampled values of an interval, one column each. */
function columnsOf(task: CareTask, count: number, seed: number, lives: ReadonlyMap<string, LifeBand>) {
  const known = new Map<string, readonly number[]>();
  return (name: string, { value, low, high }: Pick<Assumption, 'value' | 'low' | 'high'>): readonly number[] => {
    // Two filters of one room are dusty together; two intervals of one kind are kept by one person.
    const path = name === 'life' && lives.size > 0 ? 'care.life' : `care.${task.id}.${name}`;
    const column =
      known.get(name) ??
      sampleColumn(path, count, seed).map((u) =>
        low === high ? value : valueAt({ p10: low, p50: value, p90: high, shape: 'log-normal' }, u),
      );
    known.set(name, column);
    return column;
  };
}
