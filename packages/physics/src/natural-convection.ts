// Natural convection from faces in otherwise still air, as published: Nusselt numbers from Rayleigh numbers.
// These are for single answers and for checking. A solver takes `filmLaw`, which is smooth and cheap.

import { airExpansion, airKinematicViscosity, airPrandtl } from './air.ts';
import { mustBePositive, mustNotBeNegative } from './argument.ts';
import { GRAVITY } from './constants.ts';

/**
 * Rayleigh number: buoyancy over what viscosity and conduction wipe out.
 *
 *     Ra = g beta dT L³ Pr / nu²
 *
 * @param length - L, m, above 0: the height of an upright face, area over perimeter of a level one.
 * @param difference - dT, K, between face and air; its sign does not matter.
 * @param kinematicViscosity - nu at the film temperature, m²/s, above 0.
 * @param prandtl - Pr at the film temperature, above 0.
 * @param expansion - beta, 1/K, above 0; for a gas one over the film temperature.
 * @returns Ra, 0 or more.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: definition.
 * Source: any heat-transfer text.
 * Checked: second-hand.
 *
 * @example A square plate of 1 m, 200 K above its air (Kreith, example 5.3: 7.46e7 over a quarter of a metre)
 * ```ts
 * rayleighNumber(0.25, 200, 2.7e-5, 0.71, 1 / 400); // => 7.46e7
 * ```
 */
export function rayleighNumber(
  length: number,
  difference: number,
  kinematicViscosity: number,
  prandtl: number,
  expansion: number,
): number {
  mustBePositive('rayleighNumber', 'length', length);
  mustNotBeNegative('rayleighNumber', 'difference', Math.abs(difference));
  mustBePositive('rayleighNumber', 'kinematicViscosity', kinematicViscosity);
  mustBePositive('rayleighNumber', 'prandtl', prandtl);
  mustBePositive('rayleighNumber', 'expansion', expansion);
  return (GRAVITY * expansion * Math.abs(difference) * length ** 3 * prandtl) / kinematicViscosity ** 2;
}

/**
 * Rayleigh number in dry air at one atmosphere.
 *
 * @param length - m, above 0, as in `rayleighNumber`.
 * @param difference - K, between face and air; its sign does not matter.
 * @param filmKelvin - Mean of face and air, K, above 0.
 * @returns Ra, 0 or more.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: dry air at one atmosphere.
 * Source: `rayleighNumber` with the air of the US Standard Atmosphere 1976.
 * Checked: second-hand.
 *
 * @example A bed of 235 mm at 60 °C in air of 25 °C
 * ```ts
 * rayleighInAir(0.235 / 4, 35, 315.65); // => 5.26e5
 * ```
 */
export function rayleighInAir(length: number, difference: number, filmKelvin: number): number {
  return rayleighNumber(
    length,
    difference,
    airKinematicViscosity(filmKelvin),
    airPrandtl(filmKelvin),
    airExpansion(filmKelvin),
  );
}

/**
 * Mean Nusselt number of an upright plate, laminar to turbulent in one curve.
 *
 *     Nu = (0.825 + 0.387 Ra^(1/6) / (1 + (0.492/Pr)^(9/16))^(8/27))²
 *
 * Its price for being one curve: the laminar fit of the same paper reads lower, by 17 % at Ra = 1e8 and 33 % at 1e9, where
 * a cabinet's walls lie. Carry that spread as doubt.
 *
 * @param rayleigh - Ra over the height, 0 or more.
 * @param prandtl - Pr at the film temperature, above 0.
 * @returns Nu over the height (film = Nu k / height), never below 0.825² = 0.68.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: 0.1 ≤ Ra ≤ 1e12, one surface temperature (memory).
 * Source: S. W. Churchill, H. H. S. Chu, Int. J. Heat Mass Transfer 18 (1975) 1323-1329, doi:10.1016/0017-9310(75)90243-4.
 * Checked: second-hand.
 *
 * @example The glass fire screen of Incropera et al., example 9.2
 * ```ts
 * nusseltVerticalPlate(0.69 * 2.63e9, 0.69); // => 147.16
 * ```
 */
