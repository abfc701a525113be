// The box in which a print is lit: its bay, or the chamber of its own machine, with its lamps and what stands in it.

import {
  type BoxFace,
  type BoxLamp,
  type BoxPatch,
  boxPatches,
  boxTransfer,
  lampShares,
  type Vector,
} from '@stillair/physics';
import type { Cabinet, FaceName, Machine } from '../../cabinet/cabinet.ts';
import { type Piece, piecesOf } from '../../cabinet/geometry.ts';
import type { Lamp, LampFacing } from '../../cabinet/light.ts';
import { keptByKey } from '../kept.ts';

export interface LampHere {
  readonly id: string;
  /** lm */
  readonly flux: number;
  /** Path of its flux in the cabinet. */
  readonly path: string;
  readonly box: BoxLamp;
}

export interface Space {
  /** Bay, or machine with a chamber. */
  readonly name: string;
  readonly size: Vector;
  readonly reflectances: Readonly<Record<BoxFace, number>>;
  /** Paths of the reflectances that count. */
  readonly finishes: readonly string[];
  readonly lamps: readonly LampHere[];
  /** All surface of frames and beds in it, m², and what it throws back. */
  readonly surface: number;
  readonly surfaceReflectance: number;
}

/** The bed in its space: middle of its top, its sides, and the largest part that any day prints on it, m. */
export interface Spot {
  /** Left front lower corner of the space, in its bay, m. */
  readonly origin: Vector;
  readonly x: number;
  readonly y: number;
  readonly z: number;
  readonly width: number;
  readonly depth: number;
  readonly partSize: number;
}

/** Patches along each edge of a face. Two come within 4 % of 600 patches in a bay, whatever its finish. */
const PER_SIDE = 2;

/** Nothing throws back more: the series would not end. */
const WHITEST = 0.97;

/** Surface of moving parts in a chamber, as a share of the frame's: the chamber's walls are its frame. */
const INSIDE_SHARE = 0.3;

const USUAL_PART = 0.1;

export function spaceOf(cabinet: Cabinet, machineId: string): Space {
  const machine = cabinet.machines[machineId]!;
  return machine.chamber === undefined ? bayOf(cabinet, machine.bay) : chamberOf(cabinet, machineId, machine);
}

export function spotOf(cabinet: Cabinet, machineId: string): Spot {
  const machine = cabinet.machines[machineId]!;
  const { bed, chamber, at, size } = machine;
  const sizes = Object.values(cabinet.days).flatMap(({ jobs }) =>
    Object.values(jobs).flatMap((job) => (job.machine === machineId ? [job.partSize] : [])),
  );
  const partSize = sizes.length === 0 ? USUAL_PART : Math.max(...sizes);
  const { width, depth } = bed;
  if (chamber === undefined) return { origin: [0, 0, 0], x: at[0], y: at[1], z: bed.height, width, depth, partSize };
  // The chamber is taken to end below the top of its machine, and to stand round its bed.
  const floor = Math.max(size.height - chamber.size.height - 0.03, 0);
  const z = Math.min(Math.max(bed.height - floor, 0.02), chamber.size.height / 2);
  const [halfWidth, halfDepth] = [chamber.size.width / 2, chamber.size.depth / 2];
  return {
    origin: [at[0] - halfWidth, at[1] - halfDepth, floor],
    x: halfWidth,
    y: halfDepth,
    z,
    width,
    depth,
    partSize,
  };
}

function bayOf(cabinet: Cabinet, bayId: string): Space {
  const { light, machines } = cabinet;
  const bay = cabinet.bays[bayId]!;
  const size: Vector = [bay.x[1] - bay.x[0], cabinet.inside.depth, bay.z[1] - bay.z[0]];
  const round = piecesOf(cabinet).filter((piece) => piece.bay === bayId);
  const finishes = new Set<string>();
  const faceOf = (face: FaceName): number => {
    const own = round.filter((piece) => piece.face === face);
    const whole = own.reduce((sum, { area }) => sum + area, 0);
    return own.reduce((sum, piece) => {
      const finish = finishOf(cabinet, piece);
      finishes.add(finish);
      return sum + (piece.area / whole) * reflectanceOf(cabinet, finish);
    }, 0);
  };
  const standing = Object.entries(machines).filter(([, machine]) => machine.bay === bayId);
  const surfaces = standing.map(([id, { frameArea, bed }]) => ({
    surface: frameArea + 2 * bed.width * bed.depth,
    finish: light.machines[id]!,
  }));
  const surface = surfaces.reduce((sum, one) => sum + one.surface, 0);
  for (const { finish } of surfaces) finishes.add(finish);
  return {
    name: bayId,
    size,
    reflectances: {
      floor: faceOf('bottom'),
      ceiling: faceOf('top'),
      front: faceOf('front'),
      back: faceOf('back'),
      left: faceOf('left'),
      right: faceOf('right'),
    },
    finishes: [...finishes].map((name) => `light.reflectances.${name}`),
    lamps: Object.entries(light.lamps).flatMap(([id, lamp]) =>
      lamp.bay === bayId && lamp.flux > 0
        ? [{ id, flux: lamp.flux, path: `light.lamps.${id}.flux`, box: boxLamp(lamp, size) }]
        : [],
    ),
    surface,
    surfaceReflectance:
      surface === 0
        ? 0
        : surfaces.reduce((sum, one) => sum + (one.surface / surface) * reflectanceOf(cabinet, one.finish), 0),
  };
}

