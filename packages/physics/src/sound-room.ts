// Sound in the room: how it dies away, and what of a source's power is heard at a place.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import { SOUND_SPEED } from './sound-level.ts';

/** 24 ln 10/c: seconds of reverberation for each metre of volume over absorption, s/m. */
const SABINE = (24 * Math.log(10)) / SOUND_SPEED;

/**
 * Reverberation time (Sabine): T = 0.161 V/A.
 *
 * @param volume - V, m³, above 0.
 * @param absorption - A = sum(alpha S), m², above 0.
 * @returns T, s: until the level has fallen by 60 dB. The same formula gives A from T.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid: mean absorption below 0.3. Source: W. C. Sabine; ISO 3382-2. Checked: formula (read), value (read).
 *
 * @example 3000 m³ with 399 m² of absorption
 * ```ts
 * reverberationTime(3000, 399); // => 1.2114
 * ```
 */
export function reverberationTime(volume: number, absorption: number): number {
  mustBePositive('reverberationTime', 'volume', volume);
  mustBePositive('reverberationTime', 'absorption', absorption);
  return (SABINE * volume) / absorption;
}

/**
 * Reverberation time (Eyring), for rooms that swallow much: T = 0.161 V/(-S ln(1 - a)).
 *
 * @param volume - V, m³, above 0.
 * @param surface - S, m², above 0.
 * @param absorption - a: mean coefficient, above 0, below 1.
 * @returns T, s; shorter than Sabine's.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: absorption spread evenly. Source: C. F. Eyring (1930). Checked: formula (read), value (read).
 *
 * @example The same hall
 * ```ts
 * eyringTime(3000, 1340, 399 / 1340); // => 1.0204
 * ```
 */
export function eyringTime(volume: number, surface: number, absorption: number): number {
  mustBePositive('eyringTime', 'volume', volume);
  mustBePositive('eyringTime', 'surface', surface);
  mustBePositive('eyringTime', 'absorption', absorption);
  mustLieWithin('eyringTime', 'absorption', absorption, 0, 1 - 1e-9);
  return (SABINE * volume) / (-surface * Math.log(1 - absorption));
}

/** How a source stands: free, on a wall or floor, in an edge, in a corner. */
export type Directivity = 1 | 2 | 4 | 8;

/**
 * What a sound pressure level lies above the sound power level of its source.
 *
 *     L_p - L_w = 10 lg(Q/(4 pi r^2) + 4/R),   R = A/(1 - a)
 *
 * @param distance - r, m, above 0.
 * @param directivity - Q: 1 free, 2 on a wall or the floor, 4 in an edge, 8 in a corner.
 * @param roomConstant - R, m², above 0; some guides take A itself.
 * @returns dB; in a furnished small room about -4.5 almost anywhere.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: rooms without a long side. Source: Beranek, Noise and Vibration Control; VDI 2081 with A in the place of R.
 * Checked: formula (second-hand); values (second-hand, read).
 *
 * @example At 1.5 m from a grille in a wall, 20 m²
 * ```ts
 * roomTransfer(1.5, 2, 20); // => -5.67
 * ```
 */
export function roomTransfer(distance: number, directivity: Directivity, roomConstant: number): number {
  mustBePositive('roomTransfer', 'distance', distance);
  mustBePositive('roomTransfer', 'roomConstant', roomConstant);
  return 10 * Math.log10(directivity / (4 * Math.PI * distance ** 2) + 4 / roomConstant);
}

/**
 * Room constant R = A/(1 - A/S).
 *
 * @param absorption - A, m², above 0.
 * @param surface - S of walls, floor and ceiling, m², above A.
 * @returns m².
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: as {@link roomTransfer}. Source: definition. Checked: exact.
 *
 * @example A bedroom of 4 m x 3 m x 2.4 m, 0.45 s
 * ```ts
 * roomConstant(10.3, 57.6); // => 12.54
 * ```
 */
export function roomConstant(absorption: number, surface: number): number {
  mustBePositive('roomConstant', 'absorption', absorption);
  mustBePositive('roomConstant', 'surface', surface);
  mustNotBeNegative('roomConstant', 'surface less absorption', surface - absorption);
  return absorption / Math.max(1 - absorption / surface, 0.05);
}

/**
 * Sound power level of a source from its level at a distance in the free field.
 *
 *     L_w = L_p + 10 lg(4 pi r^2/Q)
 *
 * @param level - L_p, dB or dB(A).
 * @param distance - r, m, above 0.
 * @param directivity - Q: 1 hung free, as small fans are rated; 2 on a table or floor.
 * @returns dB: 11 more than at 1 m hung free, 8 more on a table.
 * @throws RangeError when the distance is not above 0.
 *
 * @remarks Valid: no other sound, no room. Source: ISO 3744 and 3745. Checked: exact.
 *
 * @example A fan of 22 dB(A) at 1 m
 * ```ts
 * powerFromPressure(22, 1, 1); // => 32.99
 * ```
 */
export function powerFromPressure(level: number, distance: number, directivity: Directivity): number {
  mustBePositive('powerFromPressure', 'distance', distance);
  return level + 10 * Math.log10((4 * Math.PI * distance ** 2) / directivity);
}
