// What is likely to come of a point that has not been run, from those that have: a Gaussian process over choices
// (D. G. Krige 1951; C. E. Rasmussen, C. K. I. Williams, Gaussian Processes for Machine Learning, 2006, Algorithm 2.1).
// The likeness of two points is the sum of four parts: choice by choice, by pairs, by threes, and all of them together (additive
// kernels: D. Duvenaud, H. Nickisch, C. E. Rasmussen, Advances in NIPS 24 (2011) 226-234). What a cabinet comes to is mostly a sum over
// few choices at a time (a fan with its filter and its hole), which is learnt from few runs.

import type { ChoiceSpace, Point } from './choice-space.ts';

export interface Likeness {
  /** How unlike the values of each choice are, 0 for a choice that does not matter. */
  readonly unlike: readonly number[];
  /** Shares of likeness choice by choice, by pairs, by threes, and of all together; they sum to 1. */
  readonly shares: readonly [number, number, number, number];
  /** Share of the variance that likeness does not explain. */
  readonly nugget: number;
}

export type LikenessOf = (a: Point, b: Point) => number;

/** A likeness function; 1 for a point with itself. Ordered choices after Matérn 3/2, others alike or not. */
export function likenessOf(space: ChoiceSpace, { unlike, shares }: Likeness): LikenessOf {
  const tables = space.map(({ count, ordered }, at) =>
    Float64Array.from({ length: count * count }, (_, cell) => {
      const steps = Math.abs((cell % count) - Math.floor(cell / count));
      if (!ordered) return steps === 0 ? 1 : Math.exp(-unlike[at]!);
      const far = (Math.sqrt(3) * unlike[at]! * steps) / Math.max(count - 1, 1);
      return (1 + far) * Math.exp(-far);
    }),
  );
  const counts = space.map(({ count }) => count);
  const choices = space.length;
  const pairs = (choices * (choices - 1)) / 2;
  const threes = (pairs * (choices - 2)) / 3;
  const [each, pair, three, all] = shares;
  return (a, b) => {
    let [sum, squares, cubes, product] = [0, 0, 0, 1];
    for (let at = 0; at < choices; at += 1) {
      const like = tables[at]![a[at]! * counts[at]! + b[at]!]!;
      const square = like * like;
      sum += like;
      squares += square;
      cubes += square * like;
      product *= like;
    }
    // Sums over all pairs and threes by Newton's identities.
    const byPair = pairs === 0 ? product : (sum * sum - squares) / 2 / pairs;
    const byThree = threes === 0 ? product : (sum ** 3 - 3 * sum * squares + 2 * cubes) / 6 / threes;
    return (each * sum) / choices + pair * byPair + three * byThree + all * product;
  };
}

export interface Fitted {
  readonly points: readonly Point[];
  readonly like: LikenessOf;
  /** Lower triangle of the likeness of the points, row by row. */
  readonly root: Float64Array;
}

/** The factored likeness of points; undefined when it cannot be factored (two points are as good as one). */
export function fitPoints(space: ChoiceSpace, points: readonly Point[], likeness: Likeness): Fitted | undefined {
  const like = likenessOf(space, likeness);
  const size = points.length;
  const root = new Float64Array(size * size);
  for (let row = 0; row < size; row += 1) {
    for (let column = 0; column <= row; column += 1) {
      let value = row === column ? 1 + likeness.nugget : like(points[row]!, points[column]!);
      const [rowAt, columnAt] = [row * size, column * size];
      for (let k = 0; k < column; k += 1) value -= root[rowAt + k]! * root[columnAt + k]!;
      if (row !== column) root[rowAt + column] = value / root[columnAt + column]!;
      else if (value > 1e-12) root[rowAt + column] = Math.sqrt(value);
      else return undefined;
    }
  }
  return { points, like, root };
}

/** L⁻¹ b */
function forward({ root, points: { length: size } }: Fitted, b: ArrayLike<number>): Float64Array {
  const x = new Float64Array(size);
  for (let row = 0; row < size; row += 1) {
    let value = b[row]!;
    const at = row * size;
    for (let k = 0; k < row; k += 1) value -= root[at + k]! * x[k]!;
    x[row] = value / root[at + row]!;
  }
  return x;
}

