// Friction and losses of ducts. Loss coefficients of single pieces are in `fittings.ts`.

import { mustBeFinite, mustBePositive, mustNotBeNegative } from './argument.ts';
import type { TypicalRange } from './typical-range.ts';

/**
 * Darcy friction factor of laminar flow in a round duct: f = 64/Re.
 *
 * @param reynolds - Re = v D/nu, above 0.
 * @returns f, four times the Fanning factor.
 * @throws RangeError when Re is not above 0.
 *
 * @remarks Valid: Re < 2000, developed flow. Source: Hagen (1839), Poiseuille (1840). Checked: exact.
 *
 * @example At Re 1000
 * ```ts
 * laminarFriction(1000); // => 0.064
 * ```
 */
export function laminarFriction(reynolds: number): number {
  mustBePositive('laminarFriction', 'reynolds', reynolds);
  return 64 / reynolds;
}

/**
 * Darcy friction factor of turbulent flow, explicit.
 *
 *     1/sqrt(f) = -1.8 log10((e/3.7)^1.11 + 6.9/Re)
 *
 * @param reynolds - Re, above 0.
 * @param roughness - e: sand roughness over diameter, 0 or more.
 * @returns f.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: 4000 < Re < 1e8, e < 0.05; within 2 % of {@link colebrookFriction}.
 * Source: S. E. Haaland, J. Fluids Eng. 105 (1983) 89-90. Checked: formula (memory); values (independent library).
 *
 * @example Smooth duct
 * ```ts
 * haalandFriction(1e4, 0); // => 0.030886
 * ```
 */
export function haalandFriction(reynolds: number, roughness: number): number {
  mustBePositive('haalandFriction', 'reynolds', reynolds);
  mustNotBeNegative('haalandFriction', 'roughness', roughness);
  return 1 / (1.8 * Math.log10((roughness / 3.7) ** 1.11 + 6.9 / reynolds)) ** 2;
}

/**
 * Darcy friction factor of turbulent flow, by iteration of the equation that the Moody chart draws.
 *
 *     x = -2 log10(e/3.7 + 2.51 x/Re),   f = 1/x^2
 *
 * @param reynolds - Re, above 0.
 * @param roughness - e: sand roughness over diameter, 0 or more.
 * @returns f to round-off.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: Re > 4000. Source: C. F. Colebrook, J. Inst. Civil Eng. 11 (1939) 133-156.
 * Checked: formula (memory); values (independent library).
 *
 * @example Smooth duct
 * ```ts
 * colebrookFriction(1e4, 0); // => 0.030883
 * ```
 */
export function colebrookFriction(reynolds: number, roughness: number): number {
  mustBePositive('colebrookFriction', 'reynolds', reynolds);
  mustNotBeNegative('colebrookFriction', 'roughness', roughness);
  let x = 1 / Math.sqrt(haalandFriction(reynolds, roughness));
  for (let round = 0; round < 50; round++) {
    const next = -2 * Math.log10(roughness / 3.7 + (2.51 * x) / reynolds);
    if (Math.abs(next - x) <= 1e-15 * x) return 1 / next ** 2;
    x = next;
  }
  return 1 / x ** 2;
}

/**
 * Darcy friction factor from laminar to turbulent without a step.
 *
 * Laminar to Re 2000, {@link haalandFriction} from 4000, between them a blend with weight w = t^2 (3 - 2t),
 * t = (Re - 2000)/2000. Real ducts jump somewhere in between; the blend is for solvers, not a claim.
 *
 * @param reynolds - Re, above 0.
 * @param roughness - Sand roughness over diameter, 0 or more.
 * @returns f.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: as the two laws; the blend is our own. Source: see the two laws. Checked: exact outside the blend.
 *
 * @example Half-way between the laws
 * ```ts
 * ductFriction(3000, 0); // => 0.0328
 * ```
 */
export function ductFriction(reynolds: number, roughness: number): number {
  if (reynolds <= 2000) return laminarFriction(reynolds);
  const turbulent = haalandFriction(reynolds, roughness);
  if (reynolds >= 4000) return turbulent;
  const t = (reynolds - 2000) / 2000;
  const weight = t * t * (3 - 2 * t);
  return (1 - weight) * laminarFriction(reynolds) + weight * turbulent;
}

/**
 * Friction of corrugated flexible hose over that of smooth duct. Pull hose tight: slack hose costs five times and more.
 * Source: common practice, from memory; the high end for slack hose is our estimate.
 */
