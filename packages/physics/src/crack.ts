// Cracks and leaks: narrow paths between laminar (flow ~ dp) and turbulent (flow ~ sqrt dp), as a power law.
// `crackFlow` and `crackSlope` run in the hot loop of a network solver: they check nothing and allocate nothing.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';

/** Volume flow coefficient and exponent of a power-law leak: V = coefficient dp^exponent, m³/s and Pa. */
export interface PowerLaw {
  readonly coefficient: number;
  readonly exponent: number;
}

/**
 * Mass flow through a power-law leak, odd in the difference and linear near zero.
 *
 *     m = rho c dp (dp^2 + dp_lin^2)^((n-1)/2)
 *
 * @param dp - Pressure before less pressure behind, Pa, any sign.
 * @param rho - Density of the air on the side it comes from, kg/m³, above 0.
 * @param coefficient - c, m³/(s·Pa^n): volume flow at 1 Pa, 0 or more.
 * @param exponent - n, 0.5 (sharp hole) to 1 (laminar gap). 0.65 where nothing is known.
 * @param dpLinear - dp_lin, Pa, above 0.
 * @returns Mass flow in kg/s with the sign of dp.
 *
 * @remarks
 * Valid: 0.5 ≤ n ≤ 1. Source: power law as in Walton, NISTIR 89-4072 (1989) and Dols & Walton (2002); the bend at zero is our own.
 * Checked: formula (second-hand).
 *
 * @example Four pascals on a leak of 2 litres a second at 1 Pa
 * ```ts
 * crackFlow(4, 1.2, 0.002, 0.65, 0.001); // => 0.00591
 * ```
 */
export function crackFlow(dp: number, rho: number, coefficient: number, exponent: number, dpLinear: number): number {
  return rho * coefficient * dp * (dp * dp + dpLinear * dpLinear) ** (0.5 * (exponent - 1));
}

/**
 * Slope dm/d(dp) of {@link crackFlow}, for Newton's method.
 *
 *     dm/d(dp) = rho c s^((n-1)/2) (1 + (n - 1) dp^2/s),    s = dp^2 + dp_lin^2
 *
 * @returns Slope in kg/(s·Pa), above 0 for n ≤ 1. Arguments as in {@link crackFlow}.
 *
 * @remarks Valid, Source: as {@link crackFlow}; differentiated by hand. Checked: against differences in the tests.
 *
 * @example Slope is exponent times flow over difference
 * ```ts
 * crackSlope(4, 1.2, 0.002, 0.65, 0.001); // => 0.00096
 * ```
 */
export function crackSlope(dp: number, rho: number, coefficient: number, exponent: number, dpLinear: number): number {
  const square = dp * dp + dpLinear * dpLinear;
  return rho * coefficient * square ** (0.5 * (exponent - 1)) * (1 + ((exponent - 1) * dp * dp) / square);
}

/**
 * Volume flow of a power-law leak, exact beyond ±dp_t and a smooth odd polynomial within (twice differentiable).
 *
 *     |dp| ≥ dp_t:  V = sign(dp) C |dp|^m
 *     |dp| < dp_t:  V = C dp_t^m x (g + b x^2 + c x^4 + d x^6),   x = dp/dp_t
 *     g = 1.5,  b = m^2/8 - 3g - 3m/2 + 35/8,  c = -m^2/4 + 3g + 5m/2 - 21/4,  d = m^2/8 - g - m + 15/8
 *
 * Use it where the power law must hold to the last digit above the turn; {@link crackFlow} is cheaper.
 *
 * @param dp - Pressure difference, Pa, any sign.
 * @param law - Leak, exponent 0.5 to 1.
 * @param dpTurn - dp_t, Pa, above 0.
 * @returns Volume flow in m³/s with the sign of dp.
 * @throws RangeError when the exponent lies outside 0.5 to 1, or another argument is nonsense.
 *
 * @remarks
 * Valid: 0.5 ≤ m ≤ 1. Source: regularised power law of a public library of building models by IBPSA project 1 (2017-2022).
 * Checked: formula (read); values (independent script).
 *
 * @example Half-way to the turn
 * ```ts
 * smoothCrackFlow(5e-4, { coefficient: 1e-3, exponent: 0.65 }, 1e-3); // => 7.19672e-6
 * ```
 */
export function smoothCrackFlow(dp: number, law: PowerLaw, dpTurn: number): number {
  mustLieWithin('smoothCrackFlow', 'exponent', law.exponent, 0.5, 1);
  mustNotBeNegative('smoothCrackFlow', 'coefficient', law.coefficient);
  mustBePositive('smoothCrackFlow', 'dpTurn', dpTurn);
  mustLieWithin('smoothCrackFlow', 'dp', dp, -Number.MAX_VALUE, Number.MAX_VALUE);
  const m = law.exponent;
  if (Math.abs(dp) >= dpTurn) return Math.sign(dp) * law.coefficient * Math.abs(dp) ** m;
  const x = dp / dpTurn;
  const g = 1.5;
  const b = m ** 2 / 8 - 3 * g - 1.5 * m + 35 / 8;
  const c = -(m ** 2) / 4 + 3 * g + 2.5 * m - 21 / 4;
  const d = m ** 2 / 8 - g - m + 15 / 8;
  return law.coefficient * dpTurn ** m * x * (g + x ** 2 * (b + x ** 2 * (c + x ** 2 * d)));
}

/**
 * Power law of a leak given by its effective leakage area.
 *
 *     V = L sqrt(2/rho) dp_r^(0.5-m) dp^m,    dp_r = 4 Pa
 *
 * @param area - L, m², 0 or more: the perfect hole (Cd 1) that leaks as much at dp_r.
 * @param rho - Density of the air at which the area was stated, kg/m³, above 0.
 * @param exponent - m, 0.5 to 1.
 * @param dpReference - dp_r, Pa. 4 Pa in North America, 10 Pa elsewhere.
 * @returns Coefficient and exponent for {@link crackFlow}.
 * @throws RangeError when an argument is nonsense or the exponent lies outside 0.5 to 1.
 *
 * @remarks
 * Valid: as the power law. Source: ASHRAE Fundamentals 2017 ch. 16 (effective air leakage area).
 * Checked: formula (second-hand).
 *
 * @example Flow at 1 Pa of 10 cm²
 * ```ts
 * leakageAreaLaw(10e-4, 1.2).coefficient; // => 0.0010486
 * ```
 */
export function leakageAreaLaw(area: number, rho: number, exponent = 0.65, dpReference = 4): PowerLaw {
  mustNotBeNegative('leakageAreaLaw', 'area', area);
  mustBePositive('leakageAreaLaw', 'rho', rho);
  mustLieWithin('leakageAreaLaw', 'exponent', exponent, 0.5, 1);
  mustBePositive('leakageAreaLaw', 'dpReference', dpReference);
  return { coefficient: area * Math.sqrt(2 / rho) * dpReference ** (0.5 - exponent), exponent };
}
