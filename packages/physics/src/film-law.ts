// Natural convection for a solver: the film of a face as a smooth function of the signed difference between face and air.

import { airConductivity, airExpansion, airKinematicViscosity, airPrandtl } from './air.ts';
import { mustBePositive } from './argument.ts';
import { GRAVITY } from './constants.ts';
import { verticalSlope } from './natural-convection.ts';

/** Which way a face looks into the air that it touches: a ceiling faces down, a floor or a bed's top faces up. */
export type Orientation = 'vertical' | 'faces-up' | 'faces-down';

/** Film of a face, W/(m²·K), from its temperature less the air's, K. */
export type FilmLaw = (difference: number) => number;

/**
 * Below about this difference, K, buoyancy is faded out, so that the film has no kink and no infinite slope where face and
 * air change places. At 0.5 K the film is 1 % low, at 0.1 K 20 %; radiation carries nearly all heat there.
 */
const FADE = 0.05;

/** Nu over area / perimeter of a level face in still air that does not move: a disc gives off 2 D k on either side (exact). */
const LEVEL_CONDUCTION = 2 / Math.PI;

/**
 * Prepares the film law of one face, with the air's properties evaluated once.
 *
 *     upright:   Nu = (0.825 + B(Pr) Ra^(1/6))²                             Churchill and Chu
 *     unstable:  Nu = ((0.54 Ra^(1/4))^32 + (0.15 Ra^(1/3))^32)^(1/32)      McAdams, both pieces joined
 *     stable:    Nu = 0.27 Ra^(1/4)                                         McAdams
 *
 * A level face has sqrt(Nu² + (2/pi)²), so that a little conduction is left; an upright one has 0.68 from its law. Within the
 * law Ra takes dT = difference; near 0 it is faded out as difference² / (difference² + FADE²). A hot face up or a cold face
 * down is unstable, the opposite stable; the sign of the difference chooses.
 *
 * Cost: a few square and cube roots, no power, no allocation. The law that is returned does not check its argument.
 *
 * @param orientation - Which way the face looks into the air.
 * @param length - m, above 0: the height of an upright face, area over perimeter of a level one.
 * @param filmKelvin - Mean of face and air for which properties are taken, K, above 0; 10 K off costs about 2 %.
 * @returns Film, W/(m²·K), from the signed difference face - air, K: positive, continuous, even for an upright face.
 * @throws RangeError when the length or the film temperature is not above 0.
 *
 * @remarks
 * Valid: as the laws it joins. Between Ra 4.7e6 and 1e7 it reads up to 6 % above McAdams' first piece. Carry ±25 %.
 * Source: Churchill and Chu 1975; McAdams 1954; the fading and the exponent 32 are this program's own.
 * Checked: second-hand.
 *
 * @example A cabinet's side of 0.8 m, a bay's ceiling under warm air, its floor
 * ```ts
 * filmLaw('vertical', 0.8, 308.15)(5); // => 2.57
 * filmLaw('faces-down', 0.171, 308.15)(-5); // => 3.2
 * filmLaw('faces-up', 0.171, 308.15)(-5); // => 1.6
 * ```
 */
export function filmLaw(orientation: Orientation, length: number, filmKelvin: number): FilmLaw {
  mustBePositive('filmLaw', 'length', length);
  mustBePositive('filmLaw', 'filmKelvin', filmKelvin);
  const prandtl = airPrandtl(filmKelvin);
  const rayleighPerKelvin =
    (GRAVITY * airExpansion(filmKelvin) * length ** 3 * prandtl) / airKinematicViscosity(filmKelvin) ** 2;
  const scale = airConductivity(filmKelvin) / length;
  if (orientation === 'vertical') return uprightLaw(scale, verticalSlope(prandtl) * rayleighPerKelvin ** (1 / 6));
  return levelLaw(scale, rayleighPerKelvin, orientation === 'faces-up');
}

function uprightLaw(scale: number, slope: number): FilmLaw {
  return (difference) => {
    const square = difference * difference;
    const padded = square + FADE * FADE;
    const sixthRoot = Math.cbrt(Math.sqrt(Math.sqrt(padded)));
    const root = 0.825 + ((slope * square) / padded) * sixthRoot;
    return scale * root * root;
  };
}

function levelLaw(scale: number, rayleighPerKelvin: number, facesUp: boolean): FilmLaw {
  const fourth = Math.sqrt(Math.sqrt(rayleighPerKelvin));
  const laminar = 0.54 * fourth;
  const stable = 0.27 * fourth;
  const turbulent = 0.15 * Math.cbrt(rayleighPerKelvin);
  return (difference) => {
    const square = difference * difference;
    const padded = square + FADE * FADE;
    const size = Math.sqrt(padded);
    const fourthRoot = Math.sqrt(Math.sqrt(size));
    const unstable = difference > 0 === facesUp;
    const still = unstable ? join(laminar * fourthRoot, turbulent * Math.cbrt(size)) : stable * fourthRoot;
    const nusselt = (square / padded) * still;
    return scale * Math.sqrt(nusselt * nusselt + LEVEL_CONDUCTION * LEVEL_CONDUCTION);
  };
}

/** (a^32 + b^32)^(1/32) of two positive numbers by squaring and square roots: within 2.2 % of the larger one, and smooth. */
function join(a: number, b: number): number {
  const ratio = Math.min(a, b) / Math.max(a, b);
  const second = ratio * ratio;
  const fourth = second * second;
  const eighth = fourth * fourth;
  const sixteenth = eighth * eighth;
  const sum = 1 + sixteenth * sixteenth;
  return Math.max(a, b) * Math.sqrt(Math.sqrt(Math.sqrt(Math.sqrt(Math.sqrt(sum)))));
}

/**
 * Film of a face by natural convection, W/(m²·K), for a single answer; a solver prepares `filmLaw` once instead.
 *
 * @param orientation - Which way the face looks into the air.
 * @param length - m, above 0: the height of an upright face, area over perimeter of a level one.
 * @param surfaceKelvin - Face, K.
 * @param airKelvin - Air away from the face, K.
 * @returns Film, W/(m²·K), above 0.
 * @throws RangeError when the length or the mean temperature is not above 0.
 *
 * @remarks
 * Valid: as `filmLaw`.
 * Source: as `filmLaw`.
 * Checked: second-hand.
 *
 * @example The top of a bed of 235 mm at 60 °C in air of 25 °C
 * ```ts
 * naturalFilm('faces-up', 0.235 / 4, 333.15, 298.15); // => 6.8
 * ```
 */
export function naturalFilm(
  orientation: Orientation,
  length: number,
  surfaceKelvin: number,
  airKelvin: number,
): number {
  return filmLaw(orientation, length, (surfaceKelvin + airKelvin) / 2)(surfaceKelvin - airKelvin);
}
