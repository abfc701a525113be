// Loss coefficients K of single pieces: dp = K rho v²/2. Every function says on which velocity its K counts.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import type { TypicalRange } from './typical-range.ts';

/**
 * K of a smooth round bend, on the duct's velocity.
 *
 *     K = f a (r/D) + (0.10 + 2.4 f) s + 6.6 f (sqrt(s) + s)/(r/D)^(4a/pi),   s = sin(a/2)
 *
 * @param radius - r/D: radius of the centre line over the diameter, 0.5 or more.
 * @param friction - f: Darcy factor of the duct, above 0.
 * @param angle - a, rad, above 0 to pi; a right angle unless given.
 * @returns K; least near r/D = 2.
 * @throws RangeError when an argument is outside.
 *
 * @remarks
 * Valid: r/D 0.5 to 10, some diameters of straight duct behind. Handbooks differ by ±20 %.
 * Source: D. C. Rennels, H. M. Hudson, Pipe Flow: A Practical and Comprehensive Guide (2012), ch. 15.
 * Checked: formula (memory); values (independent library).
 *
 * @example A bend of r/D = 1
 * ```ts
 * bendLoss(1, 0.02588); // => 0.420
 * ```
 */
export function bendLoss(radius: number, friction: number, angle: number = Math.PI / 2): number {
  mustLieWithin('bendLoss', 'radius', radius, 0.5, Number.MAX_VALUE);
  mustBePositive('bendLoss', 'friction', friction);
  mustLieWithin('bendLoss', 'angle', angle, Number.MIN_VALUE, Math.PI);
  const s = Math.sin(angle / 2);
  return (
    friction * angle * radius +
    (0.1 + 2.4 * friction) * s +
    (6.6 * friction * (Math.sqrt(s) + s)) / radius ** ((4 * angle) / Math.PI)
  );
}

/**
 * K of a mitred bend (one sharp turn), on the duct's velocity: K = 0.42 s + 2.56 s^3, s = sin(a/2).
 *
 * @param angle - a, rad, 0 to pi/2 or a little above.
 * @returns K.
 * @throws RangeError when the angle lies outside 0 to 2 pi/3.
 *
 * @remarks
 * Valid: 0 to 120 degrees. Handbooks differ by up to a factor of two below 60 degrees.
 * Source: Rennels & Hudson (2012), ch. 15. Checked: formula (memory); values (independent library).
 *
 * @example A sharp right angle
 * ```ts
 * mitreLoss(Math.PI / 2); // => 1.202
 * ```
 */
export function mitreLoss(angle: number): number {
  mustLieWithin('mitreLoss', 'angle', angle, 0, (2 * Math.PI) / 3);
  const s = Math.sin(angle / 2);
  return 0.42 * s + 2.56 * s ** 3;
}

/**
 * K of an entrance from a wall into a duct, sharp or rounded, on the duct's velocity.
 *
 *     K = 0.0696 (1 - 0.569 x) l^2 + (l - 1)^2,   l = 1 + 0.622 (1 - 0.30 sqrt(x) - 0.70 x)^4,   x = r/D
 *
 * @param rounding - x: radius of the edge over the diameter, 0 (sharp) to 1 (a full bell).
 * @returns K: 0.57 sharp (0.5 in most handbooks), 0.03 for a bell.
 * @throws RangeError when the rounding lies outside 0 to 1.
 *
 * @remarks
 * Valid: flush with the wall; for a duct that sticks out use {@link RE_ENTRANT_LOSS}.
 * Source: Rennels & Hudson (2012), ch. 9. Checked: formula (memory); values (independent library).
 *
 * @example A sharp edge
 * ```ts
 * entranceLoss(0); // => 0.570
 * ```
 */
export function entranceLoss(rounding: number): number {
  mustLieWithin('entranceLoss', 'rounding', rounding, 0, 1);
  const l = 1 + 0.622 * (1 - 0.3 * Math.sqrt(rounding) - 0.7 * rounding) ** 4;
  return 0.0696 * (1 - 0.569 * rounding) * l ** 2 + (l - 1) ** 2;
}

