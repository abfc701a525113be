// When each job of the queue starts: planned on slots of time with everything that trials of the single jobs say, then run through the
// engine as a week; what breaks a limit there teaches the plan, and it is made again.

import type { Cabinet } from '../cabinet/cabinet.ts';
import type { Origins } from '../cabinet/origin.ts';
import type { Queue, QueueAim } from '../cabinet/queue.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { type BatchHooks, type CabinetSource, inTurn } from '../judge/variants.ts';
import type { Placing } from '../numerics/schedule/problem.ts';
import { type ScheduleAnswer, scheduling } from '../numerics/schedule/search.ts';
import { costOf } from '../trades/tariff.ts';
import { type Conflict, conflictOf } from './conflict.ts';
import { runTrial, type Trial, type TrialTask, trialTasks } from './queue-trial.ts';
import { type JobShutOff, shutOffs } from './shut-off.ts';
import { type Cut, type Week, type WeekJob, type WeekWish, weekOf } from './week.ts';
import { checksOf, cutFrom, hoursOf, type Placed, type PlanCheck, type PlanHour, runWeek } from './week-run.ts';
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
  readonly aim: 'deadlines' | QueueAim;
  /** Jobs that miss their deadline; hours of all ends together; money; hours of 40 dB(A) heard by people. */
  readonly value: number;
  /** No plan on these slots comes below it, with the aims before as they are. */
  readonly bound: number;
  readonly proved: boolean;
}

export interface Plan {
  readonly version: 1;
  readonly queue: Omit<Queue, 'jobs'>;
  /** Nothing was moved that started before, s. */
  readonly now: number;
  /** Every job where it is to start; none when no plan was found. */
  readonly jobs: readonly PlannedJob[];
  readonly aims: readonly PlanAim[];
  /** Demands that cannot hold together: why there is no plan, or a deadline is missed. */
  readonly conflict?: Conflict;
  /** `no` when there is none, `unknown` when none was found. */
  readonly found: 'yes' | 'no' | 'unknown';
  /** What the simulated weeks before taught. */
  readonly learned: readonly string[];
  readonly checks: readonly PlanCheck[];
  readonly hours: readonly PlanHour[];
  readonly trials: readonly Trial[];
  readonly nodes: number;
  readonly stopped: boolean;
}

/** A start that was planned before. */
export interface KeptStart {
  readonly id: string;
  readonly machine: string;
  readonly start: number;
}

export type EvaluateTrials = (
  tasks: readonly TrialTask[],
  hooks: BatchHooks,
) => Promise<readonly (Trial | undefined)[]>;

export interface PlanOptions {
  /** s after the origin's midnight: what is planned starts no earlier. */
  readonly now?: number;
  /** An earlier plan: what has started by now stays where it is. */
  readonly keep?: readonly KeptStart[];
  /** Nodes of the search for each aim. */
  readonly nodes?: number;
  readonly evaluate?: EvaluateTrials;
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
  /** Lets others have their turn. */
  readonly pause?: () => Promise<void>;
}

export const PLAN_NODES = 4000;
/** Weeks that are simulated to learn from. */
const ROUNDS = 8;

/** A function that tries single jobs of one file. */
export function trialRunner({ file, text }: CabinetSource): (task: TrialTask) => Trial {
  const answer = readCabinet(file, text);
  if (!answer.ok) throw new Error(`trialRunner: ${file} cannot be read`);
  return (task) => runTrial(answer.cabinet, task);
}

export async function plan(
  source: { readonly cabinet: Cabinet; readonly origins: Origins },
  options: PlanOptions = {},
): Promise<Plan> {
  const { cabinet } = source;
  const queue = cabinet.queue!;
  const { nodes = PLAN_NODES, stop = () => false, progress, pause = async () => undefined } = options;
  const now = Math.max(queue.from, options.now ?? queue.from);
  const jobs = jobsOf(queue, options.keep ?? [], now);
  const tasks = trialTasks(cabinet);
  const all = tasks.length + ROUNDS;
  let done = 0;
  const finished = (): void => {
    done += 1;
    progress?.(Math.min(done, all), all);
  };
  const evaluate = options.evaluate ?? inTurn((task: TrialTask) => runTrial(cabinet, task));
  const trials = (await evaluate(tasks, { finished, stop })).filter((trial) => trial !== undefined);
  const { jobs: _, ...shown } = queue;
  const empty = {
    version: 1,
    queue: shown,
    now,
    jobs: [],
    aims: [],
    learned: [],
    checks: [],
    hours: [],
    trials,
    nodes: 0,
  } as const;
  if (stop() || trials.length < tasks.length) return { ...empty, found: 'unknown', stopped: true };

  const cuts: Cut[] = [];
  let last: Planned | undefined;
  let looked = 0;
  for (let round = 0; round < ROUNDS && !stop(); round += 1) {
    const wish: WeekWish = { cabinet, trials, now, jobs, cuts };
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
  return finishedPlan(source, last, { ...empty, nodes: looked, ...(conflict && { conflict }) }, stop());
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
  const names = ['deadlines', ...queue.aims] as const;
  const offs = stopped ? [] : shutOffs({ cabinet: run.cabinet, origins }).jobs;
  return {
    ...empty,
    found: 'yes',
    jobs: placed
      .map((each) => plannedJob({ cabinet, week, trials: wish.trials, offs, shift: run.shift }, answer.placings, each))
      .sort((a, b) => a.start - b.start || a.machine.localeCompare(b.machine, 'en')),
    aims: answer.aims.map(({ value, bound, proved }, at) => ({ aim: names[at]!, value, bound, proved })),
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
