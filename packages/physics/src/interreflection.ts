// Light thrown to and fro between the faces of a closed space.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import { solveLinear } from './linear-equations.ts';

/**
 * How many times over the first light of a closed diffuse space comes back, beside itself.
 *
 *     M = rho/(1 - rho (1 - f)),   indirect E = (Phi/A) M
 *
 * @param reflectance - rho, mean over the area, 0 to below 1.
 * @param openings - f, share of the area that is open, 0 to 1.
 * @returns M.
 * @throws RangeError when an argument is out of these bounds.
 *
 * @remarks
 * Valid: spaces about as wide as deep as high, light spread evenly by its first hit. Source: the integrating sphere's multiplier,
 * W. E. Sumpner 1892. Checked: memory.
 *
 * @example White paint, and matt black
 * ```ts
 * cavityMultiplier(0.8); // => 4.000
 * cavityMultiplier(0.05); // => 0.0526
 * ```
 */
export function cavityMultiplier(reflectance: number, openings: number = 0): number {
  mustLieWithin('cavityMultiplier', 'reflectance', reflectance, 0, 1);
  mustLieWithin('cavityMultiplier', 'openings', openings, 0, 1);
  const multiplier = reflectance / (1 - reflectance * (1 - openings));
  mustNotBeNegative('cavityMultiplier', 'the multiplier', multiplier);
  return multiplier;
}

/**
 * Flux that a lamp must give for a mean illuminance on a plane: the lumen method.
 *
 *     Phi = E A/(UF MF)
 *
 * @param illuminance - E, lx, 0 or more.
 * @param area - A of the plane, m², above 0.
 * @param utilisation - UF, share of the lamp's light that reaches the plane, reflections included, above 0.
 * @param maintenance - MF, what is left when lamp and faces are dusty, above 0 to 1.
 * @returns Phi in lm.
 * @throws RangeError when an argument is out of these bounds.
 *
 * @remarks
 * Valid: planes lit about evenly. Source: lumen method, e.g. CIBSE lighting guides. Checked: second-hand.
 *
 * @example 500 lx on 0.36 m² in a black bay and in a white one
 * ```ts
 * fluxForIlluminance(500, 0.36, 0.154, 1); // => 1169
 * fluxForIlluminance(500, 0.36, 0.688, 1); // => 262
 * ```
 */
export function fluxForIlluminance(
  illuminance: number,
  area: number,
  utilisation: number,
  maintenance: number,
): number {
  mustNotBeNegative('fluxForIlluminance', 'illuminance', illuminance);
  mustBePositive('fluxForIlluminance', 'area', area);
  mustBePositive('fluxForIlluminance', 'utilisation', utilisation);
  mustLieWithin('fluxForIlluminance', 'maintenance', maintenance, Number.MIN_VALUE, 1);
  return (illuminance * area) / (utilisation * maintenance);
}

/**
 * Illuminance of every face of a closed diffuse space, with all reflections.
 *
 *     E_i = E0_i + sum_j F_ij rho_j E_j
 *
 * @param direct - E0, what reaches each face straight from lamps, lx, 0 or more.
 * @param reflectances - rho of each face, 0 to 1.
 * @param viewFactors - Row i: F_ij from face i to every face j; rows add up to at most 1, what is missing leaves the space.
 * @returns E of each face in lx, its direct part included.
 * @throws RangeError when shapes do not fit, or a number is out of these bounds.
 *
 * @remarks
 * Valid: diffuse faces, each evenly lit. Source: radiosity method, as for radiation in Holman, Heat Transfer, 8-6.
 * Checked: second-hand.
 *
 * @example Two endless plates of 0.8 and 0.5; the first sends 1000 lm/m² to the second
 * ```ts
 * interreflect([0, 1000], [0.8, 0.5], [[0, 1], [1, 0]])[1]; // => 1666.67
 * interreflect([0, 1000], [0.8, 0.5], [[0, 1], [1, 0]])[0]; // => 833.33
 * ```
 */
export function interreflect(
  direct: readonly number[],
  reflectances: readonly number[],
  viewFactors: readonly (readonly number[])[],
): number[] {
  const count = direct.length;
  if (reflectances.length !== count || viewFactors.length !== count || viewFactors.some((row) => row.length !== count))
    throw new RangeError(`interreflect: viewFactors is not ${count} by ${count}; it must have a row for each face`);
  for (const E0 of direct) mustNotBeNegative('interreflect', 'a direct illuminance', E0);
  for (const rho of reflectances) mustLieWithin('interreflect', 'a reflectance', rho, 0, 1);
  const matrix = viewFactors.map((row, i) => row.map((F, j) => (i === j ? 1 : 0) - F * reflectances[j]!));
  return solveLinear(matrix, [...direct]);
}
