// When each job of the queue starts: planned on slots of time with everything that trials of the single jobs say, then run through the
// engine as a week; what breaks a limit there teaches the plan, and it is made again.

import { assumedInputs } from '../cabinet/assumed-inputs.ts';
import type { Cabinet } from '../cabinet/cabinet.ts';
import type { Origins } from '../cabinet/origin.ts';
import type { Queue, QueueAim } from '../cabinet/queue.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { sampleInputs, sampleVariants } from '../judge/sample-variants.ts';
import { type BatchHooks, type CabinetSource, inTurn } from '../judge/variants.ts';
import type { Placing } from '../numerics/schedule/problem.ts';
import { type ScheduleAnswer, scheduling } from '../numerics/schedule/search.ts';
import { costOf } from '../trades/tariff.ts';
import { type Conflict, conflictOf } from './conflict.ts';
import { type MovedJob, movedJobs } from './moved.ts';
import { runTrial, type Trial, type TrialTask, trialTasks } from './queue-trial.ts';
import { type JobShutOff, shutOffs } from './shut-off.ts';
import { type Cut, type Week, type WeekJob, type WeekWish, weekOf } from './week.ts';
import { checksOf, cutFrom, hoursOf, type Placed, type PlanCheck, type PlanHour, runWeek } from './week-run.ts';
import { bandedChecks, bandedHours, runWeekTask, type WeekOutcome, type WeekTask } from './week-sample.ts';
import { type Why, whyThen } from './why.ts';

export interface PlannedJob {
  /** `bracket`, `bracket (2)` */
  readonly id: string;
  readonly kind: string;
  readonly machine: string;
  readonly material: string;
  /** s after midnight of the day on which the plan begins. */
  readonly start: number;
  readonly end: number;
  readonly due?: number;
  readonly late: boolean;
  /** `pinned` in the file, `kept` from an earlier plan, or `planned`. */
  readonly how: 'planned' | 'pinned' | 'kept';
  /** Money for what it draws. */
  readonly cost: number;
  /** Until when somebody is to watch it, s. */
  readonly watched: number;
  readonly why: readonly Why[];
  /** When its machine's socket may go off, s; absent when another job follows or it is not known. */
  readonly off?: number;
}

export interface PlanAim {
  readonly aim: 'deadlines' | QueueAim | 'stay';
  /** Jobs that miss their deadline; hours of all ends together; money; hours of 40 dB(A) heard by people; jobs that leave an earlier plan. */
  readonly value: number;
  /** No plan on these slots comes below it, with the aims before as they are. */
  readonly bound: number;
  readonly proved: boolean;
}

export interface Plan {
  readonly version: 1;
  readonly queue: Omit<Queue, 'jobs' | 'unread'>;
  /** Nothing was moved that started before, s. */
  readonly now: number;
  /** Every job where it is to start; none when no plan was found. */
  readonly jobs: readonly PlannedJob[];
  readonly aims: readonly PlanAim[];
  /** Against an earlier plan, where one was given. */
  readonly moved?: readonly MovedJob[];
  /** Demands that cannot hold together: why there is no plan, or a deadline is missed. */
  readonly conflict?: Conflict;
  /** `no` when there is none, `unknown` when none was found. */
  readonly found: 'yes' | 'no' | 'unknown';
  /** Where entries of the queue say otherwise than their job files. */
  readonly remarks: readonly string[];
  /** What the simulated weeks taught, for a plan that is made anew. */
  readonly cuts: readonly Cut[];
  /** The same in words. */
  readonly learned: readonly string[];
  readonly checks: readonly PlanCheck[];
  readonly hours: readonly PlanHour[];
  readonly trials: readonly Trial[];
  readonly nodes: number;
  /** Weeks run with other inputs. */
  readonly samples: { readonly asked: number; readonly ran: number; readonly faults: readonly string[] };
  readonly stopped: boolean;
}

/** A start that was planned before. */
export interface KeptStart {
  readonly id: string;
  readonly machine: string;
  readonly start: number;
}

/** A job alone, or the planned week with other inputs. */
export type PlanTask = TrialTask | WeekTask;
export type PlanOutcome = Trial | WeekOutcome;

export type EvaluatePlan = (
  tasks: readonly PlanTask[],
  hooks: BatchHooks,
) => Promise<readonly (PlanOutcome | undefined)[]>;

export interface PlanOptions {
  /** s after the origin's midnight: what is planned starts no earlier. */
  readonly now?: number;
  /** An earlier plan: what has started by now stays where it is. */
  readonly keep?: readonly KeptStart[];
  /** What its weeks taught: learned in another order, it would move jobs for nothing. */
  readonly cuts?: readonly Cut[];
  /** Nodes of the search for each aim. */
  readonly nodes?: number;
  /** Weeks run with other inputs, for bands; none unless given. */
  readonly samples?: number;
  readonly seed?: number;
  readonly evaluate?: EvaluatePlan;
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
  /** Lets others have their turn. */
  readonly pause?: () => Promise<void>;
}

