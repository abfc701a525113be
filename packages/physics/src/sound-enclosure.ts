// Sound in closed boxes that leak: what builds up inside, and what gets out.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import { solveLinear } from './linear-equations.ts';

/**
 * Insertion loss of a box by its balance of power: what is not swallowed inside must get out.
 *
 *     IL = 10 lg(1 + sum(alpha_i S_i)/sum(tau_i S_i))
 *
 * It can never be negative, and holes and gaps simply count among the tau S. A bare box loses most of what its boards promise:
 * boards of 25 dB with 5 % absorption make a box of 12 dB.
 *
 * @param absorbed - sum(alpha S), m², 0 or more.
 * @param letThrough - sum(tau S), openings with tau = 1, m², above 0.
 * @returns dB, 0 or more.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: sound from all sides inside: above about 1 kHz in a quarter of a cubic metre; ±5 dB, ±6 dB below 250 Hz.
 * Source: I. L. Vér in Beranek & Vér, Noise and Vibration Control Engineering. Checked: formula (memory).
 *
 * @example Boards of 25 dB that swallow a twentieth
 * ```ts
 * boxInsertionLoss(0.05, 10 ** -2.5); // => 12.26
 * ```
 */
export function boxInsertionLoss(absorbed: number, letThrough: number): number {
  mustNotBeNegative('boxInsertionLoss', 'absorbed', absorbed);
  mustBePositive('boxInsertionLoss', 'letThrough', letThrough);
  return 10 * Math.log10(1 + absorbed / letThrough);
}

/**
 * What the transmission loss of an enclosure's walls must be lessened by for the sound that builds up inside: a second way.
 *
 *     C = 10 lg(0.3 + S_E (1 - a)/(S_i a))
 *
 * @param outerArea - S_E, m², above 0.
 * @param innerArea - S_i, m², above 0.
 * @param absorption - a: mean absorption coefficient inside, above 0 to 1.
 * @returns C, dB; the insertion loss is R - C.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: mean absorption below about 0.7; below R - C = 0 it has no meaning.
 * Source: Bies, Hansen & Howard (2017), eq. 7.103 and 7.111. Checked: formula (second-hand).
 *
 * @example 24 m² outside, 30 m² inside, three tenths swallowed
 * ```ts
 * buildUp(24, 30, 0.3); // => 3.36
 * ```
 */
export function buildUp(outerArea: number, innerArea: number, absorption: number): number {
  mustBePositive('buildUp', 'outerArea', outerArea);
  mustBePositive('buildUp', 'innerArea', innerArea);
  mustBePositive('buildUp', 'absorption', absorption);
  mustLieWithin('buildUp', 'absorption', absorption, 0, 1);
  return 10 * Math.log10(0.3 + (outerArea * (1 - absorption)) / (innerArea * absorption));
}

/** A way between two boxes: tau S, m². */
export interface SoundLink {
  readonly a: number;
  readonly b: number;
  readonly letThrough: number;
}

/**
 * Power on each square metre of the inside of several boxes that lead into one another, for a watt of sound in each of them:
 * {@link boxInsertionLoss} for more than one.
 *
 *     W_i = I_i (A_i + T_i) + sum over links tau S (I_i - I_j)
 *
 * @param losses - A_i + T_i of each box: absorbed inside and let out of all boxes, m², above 0.
 * @param links - Ways between the boxes.
 * @returns `answer[i][j]`: I in box i for 1 W in box j, W/m².
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid, Source: as {@link boxInsertionLoss}; power is conserved. Checked: exact.
 *
 * @example One box alone
 * ```ts
 * soundInBoxes([0.25], [])[0][0]; // => 4
 * ```
 */
export function soundInBoxes(losses: readonly number[], links: readonly SoundLink[]): readonly (readonly number[])[] {
  for (const loss of losses) mustBePositive('soundInBoxes', 'loss', loss);
  const size = losses.length;
  const matrix = losses.map((loss, i) => losses.map((_, j) => (i === j ? loss : 0)));
  for (const { a, b, letThrough } of links) {
    mustNotBeNegative('soundInBoxes', 'letThrough', letThrough);
    matrix[a]![a]! += letThrough;
    matrix[b]![b]! += letThrough;
    matrix[a]![b]! -= letThrough;
    matrix[b]![a]! -= letThrough;
  }
  const columns = Array.from({ length: size }, (_, j) =>
    solveLinear(
      matrix,
      losses.map((_loss, i) => (i === j ? 1 : 0)),
    ),
  );
  return losses.map((_, i) => columns.map((column) => column[i]!));
}
