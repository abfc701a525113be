// Light that reaches a face straight from a lamp.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';

/**
 * Illuminance from a source whose size does not matter.
 *
 *     E = I cos(theta)/d²
 *
 * @param intensity - I towards the face, cd, 0 or more.
 * @param distance - d, m, above 0.
 * @param angle - theta between the light and the face's normal, rad, 0 to pi/2.
 * @returns E in lx.
 * @throws RangeError when an argument is out of these bounds.
 *
 * @remarks
 * Valid: sources smaller than a fifth of the distance, within 1.3 %. Source: inverse square and cosine law, J. H. Lambert,
 * Photometria (1760). Checked: memory.
 *
 * @example 500 lm into all directions, half a metre away
 * ```ts
 * pointIlluminance(500 / (4 * Math.PI), 0.5); // => 159.15
 * ```
 */
export function pointIlluminance(intensity: number, distance: number, angle: number = 0): number {
  mustNotBeNegative('pointIlluminance', 'intensity', intensity);
  mustBePositive('pointIlluminance', 'distance', distance);
  mustLieWithin('pointIlluminance', 'angle', angle, 0, Math.PI / 2);
  return (intensity * Math.cos(angle)) / distance ** 2;
}

/**
 * Illuminance of a plane from a small diffuse lamp that faces it squarely.
 *
 *     E = Phi cos⁴(theta)/(pi h²)
 *
 * @param flux - Phi, lm, 0 or more, all of it into the half space before the lamp.
 * @param height - h from lamp to plane, m, above 0.
 * @param angle - theta from the foot of the lamp to the place, seen from the lamp, rad, 0 to pi/2.
 * @returns E in lx.
 * @throws RangeError when an argument is out of these bounds.
 *
 * @remarks
 * Valid: lamps smaller than a fifth of the height. Source: Lambert's cosine law. Checked: memory.
 *
 * @example 500 lm half a metre up: straight below, and 30 degrees beside
 * ```ts
 * lambertianIlluminance(500, 0.5); // => 636.62
 * lambertianIlluminance(500, 0.5, Math.PI / 6); // => 358.1
 * ```
 */
export function lambertianIlluminance(flux: number, height: number, angle: number = 0): number {
  mustNotBeNegative('lambertianIlluminance', 'flux', flux);
  mustBePositive('lambertianIlluminance', 'height', height);
  mustLieWithin('lambertianIlluminance', 'angle', angle, 0, Math.PI / 2);
  return (flux * Math.cos(angle) ** 4) / (Math.PI * height ** 2);
}

/**
 * Illuminance of a plane straight below a diffuse strip that faces it.
 *
 *     E = phi/(2 pi h) [ g(a1) + g(a2) ],   g(a) = a + sin a cos a,   tan a = x/h
 *
 * @param fluxPerLength - phi, lm/m, 0 or more.
 * @param height - h, m, above 0.
 * @param left - x from the place to one end of the strip, m; below 0 when the strip begins beside it.
 * @param right - The same to the other end.
 * @returns E in lx.
 * @throws RangeError when an argument is out of these bounds.
 *
 * @remarks
 * Valid: strips narrower than a fifth of the height. Source: integral of Lambert's cosine law along a line. Checked: memory.
 *
 * @example Half a metre of 1000 lm/m, half a metre up, above its middle; and without ends
 * ```ts
 * stripIlluminance(1000, 0.5, 0.25, 0.25); // => 549.82
 * stripIlluminance(1000, 0.5, 1e6, 1e6); // => 1000.0
 * ```
 */
export function stripIlluminance(fluxPerLength: number, height: number, left: number, right: number): number {
  mustNotBeNegative('stripIlluminance', 'fluxPerLength', fluxPerLength);
  mustBePositive('stripIlluminance', 'height', height);
  const reach = (x: number): number => {
    const a = Math.atan(x / height);
    return a + Math.sin(a) * Math.cos(a);
  };
  return (fluxPerLength / (2 * Math.PI * height)) * (reach(left) + reach(right));
}

/**
 * Illuminance from a diffuse area of one luminance.
 *
 *     E = pi L F,   L = Phi/(pi A)
 *
 * @param flux - Phi of the area, lm, 0 or more.
 * @param area - A, m², above 0.
 * @param factor - F from the place to the area, see `factorToPolygon`, 0 to 1.
 * @returns E in lx.
 * @throws RangeError when an argument is out of these bounds.
 *
 * @remarks
 * Valid: diffuse areas, nothing between. Source: definition of luminance and configuration factor. Checked: memory.
 *
 * @example A panel of 500 lm and 0.3 m by 0.3 m, half a metre above its middle (F = 0.102372)
 * ```ts
 * areaIlluminance(500, 0.09, 0.102372); // => 568.73
 * ```
 */
export function areaIlluminance(flux: number, area: number, factor: number): number {
  mustNotBeNegative('areaIlluminance', 'flux', flux);
  mustBePositive('areaIlluminance', 'area', area);
  mustLieWithin('areaIlluminance', 'factor', factor, 0, 1);
  return (flux / area) * factor;
}
