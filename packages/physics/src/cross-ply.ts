// Plywood from its lay-up: crossed veneers of one thickness, of which only those along the span are stiff.

import { mustBePositive } from './argument.ts';

/** Stiffness of a board in bending, Pa. */
export interface PlyStiffness {
  readonly plies: number;
  /** With the grain of the face veneers along the span, and across it. */
  readonly along: number;
  readonly across: number;
}

/** What sanding takes off each face, m. Source: thickness of birch plywood (3.6, 6.4, 9.2 ... mm for plies of 1.4 mm), from memory. */
const SANDED = 0.0003;

/**
 * Bending stiffness of plywood from its veneers.
 *
 *     E∥ = E I(veneers along)/I(all),  E⊥ = E I(veneers across)/I(all) = E - E∥
 *
 * The number of plies is odd and the nearest to the nominal thickness; each face veneer is thinner by what sanding takes. Veneers
 * across the span are counted as without stiffness.
 *
 * @param nominal - Nominal thickness, m, above 0.
 * @param veneer - Thickness of one veneer, m, above 0; 1.4 mm for birch.
 * @param stiffness - E of a veneer along its grain, Pa, above 0; 17 500 N/mm² for birch.
 * @returns Number of plies and both stiffnesses.
 * @throws RangeError when an argument lies outside its bounds.
 *
 * @remarks
 * Valid: veneers of one thickness and one wood. Mixed boards (birch faces, softwood core) are softer.
 * Source: theory of laminates; reproduces all printed means of the Handbook of Finnish Plywood. Checked: formula (memory); values (memory).
 *
 * @example The board called 18 mm has 13 plies
 * ```ts
 * plywoodStiffness(0.018, 0.0014, 17.5e9).plies; // => 13
 * plywoodStiffness(0.018, 0.0014, 17.5e9).along / 1e6; // => 10048
 * ```
 */
export function plywoodStiffness(nominal: number, veneer: number, stiffness: number): PlyStiffness {
  mustBePositive('plywoodStiffness', 'nominal', nominal);
  mustBePositive('plywoodStiffness', 'veneer', veneer);
  mustBePositive('plywoodStiffness', 'stiffness', stiffness);
  const plies = Math.max(3, 2 * Math.round((nominal / veneer - 1) / 2) + 1);
  const half = (plies * veneer) / 2 - Math.min(SANDED, veneer / 2);
  let along = 0;
  for (let ply = 0; ply < plies; ply += 2) {
    const [bottom, top] = [ply, ply + 1].map((at) => clamp(at * veneer - (plies * veneer) / 2, half));
    along += top! ** 3 - bottom! ** 3;
  }
  const share = along / (2 * half ** 3);
  return { plies, along: stiffness * share, across: stiffness * (1 - share) };
}

function clamp(height: number, half: number): number {
  return Math.min(Math.max(height, -half), half);
}
