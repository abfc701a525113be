// Openings so tall that air may pass both ways at once: doors, wide slots, an open cabinet front.

import { mustBeFinite, mustBePositive, mustNotBeNegative } from './argument.ts';
import { GRAVITY } from './constants.ts';

/** A rectangular opening in an upright face. Heights are above the datum at which the pressures are stated. */
export interface TallOpening {
  readonly width: number;
  readonly bottom: number;
  readonly top: number;
  /** Discharge coefficient, 0.6 to 0.8. */
  readonly discharge: number;
}

/** Mass flows both ways through one opening, kg/s, each 0 or more. */
export interface TwoWayFlow {
  readonly forward: number;
  readonly backward: number;
}

/**
 * Two-way mass flow through a tall opening between spaces a and b, each of one density.
 *
 *     dp(z) = dp0 - (rho_a - rho_b) g z,    neutral level Y = dp0/((rho_a - rho_b) g)
 *     part with |dp| from p1 to p2 over height h:
 *     m = 2/3 Cd W sqrt(2 rho) h (p1 + sqrt(p1 p2) + p2)/(sqrt p1 + sqrt p2)
 *
 * @param opening - Geometry, width above 0, top at least bottom.
 * @param dpDatum - dp0: pressure of a less that of b at height 0, Pa.
 * @param rhoA - Density in a, kg/m³, above 0.
 * @param rhoB - Density in b, kg/m³, above 0.
 * @returns Flow from a to b (`forward`) and from b to a (`backward`).
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: still, unstratified air on both sides.
 * Source: G. N. Walton, NISTIR 89-4072 (1989); R. D. Peacock et al., NIST SP 1026 (2005) (vent flow). Checked: formula (read).
 *
 * @example A door between 25 and 20 °C with the neutral level in its middle
 * ```ts
 * const door = { width: 1, bottom: 0, top: 2.2, discharge: 0.78 };
 * tallOpeningFlow(door, (1.184 - 1.204) * 9.80665 * 1.1, 1.184, 1.204).forward; // => 0.4088
 * ```
 */
export function tallOpeningFlow(opening: TallOpening, dpDatum: number, rhoA: number, rhoB: number): TwoWayFlow {
  mustBePositive('tallOpeningFlow', 'width', opening.width);
  mustNotBeNegative('tallOpeningFlow', 'top - bottom', opening.top - opening.bottom);
  mustBePositive('tallOpeningFlow', 'discharge', opening.discharge);
  mustBeFinite('tallOpeningFlow', 'dpDatum', dpDatum);
  mustBePositive('tallOpeningFlow', 'rhoA', rhoA);
  mustBePositive('tallOpeningFlow', 'rhoB', rhoB);
  const { bottom, top } = opening;
  const gradient = -(rhoA - rhoB) * GRAVITY;
  const low = dpDatum + gradient * bottom;
  const high = dpDatum + gradient * top;
  if (low * high >= 0) return oneWay(opening, low, high, top - bottom, rhoA, rhoB);
  const neutral = -dpDatum / gradient;
  const below = oneWay(opening, low, 0, neutral - bottom, rhoA, rhoB);
  const above = oneWay(opening, 0, high, top - neutral, rhoA, rhoB);
  return { forward: below.forward + above.forward, backward: below.backward + above.backward };
}

/** Flow through a part of the opening in which the difference does not change its sign. */
function oneWay(
  { width, discharge }: TallOpening,
  low: number,
  high: number,
  height: number,
  rhoA: number,
  rhoB: number,
): TwoWayFlow {
  const [a, b] = [Math.sqrt(Math.abs(low)), Math.sqrt(Math.abs(high))];
  const forward = low + high >= 0;
  if (a + b === 0) return { forward: 0, backward: 0 };
  const meanRoot = (a * a + a * b + b * b) / (a + b);
  const flow = (2 / 3) * discharge * width * height * Math.sqrt(2 * (forward ? rhoA : rhoB)) * meanRoot;
  return forward ? { forward: flow, backward: 0 } : { forward: 0, backward: flow };
}

/**
 * Volume flow each way through an opening that passes no net flow (an open door of an otherwise tight bay).
 *
 *     V = (Cd/3) W H sqrt(g H dT/T)
 *
 * @param discharge - Cd, above 0. 0.65 for doors.
 * @param width - W, m, above 0.
 * @param height - H, m, above 0.
 * @param oneK - Temperature of one side, K, above 0.
 * @param otherK - Temperature of the other side, K, above 0.
 * @param referenceK - T, K, above 0; the mean of both sides unless given.
 * @returns m³/s each way, 0 at equal temperatures.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: |dT| small against T. Source: W. G. Brown, K. R. Solvason, Int. J. Heat Mass Transfer 5 (1962) 859-868, as used in
 * a public library of building models by IBPSA project 1. Checked: formula (read).
 *
 * @example A bay's door of 0.5 x 0.5 m, 5 K warmer than the room, in m³/h
 * ```ts
 * doorwayExchange(0.65, 0.5, 0.5, 297.15, 292.15) * 3600; // => 56.2
 * ```
 */
export function doorwayExchange(
  discharge: number,
  width: number,
  height: number,
  oneK: number,
  otherK: number,
  referenceK: number = 0.5 * (oneK + otherK),
): number {
  mustBePositive('doorwayExchange', 'discharge', discharge);
  mustBePositive('doorwayExchange', 'width', width);
  mustBePositive('doorwayExchange', 'height', height);
  mustBePositive('doorwayExchange', 'oneK', oneK);
  mustBePositive('doorwayExchange', 'otherK', otherK);
  mustBePositive('doorwayExchange', 'referenceK', referenceK);
  const drive = (GRAVITY * height * Math.abs(oneK - otherK)) / referenceK;
  return (discharge / 3) * width * height * Math.sqrt(drive);
}

/**
 * Largest volume of air that a swinging door leaf can push ahead: a quarter cylinder of its width, pi/4 w² h.
 *
 * @param width - w, m, 0 or more.
 * @param height - h, m, 0 or more.
 * @returns m³.
 * @throws RangeError when an argument is negative.
 *
 * @remarks Valid: upper bound. Source: geometry. Checked: exact.
 *
 * @example A leaf of 0.5 x 0.5 m
 * ```ts
 * doorSwingVolume(0.5, 0.5); // => 0.098
 * ```
 */
export function doorSwingVolume(width: number, height: number): number {
  mustNotBeNegative('doorSwingVolume', 'width', width);
  mustNotBeNegative('doorSwingVolume', 'height', height);
  return (Math.PI / 4) * width ** 2 * height;
}
