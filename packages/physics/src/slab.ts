// A flat board between two equal films, solved exactly by eigenfunction series: what a wall cut into nodes is measured against.
// Fourier number Fo = alpha t / L², Biot number Bi = h L / k, both on half the thickness L.

import { mustBePositive, mustNotBeNegative } from './argument.ts';

/** Shares of the first temperature difference that are left in a board cooled on both faces. */
export interface SlabShares {
  readonly centre: number;
  readonly surface: number;
  readonly mean: number;
}

/**
 * Cooling of a board with the same film on both faces, from one uniform temperature.
 *
 *     share(x) = sum of C_n cos(z_n x/L) exp(-z_n² Fo),    z tan z = Bi,    C_n = 4 sin z / (2 z + sin 2z)
 *
 * @param biot - Bi on half the thickness, above 0.
 * @param fourier - Fo on half the thickness, 0 or more.
 * @returns Shares left at the centre, at the surface and on average.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: constant properties and film. The series is cut where its terms no longer count; near Fo = 0 that takes many.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, eq 5.42 (memory); Carslaw and Jaeger 3.11 (memory).
 * Checked: memory for the formula; values against an independent program.
 *
 * @example Plywood of 18 mm with 7.69 W/(m²·K) on both faces after 15 minutes
 * ```ts
 * slabCooling(1 / 0.13 * 0.009 / 0.13, 1.625e-7 * 900 / 0.009 ** 2).centre; // => 0.4764
 * ```
 */
export function slabCooling(biot: number, fourier: number): SlabShares {
  mustBePositive('slabCooling', 'biot', biot);
  mustNotBeNegative('slabCooling', 'fourier', fourier);
  if (fourier === 0) return { centre: 1, surface: 1, mean: 1 };
  let centre = 0;
  let surface = 0;
  let mean = 0;
  for (let n = 0; n < MOST_TERMS; n++) {
    const z = evenRoot(n, biot);
    const decay = Math.exp(-z * z * fourier);
    if (decay < NEGLIGIBLE) break;
    const amplitude = ((4 * Math.sin(z)) / (2 * z + Math.sin(2 * z))) * decay;
    centre += amplitude;
    surface += amplitude * Math.cos(z);
    mean += (amplitude * Math.sin(z)) / z;
  }
  return { centre, surface, mean };
}

/** Heat flows at the two faces of a wall, W/m² for each kelvin by which the air on one side was stepped up. */
export interface WallResponse {
  /** Into the wall from the warmed side. */
  readonly inflow: number;
  /** Out of the wall into the other side. */
  readonly outflow: number;
}

/**
 * Response of a homogeneous wall to a step of the air temperature on one side.
 *
 * Half the step is put on both airs and half with opposite signs; each half is one series, cosines and sines.
 *
 * @param thickness - m, above 0.
 * @param conductivity - W/(m·K), above 0.
 * @param volumetricCapacity - Density times heat capacity, J/(m³·K), above 0.
 * @param film - Film on either face, W/(m²·K), above 0.
 * @param time - s since the step, above 0.
 * @returns Heat flows at both faces; both tend to U.
 * @throws RangeError when an argument is 0, negative or not a number.
 *
 * @remarks
 * Valid: constant properties and films.
 * Source: separation of variables, as Carslaw and Jaeger 3.11 and 3.12 (memory).
 * Checked: values against an independent finite-difference program.
 *
 * @example Plywood of 18 mm, five minutes after its inner air has warmed by 1 K
 * ```ts
 * wallStepResponse(0.018, 0.13, 8e5, 1 / 0.13, 300).inflow; // => 5.10
 * ```
 */
export function wallStepResponse(
  thickness: number,
  conductivity: number,
  volumetricCapacity: number,
  film: number,
  time: number,
): WallResponse {
  mustBePositive('wallStepResponse', 'thickness', thickness);
  mustBePositive('wallStepResponse', 'conductivity', conductivity);
  mustBePositive('wallStepResponse', 'volumetricCapacity', volumetricCapacity);
  mustBePositive('wallStepResponse', 'film', film);
  mustBePositive('wallStepResponse', 'time', time);
  const half = thickness / 2;
  const biot = (film * half) / conductivity;
  const fourier = (conductivity * time) / (volumetricCapacity * half * half);
  const even = 1 - slabCooling(biot, fourier).surface;
  const odd = oddSurface(biot, fourier);
  return { inflow: film * (1 - (even + odd) / 2), outflow: (film * (even - odd)) / 2 };
}

/** Face temperature of a board whose airs are stepped to +1 and -1: the centre stays at 0 and the roots solve z cot z = -Bi. */
function oddSurface(biot: number, fourier: number): number {
  let sum = 0;
  for (let n = 0; n < MOST_TERMS; n++) {
    const z = oddRoot(n, biot);
    const decay = Math.exp(-z * z * fourier);
    if (decay < NEGLIGIBLE) break;
    const norm = 0.5 - Math.sin(2 * z) / (4 * z);
    sum += ((biot * Math.sin(z) ** 2) / (z * z * norm)) * decay;
  }
  return biot / (1 + biot) - sum;
}

const MOST_TERMS = 20_000;
const NEGLIGIBLE = 1e-18;

/** Root n of z sin z = Bi cos z, which lies between n pi and n pi + pi/2. */
function evenRoot(n: number, biot: number): number {
  return bisect((z) => z * Math.sin(z) - biot * Math.cos(z), n * Math.PI, (n + 0.5) * Math.PI);
}

/** Root n of z cos z = -Bi sin z, which lies between n pi + pi/2 and (n + 1) pi. */
function oddRoot(n: number, biot: number): number {
  return bisect((z) => z * Math.cos(z) + biot * Math.sin(z), (n + 0.5) * Math.PI, (n + 1) * Math.PI);
}

/** Sixty halvings of an interval at whose ends the law has opposite signs. */
function bisect(law: (z: number) => number, start: number, end: number): number {
  let low = start;
  let high = end;
  const startsBelow = law(low) < 0;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (law(middle) < 0 === startsBelow) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
