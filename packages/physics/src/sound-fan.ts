// How the noise of a fan is spread over the octaves.

import { mustBePositive } from './argument.ts';
import { exactOctaveBands } from './sound-level.ts';

/** Kinds of fans by the constant of their curve. Source: VDI 2081-1:2019, eq. 20-21. */
const CONSTANTS = { axial: 0.1, blower: 0.15 } as const;

/**
 * Octave levels of a fan against its whole sound power level.
 *
 *     dL = -5 - 5 (lg St + C)^2,   St = 60 f/(pi n), not below 1
 *
 * Made for ventilation plant: of a small fan it tells the shape, and nothing about how loud it is.
 *
 * @param kind - Axial without guide vanes (C = 0.1), or forward-curved (C = 0.15).
 * @param turns - n, revolutions a minute, above 0.
 * @returns Eight levels from 63 Hz to 8 kHz, dB.
 * @throws RangeError when the speed is not above 0.
 *
 * @remarks Valid: broadband noise near the best point. Source: VDI 2081-1:2019, eq. 20-21. Checked: formula (second-hand).
 *
 * @example An axial fan at 1500 revolutions a minute, at 1 kHz
 * ```ts
 * fanOctaves('axial', 1500)[4]; // => -12.3
 * ```
 */
export function fanOctaves(kind: keyof typeof CONSTANTS, turns: number): readonly number[] {
  mustBePositive('fanOctaves', 'turns', turns);
  return exactOctaveBands.map((band) => {
    const strouhal = Math.max((60 * band) / (Math.PI * turns), 1);
    return -5 - 5 * (Math.log10(strouhal) + CONSTANTS[kind]) ** 2;
  });
}
