// How long control charts run before they alarm: the average run length of CUSUM and EWMA on independent normal values, from the
// integral equation of D. Brook & D. A. Evans (1972), E. S. Page (1954), solved on Gauss and Legendre's points.

import { leastNorm, matrix } from './dense.ts';
import { normalShare } from './distributions.ts';

/** Points and weights of Gauss and Legendre on −1 … 1. */
export function gaussPoints(count: number): { readonly x: Float64Array; readonly w: Float64Array } {
  const x = new Float64Array(count);
  const w = new Float64Array(count);
  for (let at = 0; at < count; at += 1) {
    let z = Math.cos((Math.PI * (at + 0.75)) / (count + 0.5));
    let slope = 0;
    for (let round = 0; round < 100; round += 1) {
      let [p, before] = [1, 0];
      for (let degree = 1; degree <= count; degree += 1)
        [p, before] = [((2 * degree - 1) * z * p - (degree - 1) * before) / degree, p];
      slope = (count * (z * p - before)) / (z * z - 1);
      const step = p / slope;
      z -= step;
      if (Math.abs(step) < 1e-15) break;
    }
    x[at] = z;
    w[at] = 2 / ((1 - z * z) * slope * slope);
  }
  return { x, w };
}

const density = (z: number): number => Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI);

/**
 * Average run length of a one-sided CUSUM S ← max(0, S + z − k), alarm at S above h, of normal z with mean `shift` and deviation 1.
 *
 *     L(s) = 1 + L(0) Φ(k − s − shift) + ∫₀ʰ L(x) φ(x + k − s − shift) dx
 *
 * @param k - reference value, 0 or more
 * @param h - decision interval, above 0
 * @param from - where it starts, 0 to h
 * @throws RangeError when h is not above 0
 * @remarks
 * Source: D. Brook & D. A. Evans, Biometrika 59 (1972) 539; checked against published tables.
 * @example Without a shift, k ½ and h 4 (Brook & Evans' table: 335.37 on one side)
 * ```ts
 * cusumRunLength(0.5, 4, 0).toFixed(1); // => 335.4
 * ```
 */
export function cusumRunLength(k: number, h: number, shift: number, from = 0): number {
  if (!(h > 0)) throw new RangeError(`cusumRunLength: h is ${h}; it must be above 0`);
  const away = k - shift;
  // Beyond some 10¹² the system has no digits left; D. Siegmund's formula (1985) is good to a percent there.
  if (2 * away * h > 24) return Math.exp(2 * away * (h + 1.166)) / (2 * away * away);
  const count = Math.min(90, Math.max(30, Math.ceil(8 * h)));
  const { x, w } = gaussPoints(count);
  const points = Float64Array.from(x, (each) => (h / 2) * (1 + each));
  const size = count + 1;
  const a = matrix(size, size);
  // The last unknown is L(0), which has a chance of its own.
  const at = (row: number): number => (row < count ? points[row]! : 0);
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column < count; column += 1)
      a.values[row * size + column] = -(h / 2) * w[column]! * density(points[column]! + k - at(row) - shift);
    a.values[row * size + count] = -normalShare(k - at(row) - shift);
    a.values[row * size + row] = a.values[row * size + row]! + 1;
  }
  const lengths = leastNorm(a, new Float64Array(size).fill(1));
  let sum = 1 + lengths[count]! * normalShare(k - from - shift);
  for (let column = 0; column < count; column += 1)
    sum += (h / 2) * w[column]! * density(points[column]! + k - from - shift) * lengths[column]!;
  return sum;
}

/**
 * Average run length of two one-sided CUSUMs that watch for shifts up and down, each from 0 or from a head start
 * (K. W. Kemp 1961; J. M. Lucas & R. B. Crosier 1982).
 */
export function twoSidedCusumRunLength(k: number, h: number, shift: number, headStart = 0): number {
  const [up, down] = [cusumRunLength(k, h, shift), cusumRunLength(k, h, -shift)];
  const both = 1 / (1 / up + 1 / down);
  if (headStart === 0) return both;
  const [upFrom, downFrom] = [cusumRunLength(k, h, shift, headStart), cusumRunLength(k, h, -shift, headStart)];
  return both * (upFrom / up + downFrom / down - 1);
}

/**
 * Average run length of an EWMA Z ← (1 − λ) Z + λ z, alarm at |Z| above L √(λ / (2 − λ)), of normal z with mean `shift`.
 *
 * @param lambda - weight of the newest value, above 0 to 1
 * @param limit - L, in asymptotic standard deviations of Z, above 0
 * @remarks
 * Source: S. V. Crowder, Technometrics 29 (1987) 401; checked against J. M. Lucas & M. S. Saccucci (1990).
 */
export function ewmaRunLength(lambda: number, limit: number, shift: number): number {
  if (!(lambda > 0 && lambda <= 1)) throw new RangeError(`ewmaRunLength: lambda is ${lambda}; it must lie in 0 … 1`);
  const reach = limit * Math.sqrt(lambda / (2 - lambda));
  const count = 61;
  const { x, w } = gaussPoints(count);
  const a = matrix(count, count);
  const kernel = (to: number, from: number): number => density((to - (1 - lambda) * from) / lambda - shift) / lambda;
  for (let row = 0; row < count; row += 1) {
    for (let column = 0; column < count; column += 1)
      a.values[row * count + column] = -reach * w[column]! * kernel(reach * x[column]!, reach * x[row]!);
    a.values[row * count + row] = a.values[row * count + row]! + 1;
  }
  const lengths = leastNorm(a, new Float64Array(count).fill(1));
  let sum = 1;
  for (let column = 0; column < count; column += 1)
    sum += reach * w[column]! * kernel(reach * x[column]!, 0) * lengths[column]!;
  return sum;
}

/** The h of a two-sided CUSUM that runs `length` values on average before it alarms without a cause. */
export function cusumLimitFor(k: number, length: number): number {
  let [low, high] = [0.5, 4];
  while (twoSidedCusumRunLength(k, high, 0) < length && high < 20) high *= 1.5;
  for (let round = 0; round < 30; round += 1) {
    const middle = (low + high) / 2;
    if (twoSidedCusumRunLength(k, middle, 0) < length) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/** The L of an EWMA that runs `length` values on average before it alarms without a cause. */
export function ewmaLimitFor(lambda: number, length: number): number {
  let [low, high] = [1, 6];
  for (let round = 0; round < 30; round += 1) {
    const middle = (low + high) / 2;
    if (ewmaRunLength(lambda, middle, 0) < length) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
