import { beforeAll, describe, expect, it } from 'vitest';
import { type CabinetAnswer, readCabinet } from '../cabinet/read-cabinet.ts';
import { isFault } from '../units/quantity.ts';
import { momentAfter, parseMoment } from '../units/week.ts';
import { movedText } from './moved.ts';
import { type Plan, type PlanOptions, plan } from './plan.ts';

const HOUR = 3600;
const DAY = 86_400;

/** Two printers in two bays, everything invented; `more` is added at its top. */
const text = (queue: string, more = ''): string => `
stillair: 1
${more}
people: { desk: { at: [400 mm, -1500 mm, 1200 mm], hours: 8:00 to 18:00 } }
cabinet: { inside: 800 mm x 600 mm x 1700 mm, made-of: plywood 18 mm, door: glass 4 mm }
bays: { lower: { z: 0 mm to 840 mm }, upper: { z: 860 mm to 1700 mm } }
machines:
  left: { kind: moving bed 220, bay: lower }
  right: { kind: moving bed 220, bay: upper }
air:
  intake: { from: room, to: lower, hole: 80 mm round }
  through: { from: lower, to: upper, hole: 80 mm round }
  exhaust: { from: upper, to: room, parts: [{ fan: axial 120 mm quiet }] }
days: { usual: { jobs: { bracket: { machine: left, material: PLA, start: 9:00, for: 2 h } } } }
queue:
  from: 2026-11-30 7:00
  length: 3 d
  step: 15 min
  present: { daily: 8:00 to 20:00 }
${queue}`;

function read(queue: string, more?: string): Extract<CabinetAnswer, { ok: true }> {
  const answer = readCabinet('test.yaml', text(queue, more));
  if (!answer.ok) throw new Error(answer.complaints.map(({ what }) => what).join('; '));
  return answer;
}

const planned = (queue: string, more?: string, options?: PlanOptions): Promise<Plan> =>
  plan(read(queue, more), options);

const at = (words: string): number => {
  const moment = parseMoment(words);
  if (isFault(moment)) throw new Error(moment.what);
  return momentAfter(moment, 20_787, 7 * HOUR);
};

const startOf = (made: Plan, id: string): number => made.jobs.find((job) => job.id === id)!.start;

describe('a plan of two printers', () => {
  let early: Plan;
  const jobs = `
  jobs:
    a: { material: PLA, for: 4 h, due: Mon 20:00 }
    b: { material: PLA, for: 3 h, copies: 2 }
    c: { machine: right, material: PLA, for: 2 h, earliest: Tue 9:00 }`;
  beforeAll(async () => {
    early = await planned(jobs);
  }, 60_000);

  it('property: is proved best, keeps deadlines, and puts every copy somewhere', () => {
    expect(early.found).toBe('yes');
    expect(early.aims.map(({ aim, proved }) => [aim, proved])).toEqual([
      ['deadlines', true],
      ['early', true],
    ]);
    expect(early.aims[0]!.value).toBe(0);
    expect(early.jobs.map(({ id }) => id).sort()).toEqual(['a', 'b', 'b (2)', 'c']);
    expect(early.conflict).toBeUndefined();
  });

  it('property: one job at a time on a machine, cooled and cleared of its air before the next', () => {
    for (const machine of ['left', 'right']) {
      const own = early.jobs.filter((job) => job.machine === machine).sort((a, b) => a.start - b.start);
      for (const [index, job] of own.slice(1).entries()) {
        const before = own[index]!;
        const trial = early.trials.find((each) => each.job === before.kind && each.machine === machine)!;
        expect(job.start).toBeGreaterThanOrEqual(before.end + Math.max(trial.cool ?? 0, trial.purge ?? 0) - 1e-6);
      }
    }
  });

  it('property: every start is watched, none lies before its earliest, and each reason names what keeps it', () => {
    for (const { start, watched } of early.jobs) {
      expect(start % DAY).toBeGreaterThanOrEqual(8 * HOUR);
      expect(watched % DAY).toBeLessThanOrEqual(20 * HOUR);
      expect(watched - start).toBeGreaterThanOrEqual(15 * 60);
    }
    expect(startOf(early, 'c')).toBe(at('Tue 9:00'));
    expect(early.jobs.find(({ id }) => id === 'c')!.why[0]).toMatchObject({ rule: 'earliest', to: at('Tue 9:00') });
    expect(early.jobs.find(({ id }) => id === 'a')!.why[0]!.rule).toBe('present');
    const second = early.jobs.find(({ id }) => id === 'b (2)')!;
    expect(second.why.map(({ rule }) => rule)).toContain(`machine:${second.machine}`);
  });

  it('property: the simulated week has a row for every hour with air, power and noise, and each socket a time', () => {
    expect(early.hours[0]!.time).toBe(7 * HOUR);
    expect(early.hours.every(({ power, air, noise }) => power > 0 && air['lower']! > 280 && noise['desk']! >= 0)).toBe(
      true,
    );
    for (const { off, end } of early.jobs) if (off !== undefined) expect(off).toBeGreaterThan(end);
    expect(early.jobs.some(({ off }) => off !== undefined)).toBe(true);
    expect(early.checks.length).toBeGreaterThan(5);
  });

  it('property: the same file gives the same plan', async () => {
    expect(JSON.stringify(await planned(jobs))).toBe(JSON.stringify(early));
  });

  it('property: planned anew, what has started stays and nothing else starts before now', async () => {
    const now = at('Mon 10:00');
    const again = await planned(jobs, '', { now, keep: early.jobs });
    for (const job of early.jobs) {
      const then = again.jobs.find(({ id }) => id === job.id)!;
      if (job.start < now) expect(then).toMatchObject({ start: job.start, machine: job.machine, how: 'kept' });
      else expect(then.start).toBeGreaterThanOrEqual(now);
    }
    expect(again.jobs.filter(({ how }) => how === 'kept').length).toBeGreaterThan(0);
  });

  it('property: when asked to stop it says so', async () => {
    expect(await planned(jobs, '', { stop: () => true })).toMatchObject({ found: 'unknown', stopped: true, jobs: [] });
  });
});

