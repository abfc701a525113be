// Nonlinear least squares for a few unknowns: Levenberg and Marquardt's method with bounds and, if wanted, a loss that outliers weigh
// less in. The method asks for residuals in batches of points, so that whoever computes them may do so on many threads.

import { leastNorm, type Matrix, ofColumns } from './dense.ts';

export type Loss = 'squares' | 'huber' | 'soft-l1';

export interface FitOptions {
  /** One pair an unknown; open unless given. */
  readonly bounds?: readonly (readonly [number, number])[];
  readonly loss?: Loss;
  /** Residual from which `loss` weighs less than squares. 1 unless given. */
  readonly lossScale?: number;
  /** Step of the difference quotients, by unknown; a share 6e-6 of the value (at least of `typical`) unless given. */
  readonly steps?: readonly number[];
  /** Size below which a change of each unknown is not counted as a share of its value; and its size where it is 0, 1 unless given. */
  readonly typical?: readonly number[];
  /** Ends when a step changes the sum by less than this share, and every unknown by less than `stepTolerance`. 1e-14 unless given. */
  readonly tolerance?: number;
  /** √tolerance unless given. */
  readonly stepTolerance?: number;
  /** Damping of the first step, against columns of one length: small where the start is near and slopes hold. 1 unless given. */
  readonly damping?: number;
  readonly mostRounds?: number;
  /**
   * Share of a step at which its curvature is looked at, 0.001 unless given; 0 leaves it out, for residuals that are known to few
   * digits.
   */
  readonly probe?: number;
}

export interface Fit {
  readonly values: Float64Array;
  readonly residuals: Float64Array;
  /** d residual / d unknown at `values`. */
  readonly jacobian: Matrix;
  /** Sum of squares of the residuals, whatever the loss. */
  readonly sum: number;
  readonly converged: boolean;
  readonly rounds: number;
  readonly evaluations: number;
  /** Unknowns that ended at a bound. */
  readonly atBound: readonly boolean[];
}

/** Residuals at a point; a value that is not finite says that nothing can be computed there. */
export type Residuals = (values: Float64Array) => ArrayLike<number>;

/** Asks for the residuals at several points at once, and is given them in order. */
export type FitSteps = Generator<readonly Float64Array[], Fit, readonly ArrayLike<number>[]>;

/**
 * The values that make the sum of squared residuals least, from a start near enough.
 *
 * @throws RangeError when the start is empty or its residuals are not finite.
 * @example The slope of a line through three points
 * ```ts
 * leastSquares(([b = 0]) => [1 * b - 2.1, 2 * b - 3.9, 3 * b - 6.1], [1]).values[0].toFixed(4); // => 2.0143
 * ```
 */
export function leastSquares(residuals: Residuals, start: readonly number[], options: FitOptions = {}): Fit {
  const steps = fitSteps(start, options);
  let asked = steps.next();
  while (asked.done !== true) asked = steps.next(asked.value.map((point) => residuals(point)));
  return asked.value;
}

/** The same, where residuals come later; what `evaluate` rejects with goes through. */
export async function leastSquaresLater(
  evaluate: (points: readonly Float64Array[]) => Promise<readonly ArrayLike<number>[]>,
  start: readonly number[],
  options: FitOptions = {},
): Promise<Fit> {
  const steps = fitSteps(start, options);
  let asked = steps.next();
  while (asked.done !== true) asked = steps.next(await evaluate(asked.value));
  return asked.value;
}

interface State {
  readonly values: Float64Array;
  readonly residuals: Float64Array;
  readonly cost: number;
}

/** Longest second-order part of a step, as a share of the first-order one, that is taken for a step in known country. */
const MOST_BEND = 0.75;
const FIRST_DAMPING = 1;
const SMALLEST_DAMPING = 1e-15;
const LARGEST_DAMPING = 1e16;

