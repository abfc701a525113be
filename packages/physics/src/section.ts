// Cross-sections of beams: how stiff a board is with a strip on edge under it, and how much a moment strains it.

import { mustBeFinite, mustBePositive } from './argument.ts';

/** A rectangle of a section: its breadth, and from where to where it reaches in height, m; stiffness E, Pa. */
export interface SectionPart {
  readonly breadth: number;
  readonly bottom: number;
  readonly top: number;
  readonly stiffness: number;
}

export interface BendingSection {
  /** E I of the whole, N·m². */
  readonly stiffness: number;
  /** Height at which bending neither stretches nor shortens it, m. */
  readonly neutral: number;
}

/**
 * Bending stiffness of rectangles that work together (glued, folded or screwed at close distance).
 *
 *     z0 = Σ E A z / Σ E A,  E I = Σ (E b h³/12 + E A (z - z0)²)
 *
 * @param parts - Breadth and height above 0, stiffness above 0.
 * @returns E I and the neutral height.
 * @throws RangeError when an argument lies outside its bounds, or no part is given.
 *
 * @remarks
 * Valid: full bond; parts that only lie on one another each bend by themselves, and their E I adds.
 * Source: theory of composite beams (transformed section), any text on strength of materials. Checked: formula (memory).
 *
 * @example A strip of 20 mm x 40 mm under 18 mm of MDF, 400 mm deep: nearly fourteen times as stiff
 * ```ts
 * const board = { breadth: 0.4, bottom: 0, top: 0.018, stiffness: 2.2e9 };
 * const strip = { breadth: 0.02, bottom: -0.04, top: 0, stiffness: 1e10 };
 * bendingSection([board, strip]).stiffness / bendingSection([board]).stiffness; // => 13.95
 * ```
 */
export function bendingSection(parts: readonly SectionPart[]): BendingSection {
  if (parts.length === 0) throw new RangeError('bendingSection: parts is empty; it must hold at least one rectangle');
  let [area, first] = [0, 0];
  for (const { breadth, bottom, top, stiffness } of parts) {
    mustBePositive('bendingSection', 'breadth', breadth);
    mustBeFinite('bendingSection', 'bottom', bottom);
    mustBePositive('bendingSection', 'height', top - bottom);
    mustBePositive('bendingSection', 'stiffness', stiffness);
    const weight = stiffness * breadth * (top - bottom);
    area += weight;
    first += weight * ((top + bottom) / 2);
  }
  const neutral = first / area;
  const stiffness = parts.reduce(
    (sum, { breadth, bottom, top, stiffness: e }) =>
      sum + (e * breadth * ((top - neutral) ** 3 - (bottom - neutral) ** 3)) / 3,
    0,
  );
  return { stiffness, neutral };
}

/**
 * Largest bending stress in one part of a section.
 *
 *     s = M E |z - z0| / (E I) at the edge that is further from z0
 *
 * @param moment - M, N·m.
 * @param section - Of all parts, from {@link bendingSection}.
 * @param part - The part that is asked about.
 * @returns Stress, Pa.
 * @throws RangeError when the moment is not finite.
 *
 * @remarks Valid, Source, Checked: as {@link bendingSection}.
 *
 * @example A rectangle: M/(b h²/6)
 * ```ts
 * const board = { breadth: 0.5, bottom: 0, top: 0.018, stiffness: 7e9 };
 * bendingStress(24.423, bendingSection([board]), board) / 1e6; // => 0.905
 * ```
 */
export function bendingStress(moment: number, section: BendingSection, part: SectionPart): number {
  mustBeFinite('bendingStress', 'moment', moment);
  const reach = Math.max(Math.abs(part.top - section.neutral), Math.abs(part.bottom - section.neutral));
  return (Math.abs(moment) * part.stiffness * reach) / section.stiffness;
}
