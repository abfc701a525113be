// What each of many independent inputs does to a result by itself, from one set of samples: a sum of functions of one input each,
// written in Hermite polynomials of the inputs' normal scores (N. Wiener, Amer. J. Math. 60 (1938) 897-936; R. G. Ghanem, P. D. Spanos
// 1991; shares of variance from such sums: B. Sudret, Reliab. Eng. Syst. Saf. 93 (2008) 964-979). Terms are chosen one after another,
// that which explains most of what is left first (Y. C. Pati, R. Rezaiifar, P. S. Krishnaprasad, Asilomar 1993), until luck could
// do as well.

import { smallestCorrelationSquared } from './luck.ts';

/** What one input does by itself. */
export interface AdditivePart {
  /** Place of the input among those given. */
  readonly input: number;
  /** Of the orthonormal Hermite polynomials of degree 1, 2 and 3. */
  readonly coefficients: readonly number[];
}

export interface AdditiveExpansion {
  readonly mean: number;
  /** In the order in which they were chosen. */
  readonly parts: readonly AdditivePart[];
  /** Variance that the parts leave: inputs too weak to tell, and what inputs do only together. */
  readonly residual: number;
  /** Of the parts and the residual. */
  readonly variance: number;
  /** What each squared coefficient is too large by, on average, for want of samples. */
  readonly excess: number;
}

export const DEGREE = 3;

/** Terms of one expansion at most, and one for so many samples. */
const MOST_TERMS = 16;
const SAMPLES_PER_TERM = 5;
/** Terms named for nothing, on average, in one expansion. */
const FALSE_NAMES = 0.05;
/** A term that explains less than this of the variance is not worth a name. */
const SMALLEST_SHARE = 0.002;

/** Orthonormal Hermite polynomials of degree 1 to 3: z, (z² − 1)/√2, (z³ − 3z)/√6. */
export function hermite(z: number): [number, number, number] {
  return [z, (z * z - 1) / Math.SQRT2, (z * z * z - 3 * z) / Math.sqrt(6)];
}

/** Value of a part at a score of its input. */
export function partAt(coefficients: readonly number[], z: number): number {
  const [first, second, third] = hermite(z);
  return coefficients[0]! * first + coefficients[1]! * second + coefficients[2]! * third;
}

/** Polynomials of one input's scores over all samples; those of the same samples are asked for by many results. */
const kept = new WeakMap<readonly number[], readonly Float64Array[]>();

function polynomialsOf(scores: readonly number[]): readonly Float64Array[] {
  const known = kept.get(scores);
  if (known !== undefined) return known;
  const made = Array.from({ length: DEGREE }, () => new Float64Array(scores.length));
  for (const [at, score] of scores.entries())
    for (const [degree, value] of hermite(score).entries()) made[degree]![at] = value;
  kept.set(scores, made);
  return made;
}

/**
 * @param inputs - Per input its standard normal scores, one a sample.
 * @param results - One a sample.
 */
export function expandAdditively(
  inputs: readonly (readonly number[])[],
  results: readonly number[],
): AdditiveExpansion {
  const count = results.length;
  const mean = results.reduce((sum, value) => sum + value, 0) / count;
  const rest = Float64Array.from(results, (value) => value - mean);
  const whole = dot(rest, rest);
  if (!(whole > 1e-24 * mean * mean * count) || count < 3)
    return { mean, parts: [], residual: 0, variance: 0, excess: 0 };
  const candidates = inputs.flatMap((scores, input) =>
    polynomialsOf(scores).map((column, degree) => ({ input, degree, column })),
  );
  const most = Math.min(MOST_TERMS, Math.floor(count / SAMPLES_PER_TERM));
  const chosen: (typeof candidates)[number][] = [];
  const system = leastSquares(rest);
  while (chosen.length < most) {
    const left = dot(rest, rest);
    let [best, explained] = [candidates[0], 0];
    for (const candidate of candidates) {
      if (chosen.includes(candidate)) continue;
      const along = centredDot(candidate.column, rest);
      if (along > explained) [best, explained] = [candidate, along];
    }
    if (best === undefined || explained < SMALLEST_SHARE * whole) break;
    const least = smallestCorrelationSquared(count - chosen.length, candidates.length, FALSE_NAMES);
    if (explained < least * left || !system.add(best.column)) break;
    chosen.push(best);
  }
  const residual = dot(rest, rest) / Math.max(count - 1 - chosen.length, 1);
  const excess = residual / count;
  const solved = system.solve();
  const places = [...new Set(chosen.map(({ input }) => input))];
  const parts = places.map((input) => ({
    input,
    coefficients: Array.from({ length: DEGREE }, (_, degree) =>
      chosen.reduce((sum, one, at) => (one.input === input && one.degree === degree ? sum + solved[at]! : sum), 0),
    ),
  }));
  const known = parts.reduce((sum, { coefficients }) => sum + varianceOf(coefficients, excess), 0);
  return { mean, parts, residual, variance: known + residual, excess };
}

/**
 * Variance that a part has where its input is known only through a reading whose scores correlate with its own by `correlation`: each
 * polynomial of degree k keeps ρ^2k of its square (F. G. Mehler, J. reine angew. Math. 66 (1866) 161-176). 1 for the input itself.
 */
export function varianceOf(coefficients: readonly number[], excess: number, correlation: number = 1): number {
  return coefficients.reduce(
    (sum, value, at) => sum + Math.max(value * value - (value === 0 ? 0 : excess), 0) * correlation ** (2 * (at + 1)),
    0,
  );
}

/** Columns made orthogonal one by one, each taken out of `rest`; then their coefficients as they were given. */
function leastSquares(rest: Float64Array): {
  readonly add: (column: Float64Array) => boolean;
  readonly solve: () => number[];
} {
  const directions: Float64Array[] = [];
  const above: number[][] = [];
  const along: number[] = [];
  return {
    add(column) {
      const centre = column.reduce((sum, value) => sum + value, 0) / column.length;
      const own = column.map((value) => value - centre);
      const size = dot(own, own);
      const factors = directions.map((direction) => takeOut(direction, own));
      const length = Math.sqrt(dot(own, own));
      // What the others hold already adds nothing.
      if (!(length * length > 1e-6 * size)) return false;
      for (let at = 0; at < own.length; at += 1) own[at] = own[at]! / length;
      directions.push(own);
      above.push([...factors, length]);
      along.push(takeOut(own, rest));
      return true;
    },
    solve() {
      const solved = [...along];
      for (let at = solved.length - 1; at >= 0; at -= 1) {
        solved[at] = solved[at]! / above[at]![at]!;
        for (let before = 0; before < at; before += 1) solved[before]! -= above[at]![before]! * solved[at]!;
      }
      return solved;
    },
  };
}

/** Takes a unit direction out of a column, and says how much of it there was. */
function takeOut(direction: Float64Array, from: Float64Array): number {
  const factor = dot(direction, from);
  for (let at = 0; at < from.length; at += 1) from[at] = from[at]! - factor * direction[at]!;
  return factor;
}

/** Squared length of `rest` along a column from which its mean was taken; `rest` has none. */
function centredDot(column: Float64Array, rest: Float64Array): number {
  let [sum, squares, along] = [0, 0, 0];
  for (let at = 0; at < column.length; at += 1) {
    const value = column[at]!;
    sum += value;
    squares += value * value;
    along += value * rest[at]!;
  }
  const size = squares - (sum * sum) / column.length;
  return size > 0 ? (along * along) / size : 0;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < a.length; at += 1) sum += a[at]! * b[at]!;
  return sum;
}
