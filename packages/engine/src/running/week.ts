// The jobs of a queue as tasks of a schedule: what each draws, when it may start and why not, what a start costs.

import { lineCurrent } from '@stillair/physics';
import type { Cabinet } from '../cabinet/cabinet.ts';
import type { Queue, QueueJob, Stretch } from '../cabinet/queue.ts';
import type { Draw, Order, ScheduleProblem, Way } from '../numerics/schedule/problem.ts';
import { behindStrip } from '../trades/draws.ts';
import { circuitLimit, stripLimit } from '../trades/power/limits.ts';
import { meanNoiseLimit, NIGHT } from '../trades/sound/limits.ts';
import { heardBy } from '../trades/sound/places.ts';
import { costOf } from '../trades/tariff.ts';
import { formatClock, formatQuantity } from '../units/format.ts';
import { formatMoment } from '../units/week.ts';
import type { Trial } from './queue-trial.ts';

/** A copy of a job, and where it stands when it is not to be moved. */
export interface WeekJob {
  /** `bracket`, `bracket (2)` */
  readonly id: string;
  readonly kind: string;
  readonly job: QueueJob;
  readonly fixed?: { readonly machine: string; readonly start: number; readonly how: 'pinned' | 'kept' };
}

/** Jobs that cannot run together, or one that cannot run at some times: learned from a week that was simulated. */
export interface Cut {
  /** Kinds of jobs with their machines, `gable.hooks`. */
  readonly prints: readonly string[];
  /** Time of day around which a single one may not run, s; absent for several. */
  readonly clock?: readonly [number, number];
  readonly says: string;
}

/** What holds a job back, in words. */
export interface Rule {
  readonly id: string;
  readonly says: string;
}

export interface WeekOption {
  readonly machine: string;
  readonly trial: Trial;
  readonly heatSlots: number;
  readonly slots: number;
  /** Slots after its end in which the machine is not free yet. */
  readonly turnaround: number;
  /** By slot: 0 may start, else 1 + index of the rule against it. */
  readonly against: Uint8Array;
}

export interface Week {
  readonly cabinet: Cabinet;
  readonly queue: Queue;
  /** Start of slot 0, s after the origin's midnight. */
  readonly zero: number;
  readonly slots: number;
  readonly step: number;
  /** Jobs to be placed, then those that stand fixed. */
  readonly jobs: readonly WeekJob[];
  readonly fixed: readonly WeekJob[];
  readonly options: readonly (readonly WeekOption[])[];
  readonly rules: readonly Rule[];
  /** By resource of the problem. */
  readonly resources: readonly Rule[];
  readonly problem: ScheduleProblem;
}

export interface WeekWish {
  readonly cabinet: Cabinet;
  readonly trials: readonly Trial[];
  /** Nothing starts before, s. */
  readonly now: number;
  readonly jobs: readonly WeekJob[];
  readonly cuts: readonly Cut[];
  /** Ids of rules and resources that are left out; of one job with its id: `job:`, `earliest:`, `due:`. For finding what conflicts. */
  readonly without?: ReadonlySet<string>;
  /** Deadlines as walls in place of aims. */
  readonly dueHard?: boolean;
  /** An earlier plan: last of all aims, no job moves without need. */
  readonly stay?: readonly { readonly id: string; readonly machine: string; readonly start: number }[];
}

const HOUR = 3600;
const DAY = 86_400;
const HORIZON_RULE: Rule = { id: 'end', says: 'it would end after the plan' };
const EARLIEST: Rule = { id: 'earliest', says: 'it may not begin before' };
const NOW: Rule = { id: 'now', says: 'that is over' };
const PRESENT: Rule = { id: 'present', says: 'nobody is there who starts it and watches its first layer' };
const DUE: Rule = { id: 'due', says: 'it would miss its deadline' };
/** Reference for doses of noise, dB(A). */
const DOSE_LEVEL = 40;

