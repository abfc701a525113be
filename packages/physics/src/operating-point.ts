// Where a fan and what it blows through agree, and fans working together.

import { mustBePositive } from './argument.ts';
import { type Curve, curveAt } from './curve.ts';

/** A flow at which the fan gives just the pressure that the system takes. */
export interface OperatingPoint {
  readonly flow: number;
  readonly pressure: number;
  /** False on the rising side of a stall dip: the least disturbance leads away from it. */
  readonly stable: boolean;
}

/**
 * Every crossing of a fan's pressure and a system's demand between two flows, in rising order.
 *
 * The range is cut into equal steps and each change of sign is closed in by halving. A curve that only touches the
 * other, or crosses it twice within one step, is missed.
 *
 * @param rise - Pressure that the fan gives at a flow, Pa.
 * @param demand - Pressure that the system takes at a flow, Pa.
 * @param low - Least flow to look at, m³/s.
 * @param high - Greatest flow, above `low`.
 * @param steps - Number of equal steps, 1 or more.
 * @returns The crossings; an empty list where there is none.
 * @throws RangeError when the range or the number of steps is not above 0.
 *
 * @remarks
 * Valid: continuous curves. Stable where the demand is the steeper: d(rise - demand)/dV < 0.
 * Source: static stability (Ledinegg); bisection. Checked: against closed forms.
 *
 * @example Fan and system, both straight
 * ```ts
 * operatingPoints((v) => 60 - 3000 * v, (v) => 3000 * v, 0, 0.02)[0].flow; // => 0.0100
 * ```
 */
export function operatingPoints(
  rise: (flow: number) => number,
  demand: (flow: number) => number,
  low: number,
  high: number,
  steps = 2000,
): readonly OperatingPoint[] {
  mustBePositive('operatingPoints', 'high - low', high - low);
  mustBePositive('operatingPoints', 'steps', steps);
  const excess = (flow: number) => rise(flow) - demand(flow);
  const points: OperatingPoint[] = [];
  let before = low;
  for (let step = 1; step <= steps; step++) {
    const after = low + ((high - low) * step) / steps;
    const [e0, e1] = [excess(before), excess(after)];
    // A zero counts for the step that starts with it, so none is counted twice; the last end counts here.
    if (e0 === 0 || e0 * e1 < 0 || (step === steps && e1 === 0)) {
      const flow = e0 === 0 ? before : e1 === 0 ? after : halve(excess, before, after);
      const nudge = (high - low) / (1000 * steps);
      points.push({ flow, pressure: rise(flow), stable: excess(flow + nudge) < excess(flow - nudge) });
    }
    before = after;
  }
  return points;
}

/**
 * Pressure of different fans blowing one after the other: their pressures add at equal flow.
 *
 * @param curves - Pressure in Pa over flow in m³/s of each fan.
 * @param flow - Common flow, m³/s.
 * @returns Pa. Below 0 where the weaker fan is pushed past its free flow.
 *
 * @remarks Valid: the second fan meets straight air; swirl costs 10 % and more. Source: pressures add. Checked: exact.
 *
 * @example Two equal fans without flow
 * ```ts
 * const fan = { x: Float64Array.of(0, 0.02), coefficients: Float64Array.of(60, -3000, 0, 0, 0, -3000, 0, 0) };
 * fansInSeries([fan, fan], 0); // => 120
 * ```
 */
export function fansInSeries(curves: readonly Curve[], flow: number): number {
  return curves.reduce((sum, curve) => sum + curveAt(curve, flow), 0);
}

/**
 * Flow of different fans blowing side by side: their flows add at equal pressure, each on the right of its stall dip.
 *
 * @param curves - Pressure in Pa over flow in m³/s of each fan, falling beyond its last point.
 * @param pressure - Common pressure, Pa.
 * @returns m³/s. A fan too weak for the pressure counts with its backward flow.
 *
 * @remarks Valid: right of the dip; on its left fans may hunt. Source: flows add. Checked: exact.
 *
 * @example Two equal fans against half their pressure
 * ```ts
 * const fan = { x: Float64Array.of(0, 0.02), coefficients: Float64Array.of(60, -3000, 0, 0, 0, -3000, 0, 0) };
 * fansInParallel([fan, fan], 30); // => 0.0200
 * ```
 */
export function fansInParallel(curves: readonly Curve[], pressure: number): number {
  return curves.reduce((sum, curve) => sum + flowAtPressure(curve, pressure), 0);
}

/**
 * Greatest flow at which a fan still gives a pressure.
 *
 * @param curve - Pressure in Pa over flow in m³/s, falling at both ends.
 * @param pressure - Pa.
 * @returns m³/s: right of the dip, beyond the last point for a pressure below it, backwards (below 0) for one above all.
 *
 * @remarks Valid: curves that fall at both ends. Source: inverse of the curve. Checked: exact.
 *
 * @example Against a third of the shut-off pressure
 * ```ts
 * const fan = { x: Float64Array.of(0, 0.02), coefficients: Float64Array.of(60, -3000, 0, 0, 0, -3000, 0, 0) };
 * flowAtPressure(fan, 20); // => 0.01333
 * ```
 */
export function flowAtPressure(curve: Curve, pressure: number): number {
  const excess = (flow: number) => curveAt(curve, flow) - pressure;
  const { x, coefficients } = curve;
  const last = x.length - 1;
  if (excess(x[last]!) >= 0) return x[last]! - excess(x[last]!) / coefficients[4 * last + 1]!;
  for (let i = last; i > 0; i--) if (excess(x[i - 1]!) >= 0) return halve(excess, x[i - 1]!, x[i]!);
  return x[0]! - excess(x[0]!) / coefficients[1]!;
}

/** Root between two places of different sign. */
function halve(f: (x: number) => number, low: number, high: number): number {
  const falling = f(low) > f(high);
  for (let round = 0; round < 100; round++) {
    const middle = 0.5 * (low + high);
    if (f(middle) > 0 === falling) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
