// Light in a box: its inner faces cut into patches, lamps that shine on them, and what stands in the way of the light.
// Coordinates: x from the left, y from the front, z from the floor.

import { mustBePositive, mustNotBeNegative } from './argument.ts';
import { factorToPolygon, type Vector } from './configuration-factor.ts';

export type BoxFace = 'floor' | 'ceiling' | 'front' | 'back' | 'left' | 'right';

/** A rectangle of an inner face. */
export interface BoxPatch {
  readonly face: BoxFace;
  readonly corners: readonly [Vector, Vector, Vector, Vector];
  /** Into the box. */
  readonly normal: Vector;
  readonly area: number;
}

/** A diffuse lamp as small pieces of equal light, which all face one way. */
export interface BoxLamp {
  readonly pieces: readonly Vector[];
  readonly normal: Vector;
}

/** Face, axis across it, its other axis, axis of its normal, and whether it lies at the far end of that axis. */
const faces: readonly (readonly [BoxFace, 0 | 1, 1 | 2, 0 | 1 | 2, boolean])[] = [
  ['floor', 0, 1, 2, false],
  ['ceiling', 0, 1, 2, true],
  ['front', 0, 2, 1, false],
  ['back', 0, 2, 1, true],
  ['left', 1, 2, 0, false],
  ['right', 1, 2, 0, true],
];

/**
 * The inner faces of a box, each cut into equal patches.
 *
 * @param size - Width, depth and height, m, above 0.
 * @param perSide - Patches along each edge of a face, a whole number above 0.
 * @returns 6 · perSide² patches, face by face: floor, ceiling, front, back, left, right.
 * @throws RangeError when a length is not above 0.
 *
 * @remarks Valid: any box. Source: geometry. Checked: memory.
 *
 * @example A cube, each face in four
 * ```ts
 * boxPatches([1, 1, 1], 2).length; // => 24
 * ```
 */
export function boxPatches(size: Vector, perSide: number): BoxPatch[] {
  for (const length of size) mustBePositive('boxPatches', 'a length', length);
  mustBePositive('boxPatches', 'perSide', perSide);
  return faces.flatMap(([face, a, b, n, far]) =>
    Array.from({ length: perSide * perSide }, (_, index): BoxPatch => {
      const [i, j] = [index % perSide, Math.floor(index / perSide)];
      const corner = (u: number, v: number): Vector => {
        const place: [number, number, number] = [0, 0, 0];
        place[n] = far ? size[n] : 0;
        place[a] = ((i + u) * size[a]) / perSide;
        place[b] = ((j + v) * size[b]) / perSide;
        return place;
      };
      const normal: [number, number, number] = [0, 0, 0];
      normal[n] = far ? -1 : 1;
      const area = (size[a] * size[b]) / perSide ** 2;
      return { face, corners: [corner(0, 0), corner(1, 0), corner(1, 1), corner(0, 1)], normal, area };
    }),
  );
}

/** Places of two-point Gauss integration along an edge, as shares of it. */
const GAUSS: readonly number[] = [0.5 - Math.sqrt(1 / 12), 0.5 + Math.sqrt(1 / 12)];

/**
 * How much of the illuminance of each patch every other patch gives, for `interreflect`: rows that close over the light sent out.
 *
 *     G_ij = A_j F_ji/A_i,   F_ji as the mean over four places of patch j
 *
 * @param patches - Of one box, see {@link boxPatches}.
 * @returns Row i: what patch i gets from each patch j that throws back 1 lm/m².
 *
 * @remarks
 * Valid: diffuse patches, nothing between. All that a patch sends out arrives somewhere, to rounding. Source: reciprocity of view
 * factors. Checked: memory.
 *
 * @example What the ceiling of a cube gives its floor
 * ```ts
 * boxTransfer(boxPatches([1, 1, 1], 1))[0][1]; // => 0.20
 * ```
 */
export function boxTransfer(patches: readonly BoxPatch[]): number[][] {
  const sent = patches.map((patch) => {
    const row = patches.map(() => 0);
    const [origin, across, , along] = patch.corners;
    for (const u of GAUSS)
      for (const v of GAUSS) {
        const at = [0, 1, 2].map(
          (axis) => origin[axis]! + u * (across[axis]! - origin[axis]!) + v * (along[axis]! - origin[axis]!),
        ) as unknown as Vector;
        for (const [to, factor] of elementFactors(patches, at, patch.normal).entries()) row[to]! += factor / 4;
      }
    return row;
  });
  return patches.map(({ area }, to) => patches.map((from, j) => (from.area * sent[j]![to]!) / area));
}