export function weekOf(wish: WeekWish): Week {
  const { cabinet, cuts, without = new Set<string>() } = wish;
  const queue = cabinet.queue!;
  const { step, until } = queue;
  const zero = queue.from;
  const slots = Math.floor((until - zero) / step);
  const jobs = wish.jobs.filter(({ fixed, id }) => fixed === undefined && !without.has(`job:${id}`));
  const fixed = wish.jobs.filter((job) => job.fixed !== undefined);
  const clocked = cuts.filter(({ clock }) => clock !== undefined);
  const downs = downsOf(queue);
  const rules = [HORIZON_RULE, EARLIEST, NOW, PRESENT, DUE, ...clocked.map(cutRule), ...downs.map(({ rule }) => rule)];
  const base = { cabinet, queue, zero, slots, step };
  const options = jobs.map((job) =>
    job.job.machines.map((machine): WeekOption => {
      const trial = wish.trials.find((each) => each.job === job.kind && each.machine === machine)!;
      const shape = shapeOf(trial, job.job, step);
      return { machine, trial, ...shape, against: against(base, job, { machine, trial, ...shape }, clocked, wish) };
    }),
  );
  const built = resourcesOf(wish, base, jobs, fixed, options);
  const left = built.filter(({ rule }) => !without.has(rule.id));
  const orders = jobs.flatMap(({ kind, id }, after): Order[] => {
    const before = jobs.findLastIndex((other, at) => at < after && other.kind === kind);
    return before < 0 || id === kind ? [] : [{ before, after, lag: 0, from: 'start' }];
  });
  const aims =
    wish.dueHard === true
      ? []
      : [
          late(base),
          ...queue.aims.map((aim) => AIMS[aim](base, cabinet)),
          ...(wish.stay === undefined ? [] : [moved(base, wish.stay)]),
        ];
  const tasks = jobs.map((job, at) => ({
    ways: options[at]!.map((option): Way => {
      const key = `${at}/${option.machine}`;
      return {
        length: option.slots,
        draws: left.flatMap(({ draws }, resource) => (draws.get(key) ?? []).map((draw) => ({ resource, ...draw }))),
        starts: option.against.map((rule) => (rule === 0 ? 1 : 0)),
        costs: aims.map((aim) => Float64Array.from({ length: slots + 1 }, (_, start) => aim(job, option, start))),
      };
    }),
  }));
  return {
    ...base,
    jobs,
    fixed,
    options,
    rules,
    resources: left.map(({ rule }) => rule),
    problem: {
      horizon: slots,
      tasks,
      resources: left.map(({ capacity }) => ({ capacity })),
      orders,
      aims: Math.max(aims.length, 1),
    },
  };
}

function shapeOf(trial: Trial, job: QueueJob, step: number): Pick<WeekOption, 'heatSlots' | 'slots' | 'turnaround'> {
  const slots = Math.ceil(job.duration / step - 1e-9);
  return {
    slots,
    heatSlots: Math.min(Math.ceil(trial.heatUp / step - 1e-9), slots),
    turnaround: Math.ceil(Math.max(trial.cool ?? 0, trial.purge ?? 0) / step - 1e-9),
  };
}

type Base = Pick<Week, 'cabinet' | 'queue' | 'zero' | 'slots' | 'step'>;

/** The first rule against each start. */
function against(
  { queue, zero, slots, step }: Base,
  { id, job, kind }: WeekJob,
  { machine, trial, slots: length }: Omit<WeekOption, 'against'>,
  clocked: readonly Cut[],
  { now, without, dueHard }: WeekWish,
): Uint8Array {
  const watched = trial.heatUp + job.attended;
  const mine = clocked.flatMap(({ prints, clock }, at) =>
    prints.includes(`${machine}.${kind}`) ? [{ at, clock: clock! }] : [],
  );
  const rule = (start: number): number => {
    const [from, end] = [zero + start * step, zero + (start + length) * step];
    if (start + length > slots) return 1;
    if (job.earliest !== undefined && from < job.earliest && !without?.has(`earliest:${id}`)) return 2;
    if (from < now) return 3;
    if (
      !without?.has('present') &&
      !queue.present.some(([a, b]) => from >= a && from + (job.attended > 0 ? watched : 0) <= b)
    )
      return 4;
    if (dueHard === true && job.due !== undefined && end > job.due && !without?.has(`due:${id}`)) return 5;
    const cut = mine.find(
      ({ at, clock }) =>
        !without?.has(cutRule(clocked[at]!).id) && covers(from, from + trial.heatUp + job.duration, clock),
    );
    if (cut !== undefined) return 6 + cut.at;
    const down = downs.findIndex(
      ({ rule: { id: ruleId }, machine: its, times: [a, b] }) =>
        its === machine && from < b && end > a && !without?.has(ruleId),
    );
    return down < 0 ? 0 : 6 + clocked.length + down;
  };
  const downs = downsOf(queue);
  return Uint8Array.from({ length: slots + 1 }, (_, start) => rule(start));
}

