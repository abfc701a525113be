// Sharp-edged holes: the air path whose pressure loss grows with the square of its flow.
// `orificeFlow` and `orificeSlope` run in the hot loop of a network solver: they check nothing and allocate nothing.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';

/**
 * Mass flow through holes under a pressure difference, odd in the difference and linear near zero.
 *
 *     m = A_d sqrt(2 rho) dp (dp^2 + dp_lin^2)^(-1/4),    A_d = count Cd A
 *
 * Away from zero this is the textbook m = Cd A sqrt(2 rho dp). Within a few dp_lin it bends into a straight line
 * through zero, so a Newton solver meets no infinite slope and no flow is invented at zero difference.
 *
 * @param dp - Pressure before the hole less pressure behind it, Pa, any sign.
 * @param rho - Density of the air on the side it comes from, kg/m³, above 0.
 * @param dischargeArea - A_d, m²: number of holes times discharge coefficient times area. Sharp edge: Cd 0.60 to 0.65.
 * @param dpLinear - dp_lin, Pa, above 0. 1e-5 to 0.01 moves no flow that matters.
 * @returns Mass flow in kg/s with the sign of dp.
 *
 * @remarks
 * Valid: turbulent flow through a sharp edge (hole Reynolds number above about 1000).
 * Source: Torricelli's law with a discharge coefficient (e.g. ASHRAE Fundamentals 2017 ch. 16); the bend at zero is our own.
 * Checked: formula (memory).
 *
 * @example Ten pascals across 100 cm² with Cd 0.61
 * ```ts
 * orificeFlow(10, 1.2, 0.0061, 0.001); // => 0.02988
 * ```
 */
export function orificeFlow(dp: number, rho: number, dischargeArea: number, dpLinear: number): number {
  return (dischargeArea * Math.sqrt(2 * rho) * dp) / Math.sqrt(Math.sqrt(dp * dp + dpLinear * dpLinear));
}

/**
 * Slope dm/d(dp) of {@link orificeFlow}, for Newton's method.
 *
 *     dm/d(dp) = A_d sqrt(2 rho) s^(-1/4) (1 - dp^2/(2 s)),    s = dp^2 + dp_lin^2
 *
 * @returns Slope in kg/(s·Pa), always above 0. Arguments as in {@link orificeFlow}.
 *
 * @remarks Valid, Source: as {@link orificeFlow}; differentiated by hand. Checked: against differences in the tests.
 *
 * @example At a well-developed difference the slope is half of flow over difference
 * ```ts
 * orificeSlope(10, 1.2, 0.0061, 0.001); // => 0.001494
 * ```
 */
export function orificeSlope(dp: number, rho: number, dischargeArea: number, dpLinear: number): number {
  const square = dp * dp + dpLinear * dpLinear;
  return ((dischargeArea * Math.sqrt(2 * rho)) / Math.sqrt(Math.sqrt(square))) * (1 - (dp * dp) / (2 * square));
}

/**
 * Discharge coefficient of a thin orifice plate in a round pipe with corner taps (Reader-Harris/Gallagher).
 *
 *     C = 0.5961 + 0.0261 b^2 - 0.216 b^8 + 0.000521 (1e6 b/Re)^0.7
 *         + (0.0188 + 0.0063 a) b^3.5 (1e6/Re)^0.3 + [only D < 71.12 mm: 0.011 (0.75 - b)(2.8 - D/25.4 mm)]
 *     a = (19000 b/Re)^0.8
 *
 * C counts on the area of the hole and needs the approach factor: m = C/sqrt(1 - b^4) A sqrt(2 rho dp).
 *
 * @param diameterRatio - b, hole over pipe, 0.1 to 0.75.
 * @param pipeReynolds - Re of the pipe, above 0.
 * @param pipeDiameter - D, m, above 0.
 * @returns C, dimensionless.
 * @throws RangeError when the diameter ratio lies outside 0.1 to 0.75 or another argument is not above 0.
 *
 * @remarks
 * Valid: 0.05 m ≤ D ≤ 1 m, Re ≥ 5000 (b ≤ 0.56), smooth pipe with long straight lengths.
 * Source: ISO 5167-2:2003, 5.3.2.1, equation (4), corner tappings (L1 = L2' = 0).
 * Checked: formula (memory); values (independent library).
 *
 * @example A hole of half the pipe's diameter
 * ```ts
 * plateDischarge(0.5, 1e5, 0.2); // => 0.6069
 * ```
 */