/**
 * Share of a small element's view that each patch fills.
 *
 * @param patches - Of one box.
 * @param at - Where the element is, inside the box or on one of its faces, m.
 * @param normal - Unit vector out of its face.
 * @returns Shares that add up to 1.
 *
 * @remarks Valid: nothing between. Source: as `factorToPolygon`. Checked: memory.
 *
 * @example The middle of a cube looks up
 * ```ts
 * elementFactors(boxPatches([1, 1, 1], 1), [0.5, 0.5, 0.5], [0, 0, 1])[1]; // => 0.554
 * ```
 */
export function elementFactors(patches: readonly BoxPatch[], at: Vector, normal: Vector): number[] {
  return patches.map(({ corners }) => factorToPolygon(at, normal, corners));
}

/**
 * Share of a lamp's light that falls on each patch.
 *
 * @param patches - Of one box.
 * @param lamp - Inside it, a hair off its faces.
 * @returns Shares that add up to 1.
 *
 * @remarks Valid: diffuse lamps. Source: reciprocity: a small diffuse emitter sends a face the share that it sees of it. Checked: memory.
 *
 * @example A small lamp under the middle of a ceiling sends a fifth and more straight to the floor of a cube
 * ```ts
 * lampShares(boxPatches([1, 1, 1], 1), { pieces: [[0.5, 0.5, 0.999]], normal: [0, 0, -1] })[0]; // => 0.24
 * ```
 */
export function lampShares(patches: readonly BoxPatch[], { pieces, normal }: BoxLamp): number[] {
  const sum = patches.map(() => 0);
  for (const at of pieces)
    for (const [index, share] of elementFactors(patches, at, normal).entries()) sum[index]! += share / pieces.length;
  return sum;
}

/**
 * Illuminance of a small element straight from a lamp, for each lumen.
 *
 *     E = mean over pieces of cos(a) cos(b)/(pi r²)
 *
 * @param lamp - Diffuse.
 * @param at - Where the element is, m.
 * @param normal - Unit vector out of its face.
 * @returns lx/lm.
 *
 * @remarks Valid: pieces smaller than a third of their distance, within 4 %. Source: Lambert's cosine law. Checked: memory.
 *
 * @example Half a metre below a small lamp, 500 times over (636.6 lx from 500 lm)
 * ```ts
 * 500 * lampOnElement({ pieces: [[0, 0, 0.5]], normal: [0, 0, -1] }, [0, 0, 0], [0, 0, 1]); // => 636.6
 * ```
 */
export function lampOnElement({ pieces, normal: out }: BoxLamp, at: Vector, normal: Vector): number {
  let sum = 0;
  for (const piece of pieces) {
    const [x, y, z] = [piece[0] - at[0], piece[1] - at[1], piece[2] - at[2]];
    const r2 = x * x + y * y + z * z;
    const here = x * normal[0] + y * normal[1] + z * normal[2];
    const there = -(x * out[0] + y * out[1] + z * out[2]);
    if (here > 0 && there > 0) sum += (here * there) / (r2 * r2);
  }
  return sum / (Math.PI * pieces.length);
}

/**
 * The same box with things standing in it: one more patch, last, that stops its share of all light and throws some of it back
 * evenly.
 *
 *     p = S/A: of the light that crosses a room of surface A, so much meets a body of surface S
 *
 * @param transfer - Of the empty box, see {@link boxTransfer}.
 * @param patches - Of the same box.
 * @param surface - S, all surface of what stands in it, m², 0 or more.
 * @returns Transfer with the thing as last row and column, and p, at most 0.9.
 * @throws RangeError when the surface is negative.
 *
 * @remarks
 * Valid: bodies spread over the box, or thin bars; light that crosses it from everywhere. Source: M. W. Crofton 1868, as in
 * L. A. Santaló, Integral Geometry and Geometric Probability (1976): mean hits of random lines. Checked: memory.
 *
 * @example A body with a tenth of the surface of the box takes a tenth of the light
 * ```ts
 * obstructed(boxTransfer(boxPatches([1, 1, 1], 1)), boxPatches([1, 1, 1], 1), 0.6).hit; // => 0.1
 * ```
 */
export function obstructed(
  transfer: readonly (readonly number[])[],
  patches: readonly BoxPatch[],
  surface: number,
): { readonly transfer: number[][]; readonly hit: number } {
  mustNotBeNegative('obstructed', 'surface', surface);
  const whole = patches.reduce((sum, { area }) => sum + area, 0);
  const hit = Math.min(surface / whole, 0.9);
  const rows = transfer.map((row) => [...row.map((G) => G * (1 - hit)), hit]);
  return { transfer: [...rows, [...patches.map(({ area }) => area / whole), 0]], hit };
}