/** K of a thin tube that sticks out into the space it draws from. Exact: Borda's mouthpiece (momentum balance). */
export const RE_ENTRANT_LOSS = 1;

/** K of a duct's end into a large space, any shape of the end. Exact: the jet's energy is lost. */
export const EXIT_LOSS = 1;

/**
 * K of a sudden widening, on the velocity before it: K = (1 - A1/A2)^2.
 *
 * @param areaRatio - A1/A2: narrow over wide, 0 (exit into a room) to 1 (no step).
 * @returns K.
 * @throws RangeError when the ratio lies outside 0 to 1.
 *
 * @remarks Valid: turbulent flow. Source: Borda (1766) and Carnot; momentum balance. Checked: exact.
 *
 * @example Twice the section
 * ```ts
 * expansionLoss(0.5); // => 0.25
 * ```
 */
export function expansionLoss(areaRatio: number): number {
  mustLieWithin('expansionLoss', 'areaRatio', areaRatio, 0, 1);
  return (1 - areaRatio) ** 2;
}

/**
 * K of a sudden narrowing, on the velocity behind it.
 *
 *     K = 0.0696 (1 - b^5) l^2 + (l - 1)^2,   l = 1 + 0.622 (1 - 0.215 b^2 - 0.785 b^5),   b = sqrt(A2/A1)
 *
 * @param areaRatio - A2/A1: narrow over wide, 0 (entrance) to 1.
 * @returns K, a third above the simple rule 0.5 (1 - A2/A1).
 * @throws RangeError when the ratio lies outside 0 to 1.
 *
 * @remarks
 * Valid: sharp edge, turbulent flow. Source: Rennels & Hudson (2012), ch. 10.
 * Checked: formula (memory); values (independent library).
 *
 * @example Half the section
 * ```ts
 * contractionLoss(0.5); // => 0.343
 * ```
 */
export function contractionLoss(areaRatio: number): number {
  mustLieWithin('contractionLoss', 'areaRatio', areaRatio, 0, 1);
  const fifth = areaRatio ** 2.5;
  const l = 1 + 0.622 * (1 - 0.215 * areaRatio - 0.785 * fifth);
  return 0.0696 * (1 - fifth) * l ** 2 + (l - 1) ** 2;
}

/**
 * K of a thin perforated plate with square edges, on the approach velocity.
 *
 *     K = (0.707 sqrt(1 - a) + 1 - a)^2/a^2
 *
 * @param freeArea - a: open share of the face, above 0 to 1.
 * @returns K.
 * @throws RangeError when the share lies outside.
 *
 * @remarks
 * Valid: thin plate, hole Reynolds number above about 1000. Tables differ from it by up to 15 % for a from 0.2 to 0.7.
 * Source: I. E. Idelchik, Handbook of Hydraulic Resistance, diagram 8-1. Checked: formula (memory); values (independent library).
 *
 * @example Half open
 * ```ts
 * perforatedPlateLoss(0.5); // => 4.0
 * ```
 */
export function perforatedPlateLoss(freeArea: number): number {
  mustLieWithin('perforatedPlateLoss', 'freeArea', freeArea, Number.MIN_VALUE, 1);
  const shut = 1 - freeArea;
  return (Math.SQRT1_2 * Math.sqrt(shut) + shut) ** 2 / freeArea ** 2;
}

/** Share of free area and K of a grille of square-edged bars or slots, on the approach velocity. */
const squareGrille = [
  [0.2, 34],
  [0.3, 14],
  [0.4, 7.12],
  [0.5, 4],
  [0.6, 2.33],
  [0.7, 1.35],
  [0.8, 0.72],
] as const;

