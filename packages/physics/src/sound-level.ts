// Levels of sound: octave bands, A-weighting, sums.

import { mustBeFinite, mustBePositive } from './argument.ts';

/** Nominal centres of the octave bands that are looked at, Hz. Source: ISO 266 / IEC 61260-1. */
export const octaveBands: readonly number[] = [63, 125, 250, 500, 1000, 2000, 4000, 8000];

/** Exact base-ten centres of the same bands, Hz: 10^(1.8) ... 10^(3.9). Source: IEC 61260-1:2014. */
export const exactOctaveBands: readonly number[] = octaveBands.map((_, band) => 10 ** (1.8 + 0.3 * band));

/** Speed of sound in air of 20 °C, m/s. Source: √(1.4 · 287.055 · 293.15), ideal gas, to the metre. */
export const SOUND_SPEED = 343;

/** Density times speed of sound of air of 20 °C, Pa s/m. Source: 1.204 kg/m³ times 343 m/s. */
export const AIR_IMPEDANCE = 413;

/** Frequencies of the poles of the A-weighting, Hz. Source: IEC 61672-1:2013, annex E. */
const POLES = [20.599, 107.653, 737.862, 12_194.217] as const;

function response(frequency: number): number {
  const [p1, p2, p3, p4] = POLES.map((pole) => pole ** 2) as [number, number, number, number];
  const f2 = frequency ** 2;
  return (p4 * f2 ** 2) / ((f2 + p1) * Math.sqrt((f2 + p2) * (f2 + p3)) * (f2 + p4));
}

/**
 * A-weighting: what a level at one frequency counts less in dB(A).
 *
 *     A = 20 lg(R(f)/R(1000)),   R = f4^2 f^4 / ((f^2 + f1^2) sqrt((f^2 + f2^2)(f^2 + f3^2)) (f^2 + f4^2))
 *
 * @param frequency - f, Hz, above 0; of a band its exact centre 1000·10^(n/10), or the last digit of the table may slip.
 * @returns dB.
 * @throws RangeError when the frequency is not above 0.
 *
 * @remarks
 * Valid: 10 Hz to 20 kHz. Source: IEC 61672-1:2013, annex E and table 3. Checked: formula (memory); table (second-hand).
 *
 * @example At 125 Hz
 * ```ts
 * aWeighting(10 ** 2.1); // => -16.1
 * ```
 */
export function aWeighting(frequency: number): number {
  mustBePositive('aWeighting', 'frequency', frequency);
  return 20 * Math.log10(response(frequency) / response(1000));
}

/** A-weighting of the octave bands, dB. */
export const octaveWeights: readonly number[] = exactOctaveBands.map(aWeighting);

/**
 * Level of several levels together: their powers add.
 *
 *     L = 10 lg sum 10^(L_i/10)
 *
 * @param levels - L_i, dB; minus infinity is silence.
 * @returns dB; minus infinity for nothing at all.
 * @throws RangeError when a level is not a number.
 *
 * @remarks Valid: sources that know nothing of one another. Source: definition of the level. Checked: exact.
 *
 * @example Twice the same is 3 dB more
 * ```ts
 * addLevels([86, 86]); // => 89.01
 * ```
 */
export function addLevels(levels: readonly number[]): number {
  for (const level of levels) if (level !== Number.NEGATIVE_INFINITY) mustBeFinite('addLevels', 'level', level);
  return 10 * Math.log10(levels.reduce((sum, level) => sum + 10 ** (level / 10), 0));
}

/**
 * A-weighted level of octave levels.
 *
 * @param octaves - Eight levels from 63 Hz to 8 kHz, dB.
 * @returns dB(A).
 * @throws RangeError when there are not eight numbers.
 *
 * @remarks Valid: sound without much below 45 Hz or above 11 kHz. Source: IEC 61672-1:2013. Checked: exact.
 *
 * @example A level in the octave of 1 kHz counts whole
 * ```ts
 * aLevel([-99, -99, -99, -99, 40, -99, -99, -99]); // => 40
 * ```
 */
export function aLevel(octaves: readonly number[]): number {
  if (octaves.length !== octaveBands.length)
    throw new RangeError(`aLevel: octaves has ${octaves.length} numbers; it must have ${octaveBands.length}`);
  return addLevels(octaves.map((level, band) => level + octaveWeights[band]!));
}
