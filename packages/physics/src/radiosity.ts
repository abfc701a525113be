// Radiation in a closed space of several grey faces, solved with all reflections.

import { mustBePositive, mustLieWithin } from './argument.ts';
import { STEFAN_BOLTZMANN } from './constants.ts';
import { solveLinear } from './linear-equations.ts';
import { blackEmission } from './radiation.ts';

/** One face of a closed space. */
export interface RadiatingFace {
  /** m², above 0. */
  readonly area: number;
  /** 0 to 1. */
  readonly emissivity: number;
  /** K. Absent for a face that only passes radiation on: its net heat is 0 and its temperature follows. */
  readonly kelvin?: number;
}

/** What the radiation does at one face. */
export interface FaceRadiation {
  /** All that leaves the face, sent out and reflected, W/m². */
  readonly radiosity: number;
  /** Net heat leaving the face, W. */
  readonly heat: number;
  /** Given, or the temperature at which a face without one would float, K. */
  readonly kelvin: number;
}

/** Sums of view factors may miss 1 by this much: textbook factors are printed to three digits. */
const CLOSURE = 2e-3;

/**
 * Radiation among the faces of a closed space.
 *
 *     J_i = eps_i sigma T_i⁴ + (1 - eps_i) · sum of F_ij J_j,    q_i = A_i (J_i - sum of F_ij J_j)
 *
 * @param faces - Area, emissivity and temperature of each face; at least one has a temperature.
 * @param viewFactors - Row i: F_ij from face i to every face j, adding up to 1. Only the row of each face is read, so a
 *   face with a large area needs honest reciprocal values for its own net heat.
 * @returns Radiosity, net heat and temperature of each face; the heats add up to 0 when A_i F_ij = A_j F_ji.
 * @throws RangeError when a row does not add up to 1, shapes do not fit, or no face has a temperature.
 *
 * @remarks
 * Valid: grey, diffuse faces, each of one temperature; the air between does not absorb.
 * Source: Holman, Heat Transfer, 8-6 and 8-7 (radiosity network).
 * Checked: second-hand.
 *
 * @example Two parallel faces, one of which only passes on
 * ```ts
 * radiosity([{ area: 1, emissivity: 0.5, kelvin: 400 }, { area: 1, emissivity: 0.9 }], [[0, 1], [1, 0]])[1].kelvin; // => 400
 * ```
 */
export function radiosity(
  faces: readonly RadiatingFace[],
  viewFactors: readonly (readonly number[])[],
): FaceRadiation[] {
  checkSpace(faces, viewFactors);
  const right = faces.map(({ emissivity, kelvin }) => (kelvin === undefined ? 0 : emissivity * blackEmission(kelvin)));
  const matrix = faces.map(({ emissivity, kelvin }, from) => {
    const reflected = kelvin === undefined ? 1 : 1 - emissivity;
    return faces.map((_, to) => (from === to ? 1 : 0) - reflected * viewFactors[from]![to]!);
  });
  const leaving = solveLinear(matrix, right);
  return faces.map(({ area, kelvin }, from) => {
    const own = leaving[from]!;
    const arriving = leaving.reduce((sum, J, to) => sum + viewFactors[from]![to]! * J, 0);
    return {
      radiosity: own,
      heat: kelvin === undefined ? 0 : area * (own - arriving),
      kelvin: kelvin ?? (own / STEFAN_BOLTZMANN) ** 0.25,
    };
  });
}

function checkSpace(faces: readonly RadiatingFace[], viewFactors: readonly (readonly number[])[]): void {
  if (viewFactors.length !== faces.length || viewFactors.some((row) => row.length !== faces.length)) {
    throw new RangeError(
      `radiosity: viewFactors is not ${faces.length} by ${faces.length}; it must have a row for each face`,
    );
  }
  if (faces.every(({ kelvin }) => kelvin === undefined)) {
    throw new RangeError('radiosity: no face has a temperature; at least one must have one');
  }
  for (const { area, emissivity } of faces) {
    mustBePositive('radiosity', 'an area', area);
    mustLieWithin('radiosity', 'an emissivity', emissivity, 0, 1);
  }
  for (const [from, row] of viewFactors.entries()) {
    const sum = row.reduce((total, F) => total + F, 0);
    mustLieWithin('radiosity', `the sum of row ${from}`, sum, 1 - CLOSURE, 1 + CLOSURE);
  }
}