/**
 * K of a grille of thick square-edged bars or slots, on the approach velocity; logarithmic between the table's points.
 *
 * @param freeArea - Open share of the face, 0.2 to 0.8.
 * @returns K: 34 at 0.2, 4.0 at 0.5, 0.72 at 0.8.
 * @throws RangeError when the share lies outside 0.2 to 0.8.
 *
 * @remarks
 * Valid: clean. Dust multiplies K by 1.5 to 3.
 * Source: table of a general-purpose fluids library, version 1.0.22, after Idelchik. Checked: values (second-hand).
 *
 * @example Half open
 * ```ts
 * grilleLoss(0.5); // => 4.0
 * ```
 */
export function grilleLoss(freeArea: number): number {
  mustLieWithin('grilleLoss', 'freeArea', freeArea, 0.2, 0.8);
  return logarithmicBetween(squareGrille, freeArea);
}

/** Reynolds number on the wire and the factor of {@link wireScreenLoss}. */
const wireFactors = [
  [20, 1.3],
  [50, 0.89],
  [100, 0.7],
  [200, 0.6],
  [400, 0.52],
] as const;

/**
 * K of a screen of round wire, on the approach velocity: K = b(Re_w) (1 - a^2)/a^2.
 *
 * @param freeArea - a: open share of the face, above 0 to 1.
 * @param wireReynolds - Approach velocity x wire diameter / (a x viscosity), above 0; b is constant below 20 and above 400.
 * @returns K. An insect screen (a 0.6, 0.3 mm wire) at 1 m/s has about 2.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: 20 ≤ Re_w ≤ 1e4. Source: R. D. Blevins, Applied Fluid Dynamics Handbook (1984), table 10-7.
 * Checked: form (memory); factors (independent library).
 *
 * @example Half open
 * ```ts
 * wireScreenLoss(0.5, 1000); // => 1.56
 * ```
 */
export function wireScreenLoss(freeArea: number, wireReynolds: number): number {
  mustLieWithin('wireScreenLoss', 'freeArea', freeArea, Number.MIN_VALUE, 1);
  mustBePositive('wireScreenLoss', 'wireReynolds', wireReynolds);
  const reynolds = Math.min(400, Math.max(20, wireReynolds));
  return (logarithmicBetween(wireFactors, reynolds) * (1 - freeArea ** 2)) / freeArea ** 2;
}

/** K on the face velocity of things that stand before a fan or an opening. Source: common practice, from memory. */
export const GUARD_LOSS: { readonly fingerGuard: TypicalRange; readonly louvre: TypicalRange } = {
  fingerGuard: { low: 0.2, central: 0.4, high: 0.6 },
  /** Fixed blades at 30 to 45 degrees. */
  louvre: { low: 1.5, central: 2.5, high: 4 },
};

/** By how much dust multiplies a grille's K. Source: common practice, from memory. */
export const DUSTY_GRILLE_MULTIPLIER: TypicalRange = { low: 1.5, central: 2, high: 3 };

/**
 * K moved from the velocity of one section to that of another: K_2 = K_1 (A_2/A_1)^2.
 *
 * @param loss - K on the velocity in `ownArea`, 0 or more.
 * @param ownArea - A_1, m², above 0.
 * @param otherArea - A_2, m², above 0.
 * @returns K on the velocity in `otherArea`.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: equal density. Source: continuity. Checked: exact.
 *
 * @example A hole's K on a duct of twice its area
 * ```ts
 * lossOnArea(2.7, 0.005, 0.01); // => 10.8
 * ```
 */
export function lossOnArea(loss: number, ownArea: number, otherArea: number): number {
  mustNotBeNegative('lossOnArea', 'loss', loss);
  mustBePositive('lossOnArea', 'ownArea', ownArea);
  mustBePositive('lossOnArea', 'otherArea', otherArea);
  return loss * (otherArea / ownArea) ** 2;
}

/** Straight lines in log-log between the points of a table that covers x. */
function logarithmicBetween(table: readonly (readonly [number, number])[], x: number): number {
  const upper = Math.max(
    1,
    table.findIndex(([at]) => at >= x),
  );
  const [x0, y0] = table[upper - 1]!;
  const [x1, y1] = table[upper]!;
  return y0 * (y1 / y0) ** (Math.log(x / x0) / Math.log(x1 / x0));
}
