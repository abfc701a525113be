// What takes sound out of a way for air: lined ducts and boxes, empty boxes, the open end itself.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import { SOUND_SPEED } from './sound-level.ts';

/** A run of lined duct gives no more: sound gets round it through its walls, dB. */
const MOST = 40;

/**
 * Loss of a straight lined duct (Sabine).
 *
 *     D = 1.05 a^1.4 (P/S) L
 *
 * The lowest of three formulas in use, which differ by a factor of two. Where the wave is shorter than the duct is wide, a beam
 * runs down its middle and the loss falls: from there on with the square of the wavelength.
 *
 * @param absorption - a of the lining, 0 to 1.
 * @param perimeter - P of the free section, m, above 0.
 * @param area - S of the free section, m², above 0.
 * @param length - L, m, 0 or more.
 * @param frequency - Hz, above 0.
 * @returns dB, 0 to 40.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: lined all round, 0.2 ≤ a ≤ 0.8. Source: H. J. Sabine (1940), in metres. Checked: formula (memory); one value (read).
 *
 * @example A duct of 610 mm lined so that half is swallowed, 1 m
 * ```ts
 * linedDuctLoss(0.5, 2.44, 0.3721, 1, 250); // => 2.61
 * ```
 */
export function linedDuctLoss(
  absorption: number,
  perimeter: number,
  area: number,
  length: number,
  frequency: number,
): number {
  mustLieWithin('linedDuctLoss', 'absorption', absorption, 0, 1);
  mustBePositive('linedDuctLoss', 'perimeter', perimeter);
  mustBePositive('linedDuctLoss', 'area', area);
  mustNotBeNegative('linedDuctLoss', 'length', length);
  mustBePositive('linedDuctLoss', 'frequency', frequency);
  const loss = 1.05 * absorption ** 1.4 * (perimeter / area) * length;
  const beam = Math.min(SOUND_SPEED / frequency / ((4 * area) / perimeter), 1) ** 2;
  return Math.min(loss * beam, MOST);
}

/** A lined box with a way in and a way out. */
export interface Plenum {
  /** Area of its way out, m². */
  readonly outlet: number;
  /** From the middle of the way in to that of the way out, m. */
  readonly distance: number;
  /** Between that line and the axis of the way out, rad. */
  readonly angle: number;
  /** Of its inside, m². */
  readonly surface: number;
  readonly absorption: number;
}

/**
 * Transmission loss of a lined plenum (Wells).
 *
 *     TL = -10 lg(S_o (cos(theta)/(pi r^2) + (1 - a)/(S a)))
 *
 * Books print pi r² or 2 pi r² for the direct part; the smaller loss is taken here, `printed: 2` gives the other.
 *
 * @param plenum - Outlet S_o, distance r, surface S above 0; angle theta 0 to pi/2; absorption a above 0 to 1.
 * @param printed - 1 or 2: which of the two is meant.
 * @returns dB, 0 or more.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: waves shorter than the box. Source: R. J. Wells (1958), as in Bies, Hansen & Howard (2017); with 2 pi r² in a
 * general engineering handbook. Checked: formula (second-hand); values (read, second-hand).
 *
 * @example A large plenum, straight through
 * ```ts
 * plenumLoss({ outlet: 0.36, distance: 2.4, angle: 0, surface: 74, absorption: 0.5 }); // => 16.06
 * ```
 */
export function plenumLoss({ outlet, distance, angle, surface, absorption }: Plenum, printed: 1 | 2 = 1): number {
  mustBePositive('plenumLoss', 'outlet', outlet);
  mustBePositive('plenumLoss', 'distance', distance);
  mustLieWithin('plenumLoss', 'angle', angle, 0, Math.PI / 2);
  mustBePositive('plenumLoss', 'surface', surface);
  mustBePositive('plenumLoss', 'absorption', absorption);
  mustLieWithin('plenumLoss', 'absorption', absorption, 0, 1);
  const direct = Math.cos(angle) / (printed * Math.PI * distance ** 2);
  return Math.max(-10 * Math.log10(outlet * (direct + (1 - absorption) / (surface * absorption))), 0);
}

/**
 * Transmission loss of an empty box in a duct: it throws sound back, and at some tones nothing.
 *
 *     TL = 10 lg(1 + (m - 1/m)^2 sin^2(k L)/4),   k = 2 pi f/c
 *
 * @param ratio - m: section of the box over that of the duct, above 0.
 * @param length - L of the box along the way of the sound, m, above 0.
 * @param frequency - f, Hz, above 0.
 * @returns dB, 0 or more.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: waves longer than the box is wide. Source: Munjal, Acoustics of Ducts and Mufflers. Checked: formula (memory);
 * peaks (second-hand).
 *
 * @example Nine times the section, a quarter of a wave long
 * ```ts
 * expansionBoxLoss(9, 0.3, 343 / 1.2); // => 13.17
 * ```
 */
export function expansionBoxLoss(ratio: number, length: number, frequency: number): number {
  mustBePositive('expansionBoxLoss', 'ratio', ratio);
  mustBePositive('expansionBoxLoss', 'length', length);
  mustBePositive('expansionBoxLoss', 'frequency', frequency);
  const turn = Math.sin((2 * Math.PI * frequency * length) / SOUND_SPEED);
  return 10 * Math.log10(1 + ((ratio - 1 / ratio) ** 2 * turn ** 2) / 4);
}

/**
 * What the open end of a duct in a wall throws back.
 *
 *     D = 10 lg(1 + (0.8 c/(pi f d))^1.88)
 *
 * @param diameter - d, m, above 0: of a duct that is not round 2 sqrt(S/pi).
 * @param frequency - f, Hz, above 0.
 * @returns dB.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: end flush with a wall, no grille. Source: ASHRAE Handbook, HVAC Applications, after Reynolds (1990), as in Long,
 * Architectural Acoustics (2014). Checked: formula (second-hand).
 *
 * @example A duct of 300 mm at 125 Hz
 * ```ts
 * endReflection(0.3, 125); // => 7.7
 * ```
 */
export function endReflection(diameter: number, frequency: number): number {
  mustBePositive('endReflection', 'diameter', diameter);
  mustBePositive('endReflection', 'frequency', frequency);
  return 10 * Math.log10(1 + ((0.8 * SOUND_SPEED) / (Math.PI * frequency * diameter)) ** 1.88);
}
