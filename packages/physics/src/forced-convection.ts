// Convection where something drives the air: a fan, a jet, a bed that moves; and how it mixes with natural convection.

import { airConductivity, airKinematicViscosity, airPrandtl } from './air.ts';
import { mustBePositive, mustNotBeNegative } from './argument.ts';

/**
 * Mean Nusselt number of a flat plate in a laminar stream along it.
 *
 *     Nu = 0.664 Re^(1/2) Pr^(1/3)
 *
 * @param reynolds - Re over the plate's length in the stream, 0 or more.
 * @param prandtl - Pr at the film temperature, above 0.
 * @returns Nu over the length.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: Re < 5e5, Pr > 0.6, smooth stream. Turbulent room air gives more.
 * Source: E. Pohlhausen 1921, as Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, eq 7.30.
 * Checked: memory.
 *
 * @example A plate of 0.5 m in a thin stream (Incropera and DeWitt, example 7.1: 57.4)
 * ```ts
 * nusseltPlateStream(9597, 0.687); // => 57.4
 * ```
 */
export function nusseltPlateStream(reynolds: number, prandtl: number): number {
  mustNotBeNegative('nusseltPlateStream', 'reynolds', reynolds);
  mustBePositive('nusseltPlateStream', 'prandtl', prandtl);
  return 0.664 * Math.sqrt(reynolds) * Math.cbrt(prandtl);
}

/**
 * Mean Nusselt number of a cylinder, or of a small part like one, across a stream.
 *
 *     Nu = 0.3 + 0.62 Re^(1/2) Pr^(1/3) / (1 + (0.4/Pr)^(2/3))^(1/4) · (1 + (Re/282000)^(5/8))^(4/5)
 *
 * @param reynolds - Re over the diameter, 0 or more.
 * @param prandtl - Pr at the film temperature, above 0.
 * @returns Nu over the diameter.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: Re Pr > 0.2.
 * Source: S. W. Churchill, M. Bernstein, J. Heat Transfer 99 (1977) 300-306.
 * Checked: second-hand.
 *
 * @example A rod of 12.7 mm in 10 m/s (Incropera and DeWitt, example 7.4: 40.6)
 * ```ts
 * nusseltCylinder(6071, 0.7); // => 40.6
 * ```
 */
export function nusseltCylinder(reynolds: number, prandtl: number): number {
  mustNotBeNegative('nusseltCylinder', 'reynolds', reynolds);
  mustBePositive('nusseltCylinder', 'prandtl', prandtl);
  const laminar = (0.62 * Math.sqrt(reynolds) * Math.cbrt(prandtl)) / (1 + Math.cbrt(0.4 / prandtl) ** 2) ** 0.25;
  return 0.3 + laminar * (1 + (reynolds / 282_000) ** (5 / 8)) ** (4 / 5);
}

/** Whether a stream helps the buoyant flow (or crosses it), or runs against it. */
export type Mixing = 'assisting' | 'opposing';

/**
 * Forced and natural convection together. Nusselt numbers of one length, or films, may be given alike.
 *
 *     Nu³ = Nu_forced³ ± Nu_natural³
 *
 * @param forced - Nu or film of the stream alone, 0 or more.
 * @param natural - Nu or film of the buoyancy alone, 0 or more.
 * @param mixing - Plus for an assisting or crossing stream, minus for an opposing one.
 * @returns Nu or film of both; opposing, it can fall to 0 where they cancel, which real air does not do.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: a rule of thumb; exponents of 3 to 4 are in use.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, 9.9.
 * Checked: memory.
 *
 * @example A bed at 60 °C with 0.5 m/s over it
 * ```ts
 * mixedConvection(5.71, 6.8); // => 7.94
 * ```
 */
export function mixedConvection(forced: number, natural: number, mixing: Mixing = 'assisting'): number {
  mustNotBeNegative('mixedConvection', 'forced', forced);
  mustNotBeNegative('mixedConvection', 'natural', natural);
  const sign = mixing === 'assisting' ? 1 : -1;
  return Math.cbrt(Math.abs(forced ** 3 + sign * natural ** 3));
}

/**
 * Film of a stream of air along a face, W/(m²·K): the laminar plate with the air's own properties.
 *
 * @param speed - m/s, 0 or more.
 * @param length - Length of the face in the stream, m, above 0.
 * @param filmKelvin - Mean of face and air, K, above 0.
 * @returns Film, W/(m²·K), without the natural part.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: as `nusseltPlateStream`.
 * Source: as `nusseltPlateStream`, air of the US Standard Atmosphere 1976.
 * Checked: memory.
 *
 * @example A bed of 235 mm at 60 °C with 0.5 m/s of 25 °C over it
 * ```ts
 * streamFilm(0.5, 0.235, 315.65); // => 5.71
 * ```
 */
export function streamFilm(speed: number, length: number, filmKelvin: number): number {
  mustNotBeNegative('streamFilm', 'speed', speed);
  mustBePositive('streamFilm', 'length', length);
  const reynolds = (speed * length) / airKinematicViscosity(filmKelvin);
  return (nusseltPlateStream(reynolds, airPrandtl(filmKelvin)) * airConductivity(filmKelvin)) / length;
}

/**
 * Speed at which a jet keeps a bay's air turning, m/s.
 *
 *     U = sqrt(V u0 / (A_bay / 2))
 *
 * The jet's momentum, volume flow V times its speed u0, is kept until it fills half the bay's cross-section; the other half
 * carries the air back.
 *
 * @param flow - V, m³/s, 0 or more.
 * @param jetSpeed - u0 at the opening, m/s, 0 or more.
 * @param crossSection - A_bay across the jet, m², above 0.
 * @returns Speed along the walls; an estimate from above, since walls and parts slow it.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: an order of magnitude. Fans are said to add 2 to 5 W/(m²·K) to a bay's films.
 * Source: momentum balance; common practice, no source.
 * Checked: memory.
 *
 * @example 30 m³/h through a hole of 92 mm into a bay of 0.6 m by 0.85 m
 * ```ts
 * stirredSpeed(30 / 3600, 1.25, 0.6 * 0.85); // => 0.20
 * ```
 */
export function stirredSpeed(flow: number, jetSpeed: number, crossSection: number): number {
  mustNotBeNegative('stirredSpeed', 'flow', flow);
  mustNotBeNegative('stirredSpeed', 'jetSpeed', jetSpeed);
  mustBePositive('stirredSpeed', 'crossSection', crossSection);
  return Math.sqrt((flow * jetSpeed) / (crossSection / 2));
}
