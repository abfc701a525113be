// Single numbers for how much a noise disturbs: curves that its octaves must not exceed.

import { mustBeFinite } from './argument.ts';
import { octaveBands } from './sound-level.ts';

/** Constants of the noise rating curves, 63 Hz to 8 kHz. Source: ISO/R 1996 (1971), BS 8233. */
const RATING_A = [35.4, 22, 12, 4.8, 0, -3.5, -6.1, -8] as const;
const RATING_B = [0.79, 0.87, 0.93, 0.974, 1, 1.015, 1.025, 1.03] as const;

/**
 * A noise rating curve: octave levels L = A + B n.
 *
 * @param rating - n, the number of the curve: its level at 1 kHz.
 * @returns Eight levels from 63 Hz to 8 kHz, dB.
 * @throws RangeError when the number is not finite.
 *
 * @remarks Valid: 0 to 130. Source: ISO/R 1996 (1971), BS 8233. Checked: constants (read).
 *
 * @example Curve 30 at 125 Hz
 * ```ts
 * ratingCurve(30)[1]; // => 48.1
 * ```
 */
export function ratingCurve(rating: number): readonly number[] {
  mustBeFinite('ratingCurve', 'rating', rating);
  return RATING_A.map((a, band) => a + RATING_B[band]! * rating);
}

/**
 * Noise rating of a sound: the lowest curve that none of its octaves exceeds.
 *
 *     NR = max over bands of (L - A)/B
 *
 * @param octaves - Eight levels from 63 Hz to 8 kHz, dB; minus infinity is silence.
 * @returns NR; minus infinity for silence.
 * @throws RangeError when there are not eight numbers.
 *
 * @remarks Valid: steady noise without a tone of its own. Source: as {@link ratingCurve}. Checked: exact.
 *
 * @example A curve has its own number
 * ```ts
 * noiseRating(ratingCurve(25)); // => 25
 * ```
 */
export function noiseRating(octaves: readonly number[]): number {
  if (octaves.length !== octaveBands.length)
    throw new RangeError(`noiseRating: octaves has ${octaves.length} numbers; it must have ${octaveBands.length}`);
  return Math.max(...octaves.map((level, band) => (level - RATING_A[band]!) / RATING_B[band]!));
}