export function nusseltVerticalPlate(rayleigh: number, prandtl: number): number {
  mustNotBeNegative('nusseltVerticalPlate', 'rayleigh', rayleigh);
  mustBePositive('nusseltVerticalPlate', 'prandtl', prandtl);
  return (0.825 + verticalSlope(prandtl) * rayleigh ** (1 / 6)) ** 2;
}

/** What Ra^(1/6) is multiplied by in the square root of Nu; a film law precomputes it. */
export function verticalSlope(prandtl: number): number {
  return 0.387 / (1 + (0.492 / prandtl) ** (9 / 16)) ** (8 / 27);
}

/**
 * Mean Nusselt number of an upright plate while its boundary layer is laminar.
 *
 *     Nu = 0.68 + 0.670 Ra^(1/4) / (1 + (0.492/Pr)^(9/16))^(4/9)
 *
 * @param rayleigh - Ra over the height, 0 or more.
 * @param prandtl - Pr at the film temperature, above 0.
 * @returns Nu over the height.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: Ra < 1e9 (memory).
 * Source: Churchill and Chu 1975, the paper of `nusseltVerticalPlate`.
 * Checked: second-hand.
 *
 * @example The edge of a small part, 40 mm tall
 * ```ts
 * nusseltVerticalPlateLaminar(1.44e5, 0.71); // => 10.7
 * ```
 */
export function nusseltVerticalPlateLaminar(rayleigh: number, prandtl: number): number {
  mustNotBeNegative('nusseltVerticalPlateLaminar', 'rayleigh', rayleigh);
  mustBePositive('nusseltVerticalPlateLaminar', 'prandtl', prandtl);
  return 0.68 + (0.67 * rayleigh ** 0.25) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (4 / 9);
}

/**
 * Mean Nusselt number of an upright plate by the integral method, laminar: a second equation for the same experiments.
 *
 *     Nu = 0.678 Ra^(1/4) (Pr / (0.952 + Pr))^(1/4)
 *
 * @param rayleigh - Ra over the height, 0 or more.
 * @param prandtl - Pr at the film temperature, above 0.
 * @returns Nu over the height.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: laminar, Ra 1e5 to 1e9 (memory).
 * Source: Squire and Eckert, as J. H. Lienhard IV and V, A Heat Transfer Textbook, eq 8.27.
 * Checked: memory for the formula; a worked example second-hand.
 *
 * @example A plate of 0.4 m at 40 °C in air of 14 °C
 * ```ts
 * nusseltVerticalPlateIntegral(rayleighInAir(0.4, 26, 300), 0.71); // => 61
 * ```
 */
export function nusseltVerticalPlateIntegral(rayleigh: number, prandtl: number): number {
  mustNotBeNegative('nusseltVerticalPlateIntegral', 'rayleigh', rayleigh);
  mustBePositive('nusseltVerticalPlateIntegral', 'prandtl', prandtl);
  return 0.678 * (rayleigh * (prandtl / (0.952 + prandtl))) ** 0.25;
}

/**
 * Mean Nusselt number of a level face whose air is unstable: hot face up, or cold face down.
 *
 *     Nu = 0.54 Ra^(1/4)    Ra < 1e7
 *     Nu = 0.15 Ra^(1/3)    above
 *
 * The two pieces do not meet: Nu steps up by 6 % at 1e7. `filmLaw` joins them smoothly.
 *
 * @param rayleigh - Ra over area / perimeter, 0 or more.
 * @returns Nu over area / perimeter.
 * @throws RangeError when the argument is out of bounds.
 *
 * @remarks
 * Valid: 1e4 ≤ Ra ≤ 1e11. For a hot bed other published fits read from 38 % less to 30 % more: carry ±25 %.
 * Source: W. H. McAdams, Heat Transmission, 1954; length scale by J. R. Lloyd and W. R. Moran 1974.
 * Checked: second-hand.
 *
 * @example A bed of 235 mm at 60 °C in air of 25 °C
 * ```ts
 * nusseltHotFaceUp(5.27e5); // => 14.55
 * ```
 */