/** The method itself. */
function* fitSteps(start: readonly number[], options: FitOptions = {}): FitSteps {
  const { loss = 'squares', lossScale = 1, tolerance = 1e-14, mostRounds = 400, probe = 0.001 } = options;
  if (start.length === 0) throw new RangeError('leastSquares: start is empty; it must have an unknown');
  const bounds = options.bounds ?? start.map(() => [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const);
  let evaluations = 0;
  const within = (values: Float64Array): Float64Array =>
    values.map((value, at) => Math.min(Math.max(value, bounds[at]![0]), bounds[at]![1]));
  const stateOf = (values: Float64Array, residuals: ArrayLike<number>): State => {
    const copy = Float64Array.from(residuals);
    return { values, residuals: copy, cost: costOf(copy, loss, lossScale) };
  };

  const first = within(Float64Array.from(start));
  let state = stateOf(first, (yield [first])[0]!);
  evaluations += 1;
  if (!Number.isFinite(state.cost))
    throw new RangeError('leastSquares: residuals at start are not finite; start elsewhere');
  let jacobian: Matrix | undefined;
  let damping = options.damping ?? FIRST_DAMPING;
  const scale = new Float64Array(start.length);
  let converged = false;
  let rounds = 0;
  for (; rounds < mostRounds && !converged; rounds += 1) {
    const points = differencePoints(state.values, bounds, options);
    const answers = yield points.flatMap(({ low, high }) => [low, high]);
    evaluations += answers.length;
    jacobian = differences(points, answers, state);
    growScale(scale, jacobian);
    const free = freeUnknowns(state, jacobian, bounds, loss, lossScale);
    let tried = 0;
    let better: State | undefined;
    while (better === undefined && damping < LARGEST_DAMPING) {
      const move = dampedStep(state, jacobian, scale, damping, free, loss, lossScale);
      tried += 1;
      let turn: Float64Array = new Float64Array(start.length);
      // So near, curvature is nothing but rounding.
      if (probe > 0 && shareOf(move, state.values, options.typical) > 1e-6) {
        const part = within(state.values.map((value, at) => value + probe * move[at]!));
        turn = turnOf(state, jacobian, scale, damping, free, move, (yield [part])[0]!, probe);
        evaluations += 1;
        if (!(lengthOf(turn, scale) <= MOST_BEND * lengthOf(move, scale))) {
          damping *= 3;
          continue;
        }
      }
      const next = within(state.values.map((value, at) => value + move[at]! + turn[at]!));
      const there = stateOf(next, (yield [next])[0]!);
      evaluations += 1;
      const largest = shareOf(
        next.map((value, at) => value - state.values[at]!),
        next,
        options.typical,
      );
      if (largest <= 1e-14 && there.cost >= state.cost) {
        converged = true;
        break;
      }
      if (there.cost < state.cost) {
        const gain = (state.cost - there.cost) / Math.max(state.cost, 1e-300);
        converged = gain <= tolerance && largest <= (options.stepTolerance ?? Math.sqrt(tolerance));
        better = there;
      } else damping *= tried > 1 ? 10 : 4;
    }
    if (better === undefined) {
      // No step of any length betters it: the least that these numbers can tell.
      converged = true;
      break;
    }
    damping = Math.max(SMALLEST_DAMPING, damping / (tried === 1 ? 9 : 2));
    state = better;
  }
  const points = differencePoints(state.values, bounds, options);
  const answers = yield points.flatMap(({ low, high }) => [low, high]);
  evaluations += answers.length;
  return {
    values: state.values,
    residuals: state.residuals,
    jacobian: differences(points, answers, state),
    sum: state.residuals.reduce((sum, each) => sum + each * each, 0),
    converged,
    rounds,
    evaluations,
    atBound: Array.from(state.values, (value, at) => value <= bounds[at]![0] || value >= bounds[at]![1]),
  };
}

/**
 * The second-order part of a step (geodesic acceleration, M. K. Transtrum & J. P. Sethna 2012): it follows a valley that bends, and
 * where it is long beside the step, the step leaves the country that the slopes speak of and lands where nothing has a slope.
 */
function turnOf(
  state: State,
  jacobian: Matrix,
  scale: Float64Array,
  damping: number,
  free: readonly boolean[],
  move: Float64Array,
  near: ArrayLike<number>,
  probe: number,
): Float64Array {
  const { rows, columns, values } = jacobian;
  const bend = new Float64Array(rows);
  for (let row = 0; row < rows; row += 1) {
    let along = 0;
    for (let column = 0; column < columns; column += 1) along += values[row * columns + column]! * move[column]!;
    bend[row] = ((near[row]! - state.residuals[row]!) / probe - along) / probe;
  }
  return dampedStep({ ...state, residuals: bend }, jacobian, scale, damping, free, 'squares', 1);
}

/** Largest change of an unknown as a share of it. */
function shareOf(step: Float64Array, values: Float64Array, typical: readonly number[] = []): number {
  return step.reduce(
    (most, each, at) => Math.max(most, Math.abs(each) / Math.max(Math.abs(values[at]!), typical[at] ?? 1e-300)),
    0,
  );
}

function lengthOf(step: Float64Array, scale: Float64Array): number {
  return Math.sqrt(step.reduce((sum, each, at) => sum + (each * (scale[at]! || 1)) ** 2, 0));
}

/** ½ Σ ρ(r²), with the second-order part of no loss but squares. */
function costOf(residuals: Float64Array, loss: Loss, scale: number): number {
  let sum = 0;
  for (const each of residuals) {
    const z = (each / scale) ** 2;
    const rho =
      loss === 'squares' || (loss === 'huber' && z <= 1)
        ? z
        : loss === 'huber'
          ? 2 * Math.sqrt(z) - 1
          : 2 * (Math.sqrt(1 + z) - 1);
    sum += rho;
  }
  const cost = 0.5 * scale * scale * sum;
  return Number.isNaN(cost) ? Number.POSITIVE_INFINITY : cost;
}

/** √ρ′: weight of a residual in the linear problem. */
function weightOf(residual: number, loss: Loss, scale: number): number {
  const z = (residual / scale) ** 2;
  if (loss === 'squares' || (loss === 'huber' && z <= 1)) return 1;
  return loss === 'huber' ? z ** -0.25 : (1 + z) ** -0.25;
}

interface Around {
  readonly low: Float64Array;
  readonly high: Float64Array;
  readonly apart: number;
}

/** Two points an unknown, inside the bounds. */
function differencePoints(
  values: Float64Array,
  bounds: readonly (readonly [number, number])[],
  { steps, typical }: FitOptions,
): readonly Around[] {
  return Array.from(values, (value, at) => {
    const step = steps?.[at] ?? 6e-6 * Math.max(Math.abs(value), value === 0 ? (typical?.[at] ?? 1) : 0);
    const [low, high] = [values.slice(), values.slice()];
    low[at] = Math.max(value - step, bounds[at]![0]);
    high[at] = Math.min(value + step, bounds[at]![1]);
    return { low, high, apart: high[at]! - low[at]! };
  });
}

function differences(points: readonly Around[], answers: readonly ArrayLike<number>[], { residuals }: State): Matrix {
  return ofColumns(
    points.map(({ apart }, at) => {
      const [low, high] = [answers[2 * at]!, answers[2 * at + 1]!];
      return residuals.map((_, row) => {
        const slope = (high[row]! - low[row]!) / apart;
        return Number.isFinite(slope) ? slope : 0;
      });
    }),
  );
}

/** Each unknown is scaled by the longest column it ever had (J. J. Moré 1978). */
function growScale(scale: Float64Array, { rows, columns, values }: Matrix): void {
  for (let column = 0; column < columns; column += 1) {
    let square = 0;
    for (let row = 0; row < rows; row += 1) square += values[row * columns + column]! ** 2;
    scale[column] = Math.max(scale[column]!, Math.sqrt(square));
  }
}

/** Unknowns at a bound that would leave it stay there. */
function freeUnknowns(
  { values, residuals }: State,
  { rows, columns, values: j }: Matrix,
  bounds: readonly (readonly [number, number])[],
  loss: Loss,
  lossScale: number,
): readonly boolean[] {
  return Array.from(values, (value, at) => {
    const [low, high] = bounds[at]!;
    if (value > low && value < high) return true;
    let slope = 0;
    for (let row = 0; row < rows; row += 1)
      slope += j[row * columns + at]! * residuals[row]! * weightOf(residuals[row]!, loss, lossScale) ** 2;
    return value <= low ? slope < 0 : slope > 0;
  });
}

/** The step that makes |W (J s + r)|² + damping |D s|² least over the free unknowns. */
function dampedStep(
  { residuals }: State,
  { rows, columns, values }: Matrix,
  scale: Float64Array,
  damping: number,
  free: readonly boolean[],
  loss: Loss,
  lossScale: number,
): Float64Array {
  const wide = new Float64Array((rows + columns) * columns);
  const right = new Float64Array(rows + columns);
  for (let row = 0; row < rows; row += 1) {
    const weight = weightOf(residuals[row]!, loss, lossScale);
    right[row] = -weight * residuals[row]!;
    for (let column = 0; column < columns; column += 1)
      if (free[column]) wide[row * columns + column] = weight * values[row * columns + column]!;
  }
  const root = Math.sqrt(damping);
  for (let column = 0; column < columns; column += 1)
    wide[(rows + column) * columns + column] = free[column] ? root * (scale[column]! || 1) : 1;
  return leastNorm({ rows: rows + columns, columns, values: wide }, right);
}
