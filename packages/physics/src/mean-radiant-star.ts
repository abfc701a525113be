// Radiation inside a bay as a star: every face joined to one mean radiant temperature. N conductances instead of N²/2.

import { mustBePositive, mustLieWithin } from './argument.ts';

/**
 * View factors from each flat face of a closed space to its mean radiant temperature; above 1, because no face sees itself.
 *
 *     F_i = 1 / (1 - A_i F_i / sum of A_j F_j)
 *
 * With f_i = A_i F_i / S the system is f_i (1 - f_i) = A_i / S and sum of f_i = 1: one unknown S, found by bisection.
 * Only a face of more than a quarter of S can take the larger root.
 *
 * @param areas - Areas of the flat faces, m², each above 0; at least two.
 * @returns F_i of each face.
 * @throws RangeError when a face is as large as all the others together or larger: a closed space has no such flat face.
 *   Two equal faces are the one exception (F = 2, exact for parallel plates).
 *
 * @remarks
 * Valid: flat faces of a convex space such as a bay; exact for two parallel plates and for equal faces that see one another
 *   alike.
 * Source: J. A. Carroll, An MRT method of computing radiant energy exchange in rooms, 1980.
 * Checked: memory.
 *
 * @example The six faces of a cube
 * ```ts
 * meanRadiantFactors([1, 1, 1, 1, 1, 1])[0]; // => 1.2
 * ```
 */
export function meanRadiantFactors(areas: readonly number[]): number[] {
  for (const area of areas) mustBePositive('meanRadiantFactors', 'an area', area);
  const total = areas.reduce((sum, area) => sum + area, 0);
  const largest = areas.indexOf(Math.max(...areas));
  const others = total - areas[largest]!;
  if (areas.length === 2 && areas[0] === areas[1]) return [2, 2];
  if (!(others > areas[largest]!)) {
    throw new RangeError(
      `meanRadiantFactors: face ${largest} has ${areas[largest]} m² and the others ${others} together; a flat face must be smaller`,
    );
  }
  const sumOfOthers = (S: number) =>
    areas.reduce((sum, area, at) => (at === largest ? sum : sum + smallRoot(area, S)), 0);
  const smallest = 4 * areas[largest]!;
  const large = sumOfOthers(smallest) < 0.5;
  // Above 0 once S is too large on the large root, too small on the small one. The 1 of the sum is cancelled by hand on the
  // large root, so that nearly flat spaces keep their digits.
  const excess = (S: number) => sumOfOthers(S) + (large ? -1 : 1) * smallRoot(areas[largest]!, S) - (large ? 0 : 1);
  let low = smallest;
  let high = smallest * 2;
  while (excess(high) > 0 !== large) high *= 2;
  for (let step = 0; step < 100; step++) {
    const middle = (low + high) / 2;
    if (excess(middle) > 0 === large) high = middle;
    else low = middle;
  }
  return areas.map((area, at) => {
    const root = smallRoot(area, high);
    return large && at === largest ? 1 / root : 1 / (1 - root);
  });
}

/** Smaller solution of f (1 - f) = A / S, without the loss of digits of (1 - root)/2. */
function smallRoot(area: number, S: number): number {
  return (2 * area) / S / (1 + Math.sqrt(Math.max(0, 1 - (4 * area) / S)));
}

/**
 * Areas that stand for each face in the star, m²: times 4 sigma Tm³ they are its conductances to the mean radiant node, W/K.
 *
 *     w_i = A_i / ((1 - eps_i)/eps_i + 1/F_i)
 *
 * @param areas - Areas of the flat faces, m², each above 0.
 * @param emissivities - Of the faces, above 0, to 1.
 * @returns One weight for each face.
 * @throws RangeError as `meanRadiantFactors`, and when an emissivity is not above 0, to 1.
 *
 * @remarks
 * Valid: as `meanRadiantFactors`. A body inside, such as a bed, is not part of the star: it sees the star's node with F = 1.
 * Source: J. A. Carroll 1980, with the surface resistance of a grey face.
 * Checked: memory.
 *
 * @example Two parallel black plates exchange as one black face
 * ```ts
 * starWeights([1, 1], [1, 1])[0] / 2; // => 1
 * ```
 */
export function starWeights(areas: readonly number[], emissivities: readonly number[]): number[] {
  if (emissivities.length !== areas.length) {
    throw new RangeError(
      `starWeights: ${emissivities.length} emissivities for ${areas.length} areas; there must be as many`,
    );
  }
  const factors = meanRadiantFactors(areas);
  return areas.map((area, at) => {
    const emissivity = emissivities[at]!;
    mustBePositive('starWeights', 'an emissivity', emissivity);
    mustLieWithin('starWeights', 'an emissivity', emissivity, 0, 1);
    return area / ((1 - emissivity) / emissivity + 1 / factors[at]!);
  });
}