export const PLAN_NODES = 4000;
/** Weeks that are simulated to learn from. */
const ROUNDS = 8;

/** A function that tries single jobs and whole weeks of one file. */
export function planRunner({ file, text }: CabinetSource): (task: PlanTask) => PlanOutcome {
  const answer = readCabinet(file, text);
  if (!answer.ok) throw new Error(`planRunner: ${file} cannot be read`);
  return (task) => planTask(answer.cabinet, task);
}

function planTask(cabinet: Cabinet, task: PlanTask): PlanOutcome {
  return 'week' in task ? runWeekTask(cabinet, task) : runTrial(cabinet, task);
}

export async function plan(
  source: { readonly cabinet: Cabinet; readonly origins: Origins },
  options: PlanOptions = {},
): Promise<Plan> {
  const { cabinet } = source;
  const queue = cabinet.queue!;
  const [unread] = Object.values(queue.unread);
  if (unread !== undefined) throw new RangeError(`plan: the job file ${unread.path} has not been read`);
  const { nodes = PLAN_NODES, samples = 0, stop = () => false, progress, pause = async () => undefined } = options;
  const now = Math.max(queue.from, options.now ?? queue.from);
  const { keep = [] } = options;
  const jobs = jobsOf(queue, keep, now);
  const tasks = trialTasks(cabinet);
  const all = tasks.length + ROUNDS + samples;
  let done = 0;
  const finished = (): void => {
    done += 1;
    progress?.(Math.min(done, all), all);
  };
  const evaluate = options.evaluate ?? inTurn((task: PlanTask) => planTask(cabinet, task));
  const trials = ((await evaluate(tasks, { finished, stop })) as readonly (Trial | undefined)[]).filter(
    (trial) => trial !== undefined,
  );
  const { jobs: _, unread: _unread, ...shown } = queue;
  const empty = {
    version: 1,
    queue: shown,
    now,
    jobs: [],
    aims: [],
    remarks: Object.entries(queue.jobs).flatMap(([id, { remarks = [] }]) => remarks.map((says) => `${id}: ${says}`)),
    cuts: [],
    learned: [],
    checks: [],
    hours: [],
    trials,
    nodes: 0,
    samples: { asked: samples, ran: 0, faults: [] },
  } as const;
  if (stop() || trials.length < tasks.length) return { ...empty, found: 'unknown', stopped: true };

  const cuts: Cut[] = [...(options.cuts ?? [])];
  let last: Planned | undefined;
  let looked = 0;
  for (let round = 0; round < ROUNDS && !stop(); round += 1) {
    const wish: WeekWish = {
      cabinet,
      trials,
      now,
      jobs,
      cuts: [...cuts],
      ...(keep.length === 0 ? {} : { stay: keep }),
    };
    const week = weekOf(wish);
    const answer = await solved(week, nodes, stop, pause);
    finished();
    if (answer.found !== 'schedule') {
      const conflict = stop() ? undefined : await conflictOf(wish, stop, pause);
      const found = answer.found === 'none' || conflict !== undefined ? 'no' : 'unknown';
      return {
        ...empty,
        found,
        nodes: looked + answer.nodes,
        cuts,
        learned: cuts.map(({ says }) => says),
        ...(conflict === undefined ? {} : { conflict }),
        stopped: stop(),
      };
    }
    looked += answer.aims.reduce((sum, aim) => sum + aim.nodes, 0);
    const placed = placedOf(week, answer.placings);
    const run = runWeek(cabinet, placed);
    last = { wish, week, answer, placed, run, checks: checksOf(run, placed, trials) };
    await pause();
    const cut = cutFrom(last.checks, placed, queue.origin, cuts);
    if (cut === undefined) break;
    cuts.push(cut);
  }
  if (last === undefined) return { ...empty, found: 'unknown', stopped: true };
  const missed = last.answer.aims[0]!.value > 0;
  const conflict = missed && !stop() ? await conflictOf(last.wish, stop, pause) : undefined;
  const made = finishedPlan(source, last, { ...empty, nodes: looked, ...(conflict && { conflict }) }, stop());
  if (samples === 0 || stop()) return made;
  // Rounds that were not needed count as done.
  done = tasks.length + ROUNDS;
  const columns = sampleInputs(assumedInputs(source.origins), samples, options.seed ?? 1);
  const weeks = sampleVariants([], columns, samples).map(
    ({ inputs }): WeekTask => ({ week: last.placed, inputs, asks: 'limits', until: queue.until }),
  );
  return withBands(made, (await evaluate(weeks, { finished, stop })) as readonly (WeekOutcome | undefined)[], stop());
}

function withBands(made: Plan, sampled: readonly (WeekOutcome | undefined)[], stopped: boolean): Plan {
  const outcomes = sampled.filter((outcome) => outcome !== undefined);
  const ran = outcomes.filter(({ fault }) => fault === undefined).length;
  return {
    ...made,
    checks: bandedChecks(made.checks, outcomes),
    hours: bandedHours(made.hours, outcomes),
    samples: { asked: sampled.length, ran, faults: [...new Set(outcomes.flatMap(({ fault }) => fault ?? []))] },
    stopped,
  };
}