describe('what a plan goes by', () => {
  it('exact: starts in the cheap hours when electricity is to be cheap, and not a step earlier', async () => {
    const power = 'power: { tariff: { 0:00: 0.40 EUR/kWh, 14:00: 0.10 EUR/kWh, 20:00: 0.40 EUR/kWh } }';
    const made = await planned(
      '  aims: [cost, early]\n  jobs: { a: { machine: left, material: PLA, for: 4 h } }',
      power,
    );
    expect(startOf(made, 'a')).toBe(at('Mon 14:00'));
    expect(made.jobs[0]!.why[0]).toMatchObject({ rule: 'aim', to: at('Mon 14:00') });
    expect(made.aims.every(({ proved }) => proved)).toBe(true);
  });

  it('property: two do not heat together under a circuit that bears one heating beside one that prints', async () => {
    const jobs = `
  jobs:
    a: { machine: left, material: PLA, for: 3 h }
    b: { machine: right, material: PLA, for: 3 h }`;
    const wide = await planned(jobs);
    expect(startOf(wide, 'a')).toBe(startOf(wide, 'b'));
    const peak = Math.max(...wide.hours.map(({ current }) => current));
    const tight = await planned(jobs, `power: { circuit: ${(0.75 * peak).toFixed(2)} A }`);
    expect(Math.abs(startOf(tight, 'a') - startOf(tight, 'b'))).toBe(15 * 60);
    expect(Math.max(...tight.hours.map(({ current }) => current))).toBeLessThanOrEqual(0.75 * peak);
    const later = tight.jobs.find(({ start }) => start > at('Mon 8:00'))!;
    expect(later.why[0]).toMatchObject({ rule: 'circuit' });
    expect(later.why[0]!.because).toMatch(/beside [ab]$/);
  });

  it('property: nothing prints in the hours that somebody wants quieter than a machine is', async () => {
    const quiet = text('  jobs: { a: { machine: left, material: PLA, for: 3 h } }').replace(
      'hours: 8:00 to 18:00 }',
      'hours: 8:00 to 18:00, quiet: { 8:00 to 15:00: 20 dB(A) } }',
    );
    const answer = readCabinet('test.yaml', quiet);
    if (!answer.ok) throw new Error('it reads');
    const made = await plan(answer);
    expect(startOf(made, 'a')).toBe(at('Mon 15:00'));
    expect(made.jobs[0]!.why[0]!.because).toContain('quiet for desk: at most 20 dB(A) from 8:00 to 15:00');
  });

  it('property: what a pinned job takes is taken', async () => {
    const made = await planned(`
  jobs:
    a: { machine: left, material: PLA, for: 3 h, pinned: Mon 9:00 }
    b: { machine: left, material: PLA, for: 1 h }
    old: { machine: right, material: PLA, for: 12 h, pinned: 2026-11-29 22:00 }`);
    expect(startOf(made, 'a')).toBe(at('Mon 9:00'));
    expect(startOf(made, 'old')).toBe(-2 * HOUR);
    expect(startOf(made, 'b')).toBeGreaterThan(at('Mon 12:00'));
  });

  it('property: jobs that a bay bears only one at a time are kept apart after a week has shown it', async () => {
    const jobs = `
  jobs:
    a: { machine: left, material: ABS, for: 4 h }
    b: { machine: right, material: ABS, for: 4 h }`;
    const free = await planned(jobs);
    const most = (made: Plan): number => Math.max(...made.hours.map(({ air }) => air['upper']!));
    const alone = await planned('  jobs: { b: { machine: right, material: ABS, for: 4 h } }');
    const between = (most(free) + most(alone)) / 2 - 273.15;
    const made = await planned(jobs, `limits: { bay-air: ${between.toFixed(2)} °C }`);
    expect(made.learned.join()).toContain('do not run together');
    const [a, b] = [startOf(made, 'a'), startOf(made, 'b')];
    expect(Math.abs(a - b)).toBeGreaterThanOrEqual(4 * HOUR);
    expect(most(made) - 273.15).toBeLessThanOrEqual(between);
  }, 30_000);
});

