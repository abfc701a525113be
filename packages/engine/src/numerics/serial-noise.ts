// Noise that remembers: residuals of a log follow one another. Each channel's noise is taken as a first-order autoregression with a
// standard deviation and a carry-over of its own, over slots of one length, some of which may be empty. Both are found by restricted
// maximum likelihood, which allows for the unknowns that the residuals were already fitted with (H. D. Patterson & R. Thompson 1971).

import type { Matrix } from './dense.ts';

export interface Channel {
  /** First row and one past the last. */
  readonly from: number;
  readonly to: number;
  /** Number of each row's slot, rising. */
  readonly slots: ArrayLike<number>;
}

export interface Noise {
  /** Standard deviation. */
  readonly spread: number;
  /** Correlation of neighbouring slots, 0 for none. */
  readonly carry: number;
}

/** A vector in units in which its noise is white and of deviation 1. Rows of no channel stay as they are. */
export function whitened(
  vector: ArrayLike<number>,
  channels: readonly Channel[],
  noises: readonly Noise[],
): Float64Array {
  const white = Float64Array.from(vector);
  for (const [at, { from, to, slots }] of channels.entries()) {
    const { spread, carry } = noises[at]!;
    for (let row = to - 1; row >= from; row -= 1) {
      if (row === from) white[row] = vector[row]! / spread;
      else {
        const kept = carry === 0 ? 0 : carry ** (slots[row - from]! - slots[row - from - 1]!);
        white[row] = (vector[row]! - kept * vector[row - 1]!) / (spread * Math.sqrt(1 - kept * kept));
      }
    }
  }
  return white;
}

/** Every column of a matrix whitened. */
export function whitenedMatrix(m: Matrix, channels: readonly Channel[], noises: readonly Noise[]): Matrix {
  const { rows, columns } = m;
  const made = new Float64Array(rows * columns);
  for (let column = 0; column < columns; column += 1) {
    const one = Float64Array.from({ length: rows }, (_, row) => m.values[row * columns + column]!);
    const white = whitened(one, channels, noises);
    for (let row = 0; row < rows; row += 1) made[row * columns + column] = white[row]!;
  }
  return { rows, columns, values: made };
}

const CARRY = [-0.3, 0.995] as const;

/**
 * Noise of each channel from the residuals of a fit and its Jacobian. Rows behind the channels (what is known beforehand) count as
 * white with deviation 1.
 */
export function noiseOf(
  residuals: ArrayLike<number>,
  jacobian: Matrix,
  channels: readonly Channel[],
  start: readonly Noise[],
): Noise[] {
  let noises = [...start];
  const least = start.map(({ spread }) => 1e-3 * spread);
  for (let round = 0; round < 10; round += 1) {
    const before = noises;
    for (const at of channels.keys()) {
      const { to, from } = channels[at]!;
      const here = noises[at]!;
      const worth = (carry: number, fresh: number): number =>
        likelihood(
          residuals,
          jacobian,
          channels,
          noises.map((each, index) => (index === at ? { carry, spread: fresh / Math.sqrt(1 - carry * carry) } : each)),
        );
      // What is fresh at each step hardly depends on what is carried over: one after the other finds both.
      let fresh = here.spread * Math.sqrt(1 - here.carry * here.carry);
      let { carry } = here;
      if (to - from >= 8)
        carry = Math.tanh(golden((z) => worth(Math.tanh(z), fresh), Math.atanh(CARRY[0]), Math.atanh(CARRY[1]), 20));
      const middle = Math.log(fresh);
      const reach = round === 0 ? 4 : 1;
      fresh = Math.exp(golden((log) => worth(carry, Math.exp(log)), middle - reach, middle + reach, 18));
      const spread = Math.max(least[at]!, fresh / Math.sqrt(1 - carry * carry));
      noises = noises.map((each, index) => (index === at ? { carry, spread } : each));
    }
    const change = Math.max(
      ...noises.map(({ spread, carry }, at) =>
        Math.max(Math.abs(carry - before[at]!.carry), Math.abs(Math.log(spread / before[at]!.spread))),
      ),
    );
    if (change < 2e-3) break;
  }
  return noises;
}

/**
 * Noises that the residuals allow beside the likeliest one, channel by channel, with their weights: what is carried over is told by few
 * values when it is long, and intervals that take it for known are too narrow.
 */
