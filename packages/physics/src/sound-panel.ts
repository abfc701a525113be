// How much sound a board lets through: the law of mass, the dip where it bends in step with the sound, parts of different kinds.

import { mustBeFinite, mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import { AIR_IMPEDANCE, exactOctaveBands, SOUND_SPEED } from './sound-level.ts';

/** What sound from all sides costs a limp wall against sound from straight ahead, third-octave bands, dB. */
const FIELD_INCIDENCE = 5.5;

/** Measured boards rise by less than the model's 9 dB an octave above twice their critical frequency, dB. */
const STEEPEST = 5;

/**
 * Transmission loss of a limp wall for sound that meets it straight.
 *
 *     R = 10 lg(1 + (pi f m/(rho c))^2)
 *
 * @param frequency - f, Hz, above 0.
 * @param surfaceMass - m, kg/m², above 0.
 * @returns dB, 0 or more.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: below the critical frequency, above the panel's own first resonances.
 * Source: Bies, Hansen & Howard, Engineering Noise Control, 5th ed. 2017, eq. 7.40. Checked: formula (second-hand).
 *
 * @example 10 kg/m² at 500 Hz
 * ```ts
 * massLawLoss(500, 10); // => 31.61
 * ```
 */
export function massLawLoss(frequency: number, surfaceMass: number): number {
  mustBePositive('massLawLoss', 'frequency', frequency);
  mustBePositive('massLawLoss', 'surfaceMass', surfaceMass);
  return 10 * Math.log10(1 + ((Math.PI * frequency * surfaceMass) / AIR_IMPEDANCE) ** 2);
}

/**
 * Critical frequency of a board: above it, waves of bending run as fast as sound in air along the board.
 *
 *     fc = c^2/(2 pi) sqrt(m/B),   B = E h^3/(12 (1 - nu^2)),   m = rho h
 *
 * @param stiffness - E, Young's modulus, Pa, above 0.
 * @param thickness - h, m, above 0.
 * @param density - rho, kg/m³, above 0.
 * @param poisson - nu, 0 to 0.5.
 * @returns Hz; times the thickness it is a number of the material alone.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: thin board of one material. Source: Bies, Hansen & Howard (2017), section 7.2. Checked: formula (second-hand).
 *
 * @example Glass of 6 mm
 * ```ts
 * criticalFrequency(62e9, 0.006, 2500, 0.24); // => 2107
 * ```
 */
export function criticalFrequency(stiffness: number, thickness: number, density: number, poisson: number): number {
  mustBePositive('criticalFrequency', 'stiffness', stiffness);
  mustBePositive('criticalFrequency', 'thickness', thickness);
  mustBePositive('criticalFrequency', 'density', density);
  mustLieWithin('criticalFrequency', 'poisson', poisson, 0, 0.5);
  const bending = (stiffness * thickness ** 3) / (12 * (1 - poisson ** 2));
  return (SOUND_SPEED ** 2 / (2 * Math.PI)) * Math.sqrt((density * thickness) / bending);
}

/** A board for {@link panelLoss}. */
export interface SoundPanel {
  /** kg/m² */
  readonly surfaceMass: number;
  /** Hz */
  readonly criticalFrequency: number;
  /** eta, loss factor as mounted. */
  readonly damping: number;
}

/**
 * Transmission loss of a single board for sound from all sides, at one frequency.
 *
 *     f ≤ fc/2: R0 - 5.5;   f = fc: 20 lg(fc m) + 10 lg eta - 44;   f > fc: R0 + 10 lg(2 eta f/(pi fc))
 *
 * R0 is {@link massLawLoss}; between fc/2 and fc straight in lg f. Against seven measured rows it errs by 4 to 6.5 dB an octave
 * (rms): too low at 125 Hz, where small boards are stiff, and too high well above fc. Take a measured row where there is one.
 *
 * @param frequency - f, Hz, above 0.
 * @param panel - Surface mass m, critical frequency fc and loss factor eta, all above 0.
 * @returns dB.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: single leaves above 1.5 times their first resonance.
 * Source: B. H. Sharp (1973) as in Bies, Hansen & Howard (2017), section 7.2.4. Checked: formula (second-hand, above fc memory).
 *
 * @example The dip of 6 mm glass
 * ```ts
 * panelLoss(2107, { surfaceMass: 15, criticalFrequency: 2107, damping: 0.024 }); // => 29.8
 * ```
 */
export function panelLoss(frequency: number, panel: SoundPanel): number {
  mustBePositive('panelLoss', 'frequency', frequency);
  const { surfaceMass, criticalFrequency: fc, damping } = panel;
  mustBePositive('panelLoss', 'criticalFrequency', fc);
  mustBePositive('panelLoss', 'damping', damping);
  const limp = (f: number): number => massLawLoss(f, surfaceMass) - FIELD_INCIDENCE;
  if (frequency <= fc / 2) return Math.max(limp(frequency), 0);
  const dip = 20 * Math.log10(fc * surfaceMass) + 10 * Math.log10(damping) - 44;
  if (frequency > fc)
    return Math.max(
      massLawLoss(frequency, surfaceMass) + 10 * Math.log10((2 * damping * frequency) / (Math.PI * fc)),
      dip,
      0,
    );
  const share = Math.log2((2 * frequency) / fc);
  return Math.max(limp(fc / 2) + share * (dip - limp(fc / 2)), 0);
}

/**
 * Transmission loss of a single board in the octave bands: {@link panelLoss} averaged over the thirds of each, as power; above
 * twice the critical frequency it rises by no more than 5 dB an octave, as measured boards do.
 *
 * @param panel - As in {@link panelLoss}.
 * @returns Eight values from 63 Hz to 8 kHz, dB.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: ±5 dB an octave. Source: as {@link panelLoss}; the slope from the measured rows of glass and chipboard in the same book,
 * table 7.6. Checked: formula (second-hand), slope (second-hand).
 *
 * @example 12 mm plywood at 250 Hz
 * ```ts
 * panelOctaves({ surfaceMass: 7, criticalFrequency: 1667, damping: 0.03 })[2]; // => 16.8
 * ```
 */
export function panelOctaves(panel: SoundPanel): readonly number[] {
  const third = 10 ** 0.1;
  const model = exactOctaveBands.map((band) =>
    meanLoss([band / third, band, band * third].map((frequency) => panelLoss(frequency, panel))),
  );
  const held: number[] = [];
  for (const [band, loss] of model.entries()) {
    const before = held[band - 1];
    const steep = before !== undefined && exactOctaveBands[band]! > 2 * panel.criticalFrequency;
    held.push(steep ? Math.min(loss, before + STEEPEST) : loss);
  }
  return held;
}

function meanLoss(losses: readonly number[]): number {
  return -10 * Math.log10(losses.reduce((sum, loss) => sum + 10 ** (-loss / 10), 0) / losses.length);
}

/**
 * Transmission loss of a wall of several parts; holes and gaps are parts with a loss of 0 or so.
 *
 *     R = -10 lg(sum S_i 10^(-R_i/10) / sum S_i)
 *
 * A bare opening caps it at 10 lg(S/S_open), whatever the wall: 1 % open is 20 dB at most.
 *
 * @param parts - Area S_i, m², 0 or more, and loss R_i, dB.
 * @returns dB.
 * @throws RangeError when there is no area or a number is nonsense.
 *
 * @remarks
 * Valid: one sound field before all parts. Source: Hopkins, Sound Insulation (2007), eq. 4.92. Checked: formula (second-hand).
 *
 * @example One hundredth of a wall of 50 dB is open
 * ```ts
 * compositeLoss([{ area: 0.99, loss: 50 }, { area: 0.01, loss: 0 }]); // => 20
 * ```
 */
export function compositeLoss(parts: readonly { readonly area: number; readonly loss: number }[]): number {
  let [through, whole] = [0, 0];
  for (const { area, loss } of parts) {
    mustNotBeNegative('compositeLoss', 'area', area);
    mustBeFinite('compositeLoss', 'loss', loss);
    through += area * 10 ** (-loss / 10);
    whole += area;
  }
  mustBePositive('compositeLoss', 'whole area', whole);
  return -10 * Math.log10(through / whole);
}

/**
 * Resonance of two leaves on the air between them: below it they act as one of both masses, near it worse than that.
 *
 *     f0 = 60 sqrt((m1 + m2)/(m1 m2 d))
 *
 * @param first - m1, kg/m², above 0.
 * @param second - m2, kg/m², above 0.
 * @param distance - d, m, above 0.
 * @returns Hz.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: air between, sound straight on. Source: Bies, Hansen & Howard (2017), section 7.2.6. Checked: formula (second-hand).
 *
 * @example Two leaves of 12 kg/m², 75 mm apart
 * ```ts
 * doubleLeafResonance(12, 12, 0.075); // => 89.4
 * ```
 */
export function doubleLeafResonance(first: number, second: number, distance: number): number {
  mustBePositive('doubleLeafResonance', 'first', first);
  mustBePositive('doubleLeafResonance', 'second', second);
  mustBePositive('doubleLeafResonance', 'distance', distance);
  return 60 * Math.sqrt((first + second) / (first * second * distance));
}
