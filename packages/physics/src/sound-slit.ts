// Sound through a long narrow gap: more than its area at low tones.

import { mustBePositive, mustNotBeNegative } from './argument.ts';
import { AIR_IMPEDANCE, exactOctaveBands, SOUND_SPEED } from './sound-level.ts';

const EULER = 0.577_215_664_9;

/** A long gap. */
export interface Slit {
  /** w, m */
  readonly width: number;
  /** d, along the way of the sound, m. */
  readonly depth: number;
  /** Sound from all sides, or straight on. */
  readonly field: 'diffuse' | 'normal';
}

/**
 * Transmission coefficient of a long slit in the middle of a wall.
 *
 *     tau = m K cos^2(K e) / (2 (sin^2(K (X + 2 e))/cos^2(K e) + (K^2/2)(1 + cos(K (X + 2 e)) cos(K X))))
 *     K = 2 pi f w/c,   X = d/w,   e = (ln(8/K) - 0.5772)/pi,   m = 8 for sound from all sides, 4 straight on
 *
 * Where the gap is as deep as half a wave it rings and lets several times its own area through.
 *
 * @param frequency - f, Hz, above 0.
 * @param slit - Width above 0, depth 0 or more.
 * @returns Power let through over power that meets its area; may be above 1.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: w below 0.3 wavelengths. No friction: gaps of a few tenths of a millimetre let less through.
 * Source: M. C. Gomperts & T. Kihlman, Acustica 18 (1967) 144, as in Hopkins, Sound Insulation (2007), eq. 4.99.
 * Checked: formula (memory); one value (second-hand).
 *
 * @example 25 mm wide, 100 mm deep, straight on, at 686 Hz
 * ```ts
 * slitTransmission(686, { width: 0.025, depth: 0.1, field: 'normal' }); // => 0.547
 * ```
 */
export function slitTransmission(frequency: number, { width, depth, field }: Slit): number {
  mustBePositive('slitTransmission', 'frequency', frequency);
  mustBePositive('slitTransmission', 'width', width);
  mustNotBeNegative('slitTransmission', 'depth', depth);
  const wave = (2 * Math.PI * frequency * width) / SOUND_SPEED;
  const deep = depth / width;
  const end = (Math.log(8 / wave) - EULER) / Math.PI;
  const cosine = Math.cos(wave * end) ** 2;
  const sine = Math.sin(wave * (deep + 2 * end)) ** 2 / cosine;
  const rest = (wave ** 2 / 2) * (1 + Math.cos(wave * (deep + 2 * end)) * Math.cos(wave * deep));
  return ((field === 'diffuse' ? 8 : 4) * wave * cosine) / (2 * (sine + rest));
}

/** Viscosity of air of 20 °C, Pa s. Source: Sutherland's law, as `airViscosity`. */
const VISCOSITY = 1.81e-5;

/**
 * Share of {@link slitTransmission} that friction leaves in a gap of a few tenths of a millimetre.
 *
 *     X^2/(X^2 + r^2),   X = 2 pi f (d + 2 e w)/c,   r = 12 mu d/(w^2 rho c)
 *
 * X is the mass of the air in the gap, r what its slow flow between two walls costs, both against rho c. A seal that leaves
 * 0.15 mm is shut to low tones, as one hears.
 *
 * @param frequency - f, Hz, above 0.
 * @param slit - Width w above 0, depth d, 0 or more.
 * @returns 0 to 1; 1 for wide gaps.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: below the first resonance of the gap. Source: own derivation: slow flow between walls (Poiseuille) in series with
 * the mass of the gap. Checked: limits.
 *
 * @example 0.15 mm at 500 Hz
 * ```ts
 * slitFriction(500, { width: 0.00015, depth: 0.008, field: 'diffuse' }); // => 0.156
 * ```
 */
export function slitFriction(frequency: number, { width, depth }: Slit): number {
  mustBePositive('slitFriction', 'frequency', frequency);
  mustBePositive('slitFriction', 'width', width);
  mustNotBeNegative('slitFriction', 'depth', depth);
  const wave = (2 * Math.PI * frequency) / SOUND_SPEED;
  const end = (Math.log(8 / (wave * width)) - EULER) / Math.PI;
  const mass = wave * (depth + 2 * end * width);
  const friction = (12 * VISCOSITY * depth) / (width ** 2 * AIR_IMPEDANCE);
  return mass ** 2 / (mass ** 2 + friction ** 2);
}

/** Points in an octave over which a slit is averaged: its resonances are narrow. */
const POINTS = 12;

/**
 * {@link slitTransmission} averaged over the octave bands, for sound from all sides.
 *
 * @param width - w, m, above 0.
 * @param depth - d, m, 0 or more.
 * @returns Eight coefficients from 63 Hz to 8 kHz.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid, Source, Checked: as {@link slitTransmission}.
 *
 * @example A gap of 1 mm through 18 mm at 500 Hz lets through about its own area
 * ```ts
 * slitOctaves(0.001, 0.018)[3]; // => 0.931
 * ```
 */
export function slitOctaves(width: number, depth: number): readonly number[] {
  return exactOctaveBands.map((band) => {
    let sum = 0;
    for (let point = 0; point < POINTS; point += 1) {
      const frequency = band * 2 ** ((point + 0.5) / POINTS - 0.5);
      sum += slitTransmission(frequency, { width, depth, field: 'diffuse' });
    }
    return sum / POINTS;
  });
}
