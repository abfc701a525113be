// When the socket of each machine may be switched off after each job: bed and hot end cool enough in this bay on this day, with a
// reserve; as a time, as a time after the job's start, and as a rule for a switch that measures power.

import { assumedInputs } from '../cabinet/assumed-inputs.ts';
import type { Cabinet, Day } from '../cabinet/cabinet.ts';
import type { Origins } from '../cabinet/origin.ts';
import { setInputs } from '../cabinet/set-input.ts';
import { runDay } from '../judge/pipeline.ts';
import { temperatureOf } from '../trades/air-ways.ts';
import { largest, valueAt, within } from '../trades/course.ts';
import { powerOf } from '../trades/draws.ts';
import type { DayRun } from '../trades/measure.ts';
import { type Print, printsOf } from '../trades/prints.ts';
import { belowFrom, HOT_END_CAPACITY, hotEndBelow } from './cool-down.ts';
import { BED_COOL, HOT_END_COOL, type Practice, RESERVE } from './shut-off-limits.ts';
import { drawsOf, lullOf, type SwitchRule, switchRule } from './switch-rule.ts';

export interface Cooling {
  /** K, when the job ends. */
  readonly first: number;
  /** K, below which it counts as cool. */
  readonly cool: number;
  /** s after the job's end; absent when it is not seen to get there. */
  readonly after?: number;
}

export interface JobShutOff {
  /** `left.bracket` */
  readonly part: string;
  readonly day: string;
  readonly machine: string;
  readonly job: string;
  readonly material: string;
  /** s after midnight of the day's start. */
  readonly start: number;
  readonly end: number;
  readonly bed: Cooling;
  readonly hotEnd: Cooling;
  /** Of both, with the bed's losses and the hot end's size at the ends of their spreads, s after the end: soonest and latest. */
  readonly spread?: readonly [soonest: number, latest: number];
  /** With the reserve, s after the end. */
  readonly wait?: number;
  /** s after midnight of the day's start, on the minute. */
  readonly off?: number;
  /** s after the job's start. */
  readonly afterStart?: number;
  /** A job on this machine that begins before; the socket stays on. */
  readonly next?: { readonly job: string; readonly start: number };
  /** Hottest air at the electronics from the end of the job on, K, and what they bear. */
  readonly electronics: { readonly hottest: number; readonly limit: number };
}

/** What hangs on the same strip as a machine. */
export interface SharedStrip {
  readonly strip: string;
  readonly machines: readonly string[];
  /** Air paths whose fans would stop with it. */
  readonly fans: readonly string[];
  readonly others: readonly string[];
}

export interface MachineSwitch extends SwitchRule {
  readonly machine: string;
  readonly shares?: SharedStrip;
  /** Fans that run for this machine's jobs, and how long after them, s. */
  readonly runOn: readonly { readonly path: string; readonly seconds: number }[];
}

export interface ShutOffs {
  readonly version: 1;
  readonly days: readonly string[];
  readonly limits: {
    readonly bed: Practice;
    readonly hotEnd: Practice;
    readonly reserve: Practice;
  };
  readonly jobs: readonly JobShutOff[];
  readonly switches: readonly MachineSwitch[];
}

/** A day is looked at for so much longer when a job is still warm at its end, s. */
const LONGER = 6 * 3600;
const MINUTE = 60;

export interface ShutOffOptions {
  readonly days?: readonly string[];
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
}

export function shutOffs(
  { cabinet, origins }: { readonly cabinet: Cabinet; readonly origins: Origins },
  { days = Object.keys(cabinet.days), progress, stop = () => false }: ShutOffOptions = {},
): ShutOffs {
  const loss = assumedInputs(origins).find(({ path }) => path === 'factors.bedLoss');
  const [least, most] = loss === undefined ? [1, 1] : [loss.spread.p10, loss.spread.p90];
  const ends = [
    { bedLoss: most, capacity: HOT_END_CAPACITY.small },
    { bedLoss: least, capacity: HOT_END_CAPACITY.large },
  ];
  const jobs: JobShutOff[] = [];
  const rules = new Map<string, { lull: number; most: number }>();
  for (const [at, day] of days.entries()) {
    if (stop()) break;
    const run = longRun(cabinet, day);
    const others = ends.map(({ bedLoss, capacity }) => ({
      run: loss === undefined ? run : longRun(setInputs(cabinet, { [loss.path]: bedLoss }), day),
      capacity,
    }));
    for (const print of printsOf(run)) {
      jobs.push(jobShutOff(run, print, others));
      const known = rules.get(print.machineId) ?? { lull: 0, most: 0 };
      const most = largest(within(powerOf(run, print.machineId), print.start, print.end)).value;
      rules.set(print.machineId, {
        lull: Math.max(known.lull, lullOf(run, print) ?? 0),
        most: Math.max(known.most, most),
      });
    }
    progress?.(at + 1, days.length);
  }
  return {
    version: 1,
    days,
    limits: { bed: BED_COOL, hotEnd: HOT_END_COOL, reserve: RESERVE },
    jobs,
    switches: [...rules].map(([machine, { lull, most }]) => {
      const waits = jobs.filter((job) => job.machine === machine && job.next === undefined).map(({ wait }) => wait);
      const wait = waits.reduce<number | undefined>(
        (longest, each) => (longest === undefined || each === undefined ? undefined : Math.max(longest, each)),
        0,
      );
      const shares = stripOf(cabinet, machine);
      return {
        machine,
        ...switchRule(drawsOf(cabinet, machine), wait, lull > 0 ? lull : undefined, most),
        ...(shares === undefined ? {} : { shares }),
        runOn: runOns(cabinet, machine),
      };
    }),
  };
}