export const HOSE_FRICTION_MULTIPLIER: { readonly stretched: TypicalRange; readonly slack: TypicalRange } = {
  stretched: { low: 2, central: 3, high: 4 },
  slack: { low: 4, central: 5, high: 8 },
};

/**
 * Hydraulic diameter of a rectangular duct: D = 2 a b/(a + b).
 *
 * @param width - a, m, above 0.
 * @param height - b, m, above 0.
 * @returns D in m.
 * @throws RangeError when a side is not above 0.
 *
 * @remarks Valid: turbulent flow, a/b < 4. Source: four times area over perimeter. Checked: exact.
 *
 * @example A rectangular section
 * ```ts
 * hydraulicDiameter(0.4, 0.2); // => 0.26667
 * ```
 */
export function hydraulicDiameter(width: number, height: number): number {
  mustBePositive('hydraulicDiameter', 'width', width);
  mustBePositive('hydraulicDiameter', 'height', height);
  return (2 * width * height) / (width + height);
}

/**
 * Pressure lost to a loss coefficient: dp = K rho v |v|/2.
 *
 * @param loss - K on the velocity v, 0 or more; add f L/D for a straight length.
 * @param rho - Density, kg/m³, above 0.
 * @param speed - v, m/s, any sign.
 * @returns Pa with the sign of v.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: turbulent flow. Source: definition of K. Checked: exact.
 *
 * @example An exit at 4 m/s
 * ```ts
 * dynamicLoss(1, 1.2, 4); // => 9.6
 * ```
 */
export function dynamicLoss(loss: number, rho: number, speed: number): number {
  mustNotBeNegative('dynamicLoss', 'loss', loss);
  mustBePositive('dynamicLoss', 'rho', rho);
  mustBeFinite('dynamicLoss', 'speed', speed);
  return 0.5 * loss * rho * speed * Math.abs(speed);
}

/** A run of duct of one section. */
export interface Duct {
  readonly length: number;
  /** Clear section, m². */
  readonly area: number;
  /** Inner diameter, or {@link hydraulicDiameter}, m. */
  readonly diameter: number;
  /** Sand roughness, m: 0 drawn plastic, 0.15e-3 galvanised sheet. */
  readonly roughness: number;
  /** 1, or from {@link HOSE_FRICTION_MULTIPLIER}. */
  readonly frictionMultiplier: number;
  /** Sum of the loss coefficients of bends, entrance and exit on the duct's velocity. */
  readonly loss: number;
}

/**
 * Pressure lost in a run of duct.
 *
 *     dp = (x f L/D + sum K) rho v |v|/2,   v = V/A,   Re = |v| D rho/mu,   x the friction multiplier
 *
 * @param duct - Lengths above 0 (length and roughness may be 0).
 * @param flow - V, m³/s, any sign.
 * @param rho - Density, kg/m³, above 0.
 * @param mu - Dynamic viscosity, Pa·s, above 0.
 * @returns Pa with the sign of the flow, rising with it.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: see {@link ductFriction}; fittings apart by several diameters. Source: Darcy and Weisbach.
 * Checked: formula (memory); values (second-hand textbook answers, independent script).
 *
 * @example Two metres of 100 mm duct with two bends, 30 m³/h
 * ```ts
 * const duct = { length: 2, area: 0.007854, diameter: 0.1, roughness: 0, frictionMultiplier: 1, loss: 2.34 };
 * ductPressure(duct, 30 / 3600, 1.184, 1.837e-5); // => 2.0
 * ```
 */
export function ductPressure(duct: Duct, flow: number, rho: number, mu: number): number {
  mustNotBeNegative('ductPressure', 'length', duct.length);
  mustBePositive('ductPressure', 'area', duct.area);
  mustBePositive('ductPressure', 'diameter', duct.diameter);
  mustNotBeNegative('ductPressure', 'frictionMultiplier', duct.frictionMultiplier);
  mustBePositive('ductPressure', 'mu', mu);
  mustBeFinite('ductPressure', 'flow', flow);
  const speed = flow / duct.area;
  const reynolds = (Math.abs(speed) * duct.diameter * rho) / mu;
  // At rest 64/Re is infinite but its pressure is not, so slow flow takes the law of Hagen and Poiseuille itself.
  const laminar = (32 * mu * speed) / duct.diameter;
  const wall =
    reynolds <= 2000 ? laminar : dynamicLoss(ductFriction(reynolds, duct.roughness / duct.diameter), rho, speed);
  return (duct.frictionMultiplier * wall * duct.length) / duct.diameter + dynamicLoss(duct.loss, rho, speed);
}
