// Unknowns fitted to a laid-out log: least squares of residuals brought to white noise, whose size and memory come from the residuals
// themselves where there are enough of them; then how surely each unknown is told, also counting what was not fitted.

import type { LogKind } from '../../logs/log.ts';
import { type Matrix, matrix, ofColumns } from '../../numerics/dense.ts';
import { studentQuantile } from '../../numerics/distributions.ts';
import { type Blind, blindDirections, correlationsOf, doubtOf } from '../../numerics/fit-doubt.ts';
import { type Fit, leastSquaresLater } from '../../numerics/least-squares.ts';
import {
  type Noise,
  noiseOf,
  otherNoises,
  type Channel as Rows,
  whitened,
  whitenedMatrix,
  worthOf,
} from '../../numerics/serial-noise.ts';
import type { Channel, LaidLog } from './log-days.ts';
import type { Unknown } from './unknowns.ts';
import { widthsAway } from './unknowns.ts';

/** Rows of a column from which its noise is told; with fewer, it is taken as known. */
export const ENOUGH = 24;

/** Noise that is taken where there are too few values to tell it: a dial read by eye, half a division. Judgement. */
export const READING_NOISE: Readonly<Record<LogKind, number>> = {
  temperature: 0.5,
  humidity: 0.03,
  power: 5,
  concentration: 0.25,
};

/** Residuals of all channels, one after another, at points in widths. A point that cannot be computed gives NaN. */
export type ResidualsAt = (points: readonly Float64Array[]) => Promise<readonly Float64Array[]>;

export interface LogFit {
  /** Widths from what the file says, by unknown. */
  readonly at: Float64Array;
  readonly noises: readonly Noise[];
  readonly freedom: number;
  /** Jacobian in white units, with rows of what was known before where that counts. */
  readonly white: Matrix;
  /** As measured, less as computed; in the kind's own units. */
  readonly residuals: Float64Array;
  readonly covariance: Matrix;
  readonly correlations: Matrix;
  readonly blind: readonly Blind[];
  readonly atBound: readonly boolean[];
  readonly converged: boolean;
}

export interface FitLogOptions {
  /** What the file says counts as one more observation of each unknown. */
  readonly prior: boolean;
}

const STEP = 0.25;

export function rowsOf(channels: readonly Channel[]): Rows[] {
  let from = 0;
  return channels.map(({ slot }) => {
    const rows = { from, to: from + slot.length, slots: slot };
    from += slot.length;
    return rows;
  });
}

export function startNoises(channels: readonly Channel[]): Noise[] {
  return channels.map(({ kind, value }) => ({
    spread: kind === 'power' ? Math.max(READING_NOISE.power, 0.03 * Math.max(...value)) : READING_NOISE[kind],
    carry: 0,
  }));
}

export async function fitLog(
  residualsAt: ResidualsAt,
  unknowns: readonly Unknown[],
  { channels }: Pick<LaidLog, 'channels'>,
  { prior }: FitLogOptions,
): Promise<LogFit> {
  const rows = rowsOf(channels);
  const bounds = unknowns.map((unknown) => {
    const [low, high] = unknown.bounds;
    return [widthsAway(unknown, low), widthsAway(unknown, high)] as const;
  });
  let noises = startNoises(channels);
  const enough = channels.map(({ value }) => value.length >= ENOUGH);
  let fit: Fit | undefined;
  let raw: Float64Array | undefined;
  let slopes: Matrix | undefined;
  let start: number[] = unknowns.map(() => 0);
  // First with a loss that a few wild values hardly move, and noise as usual; then twice with noise as the residuals have it.
  for (let pass = 0; pass < 3; pass += 1) {
    fit = await leastSquaresLater(
      async (points) =>
        (await residualsAt(points)).map((each, at) => withPrior(whitened(each, rows, noises), points[at]!, prior)),
      start,
      {
        bounds,
        steps: unknowns.map(() => STEP),
        typical: unknowns.map(() => 1),
        // A hundredth of what an interval is made of, in the sum and in every unknown.
        tolerance: 3e-5,
        stepTolerance: 0.02,
        damping: 1e-3,
        mostRounds: pass === 0 ? 12 : 5,
        probe: 0,
        ...(pass === 0 ? { loss: 'huber' as const, lossScale: 2 } : {}),
      },
    );
    start = [...fit.values];
    const data = rows.at(-1)!.to;
    raw = unwhitened(fit.residuals.subarray(0, data), rows, noises);
    slopes = unwhitenedMatrix(fit.jacobian, rows, noises, data);
    if (!enough.some(Boolean)) break;
    const found = noiseOf(withPrior(raw, fit.values, prior), priorRows(slopes, prior), rows, noises);
    const before = noises;
    noises = noises.map((noise, at) => (enough[at] ? found[at]! : noise));
    const settled = noises.every(
      ({ spread, carry }, at) =>
        Math.abs(Math.log(spread / before[at]!.spread)) < 0.05 && Math.abs(carry - before[at]!.carry) < 0.03,
    );
    if (pass > 0 && settled) break;
  }
  const best = told(slopes!, rows, noises, prior);
  const covariance = enough.some(Boolean)
    ? averaged(best.covariance, slopes!, rows, noises, prior, raw!, fit!.values)
    : best.covariance;
  return {
    ...best,
    covariance,
    correlations: correlationsOf(covariance),
    at: fit!.values,
    noises,
    freedom: enough.some(Boolean) ? freedomOf(rows, noises, unknowns.length, enough) : 1e6,
    residuals: raw!,
    atBound: fit!.atBound,
    converged: fit!.converged,
  };
}

