import { describe, expect, it } from 'vitest';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { randomStream } from '../numerics/random.ts';
import { type Conflict, conflictHead, conflictOf } from './conflict.ts';
import { jobsOf } from './plan.ts';
import type { Trial } from './queue-trial.ts';
import type { WeekWish } from './week.ts';

const HOUR = 3600;
const FROM = 7 * HOUR;

interface Asked {
  readonly id: string;
  /** Whole hours: how long, from when on it may begin, by when it must be done, counted from the plan's start. */
  readonly long: number;
  readonly earliest?: number;
  readonly due?: number;
  /** Hours for which somebody watches it. */
  readonly attended: number;
}

const LENGTH = 48;
const PRESENT = [8, 20] as const;

const moment = (hour: number): string => {
  const clock = 7 + hour;
  return `2026-${clock < 24 ? '11-30' : clock < 48 ? '12-01' : '12-02'} ${clock % 24}:00`;
};

/** One printer, slots of an hour, trials as they might have come out; everything invented. */
function wishOf(jobs: readonly Asked[]): WeekWish {
  const line = ({ id, long, earliest, due, attended }: Asked): string =>
    `    ${id}: { machine: left, material: PLA, for: ${long} h, attended: ${attended} h${earliest === undefined ? '' : `, earliest: "${moment(earliest)}"`}${due === undefined ? '' : `, due: "${moment(due)}"`} }`;
  const text = `
stillair: 1
people: { desk: { at: [400 mm, -1500 mm, 1200 mm], hours: 8:00 to 18:00 } }
cabinet: { inside: 800 mm x 600 mm x 840 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { lower: { z: 0 mm to 840 mm } }
machines: { left: { kind: moving bed 220, bay: lower } }
days: { usual: {} }
queue:
  from: 2026-11-30 7:00
  length: ${LENGTH} h
  step: 60 min
  present: { daily: ${PRESENT[0]}:00 to ${PRESENT[1]}:00 }
  jobs:
${jobs.map(line).join('\n')}
`;
  const answer = readCabinet('test.yaml', text);
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  const { cabinet } = answer;
  const trial = (job: string): Trial => ({
    job,
    machine: 'left',
    heatUp: 0,
    peak: 200,
    hold: 100,
    mean: 100,
    rest: 5,
    fans: { desk: 0 },
    others: 0,
    strips: {},
    breaks: [],
  });
  return {
    cabinet,
    trials: jobs.map(({ id }) => trial(id)),
    now: FROM,
    jobs: jobsOf(cabinet.queue!, [], FROM),
    cuts: [],
  };
}

const found = (jobs: readonly Asked[], trials?: number): Promise<Conflict | undefined> =>
  conflictOf(
    wishOf(jobs),
    () => false,
    async () => undefined,
    trials,
  );

const idsOf = (conflict: Conflict | undefined): string[] => (conflict?.demands ?? []).map(({ id }) => id).sort();

/** By trying every order of what is asked, each job as early as it may: another way to the same answer. */
function canHold(jobs: readonly Asked[], kept: ReadonlySet<string>): boolean {
  const asked = jobs.filter(({ id }) => kept.has(`job:${id}`));
  const place = (left: readonly Asked[], free: number): boolean =>
    left.length === 0 ||
    left.some((job) => {
      const start = firstStart(job, free);
      if (start === undefined) return false;
      return place(
        left.filter((other) => other !== job),
        start + job.long,
      );
    });
  const firstStart = ({ id, long, earliest = 0, due = LENGTH, attended }: Asked, free: number): number | undefined => {
    const by = kept.has(`due:${id}`) ? due : LENGTH;
    for (let start = Math.max(free, kept.has(`earliest:${id}`) ? earliest : 0); start + long <= by; start += 1) {
      const clock = (7 + start) % 24;
      if (!kept.has('present') || (clock >= PRESENT[0] && clock + attended <= PRESENT[1])) return start;
    }
    return undefined;
  };
  return place(asked, 0);
}

function leastByTrying(jobs: readonly Asked[]): number | undefined {
  const demands = jobs.flatMap(({ id, due, earliest }) => [
    `job:${id}`,
    ...(due === undefined ? [] : [`due:${id}`]),
    ...(earliest === undefined ? [] : [`earliest:${id}`]),
  ]);
  demands.push('present');
  let least: number | undefined;
  for (let bits = 0; bits < 2 ** demands.length; bits += 1) {
    const kept = new Set(demands.filter((_, at) => (bits >> at) & 1));
    if ((least === undefined || kept.size < least) && !canHold(jobs, kept)) least = kept.size;
  }
  return least;
}

describe('demands that conflict', () => {
  it('exact: a job that nobody can watch is told in two demands, though two jobs by one evening conflict in four', async () => {
    const jobs = [
      { id: 'a', long: 2, attended: 13 },
      { id: 'b', long: 9, due: 13, attended: 0 },
      { id: 'c', long: 9, due: 13, attended: 0 },
    ];
    expect(idsOf(await found(jobs))).toEqual(['job:a', 'present']);
    expect(await found(jobs)).toMatchObject({ proved: true, smallest: true, atLeast: 2 });
    const halted = (await found([...jobs].reverse(), 0))!;
    expect(halted).toMatchObject({ proved: true, smallest: false });
    expect(conflictHead(halted, false)).toContain('a smaller set that conflicts was not ruled out');
    expect(conflictHead((await found(jobs))!, true)).toBe(
      'These 2 demands cannot all hold, so that a deadline is missed; without any one of them the others can; no fewer conflict:',
    );
  });

  it('property: as few as any found by trying all sets and all orders, over random queues', async () => {
    const random = randomStream(2);
    const upTo = (most: number): number => Math.floor(random() * most);
    let [conflicts, larger] = [0, 0];
    for (let round = 0; round < 24; round += 1) {
      const jobs = ['a', 'b', 'c', 'd'].slice(0, 2 + upTo(3)).map((id): Asked => {
        const long = 3 + upTo(9);
        const earliest = upTo(2) === 0 ? undefined : upTo(12);
        const due = upTo(4) === 0 ? undefined : (earliest ?? 0) + long + upTo(8);
        return {
          id,
          long,
          attended: upTo(8) === 0 ? 13 : 0,
          ...(earliest === undefined ? {} : { earliest }),
          ...(due === undefined ? {} : { due }),
        };
      });
      const least = leastByTrying(jobs);
      const conflict = await found(jobs);
      expect(conflict?.demands.length, JSON.stringify(jobs)).toBe(least);
      if (conflict === undefined) continue;
      conflicts += 1;
      expect(conflict).toMatchObject({ proved: true, smallest: true, atLeast: least });
      expect(canHold(jobs, new Set(idsOf(conflict)))).toBe(false);
      if ((await found(jobs, 0))!.demands.length > least!) larger += 1;
    }
    expect(conflicts).toBeGreaterThan(10);
    expect(larger).toBeGreaterThan(0);
  }, 60_000);
});
