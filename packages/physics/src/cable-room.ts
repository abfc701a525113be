// Room that cables want: the radius of their bends, and the share of a channel that they may fill.

import { mustBePositive, mustNotBeNegative } from './argument.ts';

/** Inner radius over outside diameter of a light PVC cable that is laid once. */
export const FIXED_BEND = 4;
/** Of one that moves while the machine works. */
export const MOVED_BEND = 7.5;
/** Share of a channel's section that cables may fill, so that they can be drawn in and keep cool. */
export const CHANNEL_SHARE = 0.45;

/**
 * Smallest inner radius of a bend: 4 D laid once, 7.5 D moved.
 *
 * @param diameter - D over the sheath, m, above 0.
 * @param moved - It moves while the machine works.
 * @returns m.
 * @throws RangeError when the diameter is not above 0.
 *
 * @remarks
 * Valid: light flexible PVC cables, not below 5 °C. Stiffer sheaths want more: their sheet rules.
 * Source: data sheet of a PVC control cable to EN 50525-2-51. Checked: values (read).
 *
 * @example A cord of 7 mm to a bed
 * ```ts
 * 1000 * cableBend(0.007, true); // => 52.5
 * ```
 */
export function cableBend(diameter: number, moved: boolean): number {
  mustBePositive('cableBend', 'diameter', diameter);
  return (moved ? MOVED_BEND : FIXED_BEND) * diameter;
}

/**
 * Share of a channel's section that round cables take: sum of pi D²/4 over its area.
 *
 * @param diameters - Each cable's, m, 0 or more.
 * @param area - Inner section of the channel, m², above 0.
 * @returns Share; above 1 when they cannot go in.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: any; more than {@link CHANNEL_SHARE} is tight. Source: geometry; the share is that of trunking practice (BS 7671 guidance, 45 %).
 * Checked: exact; the share (memory).
 *
 * @example Four cords of 8 mm in a channel of 40 by 25 mm
 * ```ts
 * channelFill([0.008, 0.008, 0.008, 0.008], 0.04 * 0.025); // => 0.201
 * ```
 */
export function channelFill(diameters: readonly number[], area: number): number {
  mustBePositive('channelFill', 'area', area);
  for (const diameter of diameters) mustNotBeNegative('channelFill', 'diameter', diameter);
  return diameters.reduce((sum, diameter) => sum + (Math.PI * diameter ** 2) / 4, 0) / area;
}
