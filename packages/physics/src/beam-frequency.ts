// The lowest frequency at which a board swings, by itself or with what lies on it.

import { mustBePositive } from './argument.ts';
import type { BeamEnds } from './beam.ts';
import { GRAVITY } from './constants.ts';

/** First root of the frequency equation of a uniform beam. Source: R. D. Blevins, Formulas for Natural Frequency and Mode Shape (1979), table 8-1, memory. */
const FIRST_ROOT: Readonly<Record<BeamEnds, number>> = {
  simple: Math.PI,
  fixed: 4.73004074,
  propped: 3.92660231,
  cantilever: 1.87510407,
};

/**
 * First natural frequency of a beam with an evenly spread mass.
 *
 *     f = (λ²/2π) √(E I/(m' L⁴))
 *
 * @param ends - How its ends are held.
 * @param span - L, m, above 0.
 * @param stiffness - E I, N·m², above 0.
 * @param massPerLength - m', kg/m, above 0: the board and what is spread on it.
 * @returns Frequency, Hz.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: slender beam, mass that moves with it. Source: R. D. Blevins, table 8-1. Checked: formula (memory); roots (memory).
 *
 * @example 18 mm of plywood 600 mm deep over 600 mm, with 28.9 kg spread over it
 * ```ts
 * beamFrequency('simple', 0.6, 1749.6, 28.888 / 0.6); // => 26.30
 * ```
 */
export function beamFrequency(ends: BeamEnds, span: number, stiffness: number, massPerLength: number): number {
  mustBePositive('beamFrequency', 'span', span);
  mustBePositive('beamFrequency', 'stiffness', stiffness);
  mustBePositive('beamFrequency', 'massPerLength', massPerLength);
  return (FIRST_ROOT[ends] ** 2 / (2 * Math.PI)) * Math.sqrt(stiffness / (massPerLength * span ** 4));
}

/**
 * Frequency of a mass on a spring from how far the mass presses it.
 *
 *     f = (1/2π) √(g/δ)
 *
 * @param sag - δ under the mass alone, m, above 0.
 * @returns Frequency, Hz.
 * @throws RangeError when the sag is not above 0.
 *
 * @remarks
 * Valid: springs whose force goes with their way; foam and rubber are stiffer against fast motion: times √(dynamic/static).
 * A beam with spread mass is √(1.2688) times faster than its largest sag says. Source: any text on vibration. Checked: formula (read).
 *
 * @example One millimetre
 * ```ts
 * sagFrequency(0.001); // => 15.76
 * ```
 */
export function sagFrequency(sag: number): number {
  mustBePositive('sagFrequency', 'sag', sag);
  return Math.sqrt(GRAVITY / sag) / (2 * Math.PI);
}