/** Whether a stretch of time meets hours of the day. */
function covers(from: number, end: number, [a, b]: readonly [number, number]): boolean {
  for (let day = Math.floor(from / DAY) - 1; day * DAY < end; day += 1)
    if (from < day * DAY + b && day * DAY + a < end) return true;
  return false;
}

/** Each stretch in which a machine is out of use. */
function downsOf({
  down,
  origin,
}: Queue): { readonly rule: Rule; readonly machine: string; readonly times: Stretch }[] {
  return Object.entries(down).flatMap(([machine, all]) =>
    all.map((times, at) => ({
      machine,
      times,
      rule: {
        id: `down:${machine}.${at + 1}`,
        says: `${machine} is out of use from ${formatMoment(origin, times[0])} to ${formatMoment(origin, times[1])}`,
      },
    })),
  );
}

/** 1 where a job is not where an earlier plan has it. */
const moved = ({ zero, step }: Base, stay: NonNullable<WeekWish['stay']>): Cost => {
  const earlier = new Map(stay.map((each) => [each.id, each] as const));
  return ({ id }, { machine }, start) => {
    const before = earlier.get(id);
    return before === undefined ||
      (before.machine === machine && Math.abs(zero + start * step - before.start) < step / 2)
      ? 0
      : 1;
  };
};

const cutRule = ({ prints, clock, says }: Cut): Rule => ({
  id: `cut:${prints.join('+')}${clock === undefined ? '' : `@${clock[0]}`}`,
  says,
});

type Cost = (job: WeekJob, option: WeekOption, start: number) => number;

const late =
  ({ zero, step }: Base): Cost =>
  ({ job: { due } }, { slots }, start) =>
    due !== undefined && zero + (start + slots) * step > due ? 1 : 0;

const AIMS: Readonly<Record<Queue['aims'][number], (base: Base, cabinet: Cabinet) => Cost>> = {
  early:
    ({ step }) =>
    (_, { slots }, start) =>
      ((start + slots) * step) / HOUR,
  cost: (base, cabinet) => {
    const sums = priceSums(base, cabinet);
    const { step, slots: horizon } = base;
    return (_, { trial: { peak, mean, rest, heatUp }, slots, heatSlots }, start) => {
      const at = (slot: number): number => sums[Math.min(slot, horizon)]!;
      const hot = heatSlots === 0 ? 0 : ((at(start + heatSlots) - at(start)) * heatUp) / (heatSlots * step);
      return (peak - mean) * hot + (mean - rest) * (at(start + slots) - at(start));
    };
  },
  quiet: ({ slots: horizon, step, zero }, cabinet) => {
    const heard = Object.entries(cabinet.people).map(([person, { hours }]) => {
      const sums = new Float64Array(horizon + 1);
      for (let slot = 0; slot < horizon; slot += 1)
        sums[slot + 1] = sums[slot]! + there(hours, zero + (slot + 0.5) * step);
      return { sums, loud: loudness(cabinet, person) };
    });
    return (_, { machine, slots }, start) =>
      heard.reduce((sum, { sums, loud }) => {
        const time = sums[Math.min(start + slots, horizon)]! - sums[Math.min(start, horizon)]!;
        return sum + (time * step * (loud.get(machine)?.more ?? 0)) / 10 ** (DOSE_LEVEL / 10) / HOUR;
      }, 0);
  },
};

function there(hours: readonly (readonly [number, number])[], time: number): number {
  const clock = ((time % DAY) + DAY) % DAY;
  return hours.some(([a, b]) => (clock >= a && clock < b) || (clock + DAY >= a && clock + DAY < b)) ? 1 : 0;
}