export function plateDischarge(diameterRatio: number, pipeReynolds: number, pipeDiameter: number): number {
  mustLieWithin('plateDischarge', 'diameterRatio', diameterRatio, 0.1, 0.75);
  mustBePositive('plateDischarge', 'pipeReynolds', pipeReynolds);
  mustBePositive('plateDischarge', 'pipeDiameter', pipeDiameter);
  const b = diameterRatio;
  const a = ((19_000 * b) / pipeReynolds) ** 0.8;
  const smallPipe = Math.max(0, 0.011 * (0.75 - b) * (2.8 - pipeDiameter / 0.0254));
  return (
    0.5961 +
    0.0261 * b ** 2 -
    0.216 * b ** 8 +
    0.000521 * ((1e6 * b) / pipeReynolds) ** 0.7 +
    (0.0188 + 0.0063 * a) * b ** 3.5 * (1e6 / pipeReynolds) ** 0.3 +
    smallPipe
  );
}

/**
 * Loss coefficient of a hole, counted on the velocity in the hole, for its discharge coefficient: K = 1/Cd².
 *
 * @param discharge - Cd between two large spaces, above 0 and at most 1.
 * @returns K, so that dp = K rho v²/2 with v = flow over hole area.
 * @throws RangeError when the coefficient lies outside.
 *
 * @remarks Valid: large spaces on both sides. Source: definition of both coefficients. Checked: exact.
 *
 * @example Sharp edge
 * ```ts
 * lossOfDischarge(0.61); // => 2.69
 * ```
 */
export function lossOfDischarge(discharge: number): number {
  mustLieWithin('lossOfDischarge', 'discharge', discharge, Number.MIN_VALUE, 1);
  return 1 / discharge ** 2;
}

/**
 * Discharge area that several holes have one behind the other: A_s = (sum A_i^-2)^(-1/2). One closed hole closes all.
 *
 * @param areas - Areas or discharge areas, m², each 0 or more, at least one.
 * @returns Area of the one hole that passes the same flow under the same total difference, m².
 * @throws RangeError when the list is empty or an area is negative.
 *
 * @remarks
 * Valid: equal density; each jet comes to rest before the next hole.
 * Source: pressure losses add at equal flow; form as in ASHRAE Fundamentals 2017 ch. 16. Checked: exact.
 *
 * @example Two equal holes pass 71 percent of one
 * ```ts
 * seriesArea([0.01, 0.01]); // => 0.007071
 * ```
 */
export function seriesArea(areas: readonly number[]): number {
  mustBePositive('seriesArea', 'number of areas', areas.length);
  let sum = 0;
  for (const area of areas) {
    mustNotBeNegative('seriesArea', 'area', area);
    sum += 1 / area ** 2;
  }
  return 1 / Math.sqrt(sum);
}

/**
 * Discharge area of several holes side by side: their sum.
 *
 * @param areas - Areas or discharge areas, m², each 0 or more.
 * @returns Sum in m²; 0 for an empty list.
 * @throws RangeError when an area is negative.
 *
 * @remarks Valid: equal pressure difference on all. Source: flows add. Checked: exact.
 *
 * @example Three holes
 * ```ts
 * parallelArea([0.01, 0.02, 0.005]); // => 0.035
 * ```
 */
export function parallelArea(areas: readonly number[]): number {
  let sum = 0;
  for (const area of areas) {
    mustNotBeNegative('parallelArea', 'area', area);
    sum += area;
  }
  return sum;
}
