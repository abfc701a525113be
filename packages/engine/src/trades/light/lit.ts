// How bright it is: on a bed, and on the side of a print that a camera sees. Straight from the lamps, and thrown back by the
// inside of the bay with all its reflections.

import { elementFactors, interreflect, lampOnElement, obstructed, type Vector } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Camera } from '../../cabinet/light.ts';
import { restingOnParts } from '../../cabinet/resting-on-parts.ts';
import { keptByKey } from '../kept.ts';
import { boxOf, lampKey, type Space, type Spot, sharesOf, spaceOf, spotOf } from './space.ts';

/** One machine's print, lit. */
export interface Lit {
  readonly space: Space;
  readonly spot: Spot;
  /** Mean over the bed, lx. */
  readonly mean: number;
  readonly least: number;
  /** Straight from each lamp, mean over the bed, in the order of the space's lamps. */
  readonly direct: readonly number[];
  readonly thrown: number;
  /** What each patch throws back, lm/m²; what stands in the space last. */
  readonly sent: readonly number[];
}

export interface SideLight {
  readonly direct: number;
  readonly thrown: number;
}

const UP: Vector = [0, 0, 1];

/** Places along each side of the bed. */
const GRID = 4;

/** Several measures ask about one print. */
export const litPrint: (cabinet: Cabinet, machineId: string) => Lit = restingOnParts((cabinet, machineId) =>
  litIn(spaceOf(cabinet, machineId), spotOf(cabinet, machineId)),
);

export function litIn(space: Space, spot: Spot): Lit {
  const sent = thrownBack(space);
  const thrown = factorsOverBed(space.size, spot).map((factors) => gathered(factors, sent));
  const direct = space.lamps.map((lamp) =>
    directOverBed(space.size, lamp, spot).map((perLumen) => lamp.flux * perLumen),
  );
  const sums = thrown.map((E, at) => direct.reduce((sum, lamp) => sum + lamp[at]!, E));
  return {
    space,
    spot,
    sent,
    mean: meanOf(sums),
    least: Math.min(...sums),
    direct: direct.map(meanOf),
    thrown: meanOf(thrown),
  };
}

/** Where the lens is, in the space of the print; before the middle of the front when nobody said it. */
export function lensOf({ at }: Pick<Camera, 'at'>, { space, spot }: Lit): Vector {
  const { origin } = spot;
  if (at === undefined) return [spot.x, 0, Math.min(spot.z + 0.3, space.size[2])];
  return [at[0] - origin[0], at[1] - origin[1], at[2] - origin[2]];
}

/** On the upright side of the print that looks at a place, at half its height. What it sees of the floor is its own bed. */
export function sideLight({ space, spot, sent, mean }: Lit, seenFrom: Vector): SideLight {
  const { size, surfaceReflectance } = space;
  const [x, y] = [seenFrom[0] - spot.x, seenFrom[1] - spot.y];
  const away = Math.hypot(x, y);
  const normal: Vector = away < 1e-6 ? [0, -1, 0] : [x / away, y / away, 0];
  const half = Math.min(spot.partSize, spot.width, spot.depth) / 2;
  const inside = (value: number, axis: 0 | 1 | 2): number => Math.min(Math.max(value, 1e-3), size[axis] - 1e-3);
  const at: Vector = [
    inside(spot.x + half * normal[0], 0),
    inside(spot.y + half * normal[1], 1),
    inside(spot.z + spot.partSize / 2, 2),
  ];
  const { patches } = boxOf(size);
  const seen = sent.map((M, i) => (patches[i]?.face === 'floor' ? surfaceReflectance * mean : M));
  return {
    direct: space.lamps.reduce((sum, { flux, box }) => sum + flux * lampOnElement(box, at, normal), 0),
    thrown: gathered(elementFactors(patches, at, normal), seen),
  };
}

function thrownBack(space: Space): readonly number[] {
  const { patches, transfer } = boxOf(space.size);
  const { transfer: rows, hit } = obstructed(transfer, patches, space.surface);
  const flux = patches.map(() => 0);
  let whole = 0;
  for (const lamp of space.lamps) {
    const shares = sharesOf(space.size, lamp);
    whole += lamp.flux;
    for (let at = 0; at < flux.length; at += 1) flux[at]! += lamp.flux * shares[at]!;
  }
  const direct = patches.map(({ area }, at) => ((1 - hit) * flux[at]!) / area);
  const reflectances = [...patches.map(({ face }) => space.reflectances[face]), space.surfaceReflectance];
  const onMachine = space.surface > 0 ? (hit * whole) / space.surface : 0;
  return interreflect([...direct, onMachine], reflectances, rows).map((E, at) => E * reflectances[at]!);
}

const factorsKept = keptByKey<readonly (readonly number[])[]>(64);
const directsKept = keptByKey<readonly number[]>(128);

/** What each place of the bed sees of every patch: nothing but sizes and places count. */
function factorsOverBed(size: Vector, spot: Spot): readonly (readonly number[])[] {
  return factorsKept(`${size.join(' ')}|${bedKey(spot)}`, () =>
    bedPlaces(spot).map((at) => elementFactors(boxOf(size).patches, at, UP)),
  );
}

/** lx for each lumen, at each place of the bed. */
function directOverBed(size: Vector, { box }: Space['lamps'][number], spot: Spot): readonly number[] {
  return directsKept(`${lampKey(size, box)}|${bedKey(spot)}`, () =>
    bedPlaces(spot).map((at) => lampOnElement(box, at, UP)),
  );
}

function bedKey({ x, y, z, width, depth }: Spot): string {
  return `${x} ${y} ${z} ${width} ${depth}`;
}

function bedPlaces({ x, y, z, width, depth }: Spot): Vector[] {
  const along = (i: number, length: number): number => ((i + 0.5) / GRID - 0.5) * length;
  return Array.from(
    { length: GRID * GRID },
    (_, i): Vector => [x + along(i % GRID, width), y + along(Math.floor(i / GRID), depth), z],
  );
}

function gathered(factors: readonly number[], sent: readonly number[]): number {
  let sum = 0;
  for (let at = 0; at < factors.length; at += 1) sum += factors[at]! * sent[at]!;
  return sum;
}

function meanOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
