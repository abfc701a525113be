// One job of the queue alone on one machine: how long it heats, what it draws, how long until the next may follow, how loud the fans
// get, and which limits it breaks all by itself. Plain data both ways, so that trials can be spread over workers.

import type { Cabinet, Day, Job } from '../cabinet/cabinet.ts';
import type { QueueJob } from '../cabinet/queue.ts';
import { measureDay, runDay } from '../judge/pipeline.ts';
import { verdictOf } from '../judge/verdict.ts';
import { airQuality } from '../trades/air-quality/air-quality.ts';
import { temperatureOf } from '../trades/air-ways.ts';
import { courseOf, largest, meanOf, within } from '../trades/course.ts';
import { behindStrip, currentOf, powerOf, usersOf } from '../trades/draws.ts';
import { heat } from '../trades/heat/heat.ts';
import type { DayRun, Trade } from '../trades/measure.ts';
import { power } from '../trades/power/power.ts';
import { printsOf } from '../trades/prints.ts';
import { sharesOf } from '../trades/sound/levels.ts';
import { heardBy } from '../trades/sound/places.ts';
import { sound } from '../trades/sound/sound.ts';
import { belowFrom } from './cool-down.ts';
import { BED_COOL } from './shut-off-limits.ts';

/** Trades that a plan is held against. */
export const planTrades: readonly Trade[] = [heat, power, sound];

export interface TrialTask {
  /** Id of the job in the queue. */
  readonly job: string;
  readonly machine: string;
  /** The job itself: whoever runs it has the cabinet file, but not its job files. */
  readonly of: QueueJob;
}

export interface Trial extends Pick<TrialTask, 'job' | 'machine'> {
  /** At full power, s. */
  readonly heatUp: number;
  /** Drawn while it heats, most of what it draws after, mean of that, and at rest, W. */
  readonly peak: number;
  readonly hold: number;
  readonly mean: number;
  readonly rest: number;
  /** s after its end until the bed is below its limit; absent when it is not seen to get there. */
  readonly cool?: number;
  /** s after its end until 99 % of the particles are gone; absent when no air passes. */
  readonly purge?: number;
  /** Loudest that all fans together get at each person's place, as a power ratio. */
  readonly fans: Readonly<Record<string, number>>;
  /** Most that everything but machines draws, A: of the circuit, and of each strip. */
  readonly others: number;
  readonly strips: Readonly<Record<string, number>>;
  /** `trade/quantity/part` of limits that it breaks alone. */
  readonly breaks: readonly string[];
}

const HOUR = 3600;
/** The trial job starts at this time of its day. */
const START = 9 * HOUR;
const AFTER = 6 * HOUR;
const WARM = 0.9;
export const PLAN_DAY = 'plan';

/** A day of the queue: its weather, and the jobs given. */
export function dayOfQueue(cabinet: Cabinet, jobs: Readonly<Record<string, Job>>, length: number): Day {
  const { roomTemperature, outdoorTemperature } = cabinet.days[cabinet.queue!.like]!;
  return {
    title: 'the plan',
    length,
    jobs,
    doorOpenings: [],
    repeated: false,
    ...(roomTemperature === undefined ? {} : { roomTemperature }),
    ...(outdoorTemperature === undefined ? {} : { outdoorTemperature }),
  };
}

export function jobOn(
  { material, duration, nozzle, bed, mass, partSize }: QueueJob,
  machine: string,
  start: number,
): Job {
  return { machine, material, start, duration, nozzle, bed, mass, partSize };
}

export function runTrial(cabinet: Cabinet, { job: id, machine, of: job }: TrialTask): Trial {
  const day = dayOfQueue(cabinet, { [id]: jobOn(job, machine, START) }, START + job.duration + AFTER);
  const run = runDay({ ...cabinet, days: { [PLAN_DAY]: day } }, PLAN_DAY);
  const [print] = printsOf(run);
  const { start, end } = print!;
  const { record } = run;
  const draw = powerOf(run, machine);
  const heats = record.bedPowers.names.includes(machine)
    ? within(courseOf(record, record.bedPowers, machine), start, end)
    : undefined;
  const { powerMax } = cabinet.machines[machine]!.bed;
  const warm = heats?.times.findIndex((_, row) => heats.values[row]! < WARM * powerMax) ?? 0;
  const heatUp = heats === undefined || warm === 0 ? 0 : warm < 0 ? end - start : heats.times[warm]! - start;
  const held = within(draw, Math.min(start + heatUp, end - 1), end);
  const cool = belowFrom(temperatureOf(run, run.assembly.machines[machine]!.bed), BED_COOL.value, end, end + AFTER);
  const measures = [...measureDay(run, [...planTrades, airQuality]).values()];
  const { bay } = cabinet.machines[machine]!;
  const purge = measures.find(({ quantity, part }) => quantity === 'purge-time' && part === bay)?.value;
  const without = usersOf(cabinet).filter((user) => cabinet.machines[user] === undefined);
  const strip = (name: string): number =>
    largest(
      currentOf(
        run,
        `not machines of ${name}`,
        behindStrip(cabinet, name).filter((user) => cabinet.machines[user] === undefined),
      ),
    ).value;
  return {
    job: id,
    machine,
    heatUp,
    peak: largest(within(draw, start, end)).value,
    hold: largest(held).value,
    mean: meanOf(held),
    rest: largest(within(draw, 0, start)).value,
    ...(cool === undefined ? {} : { cool: cool - end }),
    ...(purge === undefined ? {} : { purge }),
    fans: Object.fromEntries(Object.keys(cabinet.people).map((person) => [person, loudestFans(run, person)])),
    others: largest(currentOf(run, 'not machines', without, cabinet.power.others)).value,
    strips: Object.fromEntries(Object.keys(cabinet.power.strips).map((name) => [name, strip(name)])),
    breaks: measures
      .filter(({ trade, value, limit }) => trade !== 'air-quality' && verdictOf(value, undefined, limit) === 'fails')
      .map(({ trade, quantity, part }) => `${trade}/${quantity}/${part}`),
  };
}

function loudestFans(run: DayRun, person: string): number {
  const heard = heardBy(run.cabinet, person);
  const shares = sharesOf(run, heard);
  const fans = heard.flatMap(({ source, power: loud }, at) =>
    source.kind === 'fan' ? [{ loud, share: shares[at]! }] : [],
  );
  let most = 0;
  for (let row = 1; row < run.record.times.length; row += 1)
    most = Math.max(
      most,
      fans.reduce((sum, { loud, share }) => sum + share[row]! * loud, 0),
    );
  return most;
}

/** The cabinet with a day for every job of its queue on every machine on which it may run, alone. */
export function queueAsDays(cabinet: Cabinet): Cabinet {
  const days = trialTasks(cabinet).map(({ job: id, machine, of }) => {
    const day = dayOfQueue(cabinet, { [id]: jobOn(of, machine, START) }, START + of.duration + AFTER);
    return [`${id} on ${machine}`, day] as const;
  });
  return { ...cabinet, days: Object.fromEntries(days) };
}

/** Every job of the queue on every machine on which it may run. */
export function trialTasks({ queue }: Cabinet): TrialTask[] {
  return Object.entries(queue?.jobs ?? {}).flatMap(([job, of]) => of.machines.map((machine) => ({ job, machine, of })));
}
