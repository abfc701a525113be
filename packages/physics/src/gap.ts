// Straight gaps of known width (door seals, filter seats, board joints): flow from their geometry.

import { mustBePositive, mustNotBeNegative } from './argument.ts';
import type { PowerLaw } from './crack.ts';
import type { Resistance } from './resistance.ts';

/** A slit between two parallel faces. */
export interface Gap {
  /** Run of the slit across the flow, m: the perimeter of a door, say. */
  readonly length: number;
  /** Clear opening between the faces, m. */
  readonly width: number;
  /** Way of the air through the slit, m: the thickness of the board. */
  readonly depth: number;
  /** Right-angled turns on the way; 0 for a straight slit. */
  readonly bends: number;
}

/**
 * Volume flow through a gap: plane Poiseuille flow plus the losses of entry, exit and bends.
 *
 *     dp = a q + b q^2,   a = 12 mu z/(L w^3),   b = rho C/(2 L^2 w^2),   C = 1.5 + bends
 *     q = 2 dp/(a + sqrt(a^2 + 4 b dp))
 *
 * | symbol | meaning             | unit |
 * | ------ | ------------------- | ---- |
 * | L      | length of the gap   | m    |
 * | w      | width of the gap    | m    |
 * | z      | depth of the gap    | m    |
 *
 * @param dp - Pressure difference, Pa, any sign; the flow is odd in it.
 * @param gap - Geometry; length, width and depth above 0, bends 0 or more.
 * @param rho - Density of air, kg/m³, above 0.
 * @param mu - Dynamic viscosity, Pa·s, above 0. Air at 25 °C: 1.84e-5.
 * @returns Volume flow in m³/s with the sign of dp.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: gap width 0.4 to 8 mm, depth 25 to 80 mm, dp up to 10 Pa in the experiments (memory); the laminar part is exact below.
 * Source: P. H. Baker, S. Sharples, I. C. Ward, Building and Environment 22 (1987) 293-304.
 * Checked: formula (memory); values (independent script).
 *
 * @example One millimetre around a door of 4.3 m, 18 mm deep, at 1 Pa
 * ```ts
 * gapFlow(1, { length: 4.3, width: 1e-3, depth: 0.018, bends: 0 }, 1.184, 1.8372e-5) * 3600; // => 3.70
 * ```
 */
export function gapFlow(dp: number, gap: Gap, rho: number, mu: number): number {
  const { linear, quadratic } = gapResistance(gap, rho, mu);
  return (2 * dp) / (linear + Math.sqrt(linear ** 2 + 4 * quadratic * Math.abs(dp)));
}

/**
 * Coefficients of a gap's pressure loss dp = linear q + quadratic q².
 *
 * @param gap - Geometry as in {@link gapFlow}.
 * @param rho - Density, kg/m³, above 0.
 * @param mu - Dynamic viscosity, Pa·s, above 0.
 * @returns linear in Pa·s/m³ and quadratic in Pa·s²/m⁶.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid, Source, Checked: as {@link gapFlow}.
 *
 * @example Laminar resistance of half a millimetre around a door
 * ```ts
 * gapResistance({ length: 4.3, width: 5e-4, depth: 0.018, bends: 0 }, 1.2, 1.8e-5).linear; // => 7233.5
 * ```
 */
export function gapResistance(gap: Gap, rho: number, mu: number): Resistance {
  mustBePositive('gapResistance', 'length', gap.length);
  mustBePositive('gapResistance', 'width', gap.width);
  mustBePositive('gapResistance', 'depth', gap.depth);
  mustNotBeNegative('gapResistance', 'bends', gap.bends);
  mustBePositive('gapResistance', 'rho', rho);
  mustBePositive('gapResistance', 'mu', mu);
  return {
    linear: (12 * mu * gap.depth) / (gap.length * gap.width ** 3),
    quadratic: (rho * (1.5 + gap.bends)) / (2 * (gap.length * gap.width) ** 2),
  };
}

/**
 * Power law that touches a gap's own law at one pressure: same flow and same slope there.
 *
 *     n = d ln q / d ln dp = (a + b q)/(a + 2 b q),    c = q/dp^n
 *
 * A fixed exponent of 0.65 is wrong for tight seals: half a millimetre is laminar (n = 1), two millimetres nearly a hole.
 *
 * @param gap - Geometry as in {@link gapFlow}.
 * @param rho - Density, kg/m³, above 0.
 * @param mu - Dynamic viscosity, Pa·s, above 0.
 * @param dpAround - Pressure at which to touch, Pa, above 0. 1 Pa is common in a ventilated cabinet.
 * @returns Coefficient and exponent, 0.5 < n < 1.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: the touching law reads high elsewhere: by up to 2.5 % at half or
 * twice dpAround and by up to 13 % at a fifth of it or five times it (door seals of 0.2 to 4 mm). Source: as {@link gapFlow}. Checked: exact.
 *
 * @example A 2 mm gap is neither laminar nor a hole
 * ```ts
 * gapAsPowerLaw({ length: 4.3, width: 2e-3, depth: 0.018, bends: 0 }, 1.2, 1.84e-5).exponent; // => 0.73
 * ```
 */
export function gapAsPowerLaw(gap: Gap, rho: number, mu: number, dpAround = 1): PowerLaw {
  mustBePositive('gapAsPowerLaw', 'dpAround', dpAround);
  const { linear, quadratic } = gapResistance(gap, rho, mu);
  const flow = gapFlow(dpAround, gap, rho, mu);
  const exponent = (linear + quadratic * flow) / (linear + 2 * quadratic * flow);
  return { coefficient: flow / dpAround ** exponent, exponent };
}