/** L⁻ᵀ b */
function backward({ root, points: { length: size } }: Fitted, b: Float64Array): Float64Array {
  const x = Float64Array.from(b);
  for (let row = size - 1; row >= 0; row -= 1) {
    const at = row * size;
    const value = x[row]! / root[at + row]!;
    x[row] = value;
    for (let k = 0; k < row; k += 1) x[k]! -= root[at + k]! * value;
  }
  return x;
}

/** Weights of the runs in a mean: one number a point, for values whose mean is 0. */
export function weightsOf(fitted: Fitted, values: readonly number[]): Float64Array {
  return backward(fitted, forward(fitted, values));
}

/** Likeness of a point with each of the runs. */
export function likenessWith({ points, like }: Fitted, point: Point): Float64Array {
  return Float64Array.from(points, (other) => like(point, other));
}

/** Expected value, where the values' mean is 0. */
export function expected(weights: Float64Array, likeness: Float64Array): number {
  let sum = 0;
  for (let at = 0; at < weights.length; at += 1) sum += weights[at]! * likeness[at]!;
  return sum;
}

/** Share of the variance that is left open at a point, 0…1. */
export function openShare(fitted: Fitted, likeness: Float64Array): number {
  const known = forward(fitted, likeness);
  let sum = 0;
  for (const value of known) sum += value * value;
  return Math.max(1 - sum, 0);
}

/** Logarithm of how likely the values are, up to a constant, with the variance that suits them best. */
function logLikelihood(fitted: Fitted, values: readonly number[]): number {
  const white = forward(fitted, values);
  const size = values.length;
  let [squares, logs] = [0, 0];
  for (let at = 0; at < size; at += 1) {
    squares += white[at]! ** 2;
    logs += Math.log(fitted.root[at * size + at]!);
  }
  return -0.5 * size * Math.log(squares / size + 1e-12) - logs;
}

const FIRST_SHARES: Likeness['shares'] = [0.2, 0.25, 0.3, 0.25];
const SHARES: readonly Likeness['shares'][] = [
  FIRST_SHARES,
  [0, 0, 0, 1],
  [0.05, 0.1, 0.15, 0.7],
  [0.05, 0.15, 0.6, 0.2],
  [0.1, 0.6, 0.2, 0.1],
  [0.6, 0.2, 0.1, 0.1],
];
const NUGGETS: readonly number[] = [1e-4, 1e-3, 1e-2, 5e-2];
const STEP = 2.5;
const LEAST = 0.02;
const MOST = 25;

export function firstLikeness(space: ChoiceSpace): Likeness {
  return { unlike: space.map(() => 1), shares: FIRST_SHARES, nugget: 1e-3 };
}

/** The likeness that makes the values likelier: each of its numbers moved in turn, `rounds` times. Values have mean 0. */
export function likelierLikeness(
  space: ChoiceSpace,
  points: readonly Point[],
  values: readonly number[],
  from: Likeness,
  rounds: number,
): Likeness {
  const worth = (likeness: Likeness): number => {
    const fitted = fitPoints(space, points, likeness);
    return fitted === undefined ? Number.NEGATIVE_INFINITY : logLikelihood(fitted, values);
  };
  let best = from;
  let highest = worth(from);
  const attempt = (likeness: Likeness): boolean => {
    const value = worth(likeness);
    if (!(value > highest)) return false;
    best = likeness;
    highest = value;
    return true;
  };
  for (let round = 0; round < rounds; round += 1) {
    for (const shares of SHARES) if (shares !== best.shares) attempt({ ...best, shares });
    for (const nugget of NUGGETS) if (nugget !== best.nugget) attempt({ ...best, nugget });
    for (let at = 0; at < space.length; at += 1) {
      const moved = (factor: number): Likeness => ({
        ...best,
        unlike: best.unlike.with(at, Math.min(Math.max(best.unlike[at]! * factor, LEAST), MOST)),
      });
      if (!attempt(moved(STEP))) attempt(moved(1 / STEP));
    }
  }
  return best;
}