export function otherNoises(
  residuals: ArrayLike<number>,
  jacobian: Matrix,
  channels: readonly Channel[],
  noises: readonly Noise[],
): { readonly noises: readonly Noise[]; readonly weight: number }[] {
  return channels.flatMap(({ from, to }, at) => {
    if (to - from < 8) return [];
    const { carry, spread } = noises[at]!;
    const fresh = spread * Math.sqrt(1 - carry * carry);
    const middle = Math.atanh(carry);
    const width = 1 / Math.sqrt(to - from);
    const points = Array.from({ length: 13 }, (_, k) => {
      const kept = Math.tanh(Math.min(middle + (k - 5) * 0.6 * width * stretch(carry), Math.atanh(CARRY[1])));
      const tried = noises.map((each, index) =>
        index === at ? { carry: kept, spread: fresh / Math.sqrt(1 - kept * kept) } : each,
      );
      return { noises: tried, worth: likelihood(residuals, jacobian, channels, tried) };
    });
    const best = Math.max(...points.map(({ worth }) => worth));
    const weights = points.map(({ worth }) => Math.exp(worth - best));
    const sum = weights.reduce((all, each) => all + each, 0);
    return points.map((point, k) => ({ noises: point.noises, weight: weights[k]! / sum }));
  });
}

/** Standard error of atanh φ is about √((1 − φ²) / n) / (1 − φ²): wider by this where much is carried over. */
const stretch = (carry: number): number => 1 / Math.sqrt(1 - carry * carry);

/** Restricted log likelihood, without constants. */
function likelihood(
  residuals: ArrayLike<number>,
  jacobian: Matrix,
  channels: readonly Channel[],
  noises: readonly Noise[],
): number {
  const white = whitened(residuals, channels, noises);
  const slopes = whitenedMatrix(jacobian, channels, noises);
  const { sum, logDeterminant } = leftOver(slopes, white);
  let logVolume = 0;
  for (const [at, { from, to, slots }] of channels.entries()) {
    const { spread, carry } = noises[at]!;
    logVolume += 2 * (to - from) * Math.log(spread);
    for (let row = from + 1; row < to; row += 1) {
      const kept = carry === 0 ? 0 : carry ** (slots[row - from]! - slots[row - from - 1]!);
      logVolume += Math.log(1 - kept * kept);
    }
  }
  return -0.5 * (sum + logVolume + logDeterminant);
}

/** Sum of squares that the unknowns cannot take away, and ln |JᵀJ|: by the normal equations, whose few unknowns are well told. */
function leftOver({ rows, columns, values }: Matrix, r: Float64Array): { sum: number; logDeterminant: number } {
  const width = columns + 1;
  const a = new Float64Array(width * width);
  for (let row = 0; row < rows; row += 1) {
    for (let i = 0; i <= columns; i += 1) {
      const x = i < columns ? values[row * columns + i]! : r[row]!;
      if (x === 0) continue;
      for (let j = 0; j <= i; j += 1)
        a[i * width + j] = a[i * width + j]! + x * (j < columns ? values[row * columns + j]! : r[row]!);
    }
  }
  // Cholesky's root, its last diagonal the length of what is left.
  let logDeterminant = 0;
  for (let i = 0; i <= columns; i += 1) {
    for (let j = 0; j <= i; j += 1) {
      let sum = a[i * width + j]!;
      for (let k = 0; k < j; k += 1) sum -= a[i * width + k]! * a[j * width + k]!;
      if (i === j) {
        const own = Math.max(sum, a[i * width + i]! * 1e-14, 1e-300);
        if (i < columns) logDeterminant += Math.log(own);
        a[i * width + j] = Math.sqrt(own);
      } else a[i * width + j] = sum / a[j * width + j]!;
    }
  }
  return { sum: a[columns * width + columns]! ** 2, logDeterminant };
}

/** Where a function with one hump is highest. */
export function golden(value: (x: number) => number, low: number, high: number, rounds = 24): number {
  const share = 0.5 * (3 - Math.sqrt(5));
  let [a, b] = [low, high];
  let [x, y] = [a + share * (b - a), b - share * (b - a)];
  let [atX, atY] = [value(x), value(y)];
  for (let round = 0; round < rounds; round += 1) {
    if (atX >= atY) {
      b = y;
      [y, atY] = [x, atX];
      x = a + share * (b - a);
      atX = value(x);
    } else {
      a = x;
      [x, atX] = [y, atY];
      y = b - share * (b - a);
      atY = value(y);
    }
  }
  return atX >= atY ? x : y;
}

/** Independent values that a channel's rows are worth when a mean is asked of them: n (1 − φ) / (1 + φ), at least 1. */
export function worthOf({ from, to }: Channel, { carry }: Noise): number {
  return Math.max(1, ((to - from) * (1 - carry)) / (1 + carry));
}
