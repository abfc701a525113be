// Runs a network through its day: steps with error control, exactly onto every break and every event.

import type { Network } from '../network/network.ts';
import { COASTING, type Day, HEATING, HOLDING, newDay } from './day.ts';
import { firstLength, type Rates } from './first-step.ts';
import { type Books, bookStep, closeBooks, openBooks } from './ledger.ts';
import { compile, type Plant } from './plant.ts';
import { keepBranches } from './pressures.ts';
import type { DayRecord } from './record.ts';
import { addRow, newRecorder, type Recorder, toRecord } from './recorder.ts';
import { carryOver, comesBack, notPeriodic } from './repeat-day.ts';
import { ROS34PW2 } from './rosenbrock.ts';
import { evaluateEnd, newStep, type Step, startStep, tryStep } from './step.ts';
import { afterFailure, newStepControl, nextLength, STEP_SHARE, type StepControl } from './step-control.ts';
import { flipThermostat, holdBed, setBed, settle } from './switching.ts';
import { findEvents, missOf, newWatch, SAME_TIME, type Watch } from './watch.ts';

export interface DayOptions {
  /** Error allowed to a step, K; concentrations get half of it as a share. 0.02 unless given. */
  readonly tolerance?: number;
  /** Keep the balances. */
  readonly ledger?: boolean;
  /** Repeat the day, each from where the last one ended (carbon beds from their given load), until it ends as it began. */
  readonly periodic?: boolean | { readonly maxDays: number };
  /** Asked now and then; true ends the run with a DayStopped. */
  readonly stop?: () => boolean;
  /** Told now and then which share of the day is done. */
  readonly progress?: (share: number) => void;
}

/** Thrown when `stop` said so. */
export class DayStopped extends Error {}

export const USUAL_TOLERANCE = 0.02;
/**
 * Share of max(scale, |C|) per kelvin of tolerance: a hundredth at the usual one. What printing gives off is known to a factor of two
 * at best.
 */
const RELATIVE_PER_KELVIN = 0.5;
/** Days after which a repeated day is taken as it is. */
const USUAL_DAYS = 10;
/** Longest first step of a day, s: from an equilibrium there is no error to be seen. */
const FIRST_STEP = 30;
const SHORTEST = 1e-8;
/** Steps between two questions to `stop`. */
const QUESTION = 64;
/** How near to its level a switch must end up, as a share of the tolerance. */
const EVENT_SHARE = 0.2;
const MOST_REPEATS = 8;
/** After so many events at one moment a step is taken without asking for more. */
const MOST_STUCK = 20;

interface Run {
  readonly day: Day;
  readonly step: Step;
  readonly watch: Watch;
  readonly recorder: Recorder;
  readonly startPower: Float64Array;
  /** Rates before a switch. */
  readonly before: Rates;
  readonly control: StepControl;
  readonly books: Books | undefined;
  /** Temperatures and concentrations at the day's start. */
  readonly began: { readonly y: Float64Array; readonly c: Float64Array };
  readonly tolerance: number;
  readonly relative: number;
  steps: number;
  rejected: number;
  /** Length of the next step, s. */
  length: number;
  /** Something has switched since the last step. */
  jumped: boolean;
  /** What the last step ended for: a thermostat, or a bed counted after them; -1 for nothing. */
  leader: number;
  leaderShare: number;
  leaderLength: number;
  /** Events in a row that took no time. */
  stuck: number;
}

export function simulateDay(network: Network, options: DayOptions = {}): DayRecord {
  return simulatePlant(compile(network), options);
}

/** @throws RangeError when the tolerance is not above 0, or fewer than one day is allowed. */
export function simulatePlant(plant: Plant, options: DayOptions = {}): DayRecord {
  const tolerance = options.tolerance ?? USUAL_TOLERANCE;
  if (!(tolerance > 0)) throw new RangeError(`simulateDay: tolerance is ${tolerance}; it must be above 0`);
  const { periodic = false } = options;
  const mostDays = periodic === false ? 1 : periodic === true ? USUAL_DAYS : periodic.maxDays;
  if (!(mostDays >= 1)) throw new RangeError(`simulateDay: maxDays is ${mostDays}; it must be 1 or more`);
  const day = newDay(plant);
  let run = runDay(day, tolerance, options);
  for (let days = 1; periodic !== false; days += 1) {
    if (comesBack(run.began, run.day, tolerance)) break;
    if (days >= mostDays) {
      run.day.warnings.push(notPeriodic(mostDays));
      break;
    }
    run = runDay(carryOver(run.day), tolerance, options);
  }
  const work = { steps: run.steps, rejected: run.rejected, newton: run.day.air.rounds };
  return toRecord(run.recorder, run.day, work, run.books === undefined ? undefined : closeBooks(run.day, run.books));
}

function runDay(day: Day, tolerance: number, options: DayOptions): Run {
  const step = newStep(day, ROS34PW2);
  day.air.nearly = Math.min(1e-3, 7e-3 * Math.sqrt(tolerance));
  const run: Run = {
    day,
    step,
    watch: newWatch(day),
    recorder: newRecorder(day),
    startPower: new Float64Array(day.bedPower.length),
    before: { heat: new Float64Array(day.y.length), cells: new Float64Array(day.c.length) },
    control: newStepControl(),
    books: options.ledger === true ? openBooks(day, step) : undefined,
    began: { y: day.y.slice(), c: day.c.slice() },
    tolerance: tolerance * STEP_SHARE,
    relative: tolerance * RELATIVE_PER_KELVIN,
    steps: 0,
    rejected: 0,
    length: FIRST_STEP,
    jumped: false,
    leader: -1,
    leaderShare: 0,
    leaderLength: 0,
    stuck: 0,
  };
  march(run, options);
  return run;
}

