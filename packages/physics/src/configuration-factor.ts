// How much of what a small flat element sees is a given face: closed forms. The other way round the same number is the share
// of its light that a small diffuse emitter sends there.

import { mustBePositive, mustNotBeNegative } from './argument.ts';

/** Place or direction: x, y, z. */
export type Vector = readonly [x: number, y: number, z: number];

/**
 * Share of a small element's view that a disk fills, coaxial with it and parallel to it.
 *
 *     F = R²/(R² + h²)
 *
 * @param radius - R, m, above 0.
 * @param distance - h, m, 0 or more.
 * @returns F, 0 to 1.
 * @throws RangeError when an argument lies outside its bounds.
 *
 * @remarks
 * Valid: diffuse light or heat, nothing between. Source: J. R. Howell, A Catalog of Radiation Heat Transfer Configuration
 * Factors, plane element to a coaxial disk. Checked: formula (memory).
 *
 * @example A disk as far as it is wide, from its middle
 * ```ts
 * factorToDisk(1, 1); // => 0.5
 * ```
 */
export function factorToDisk(radius: number, distance: number): number {
  mustBePositive('factorToDisk', 'radius', radius);
  mustNotBeNegative('factorToDisk', 'distance', distance);
  return radius ** 2 / (radius ** 2 + distance ** 2);
}

/**
 * Share of a small element's view that a parallel rectangle fills, one of whose corners stands straight above it.
 *
 *     F = 1/(2 pi) [ X/√(1+X²) atan(Y/√(1+X²)) + Y/√(1+Y²) atan(X/√(1+Y²)) ],   X = width/distance, Y = depth/distance
 *
 * Rectangles elsewhere are sums and differences of such ones.
 *
 * @param width - m, above 0.
 * @param depth - m, above 0.
 * @param distance - m, above 0.
 * @returns F, 0 to 0.25.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: diffuse light, nothing between. Source: J. R. Howell, catalogue of configuration factors, B-3. Checked: formula (memory).
 *
 * @example A square as far as it is wide
 * ```ts
 * factorToParallelCorner(1, 1, 1); // => 0.138532
 * ```
 */
export function factorToParallelCorner(width: number, depth: number, distance: number): number {
  mustBePositive('factorToParallelCorner', 'width', width);
  mustBePositive('factorToParallelCorner', 'depth', depth);
  mustBePositive('factorToParallelCorner', 'distance', distance);
  const X = width / distance;
  const Y = depth / distance;
  const x = Math.sqrt(1 + X * X);
  const y = Math.sqrt(1 + Y * Y);
  return ((X / x) * Math.atan(Y / x) + (Y / y) * Math.atan(X / y)) / (2 * Math.PI);
}

/**
 * Share of a small element's view that a rectangle fills which stands at a right angle to it, its lower corner level with the
 * element and straight before it.
 *
 *     F = 1/(2 pi) [ atan(1/Y) - Y/√(X²+Y²) atan(1/√(X²+Y²)) ],   X = height/width, Y = distance/width
 *
 * @param height - m, above 0.
 * @param width - m, above 0.
 * @param distance - m, above 0.
 * @returns F, 0 to 0.25.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: diffuse light, nothing between. Source: J. R. Howell, catalogue of configuration factors, B-4. Checked: formula (memory).
 *
 * @example A square wall as far as it is wide
 * ```ts
 * factorToUprightCorner(1, 1, 1); // => 0.055734
 * ```
 */
export function factorToUprightCorner(height: number, width: number, distance: number): number {
  mustBePositive('factorToUprightCorner', 'height', height);
  mustBePositive('factorToUprightCorner', 'width', width);
  mustBePositive('factorToUprightCorner', 'distance', distance);
  const X = height / width;
  const Y = distance / width;
  const root = Math.sqrt(X * X + Y * Y);
  return (Math.atan(1 / Y) - (Y / root) * Math.atan(1 / root)) / (2 * Math.PI);
}

/** Nearer than this to the element's own plane, a corner counts as in it, as a share of its distance. */
const GRAZING = 1e-12;

/**
 * Share of a small element's view that a flat polygon fills, wherever it stands; what lies behind the element is cut off.
 *
 *     F = 1/(2 pi) · sum over edges of (angle of the edge as seen) · (unit normal of the edge's plane through the element) · n
 *
 * @param at - Where the element is, m.
 * @param normal - Unit vector out of its face, n.
 * @param corners - In order round the polygon, either way, m.
 * @returns F, 0 to 1: both sides of the polygon count alike.
 *
 * @remarks
 * Valid: diffuse light, nothing between. Source: J. H. Lambert, Photometria (1760); as a contour integral in any text on radiosity.
 * Checked: formula (memory), against the closed forms beside it.
 *
 * @example The square of {@link factorToParallelCorner}
 * ```ts
 * factorToPolygon([0, 0, 0], [0, 0, 1], [[0, 0, 1], [1, 0, 1], [1, 1, 1], [0, 1, 1]]); // => 0.138532
 * ```
 */
export function factorToPolygon(at: Vector, normal: Vector, corners: readonly Vector[]): number {
  let sum = 0;
  let [lastX, lastY, lastZ, lastUp] = [0, 0, 0, 0];
  let [firstX, firstY, firstZ] = [0, 0, 0];
  let kept = 0;
  let highest = 0;
  const [nx, ny, nz] = normal;
  /** Adds the edge from the last kept corner to this one. */
  const edge = (x: number, y: number, z: number): void => {
    const cx = lastY * z - lastZ * y;
    const cy = lastZ * x - lastX * z;
    const cz = lastX * y - lastY * x;
    const cross = Math.sqrt(cx * cx + cy * cy + cz * cz);
    if (cross === 0) return;
    sum += (Math.atan2(cross, lastX * x + lastY * y + lastZ * z) * (cx * nx + cy * ny + cz * nz)) / cross;
  };
  const keep = (x: number, y: number, z: number): void => {
    if (kept > 0) edge(x, y, z);
    else [firstX, firstY, firstZ] = [x, y, z];
    [lastX, lastY, lastZ] = [x, y, z];
    kept += 1;
  };
  const count = corners.length;
  // The last corner comes before the first, so that an edge that crosses the horizon is cut wherever the list begins.
  let [beforeX, beforeY, beforeZ] = [0, 0, 0];
  for (let index = -1; index < count; index += 1) {
    const corner = corners[index < 0 ? count - 1 : index]!;
    const [x, y, z] = [corner[0] - at[0], corner[1] - at[1], corner[2] - at[2]];
    let up = x * nx + y * ny + z * nz;
    if (Math.abs(up) < GRAZING * Math.sqrt(x * x + y * y + z * z)) up = 0;
    if (index >= 0) {
      if (lastUp * up < 0) {
        const t = lastUp / (lastUp - up);
        keep(beforeX + t * (x - beforeX), beforeY + t * (y - beforeY), beforeZ + t * (z - beforeZ));
      }
      if (up >= 0) keep(x, y, z);
      if (up > highest) highest = up;
    }
    [beforeX, beforeY, beforeZ, lastUp] = [x, y, z, up];
  }
  // A polygon in the element's own plane is seen edge on: nothing of it, though its edges run all the way round.
  if (highest === 0) return 0;
  if (kept > 1) edge(firstX, firstY, firstZ);
  return Math.abs(sum) / (2 * Math.PI);
}
