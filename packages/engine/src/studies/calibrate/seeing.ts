// What a log sees of unknowns: residuals of all its values at given values of the unknowns, by running each of its dates.

import { type Matrix, ofColumns } from '../../numerics/dense.ts';
import { type EvaluateLog, type Grid, type LogOutcome, type LogPlan, type LogTask, logarithm } from './expected.ts';
import type { LaidLog } from './log-days.ts';
import { type Unknown, valueAway } from './unknowns.ts';

/** The person wanted no more. */
export class LogStopped extends Error {}

export interface LogHooks {
  readonly evaluate: EvaluateLog;
  readonly stop: () => boolean;
  readonly progress?: (done: number, all: number) => void;
}

export interface Seen {
  /** Computed less measured as the file stands, channel after channel. */
  readonly nominal: Float64Array;
  /** d residual / d unknown a width, for every candidate, as the file stands. */
  readonly slopes: Matrix;
  readonly grid: Grid;
  /** d reading / d unknown, by place and time of the grid, then by candidate. */
  readonly gridSlopes: readonly (readonly Float64Array[])[];
  /** Residuals at points in widths of some unknowns, the others as the file says; of dates before `from`, 0 and not run. */
  readonly residualsAt: (
    points: readonly Float64Array[],
    unknowns: readonly Unknown[],
    hooks: LogHooks,
    from?: number,
  ) => Promise<readonly Float64Array[]>;
}

const STEP = 0.25;

export async function seeing(
  candidates: readonly Unknown[],
  laid: LaidLog,
  plan: LogPlan,
  hooks: LogHooks,
): Promise<Seen> {
  const size = laid.channels.reduce((sum, { value }) => sum + value.length, 0);
  const dates = plan.days.length;
  let done = 0;
  const expected = (1 + 2 * candidates.length + 6 * 11) * dates;
  const run = async (tasks: readonly LogTask[], { evaluate, stop, progress }: LogHooks): Promise<LogOutcome[]> => {
    const outcomes = await evaluate(tasks, {
      finished: () => {
        done += 1;
        progress?.(done, Math.max(expected, done + 1));
      },
      stop,
    });
    if (stop() || outcomes.some((outcome) => outcome === undefined)) throw new LogStopped('stopped');
    return outcomes as LogOutcome[];
  };
  const tasksAt = (values: Readonly<Record<string, number>>, grid: boolean): LogTask[] =>
    plan.days.map((_, date) => ({ date, values, grid: grid && date === 0 }));
  const residualsOf = (outcomes: readonly (LogOutcome | undefined)[]): Float64Array =>
    residualsFrom(outcomes, laid, size);

  const moves = candidates.flatMap((unknown) => [-STEP, STEP].map((u) => ({ [unknown.id]: valueAway(unknown, u) })));
  const outcomes = await run(
    [{}, ...moves].flatMap((values) => tasksAt(values, true)),
    hooks,
  );
  const of = (at: number): LogOutcome[] => outcomes.slice(at * dates, (at + 1) * dates);
  const fault = of(0).find((outcome) => outcome.fault !== undefined)?.fault;
  if (fault !== undefined) throw new RangeError(`calibrate: the day cannot be run: ${fault}`);
  const nominal = residualsOf(of(0));
  const slopes = candidates.map((_, at) => {
    const [low, high] = [residualsOf(of(1 + 2 * at)), residualsOf(of(2 + 2 * at))];
    return low.map((each, row) => finite((high[row]! - each) / (2 * STEP)));
  });
  const gridSlopes = plan.grid.places.map((_, place) =>
    plan.grid.times.map((_unused, time) =>
      Float64Array.from(candidates, (_candidate, at) => {
        const [low, high] = [of(1 + 2 * at)[0]!.grid, of(2 + 2 * at)[0]!.grid];
        return finite(((high?.[place]?.[time] ?? Number.NaN) - (low?.[place]?.[time] ?? Number.NaN)) / (2 * STEP));
      }),
    ),
  );
  return {
    nominal,
    slopes: candidates.length === 0 ? { rows: size, columns: 0, values: new Float64Array() } : ofColumns(slopes),
    grid: plan.grid,
    gridSlopes,
    residualsAt: async (points, unknowns, now, from = 0) => {
      const tasks = points.flatMap((point) =>
        tasksAt(
          Object.fromEntries(unknowns.map((unknown, at) => [unknown.id, valueAway(unknown, point[at]!)])),
          false,
        ).slice(from),
      );
      const answers = await run(tasks, now);
      const each = dates - from;
      const before = Array.from({ length: from }, () => undefined);
      return points.map((_, at) => residualsOf([...before, ...answers.slice(at * each, (at + 1) * each)]));
    },
  };
}

const finite = (value: number): number => (Number.isFinite(value) ? value : 0);

/** Computed less measured, channel after channel in order of time; NaN throughout where a date could not be run. */
function residualsFrom(
  outcomes: readonly (LogOutcome | undefined)[],
  { channels }: LaidLog,
  size: number,
): Float64Array {
  const residuals = new Float64Array(size);
  if (outcomes.some((outcome) => outcome?.fault !== undefined)) return residuals.fill(Number.NaN);
  let row = 0;
  for (const [channelAt, { date, value, kind, place }] of channels.entries()) {
    const next = outcomes.map(() => 0);
    for (const [at, measured] of value.entries()) {
      const own = date[at]!;
      const outcome = outcomes[own];
      const computed = outcome?.values[channelAt]?.[next[own]!];
      next[own] = next[own]! + 1;
      if (computed !== undefined)
        residuals[row] = computed - (kind === 'concentration' ? logarithm(measured, place.contaminant) : measured);
      row += 1;
    }
  }
  return residuals;
}