function march(run: Run, options: DayOptions): void {
  const { day, recorder } = run;
  const { duration } = day.plant.network;
  const { breaks } = day.plant.controls;
  switchAll(run, true);
  addRow(recorder, day);
  let next = 0;
  while (day.moment.time < duration) {
    while (next < breaks.length && breaks[next]! <= day.moment.time) next += 1;
    const goal = next < breaks.length ? breaks[next]! : duration;
    const before = day.moment.time;
    stepTowards(run, goal);
    if (day.moment.time > before) addRow(recorder, day);
    if (fire(run) || (day.moment.time === goal && goal < duration)) {
      switchAll(run, false);
      addRow(recorder, day);
    }
    if (run.steps % QUESTION === 0) {
      if (options.stop?.() === true) throw new DayStopped('The day was stopped');
      options.progress?.(day.moment.time / duration);
    }
  }
}

/** Lets everything switch that does so now. */
function switchAll(run: Run, first: boolean): void {
  const { day, before } = run;
  before.heat.set(day.heatRate);
  before.cells.set(day.transportRate);
  settle(day, first);
  run.jumped = true;
}

/** One accepted step; ends at `goal` or before it, at the first event if there is one. Sets `run.leader` and `run.length`. */
function stepTowards(run: Run, goal: number): void {
  const { day, step } = run;
  const left = goal - day.moment.time;
  startStep(day, step);
  if (run.jumped) {
    run.length = Math.min(run.length, firstLength(day, step, run.before, run.tolerance, run.relative));
    run.control.lastError = 0;
    run.jumped = false;
  }
  let length = Math.min(run.length, left);
  // The last two steps before a goal share what is left, so that no sliver remains.
  if (length > 0.999 * left) length = left;
  else if (length > 0.5 * left) length = 0.5 * left;
  run.startPower.set(day.bedPower);
  run.leader = -1;
  let failed = false;
  let error = tryStep(day, step, length, run.tolerance, run.relative);
  while (error > 1 && length > SHORTEST) {
    run.rejected += 1;
    failed = true;
    length *= afterFailure(error, step.method.errorOrder);
    error = tryStep(day, step, length, run.tolerance, run.relative);
  }
  evaluateEnd(day, step, length);
  run.length = nextLength(run.control, length, error, step.method.errorOrder, failed);
  const share = run.stuck > MOST_STUCK ? 2 : findEvents(day, step, run.watch, length, run.startPower);
  const taken = share <= 1 ? goToEvent(run, length, share) : length;
  run.stuck = taken > 0 ? 0 : run.stuck + 1;
  if (taken === 0) return;
  run.steps += 1;
  if (run.books !== undefined) bookStep(day, step, run.books, taken);
  day.y.set(step.endY);
  day.c.set(step.endC);
  day.heatRate.set(step.endHeat);
  day.transportRate.set(step.endCells);
  day.moment.time = taken === left ? goal : day.moment.time + taken;
  keepBranches(day.air);
}

/** Takes the step again, only up to the event, until its end lies on the level. Returns the length; 0 when it has to switch at once. */
function goToEvent(run: Run, length: number, share: number): number {
  const { day, step, watch, tolerance, relative } = run;
  const leader = watch.share.indexOf(share);
  run.leader = leader;
  run.leaderShare = share;
  run.leaderLength = length;
  let low = 0;
  let lowMiss = missOf(day, day.y, day.c, run.startPower, leader, tolerance, relative);
  let high = length;
  let highMiss = missOf(day, step.endY, step.endC, day.bedPower, leader, tolerance, relative);
  let trial = share * length;
  for (let round = 0; ; round += 1) {
    if (trial < SHORTEST) return 0;
    if (trial < length || round > 0) {
      tryStep(day, step, trial, tolerance, relative);
      evaluateEnd(day, step, trial);
    }
    const miss = missOf(day, step.endY, step.endC, day.bedPower, leader, tolerance, relative);
    if (Math.abs(miss) <= EVENT_SHARE || round >= MOST_REPEATS || high - low <= SAME_TIME) return trial;
    if (miss < 0) {
      low = trial;
      lowMiss = miss;
      // The interpolant touched the level and the step does not: there is no event.
      if (highMiss < 0) {
        run.leader = -1;
        return trial;
      }
    } else {
      high = trial;
      highMiss = miss;
    }
    const secant = low - (lowMiss * (high - low)) / (highMiss - lowMiss);
    trial = secant > low && secant < high ? secant : 0.5 * (low + high);
  }
}

/** Switches what the last step ended for: thermostats first, then beds, each in the order of the file. */
function fire(run: Run): boolean {
  const { day, watch, leader } = run;
  if (leader < 0) return false;
  const thermostats = day.moment.thermostats.length;
  for (let index = 0; index < watch.share.length; index += 1) {
    const apart = Math.abs(watch.share[index]! - run.leaderShare) * run.leaderLength;
    if (index !== leader && !(watch.share[index]! <= 1 && apart <= SAME_TIME)) continue;
    if (index < thermostats) flipThermostat(day, index);
    else switchBed(day, index - thermostats);
  }
  return true;
}

function switchBed(day: Day, m: number): void {
  if (day.bedState[m] !== HOLDING) holdBed(day, m);
  else setBed(day, m, day.bedPower[m]! > 0.5 * day.plant.controls.machines[m]!.powerMax ? HEATING : COASTING);
}