interface Planned {
  readonly wish: WeekWish;
  readonly week: Week;
  readonly answer: Extract<ScheduleAnswer, { readonly found: 'schedule' }>;
  readonly placed: readonly Placed[];
  readonly run: ReturnType<typeof runWeek>;
  readonly checks: readonly PlanCheck[];
}

function finishedPlan(
  { origins }: { readonly origins: Origins },
  { wish, week, answer, placed, run, checks }: Planned,
  empty: Omit<Plan, 'found' | 'stopped'>,
  stopped: boolean,
): Plan {
  const { cabinet, queue } = week;
  const names = ['deadlines', ...queue.aims, 'stay'] as const;
  const known = { cabinet, week, trials: wish.trials };
  const offs = stopped ? [] : shutOffs({ cabinet: run.cabinet, origins }).jobs;
  const jobs = placed
    .map((each) => plannedJob({ ...known, offs, shift: run.shift }, answer.placings, each))
    .sort((a, b) => a.start - b.start || a.machine.localeCompare(b.machine, 'en'));
  return {
    ...empty,
    found: 'yes',
    jobs,
    ...(wish.stay === undefined ? {} : { moved: movedJobs(wish.stay, jobs, week, answer.placings) }),
    aims: answer.aims.map(({ value, bound, proved }, at) => ({ aim: names[at]!, value, bound, proved })),
    cuts: wish.cuts,
    learned: wish.cuts.map(({ says }) => says),
    checks,
    hours: hoursOf(run, queue.from, queue.until),
    stopped,
  };
}

interface Known {
  readonly cabinet: Cabinet;
  readonly week: Week;
  readonly trials: readonly Trial[];
  readonly offs: readonly JobShutOff[];
  readonly shift: number;
}

function plannedJob(
  { cabinet, week, trials, offs, shift }: Known,
  placings: readonly Placing[],
  { job, machine, start, end }: Placed,
): PlannedJob {
  const at = week.jobs.indexOf(job);
  const trial = trials.find((each) => each.job === job.kind && each.machine === machine);
  const off = offs.find((each) => each.job === job.id)?.off;
  const { due, material, attended } = job.job;
  return {
    id: job.id,
    kind: job.kind,
    machine,
    material,
    start,
    end,
    ...(due === undefined ? {} : { due }),
    late: due !== undefined && end > due,
    how: job.fixed?.how ?? 'planned',
    cost: costOfJob(cabinet, start, end, trial),
    watched: Math.min(start + (trial?.heatUp ?? 0) + attended, end),
    why: at < 0 ? [] : whyThen(week, placings, at),
    ...(off === undefined ? {} : { off: off - shift }),
  };
}

function costOfJob(cabinet: Cabinet, start: number, end: number, trial: Trial | undefined): number {
  if (trial === undefined) return 0;
  const heated = Math.min(start + trial.heatUp, end);
  const piece = (from: number, to: number, watts: number): number =>
    to > from
      ? costOf({ times: Float64Array.of(from, to), values: Float64Array.of(watts, watts) }, cabinet.power.tariff)
      : 0;
  return piece(start, heated, trial.peak) + piece(heated, end, trial.mean);
}

/** Copies of every job; those that are pinned or have started stand fixed. */
export function jobsOf(queue: Queue, keep: readonly KeptStart[], now: number): WeekJob[] {
  return Object.entries(queue.jobs).flatMap(([kind, job]) =>
    Array.from({ length: job.copies }, (_, copy): WeekJob => {
      const id = copy === 0 ? kind : `${kind} (${copy + 1})`;
      const before = keep.find((each) => each.id === id && each.start < now && job.machines.includes(each.machine));
      if (job.pinned !== undefined)
        return { id, kind, job, fixed: { machine: job.machines[0]!, start: job.pinned, how: 'pinned' } };
      return before === undefined
        ? { id, kind, job }
        : { id, kind, job, fixed: { machine: before.machine, start: before.start, how: 'kept' } };
    }),
  );
}

function placedOf(week: Week, placings: readonly Placing[]): Placed[] {
  const { jobs, fixed, options, zero, step } = week;
  return [
    ...jobs.map((job, at): Placed => {
      const { way, start } = placings[at]!;
      const begin = zero + start * step;
      return { job, machine: options[at]![way]!.machine, start: begin, end: begin + job.job.duration };
    }),
    ...fixed.map((job): Placed => {
      const { machine, start } = job.fixed!;
      return { job, machine, start, end: start + job.job.duration };
    }),
  ];
}

async function solved(
  week: Week,
  nodes: number,
  stop: () => boolean,
  pause: () => Promise<void>,
): Promise<ScheduleAnswer> {
  // Where no aim is better for a later start, starting early is enough to look at.
  const branching = week.queue.aims.every((aim) => aim === 'early') ? 'earliest' : 'conflict';
  const steps = scheduling(week.problem, { nodes, branching });
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    await pause();
    if (stop()) return { found: 'unknown', nodes: step.value };
  }
}
