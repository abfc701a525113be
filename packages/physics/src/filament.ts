// Filament itself: how long a mass of it is, what a spool holds, how far a bend stretches it.

import { mustBePositive, mustLieWithin } from './argument.ts';

/**
 * Length of a mass of filament.
 *
 *     L = m/(rho pi d^2/4)
 *
 * @param mass - m, kg, above 0.
 * @param density - rho, kg/m³, above 0.
 * @param diameter - d, m, above 0.
 * @returns L in m.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid: even diameter; 0.05 mm off 1.75 mm is 5.7 % of the section. Source: geometry. Checked: printed lengths (second-hand).
 *
 * @example A kilogram of PETG
 * ```ts
 * filamentLength(1, 1270, 0.00175); // => 327.4
 * ```
 */
export function filamentLength(mass: number, density: number, diameter: number): number {
  mustBePositive('filamentLength', 'mass', mass);
  mustBePositive('filamentLength', 'density', density);
  mustBePositive('filamentLength', 'diameter', diameter);
  return mass / (density * (Math.PI / 4) * diameter ** 2);
}

/**
 * Filament on a spool, by the diameter that it is wound to.
 *
 *     m = rho pi/4 (D^2 - d^2) w phi
 *
 * @param density - rho, kg/m³, above 0.
 * @param outer - D of the winding, m, above 0.
 * @param hub - d, m, above 0, not above D.
 * @param width - w between the flanges, m, above 0.
 * @param fill - phi, 0 to 1: 0.785 in square packing, 0.907 in hexagonal, 0.75 to 0.85 in fact.
 * @returns m in kg.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: even winding. Source: geometry; packing of circles. Checked: exact.
 *
 * @example A gauge by diameter: what is left of a kilogram of PLA
 * ```ts
 * windingMass(1240, 0.16, 0.1, 0.055, 0.8); // => 0.668
 * ```
 */
export function windingMass(density: number, outer: number, hub: number, width: number, fill: number): number {
  mustBePositive('windingMass', 'density', density);
  mustBePositive('windingMass', 'outer', outer);
  mustBePositive('windingMass', 'hub', hub);
  mustLieWithin('windingMass', 'hub', hub, 0, outer);
  mustBePositive('windingMass', 'width', width);
  mustLieWithin('windingMass', 'fill', fill, 0, 1);
  return density * (Math.PI / 4) * (outer ** 2 - hub ** 2) * width * fill;
}

/**
 * Strain of the outer fibre of a bent round rod.
 *
 *     epsilon = d/(2 R)
 *
 * @param diameter - d, m, above 0.
 * @param radius - R of the bend's neutral fibre, m, above 0.
 * @returns epsilon.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid: pure bending of a straight elastic rod. Source: Euler and Bernoulli, e.g. Roark's Formulas for Stress and Strain, ch. 8. Checked: exact.
 *
 * @example 1.75 mm round 50 mm
 * ```ts
 * bendStrain(0.00175, 0.05); // => 0.0175
 * ```
 */
export function bendStrain(diameter: number, radius: number): number {
  mustBePositive('bendStrain', 'diameter', diameter);
  mustBePositive('bendStrain', 'radius', radius);
  return diameter / (2 * radius);
}