/** Money for a watt from the plan's start to each slot. */
function priceSums({ zero, step, slots }: Base, { power: { tariff } }: Cabinet): Float64Array {
  const sums = new Float64Array(slots + 1);
  for (let slot = 0; slot < slots; slot += 1) {
    const times = Float64Array.of(zero + slot * step, zero + (slot + 1) * step);
    sums[slot + 1] = sums[slot]! + costOf({ times, values: Float64Array.of(1, 1) }, tariff);
  }
  return sums;
}

/** What each machine adds at a person's place when it prints, and what it makes at rest. */
function loudness(cabinet: Cabinet, person: string): Map<string, { readonly more: number; readonly idle: number }> {
  return new Map(
    heardBy(cabinet, person).flatMap(({ source, power }) =>
      source.kind === 'machine'
        ? [[source.id, { more: power * (1 - source.idle), idle: power * source.idle }] as const]
        : [],
    ),
  );
}

interface Built {
  readonly rule: Rule;
  readonly capacity: number | Float64Array;
  /** By task and machine: `0/left`. */
  readonly draws: ReadonlyMap<string, readonly Omit<Draw, 'resource'>[]>;
}

function resourcesOf(
  wish: WeekWish,
  base: Base,
  jobs: readonly WeekJob[],
  fixed: readonly WeekJob[],
  options: readonly (readonly WeekOption[])[],
): Built[] {
  const { cabinet, trials, cuts } = wish;
  const { power, machines } = cabinet;
  const current = (machine: string, watts: number): number =>
    lineCurrent(Math.max(watts, 0), power.voltage, machines[machine]!.mains.powerFactor);
  const most = (of: (trial: Trial) => number): number =>
    trials.reduce((greatest, trial) => Math.max(greatest, of(trial)), 0);
  const ampere = ({
    machine,
    trial,
    heatSlots,
    slots,
  }: Pick<WeekOption, 'machine' | 'trial' | 'heatSlots' | 'slots'>): Omit<Draw, 'resource'>[] => [
    { from: 0, to: heatSlots, amount: current(machine, trial.peak) - current(machine, trial.rest) },
    { from: heatSlots, to: slots, amount: current(machine, trial.hold) - current(machine, trial.rest) },
  ];
  const resting = (ids: readonly string[]): number =>
    ids.reduce((sum, id) => {
      const trial = trials.find(({ machine }) => machine === id);
      return sum + current(id, trial?.rest ?? machines[id]!.standby);
    }, 0);
  const resource = (
    rule: Rule,
    capacity: number | Float64Array,
    drawsOf: (
      option: Pick<WeekOption, 'machine' | 'trial' | 'heatSlots' | 'slots' | 'turnaround'>,
      job: WeekJob,
    ) => readonly Omit<Draw, 'resource'>[],
  ): Built => {
    const draws = new Map(
      jobs.flatMap((job, at) =>
        options[at]!.map((option) => [`${at}/${option.machine}`, drawsOf(option, job)] as const),
      ),
    );
    return { rule, capacity: withoutFixed(base, capacity, fixed, trials, drawsOf), draws };
  };
  const one = (to: number): Omit<Draw, 'resource'>[] => [{ from: 0, to, amount: 1 }];
  return [
    ...Object.keys(machines).map((id) =>
      resource({ id: `machine:${id}`, says: `${id} prints` }, 1, ({ machine, slots, turnaround }) =>
        machine === id ? one(slots + turnaround) : [],
      ),
    ),
    resource(
      { id: 'circuit', says: `the circuit bears ${formatQuantity('electric-current', circuitLimit(cabinet).value)}` },
      circuitLimit(cabinet).value - most(({ others }) => others) - resting(Object.keys(machines)),
      ampere,
    ),
    ...Object.entries(power.strips).flatMap(([id, strip]) => {
      const behind = behindStrip(cabinet, id).filter((user) => machines[user] !== undefined);
      if (behind.length < 2) return [];
      const rule = {
        id: `strip:${id}`,
        says: `${id} bears ${formatQuantity('electric-current', stripLimit(cabinet, strip).value)}`,
      };
      const capacity = stripLimit(cabinet, strip).value - most(({ strips }) => strips[id] ?? 0) - resting(behind);
      return [resource(rule, capacity, (option) => (behind.includes(option.machine) ? ampere(option) : []))];
    }),
    ...(power.stagger > 0
      ? [
          resource({ id: 'lock', says: 'the lock keeps machines from heating together' }, 1, () =>
            one(Math.ceil(power.stagger / base.step - 1e-9)),
          ),
        ]
      : []),
    ...Object.keys(cabinet.people).flatMap((person) => quietResources(wish, base, person, resource)),
    ...cuts
      .filter(({ clock }) => clock === undefined)
      .map((cut) =>
        resource(cutRule(cut), cut.prints.length - 1, ({ machine, slots }, { kind }) =>
          cut.prints.includes(`${machine}.${kind}`) ? one(slots) : [],
        ),
      ),
  ];
}