/** Degrees of freedom of values that remember: what they are worth for a mean. */
function freedomOf(
  rows: readonly Rows[],
  noises: readonly Noise[],
  unknowns: number,
  enough: readonly boolean[],
): number {
  const worth = rows.reduce((sum, each, at) => sum + (enough[at] ? worthOf(each, noises[at]!) : 0), 0);
  return Math.max(3, worth - unknowns);
}

/** Covariance over what else the noise may be. */
function averaged(
  covariance: Matrix,
  slopes: Matrix,
  rows: readonly Rows[],
  noises: readonly Noise[],
  prior: boolean,
  raw: Float64Array,
  values: Float64Array,
): Matrix {
  const others = otherNoises(withPrior(raw, values, prior), priorRows(slopes, prior), rows, noises);
  const made = covariance.values.slice();
  for (const other of others) {
    const { covariance: there } = told(slopes, rows, other.noises, prior);
    for (const [at, each] of there.values.entries())
      made[at] = made[at]! + other.weight * (each - covariance.values[at]!);
  }
  return { ...covariance, values: made };
}

/** How surely unknowns are told, from raw slopes and the noise. */
export function told(
  slopes: Matrix,
  rows: readonly Rows[],
  noises: readonly Noise[],
  prior: boolean,
): Pick<LogFit, 'white' | 'covariance' | 'correlations' | 'blind'> {
  const data = whitenedMatrix(slopes, rows, noises);
  const white = priorRows(data, prior);
  const { covariance } = doubtOf(white, 1, 'known');
  return {
    white,
    covariance,
    correlations: correlationsOf(covariance),
    blind: blindDirections(data, new Float64Array(slopes.columns).fill(1)),
  };
}

/** With the rows of what was known before. */
function withPrior(residuals: Float64Array, point: Float64Array, prior: boolean): Float64Array {
  if (!prior) return residuals;
  const all = new Float64Array(residuals.length + point.length);
  all.set(residuals);
  all.set(point, residuals.length);
  return all;
}

function priorRows(slopes: Matrix, prior: boolean): Matrix {
  if (!prior) return slopes;
  const { rows, columns, values } = slopes;
  const made = matrix(rows + columns, columns);
  made.values.set(values);
  for (let at = 0; at < columns; at += 1) made.values[(rows + at) * columns + at] = 1;
  return made;
}

/** White residuals brought back. */
function unwhitened(white: Float64Array, rows: readonly Rows[], noises: readonly Noise[]): Float64Array {
  const raw = white.slice();
  for (const [at, { from, to, slots }] of rows.entries()) {
    const { spread, carry } = noises[at]!;
    for (let row = from; row < to; row += 1) {
      if (row === from) raw[row] = white[row]! * spread;
      else {
        const kept = carry === 0 ? 0 : carry ** (slots[row - from]! - slots[row - from - 1]!);
        raw[row] = white[row]! * spread * Math.sqrt(1 - kept * kept) + kept * raw[row - 1]!;
      }
    }
  }
  return raw;
}

function unwhitenedMatrix(
  { columns, values }: Matrix,
  rows: readonly Rows[],
  noises: readonly Noise[],
  data: number,
): Matrix {
  return ofColumns(
    Array.from({ length: columns }, (_, column) =>
      unwhitened(
        Float64Array.from({ length: data }, (_unused, row) => values[row * columns + column]!),
        rows,
        noises,
      ),
    ),
  );
}

/** Half widths at 95 %, in widths of the unknowns. */
export function halvesOf(
  { covariance, freedom }: Pick<LogFit, 'covariance' | 'freedom'>,
  extra?: Matrix,
): Float64Array {
  const t = studentQuantile(0.975, freedom);
  const { columns, values } = covariance;
  return Float64Array.from({ length: columns }, (_, at) => {
    const own = values[at * columns + at]!;
    const more = extra?.values[at * columns + at] ?? 0;
    return Math.sqrt(t * t * own + 1.96 ** 2 * more);
  });
}

/**
 * What the doubt of inputs that were not fitted adds to the covariance: C Jᵀ Jₙ Jₙᵀ J C, each of them known to one width without the log
 * (a "consider" analysis). `others` are white Jacobian columns of those inputs, in widths.
 */
export function considered({ covariance, white }: Pick<LogFit, 'covariance' | 'white'>, others: Matrix): Matrix {
  const p = covariance.columns;
  const q = others.columns;
  // Gain: unknowns' answer to a change of each other input, C Jᵀ Jₙ.
  const gain = matrix(p, q);
  const cross = matrix(p, q);
  for (let row = 0; row < others.rows; row += 1)
    for (let i = 0; i < p; i += 1)
      for (let j = 0; j < q; j += 1)
        cross.values[i * q + j] = cross.values[i * q + j]! + white.values[row * p + i]! * others.values[row * q + j]!;
  for (let i = 0; i < p; i += 1)
    for (let j = 0; j < q; j += 1)
      for (let k = 0; k < p; k += 1)
        gain.values[i * q + j] = gain.values[i * q + j]! + covariance.values[i * p + k]! * cross.values[k * q + j]!;
  const made = matrix(p, p);
  for (let i = 0; i < p; i += 1)
    for (let j = 0; j < p; j += 1)
      for (let k = 0; k < q; k += 1)
        made.values[i * p + j] = made.values[i * p + j]! + gain.values[i * q + k]! * gain.values[j * q + k]!;
  return made;
}
