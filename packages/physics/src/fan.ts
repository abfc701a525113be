// Fans: how a curve moves with speed, size and density, generic shapes where no data sheet is at hand, and noise.

import { mustBeFinite, mustBePositive } from './argument.ts';
import type { CurvePoint } from './curve.ts';

/** New over old of one fan or of a family of like fans; what is left out stays as it was. */
export interface FanRatio {
  readonly speed?: number;
  readonly diameter?: number;
  readonly density?: number;
}

/** What {@link affinity} multiplies by. */
export interface FanScale {
  readonly flow: number;
  readonly pressure: number;
  readonly power: number;
}

/**
 * Affinity laws of fans: V ~ n D^3, dp ~ rho n^2 D^2, P ~ rho n^3 D^5.
 *
 * @param ratio - Speed n, diameter D and density rho, each new over old, above 0.
 * @returns Factors on flow, pressure and shaft power at like points of the curve.
 * @throws RangeError when a ratio is not above 0.
 *
 * @remarks
 * Valid: like shape, like efficiency: small fans lose more than the law says when slowed to less than half speed.
 * Source: dimensional analysis; ISO 5801. Checked: formula (memory); values (second-hand).
 *
 * @example Half speed: half the flow, a quarter of the pressure, an eighth of the power
 * ```ts
 * affinity({ speed: 0.5 }).pressure; // => 0.25
 * affinity({ speed: 0.5 }).power; // => 0.125
 * ```
 */
export function affinity({ speed = 1, diameter = 1, density = 1 }: FanRatio): FanScale {
  mustBePositive('affinity', 'speed', speed);
  mustBePositive('affinity', 'diameter', diameter);
  mustBePositive('affinity', 'density', density);
  return {
    flow: speed * diameter ** 3,
    pressure: density * speed ** 2 * diameter ** 2,
    power: density * speed ** 3 * diameter ** 5,
  };
}

/**
 * Points of a fan curve at another speed, size or density.
 *
 * @param points - Flow in m³/s and pressure in Pa.
 * @param ratio - As in {@link affinity}.
 * @returns The points moved, in the same order.
 * @throws RangeError when a ratio is not above 0.
 *
 * @remarks Valid, Source, Checked: as {@link affinity}.
 *
 * @example Shut-off pressure at 70 percent speed
 * ```ts
 * scaleFanPoints([[0, 60], [0.02, 0]], { speed: 0.7 })[0][1]; // => 29.4
 * ```
 */
export function scaleFanPoints(points: readonly CurvePoint[], ratio: FanRatio): readonly CurvePoint[] {
  const { flow, pressure } = affinity(ratio);
  return points.map(([v, p]) => [v * flow, p * pressure]);
}

export type FanShape = 'axial' | 'axial-with-dip' | 'blower';

/** Pressure over shut-off pressure at 0, 0.1 ... 1 of the free flow. Generic, from memory: no measured fan. */
const shapes: Readonly<Record<FanShape, readonly number[]>> = {
  axial: [1, 0.89, 0.79, 0.69, 0.62, 0.58, 0.52, 0.43, 0.31, 0.16, 0],
  'axial-with-dip': [1, 0.85, 0.72, 0.62, 0.6, 0.63, 0.58, 0.47, 0.32, 0.16, 0],
  blower: [1, 0.99, 0.98, 0.97, 0.94, 0.88, 0.8, 0.66, 0.48, 0.26, 0],
};

/**
 * Points of a generic fan curve from the two numbers that every box states: free flow and shut-off pressure.
 *
 * A stand-in until the data sheet of the fan bought is at hand: between its ends a real curve may lie 20 % off.
 *
 * @param shape - Axial fan, axial fan with a stall dip, or forward-curved blower.
 * @param freeFlow - Flow without resistance, m³/s, above 0.
 * @param shutOff - Pressure without flow, Pa, above 0.
 * @returns Eleven points from shut-off to free flow.
 * @throws RangeError when a number is not above 0.
 *
 * @remarks Valid: small fans of 40 to 140 mm. Source: common practice, no source; drawn from memory. Checked: memory.
 *
 * @example An axial fan at half its free flow
 * ```ts
 * genericFanPoints('axial', 0.02, 30)[5][1]; // => 17.4
 * ```
 */
export function genericFanPoints(shape: FanShape, freeFlow: number, shutOff: number): readonly CurvePoint[] {
  mustBePositive('genericFanPoints', 'freeFlow', freeFlow);
  mustBePositive('genericFanPoints', 'shutOff', shutOff);
  return shapes[shape].map((share, tenth) => [(freeFlow * tenth) / 10, shutOff * share]);
}

/**
 * Sound power level of a fan at another speed, size or density, working at the like point of its curve.
 *
 *     L_2 = L_1 + 50 lg(n_2/n_1) + 70 lg(D_2/D_1) + 20 lg(rho_2/rho_1)
 *
 * @param level - L_1, dB, any weighting: weighting shifts it by some decibels when the speed changes the pitch.
 * @param ratio - As in {@link affinity}.
 * @returns L_2 in dB.
 * @throws RangeError when the level is not finite or a ratio not above 0.
 *
 * @remarks
 * Valid: broadband noise, like point of operation; measured exponents of speed run from 40 to 60.
 * Source: common law of the trade (e.g. VDI 2081, ASHRAE HVAC Applications). Checked: formula (memory).
 *
 * @example Half speed is 15 dB quieter
 * ```ts
 * fanNoise(40, { speed: 0.5 }); // => 24.95
 * ```
 */
export function fanNoise(level: number, { speed = 1, diameter = 1, density = 1 }: FanRatio): number {
  mustBeFinite('fanNoise', 'level', level);
  mustBePositive('fanNoise', 'speed', speed);
  mustBePositive('fanNoise', 'diameter', diameter);
  mustBePositive('fanNoise', 'density', density);
  return level + 50 * Math.log10(speed) + 70 * Math.log10(diameter) + 20 * Math.log10(density);
}