function chamberOf(cabinet: Cabinet, id: string, { chamber, frameArea, bed }: Machine): Space {
  const { light } = cabinet;
  const { width, depth, height } = chamber!.size;
  const size: Vector = [width, depth, height];
  const walls = reflectanceOf(cabinet, light.chambers[id]!);
  const flux = light.chamberLamps[id] ?? 0;
  const lamp: Lamp = {
    bay: '',
    flux,
    shape: { kind: 'strip', length: width / 2 },
    at: [width / 2, 0.1 * depth, height - 0.01],
    faces: 'down',
    along: 'x',
  };
  return {
    name: `the chamber of ${id}`,
    size,
    reflectances: { floor: walls, ceiling: walls, front: walls, back: walls, left: walls, right: walls },
    finishes: [`light.reflectances.${light.chambers[id]}`, `light.reflectances.${light.machines[id]}`],
    lamps: flux > 0 ? [{ id: `${id}.chamber`, flux, path: `light.chamberLamps.${id}`, box: boxLamp(lamp, size) }] : [],
    surface: INSIDE_SHARE * frameArea + 2 * bed.width * bed.depth,
    surfaceReflectance: reflectanceOf(cabinet, light.machines[id]!),
  };
}

function reflectanceOf({ light }: Cabinet, finish: string): number {
  return Math.min(light.reflectances[finish] ?? 0, WHITEST);
}

/** What one piece of a bay's inside shows: a door, the board to the next bay, or the face. */
function finishOf({ doors, light, partitions }: Cabinet, { face, bay, behind }: Piece): string {
  if (behind.kind === 'bay') {
    const index = partitions.findIndex(({ bays }) => bays.includes(bay) && bays.includes(behind.bay));
    return light.partitions[index] ?? light.faces[face]!;
  }
  const door = Object.entries(doors).find(([, leaf]) => leaf.face === face && leaf.bays.includes(bay));
  return door === undefined ? light.faces[face]! : light.doors[door[0]]!;
}

const normals: Readonly<Record<LampFacing, Vector>> = {
  down: [0, 0, -1],
  up: [0, 0, 1],
  back: [0, 1, 0],
  front: [0, -1, 0],
  left: [-1, 0, 0],
  right: [1, 0, 0],
};

/** Off every face, so that the lamp sees it, m. */
const OFF = 1e-3;

export function boxLamp({ shape, at, faces, along }: Lamp, size: Vector): BoxLamp {
  const axes = { x: 0, y: 1, z: 2 } as const;
  const normal = normals[faces];
  const off = (place: readonly number[]): Vector =>
    place.map((value, axis) => Math.min(Math.max(value, OFF), size[axis]! - OFF)) as unknown as Vector;
  const moved = (steps: readonly (readonly [0 | 1 | 2, number])[]): Vector => {
    const place: number[] = [...at];
    for (const [axis, step] of steps) place[axis]! += step;
    return off(place);
  };
  const middles = (length: number, count: number): number[] =>
    Array.from({ length: count }, (_, i) => ((i + 0.5) / count - 0.5) * length);
  switch (shape.kind) {
    case 'point':
      return { pieces: [off(at)], normal };
    case 'strip':
      return { pieces: middles(shape.length, 5).map((step) => moved([[axes[along], step]])), normal };
    case 'panel': {
      const across: 0 | 1 = normal[0] === 0 ? 0 : 1;
      const up: 1 | 2 = normal[2] === 0 ? 2 : 1;
      return {
        pieces: middles(shape.width, 3).flatMap((a) =>
          middles(shape.height, 3).map((b) =>
            moved([
              [across, a],
              [up, b],
            ]),
          ),
        ),
        normal,
      };
    }
  }
}

export interface Box {
  readonly patches: readonly BoxPatch[];
  readonly transfer: readonly (readonly number[])[];
}

const boxes = keptByKey<Box>(32);
const shares = keptByKey<readonly number[]>(128);

/** Patches of a space and the light that they send one another: nothing but its size counts. */
export function boxOf(size: Vector): Box {
  return boxes(size.join(' '), () => {
    const patches = boxPatches(size, PER_SIDE);
    return { patches, transfer: boxTransfer(patches) };
  });
}

/** Share of a lamp's light that falls on each patch. */
export function sharesOf(size: Vector, { box }: LampHere): readonly number[] {
  return shares(lampKey(size, box), () => lampShares(boxOf(size).patches, box));
}

export function lampKey(size: Vector, { pieces, normal }: BoxLamp): string {
  return `${size.join(' ')}|${pieces[0]!.join(' ')}|${pieces.at(-1)!.join(' ')}|${normal.join(' ')}`;
}