describe('a plan made anew', () => {
  const jobs = (a: string, more = '') => `
  jobs:
    a: { machine: left, material: PLA, for: ${a} }
    b: { machine: left, material: PLA, for: 3 h }
    c: { material: PLA, for: 2 h, earliest: Tue 9:00 }${more}`;
  let first: Plan;
  beforeAll(async () => {
    first = await planned(jobs('2 h'));
  }, 60_000);
  const anew = (queue: string, now: string): Promise<Plan> =>
    planned(queue, undefined, { now: at(now), keep: first.jobs, cuts: first.cuts });
  const what = (made: Plan): Record<string, string> =>
    Object.fromEntries(made.moved!.map((job) => [job.id, job.what] as const));

  it('property: where nothing has changed nothing moves, though other places would be as good', async () => {
    const made = await anew(jobs('2 h'), 'Mon 10:30');
    expect(what(made)).toEqual({ a: 'begun', b: 'stays', c: 'stays' });
    expect(made.aims.at(-1)).toMatchObject({ aim: 'stay', value: 0, proved: true });
  });

  it('property: a job that ends late pushes the next one, which says why; the rest stays', async () => {
    const made = await anew(jobs('5 h'), 'Mon 10:30');
    expect(what(made)).toEqual({ a: 'begun', b: 'moved', c: 'stays' });
    const b = made.moved!.find(({ id }) => id === 'b')!;
    expect(b.because).toContain('left prints');
    expect(startOf(made, 'b')).toBeGreaterThanOrEqual(at('Mon 15:00'));
    expect(movedText(b, 20_787)).toMatch(/^b: Mon 1\d:\d\d on left, was Mon 1\d:\d\d on left: left prints/);
  });

  it('property: a machine that goes out of use loses its jobs to the other, or they wait; a new job and one that has gone are told', async () => {
    const down = `
  down: { ${startOf(first, 'c') === at('Tue 9:00') ? first.jobs.find(({ id }) => id === 'c')!.machine : 'left'}: Tue 6:00 to Wed 12:00 }`;
    const machine = first.jobs.find(({ id }) => id === 'c')!.machine;
    const other = machine === 'left' ? 'right' : 'left';
    const queue = `${down}
  jobs:
    a: { machine: left, material: PLA, for: 2 h }
    c: { material: PLA, for: 2 h, earliest: Tue 9:00 }
    d: { machine: ${machine}, material: PLA, for: 1 h, earliest: Tue 9:00 }`;
    const made = await anew(queue, 'Mon 10:30');
    expect(what(made)).toEqual({ a: 'begun', b: 'gone', c: 'moved', d: 'new' });
    expect(made.jobs.find(({ id }) => id === 'c')).toMatchObject({ machine: other });
    expect(made.moved!.find(({ id }) => id === 'c')!.because).toBe(
      `${machine} is out of use from Tue 6:00 to Wed 12:00`,
    );
    expect(startOf(made, 'd')).toBeGreaterThanOrEqual(at('Wed 12:00'));
  });
});

describe('demands that cannot hold together', () => {
  it('property: two jobs of nine hours by the same evening on one machine; without either deadline it can be done', async () => {
    const jobs = (due: string) => `
  jobs:
    a: { machine: left, material: PLA, for: 9 h, due: Mon 20:00 }
    b: { machine: left, material: PLA, for: 9 h${due} }
    c: { machine: right, material: PLA, for: 1 h, due: Wed 9:00 }`;
    const made = await planned(jobs(', due: Mon 20:00'));
    expect(made.jobs.filter(({ late }) => late)).toHaveLength(1);
    expect(made.aims[0]).toMatchObject({ aim: 'deadlines', value: 1, bound: 1, proved: true });
    expect(made.conflict).toMatchObject({ proved: true });
    expect(made.conflict!.demands.map(({ id }) => id).sort()).toEqual(['due:a', 'due:b', 'job:a', 'job:b']);
    expect(made.conflict!.demands.map(({ says }) => says).join()).toContain('a is done by Mon 20:00');
    expect((await planned(jobs(''))).jobs.some(({ late }) => late)).toBe(false);
  });

  it('property: a job that nobody can start has no plan, and the hours of those present are named', async () => {
    const made = await plan(
      (() => {
        const answer = readCabinet(
          'test.yaml',
          text('  jobs: { a: { machine: left, material: PLA, for: 2 h, attended: 14 h } }'),
        );
        if (!answer.ok) throw new Error('it reads');
        return answer;
      })(),
    );
    expect(made).toMatchObject({ found: 'no', jobs: [] });
    expect(made.conflict!.demands.map(({ id }) => id).sort()).toEqual(['job:a', 'present']);
  });
});