/** The day as it is, or some hours longer when something that it prints is still warm at its end. */
function longRun(cabinet: Cabinet, id: string): DayRun {
  const run = runDay(cabinet, id);
  const day = cabinet.days[id]!;
  if (printsOf(run).every((print) => coolAfter(run, print).every(({ after }) => after !== undefined))) return run;
  const longer: Day = { ...day, length: day.length + LONGER, repeated: false };
  return runDay({ ...cabinet, days: { ...cabinet.days, [id]: longer } }, id);
}

/** Bed and hot end after a job. */
function coolAfter(
  run: DayRun,
  { machineId, machine, job, end }: Print,
  capacity: number = HOT_END_CAPACITY.usual,
): readonly [bed: Cooling, hotEnd: Cooling] {
  const until = run.record.times.at(-1)!;
  const places = run.assembly.machines[machineId]!;
  const bed = temperatureOf(run, places.bed);
  const next = nextOn(run, machineId, end)?.start ?? until;
  const bedAt = belowFrom(bed, BED_COOL.value, end, Math.min(next, until));
  const hot = { nozzle: job.nozzle, watts: machine.hotEnd, at: machine.hotEndAt, capacity };
  const hotAt = hotEndBelow(hot, temperatureOf(run, places.frameAir), HOT_END_COOL.value, end, Math.min(next, until));
  return [
    { first: valueAt(bed, end), cool: BED_COOL.value, ...(bedAt === undefined ? {} : { after: bedAt - end }) },
    { first: job.nozzle, cool: HOT_END_COOL.value, ...(hotAt === undefined ? {} : { after: hotAt - end }) },
  ];
}

function nextOn(
  run: DayRun,
  machine: string,
  end: number,
): { readonly id: string; readonly start: number } | undefined {
  return printsOf(run)
    .filter((print) => print.machineId === machine && print.start >= end)
    .sort((a, b) => a.start - b.start)[0];
}

/** A day with another bed and another hot end. */
interface End {
  readonly run: DayRun;
  readonly capacity: number;
}

function jobShutOff(run: DayRun, print: Print, ends: readonly End[]): JobShutOff {
  const { machineId, machine, start, end, id, job, part } = print;
  const [bed, hotEnd] = coolAfter(run, print);
  const longest = (each: End): number | undefined => {
    const [a, b] = coolAfter(each.run, print, each.capacity);
    return a.after === undefined || b.after === undefined ? undefined : Math.max(a.after, b.after);
  };
  const middle = longest({ run, capacity: HOT_END_CAPACITY.usual });
  const slow = ends.map(longest);
  const spread = slow.flatMap((each) => each ?? []);
  const last = run.record.times.at(-1)!;
  const hottest = largest(
    within(temperatureOf(run, run.assembly.machines[machineId]!.electronicsAir), end, last),
  ).value;
  const base = {
    part,
    day: run.day,
    machine: machineId,
    job: id,
    material: job.material,
    start,
    end,
    bed,
    hotEnd,
    electronics: { hottest, limit: machine.electronicsLimit },
    ...(middle === undefined || spread.length < 2
      ? {}
      : { spread: [Math.min(middle, ...spread), Math.max(middle, ...spread)] as const }),
  };
  const wait =
    middle === undefined || slow.includes(undefined) ? undefined : Math.max(middle * (1 + RESERVE.value), ...spread);
  const following = nextOn(run, machineId, end);
  if (following !== undefined && (wait === undefined || following.start < end + wait))
    return { ...base, next: { job: following.id, start: following.start } };
  if (wait === undefined) return base;
  const off = Math.ceil((end + wait) / MINUTE) * MINUTE;
  return { ...base, wait, off, afterStart: off - start };
}

function stripOf({ power, machines, paths }: Cabinet, machine: string): SharedStrip | undefined {
  const found = Object.entries(power.strips).find(([, { feeds }]) => feeds.includes(machine));
  if (found === undefined) return undefined;
  const [strip, { feeds }] = found;
  const behind = feeds.flatMap((user) => power.supplies[user]?.feeds ?? [user]);
  return {
    strip,
    machines: behind.filter((user) => user !== machine && machines[user] !== undefined),
    fans: behind.filter((user) => paths[user] !== undefined),
    others: behind.filter((user) => machines[user] === undefined && paths[user] === undefined),
  };
}

function runOns({ paths }: Cabinet, machine: string): MachineSwitch['runOn'] {
  return Object.entries(paths).flatMap(([path, { parts }]) =>
    parts.flatMap((part) =>
      part.part === 'fan' && part.control.kind === 'job' && part.control.machines.includes(machine)
        ? [{ path, seconds: part.control.runOn }]
        : [],
    ),
  );
}