export function nusseltHotFaceUp(rayleigh: number): number {
  mustNotBeNegative('nusseltHotFaceUp', 'rayleigh', rayleigh);
  return rayleigh < 1e7 ? 0.54 * rayleigh ** 0.25 : 0.15 * Math.cbrt(rayleigh);
}

/**
 * Mean Nusselt number of a level face whose air is stable: hot face down, or cold face up.
 *
 *     Nu = 0.27 Ra^(1/4)
 *
 * @param rayleigh - Ra over area / perimeter, 0 or more.
 * @returns Nu over area / perimeter.
 * @throws RangeError when the argument is out of bounds.
 *
 * @remarks
 * Valid: 1e5 ≤ Ra ≤ 1e10.
 * Source: W. H. McAdams, Heat Transmission, 1954.
 * Checked: second-hand.
 *
 * @example The underside of a bed of 235 mm at 60 °C in air of 25 °C
 * ```ts
 * nusseltHotFaceDown(5.27e5); // => 7.27
 * ```
 */
export function nusseltHotFaceDown(rayleigh: number): number {
  mustNotBeNegative('nusseltHotFaceDown', 'rayleigh', rayleigh);
  return 0.27 * rayleigh ** 0.25;
}

/**
 * Mean Nusselt number of a level face whose air is unstable, in one curve from conduction to turbulence.
 *
 *     NuT = 0.835 · 0.671 Ra^(1/4) / (1 + (0.492/Pr)^(9/16))^(4/9)
 *     Nul = 1.4 / ln(1 + 1.4/NuT),    Nut = 0.14 Ra^(1/3),    Nu = (Nul^10 + Nut^10)^(1/10)
 *
 * @param rayleigh - Ra over area / perimeter, 0 or more.
 * @param prandtl - Pr at the film temperature, above 0.
 * @returns Nu over area / perimeter, 13 % below `nusseltHotFaceUp` for a bed.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: 1 ≤ Ra ≤ 1e10.
 * Source: G. D. Raithby, K. G. T. Hollands, Handbook of Heat Transfer, 3rd ed. 1998, ch. 4.
 * Checked: memory.
 *
 * @example A bed of 235 mm at 60 °C in air of 25 °C
 * ```ts
 * nusseltHotFaceUpBlend(5.27e5, 0.71); // => 12.7
 * ```
 */
export function nusseltHotFaceUpBlend(rayleigh: number, prandtl: number): number {
  mustNotBeNegative('nusseltHotFaceUpBlend', 'rayleigh', rayleigh);
  mustBePositive('nusseltHotFaceUpBlend', 'prandtl', prandtl);
  if (rayleigh === 0) return 0;
  const thin = (0.835 * 0.671 * rayleigh ** 0.25) / (1 + (0.492 / prandtl) ** (9 / 16)) ** (4 / 9);
  const laminar = 1.4 / Math.log1p(1.4 / thin);
  const turbulent = 0.14 * Math.cbrt(rayleigh);
  return (laminar ** 10 + turbulent ** 10) ** 0.1;
}

/**
 * Mean Nusselt number of a block that its boundary layer runs around: a motor, a power supply, a spool.
 *
 *     Nu = 0.52 Ra^(1/4)
 *
 * @param rayleigh - Ra over the way that a particle travels along the block, 0 or more; for a cube twice its side.
 * @returns Nu over that way.
 * @throws RangeError when the argument is out of bounds.
 *
 * @remarks
 * Valid: 1e4 ≤ Ra ≤ 1e9.
 * Source: J. P. Holman, Heat Transfer, table 7-1 (irregular solids).
 * Checked: second-hand.
 *
 * @example A cube of 0.2 m, 50 K above its air (Holman, example 7-6)
 * ```ts
 * nusseltBlock(rayleighNumber(0.4, 50, 17.47e-6, 0.7, 1 / 308)); // => 64.3
 * ```
 */
export function nusseltBlock(rayleigh: number): number {
  mustNotBeNegative('nusseltBlock', 'rayleigh', rayleigh);
  return 0.52 * rayleigh ** 0.25;
}
