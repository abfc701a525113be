// Jets of incoming air. A jet that is still in its core does not slow down at all: inlets draught, outlets do not.

import { mustBePositive, mustNotBeNegative } from './argument.ts';
import type { TypicalRange } from './typical-range.ts';

/** Decay constant K of a round jet's axis. Source: Rajaratnam (1976); Schlichting; from memory. */
export const ROUND_JET_DECAY: TypicalRange = { low: 5.8, central: 6.2, high: 6.5 };

/** Decay constant of a plane jet's axis. Source: Rajaratnam (1976), from memory. */
export const SLOT_JET_DECAY: TypicalRange = { low: 2.2, central: 2.47, high: 2.6 };

/** A jet along a wall entrains from one side only and keeps sqrt(2) times the velocity. Source: ASHRAE Fundamentals ch. 20, from memory. */
export const WALL_JET_FACTOR = 1.4;

/**
 * Velocity on the axis of a round jet: u = u_0 min(1, K d/x).
 *
 * @param outlet - u_0 in the opening, m/s, 0 or more.
 * @param diameter - d, m, above 0: sqrt(4 A/pi) for other shapes of side ratio below 3.
 * @param distance - x from the opening, m, 0 or more.
 * @param decay - K; times {@link WALL_JET_FACTOR} along a wall.
 * @returns m/s.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: Reynolds number of the opening above 1e4, free room. Below, jets spread sooner: near-field decay constants of 6.11
 * at Re 19 400 but 1.35 at Re 1430 (Abdel-Rahman, Al-Fahed, Chakroun, Mech. Res. Commun. 1996, abstract), so for the slow
 * inlets of a cabinet this is an upper bound. Source: see {@link ROUND_JET_DECAY}. Checked: formula (memory).
 *
 * @example A 40 mm inlet at 2 m/s, 0.4 m away
 * ```ts
 * roundJetVelocity(2, 0.04, 0.4); // => 1.24
 * ```
 */
export function roundJetVelocity(
  outlet: number,
  diameter: number,
  distance: number,
  decay: number = ROUND_JET_DECAY.central,
): number {
  mustNotBeNegative('roundJetVelocity', 'outlet', outlet);
  mustNotBeNegative('roundJetVelocity', 'distance', distance);
  return outlet * Math.min(1, roundJetCore(diameter, decay) / distance);
}

/**
 * Length over which a round jet keeps its full velocity: x = K d.
 *
 * @param diameter - d, m, above 0.
 * @param decay - K, above 0.
 * @returns m.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid, Source, Checked: as {@link roundJetVelocity}.
 *
 * @example A full-bore inlet of 92 mm
 * ```ts
 * roundJetCore(0.092); // => 0.57
 * ```
 */
export function roundJetCore(diameter: number, decay: number = ROUND_JET_DECAY.central): number {
  mustBePositive('roundJetCore', 'diameter', diameter);
  mustBePositive('roundJetCore', 'decay', decay);
  return decay * diameter;
}

/**
 * Velocity in the middle plane of a jet from a long slot: u = u_0 min(1, K sqrt(h/x)).
 *
 * @param outlet - u_0, m/s, 0 or more.
 * @param height - h of the slot, m, above 0.
 * @param distance - x, m, 0 or more.
 * @param decay - K; times {@link WALL_JET_FACTOR} along a wall.
 * @returns m/s.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: slot ten times longer than high, within that length of it. Source: see {@link SLOT_JET_DECAY}. Checked: formula (memory).
 *
 * @example A 10 mm slot, 0.4 m away
 * ```ts
 * slotJetVelocity(1, 0.01, 0.4); // => 0.391
 * ```
 */
export function slotJetVelocity(
  outlet: number,
  height: number,
  distance: number,
  decay: number = SLOT_JET_DECAY.central,
): number {
  mustNotBeNegative('slotJetVelocity', 'outlet', outlet);
  mustNotBeNegative('slotJetVelocity', 'distance', distance);
  return outlet * Math.min(1, Math.sqrt(slotJetCore(height, decay) / distance));
}

/**
 * Length over which a slot's jet keeps its full velocity: x = K² h.
 *
 * @param height - h, m, above 0.
 * @param decay - K, above 0.
 * @returns m: about six heights.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid, Source, Checked: as {@link slotJetVelocity}.
 *
 * @example A 10 mm slot
 * ```ts
 * slotJetCore(0.01); // => 0.061
 * ```
 */
export function slotJetCore(height: number, decay: number = SLOT_JET_DECAY.central): number {
  mustBePositive('slotJetCore', 'height', height);
  mustBePositive('slotJetCore', 'decay', decay);
  return decay ** 2 * height;
}

/**
 * Velocity with which the merged jet of a perforated inlet leaves its face: the momentum of the holes over the whole face.
 *
 *     u = sqrt(V v_hole/A_face),   v_hole = V/(a A_face)
 *
 * @param flow - V, m³/s, 0 or more.
 * @param faceArea - A_face, m², above 0.
 * @param freeArea - a: open share of the face, above 0 to 1.
 * @returns m/s, to be used as u_0 with the diameter of the whole face, beyond 6 to 10 pitches.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: more than a tenth open. Source: momentum balance; common practice, from memory. Checked: exact.
 *
 * @example 30 m³/h through 200 cm² a quarter open
 * ```ts
 * mergedJetVelocity(30 / 3600, 0.02, 0.25); // => 0.833
 * ```
 */
export function mergedJetVelocity(flow: number, faceArea: number, freeArea: number): number {
  mustNotBeNegative('mergedJetVelocity', 'flow', flow);
  mustBePositive('mergedJetVelocity', 'faceArea', faceArea);
  mustBePositive('mergedJetVelocity', 'freeArea', freeArea);
  return flow / (faceArea * Math.sqrt(freeArea));
}
