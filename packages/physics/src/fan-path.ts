// A fan with filters, ducts and fittings in one air path: the flow for a given pressure difference across the whole.
// Everything here runs in the hot loop of a network solver: it checks nothing and allocates nothing.

import { type Curve, curveAt, curveSlope } from './curve.ts';

/**
 * Volume flow through resistances alone or with a fan of polynomial curve, in closed form.
 *
 *     A Q + B Q|Q| = D   =>   Q = 2 D/(A + sqrt(A^2 + 4 B |D|))
 *
 * A fan P(Q) = p0 - a Q - b Q|Q| joins by adding s p0 to D, s a to A and s b to B, s its density or speed factor.
 *
 * @param drive - D: pressure difference across the path plus the fan's shut-off pressure, Pa, any sign.
 * @param linear - A: sum of linear resistances (filter media), Pa·s/m³, 0 or more.
 * @param quadratic - B: sum of quadratic resistances, sum K rho/(2 A_section^2) among them, Pa·s²/m⁶, 0 or more.
 *   A and B must not both be 0.
 * @returns Q in m³/s with the sign of D.
 *
 * @remarks Valid: any. Source: root of the quadratic, in the form that loses no digits. Checked: exact.
 *
 * @example A fan of 72 Pa on filter, duct and silencer
 * ```ts
 * quadraticPathFlow(72, 3140, 357985) * 3600; // => 37.65
 * ```
 */
export function quadraticPathFlow(drive: number, linear: number, quadratic: number): number {
  if (drive === 0) return 0;
  return (2 * drive) / (linear + Math.sqrt(linear * linear + 4 * quadratic * Math.abs(drive)));
}

/**
 * Slope dQ/dD of {@link quadraticPathFlow}: 1/sqrt(A^2 + 4 B |D|).
 *
 * @returns m³/(s·Pa), infinite only where A and D are both 0. Arguments as in {@link quadraticPathFlow}.
 *
 * @remarks Valid, Source: as {@link quadraticPathFlow}. Checked: against differences in the tests.
 *
 * @example Purely linear
 * ```ts
 * quadraticPathSlope(10, 2000, 0); // => 0.0005
 * ```
 */
export function quadraticPathSlope(drive: number, linear: number, quadratic: number): number {
  return 1 / Math.sqrt(linear * linear + 4 * quadratic * Math.abs(drive));
}

/**
 * Volume flow through a fan given by a curve, with resistances in series: the root Q of
 *
 *     g(Q) = dp + s P(Q) - A Q - B Q|Q| = 0
 *
 * Newton's method inside a bracket that only ever shrinks. Where P falls throughout, or the resistances are steep
 * enough, there is one root. A stall dip may give three: then this returns one of them, the same for the same
 * `start`; `operatingPoints` finds them all.
 *
 * @param dp - Pressure before the path less pressure behind it, Pa.
 * @param curve - P(Q): flow in m³/s, pressure in Pa.
 * @param scale - s: density or speed factor on the fan's pressure, 0 (at rest) or more.
 * @param linear - A, Pa·s/m³, 0 or more.
 * @param quadratic - B, Pa·s²/m⁶, 0 or more. The curve's end slopes, A and B must not all be 0.
 * @param start - Where to begin: the flow of the last time, or 0.
 * @returns Q in m³/s, below 0 when the pressure drives the air back through the fan.
 *
 * @remarks Valid: any curve that falls beyond its ends. Source: safeguarded Newton. Checked: against closed forms in the tests.
 *
 * @example A straight fan of 60 Pa and 0.02 m³/s on 3000 Pa·s/m³ meets it half-way
 * ```ts
 * const fan = { x: Float64Array.of(0, 0.02), coefficients: Float64Array.of(60, -3000, 0, 0, 0, -3000, 0, 0) };
 * curvePathFlow(0, fan, 1, 3000, 0, 0); // => 0.0100
 * ```
 */
export function curvePathFlow(
  dp: number,
  curve: Curve,
  scale: number,
  linear: number,
  quadratic: number,
  start: number,
): number {
  let low = curve.x[0]!;
  let high = curve.x[curve.x.length - 1]!;
  let step = high - low;
  for (let widen = 0; widen < 100 && balance(dp, curve, scale, linear, quadratic, low) < 0; widen++) {
    low -= step;
    step *= 2;
  }
  step = high - curve.x[0]!;
  for (let widen = 0; widen < 100 && balance(dp, curve, scale, linear, quadratic, high) > 0; widen++) {
    high += step;
    step *= 2;
  }
  const small = 1e-15 * (high - low);
  let flow = start > low && start < high ? start : 0.5 * (low + high);
  for (let round = 0; round < 200; round++) {
    const excess = balance(dp, curve, scale, linear, quadratic, flow);
    const move = excess / (linear + 2 * quadratic * Math.abs(flow) - scale * curveSlope(curve, flow));
    if (Math.abs(move) <= small || high - low <= small) return flow;
    if (excess > 0) low = flow;
    else high = flow;
    const next = flow + move;
    // Written so that NaN (a level spot of g) also falls back on the middle.
    flow = next > low && next < high ? next : 0.5 * (low + high);
  }
  return flow;
}

/**
 * Slope dQ/d(dp) of {@link curvePathFlow} at its flow.
 *
 *     dQ/d(dp) = 1/(A + 2 B |Q| - s P'(Q))
 *
 * @param flow - Q that {@link curvePathFlow} returned.
 * @returns m³/(s·Pa); below 0 on the rising side of a stall dip, where no solver should stay. Other arguments as there.
 *
 * @remarks Valid, Source: as {@link curvePathFlow}. Checked: against differences in the tests.
 *
 * @example The straight fan above
 * ```ts
 * const fan = { x: Float64Array.of(0, 0.02), coefficients: Float64Array.of(60, -3000, 0, 0, 0, -3000, 0, 0) };
 * curvePathSlope(0.01, fan, 1, 3000, 0); // => 0.0001667
 * ```
 */
export function curvePathSlope(flow: number, curve: Curve, scale: number, linear: number, quadratic: number): number {
  return 1 / (linear + 2 * quadratic * Math.abs(flow) - scale * curveSlope(curve, flow));
}

function balance(dp: number, curve: Curve, scale: number, linear: number, quadratic: number, flow: number): number {
  return dp + scale * curveAt(curve, flow) - flow * (linear + quadratic * Math.abs(flow));
}