/** What a person bears, hour by hour, less what fans and resting machines make. */
function quietResources(
  { cabinet, trials }: WeekWish,
  base: Base,
  person: string,
  resource: (
    rule: Rule,
    capacity: Float64Array,
    draws: (option: { readonly machine: string; readonly slots: number }) => readonly Omit<Draw, 'resource'>[],
  ) => Built,
): Built[] {
  const loud = loudness(cabinet, person);
  const fans = trials.reduce((most, trial) => Math.max(most, trial.fans[person] ?? 0), 0);
  const idle = [...loud.values()].reduce((sum, each) => sum + each.idle, 0);
  const wishes = (cabinet.sound.people[person] ?? []).map(({ hours, limitDbA }) => ({ hours, limitDbA }));
  const night = cabinet.people[person]!.hours.flatMap(([a, b]) =>
    [-DAY, 0, DAY].flatMap((shift): (readonly [number, number])[] => {
      const both = [Math.max(a, NIGHT[0] + shift), Math.min(b, NIGHT[1] + shift)] as const;
      return both[1] - both[0] > 1 ? [both] : [];
    }),
  );
  const all = [...wishes, ...night.map((hours) => ({ hours, limitDbA: meanNoiseLimit(cabinet, 'night').value }))];
  // A room for all of them at once is as good as no limit.
  const plenty = [...loud.values()].reduce((sum, { more }) => sum + more, 0) * 2;
  return all.map(({ hours, limitDbA }, at) => {
    const room = Math.max(10 ** (limitDbA / 10) - fans - idle, 0);
    const capacity = Float64Array.from({ length: base.slots }, (_, slot) => {
      const from = base.zero + slot * base.step;
      return covers(from, from + base.step, hours) ? room : plenty;
    });
    const until = formatClock(hours[1] % DAY);
    const says = `quiet for ${person}: at most ${formatQuantity('sound-level', limitDbA)} from ${formatClock(((hours[0] % DAY) + DAY) % DAY)} to ${until}`;
    return resource({ id: `quiet:${person}.${at + 1}`, says }, capacity, ({ machine, slots }) => [
      { from: 0, to: slots, amount: loud.get(machine)?.more ?? 0 },
    ]);
  });
}

/** What jobs that are not moved leave of a capacity. */
function withoutFixed(
  { zero, slots, step }: Base,
  capacity: number | Float64Array,
  fixed: readonly WeekJob[],
  trials: readonly Trial[],
  drawsOf: (
    option: Pick<WeekOption, 'machine' | 'trial' | 'heatSlots' | 'slots' | 'turnaround'>,
    job: WeekJob,
  ) => readonly Omit<Draw, 'resource'>[],
): number | Float64Array {
  if (fixed.length === 0) return capacity;
  const left = Float64Array.from({ length: slots }, (_, slot) =>
    typeof capacity === 'number' ? capacity : capacity[slot]!,
  );
  for (const each of fixed) {
    const { machine, start } = each.fixed!;
    const trial = trials.find(({ job, machine: on }) => job === each.kind && on === machine)!;
    const shape = shapeOf(trial, each.job, step);
    const [first, last] = [Math.floor((start - zero) / step + 1e-9), Math.ceil((start - zero) / step - 1e-9)];
    for (const { from, to, amount } of drawsOf({ machine, trial, ...shape }, each))
      for (let slot = Math.max(first + from, 0); slot < Math.min(last + to, slots); slot += 1) left[slot]! -= amount;
  }
  return left;
}
