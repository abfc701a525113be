// What the edge between two boards adds to the loss of their inside areas.

import { mustBePositive } from './argument.ts';
import { gradedLines, solveSection } from './conduction-2d.ts';

/**
 * Linear transmittance of the edge between two equal boards at a right angle, on inside dimensions, W/(m·K).
 *
 *     psi = heat through the corner / temperature difference - U · (inside lengths)
 *
 * For a cabinet of boards it is about 0.02 W/(m·K), some 2 % of the whole loss: a model on inside areas may leave it out.
 *
 * @param thickness - m, above 0.
 * @param conductivity - W/(m·K), above 0.
 * @param innerFilm - W/(m²·K), above 0; Infinity for an isothermal face.
 * @param outerFilm - W/(m²·K), above 0; Infinity for an isothermal face.
 * @returns psi, above 0: inside areas leave the corner out.
 * @throws RangeError when an argument is 0, negative or not a number.
 *
 * @remarks
 * Valid: the same film up to the corner, where air in truth stands stiller: a little on the high side.
 * Source: ISO 10211:2017 (linear transmittance) by `solveSection`.
 * Checked: against a second discretisation solved with SciPy; isothermal faces against the exact shape factor 1 - (2/pi) ln 2.
 *
 * @example The edge of a cabinet of 18 mm plywood
 * ```ts
 * edgeTransmittance(0.018, 0.13, 1 / 0.13, 1 / 0.13); // => 0.0256
 * ```
 */
export function edgeTransmittance(
  thickness: number,
  conductivity: number,
  innerFilm: number,
  outerFilm: number,
): number {
  mustBePositive('edgeTransmittance', 'thickness', thickness);
  mustBePositive('edgeTransmittance', 'conductivity', conductivity);
  mustBeFilm('innerFilm', innerFilm);
  mustBeFilm('outerFilm', outerFilm);
  // The corner is felt as far as a fin's heat reaches, and at least a few thicknesses.
  const reach = Math.sqrt((thickness * conductivity) / Math.min(innerFilm, outerFilm));
  const leg = 6 * (thickness + reach);
  const lines = gradedLines([0, thickness, thickness + leg], thickness / 100, 1.15);
  const inside = { film: innerFilm, temperature: 1 };
  const outside = { film: outerFilm, temperature: 0 };
  const { heat } = solveSection({
    across: lines,
    down: lines,
    conductivity: (x, y) => (x < thickness || y < thickness ? conductivity : 0),
    surface: (x, y) => {
      if (x === 0 || y === 0) return outside;
      if ((x === thickness && y > thickness) || (y === thickness && x > thickness)) return inside;
      return undefined;
    },
  });
  const uValue = 1 / (1 / innerFilm + thickness / conductivity + 1 / outerFilm);
  return heat - uValue * 2 * leg;
}

function mustBeFilm(name: string, film: number): void {
  if (!(film > 0)) throw new RangeError(`edgeTransmittance: ${name} is ${film}; it must be above 0`);
}
