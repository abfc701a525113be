// Where everything of a cabinet is: boxes in its own axes, by the path of the part in the file. The drawing, the 3-D view and
// the leaders of remarks take their places from here.

import { type Cabinet, type StandingMachine, stackHeight, standingIn } from '@stillair/engine';
import type { Box, FaceName } from './projection.ts';

export function thicknessOf(build: Cabinet['faces'][FaceName]['build']): number {
  return build.layers.reduce((sum, { thickness }) => sum + thickness, 0);
}

export function insideBox({ inside }: Cabinet): Box {
  return { x: [0, inside.width], y: [0, inside.depth], z: [0, inside.height] };
}

/** The carcass from outside, doors included. */
export function outsideBox(cabinet: Cabinet): Box {
  const { inside, faces } = cabinet;
  const wall = (face: FaceName): number => Math.max(thicknessOf(faces[face].build), doorOn(cabinet, face));
  return {
    x: [-wall('left'), inside.width + wall('right')],
    y: [-wall('front'), inside.depth + wall('back')],
    z: [-wall('bottom'), inside.height + wall('top')],
  };
}

function doorOn({ doors }: Cabinet, face: FaceName): number {
  return Math.max(
    0,
    ...Object.values(doors)
      .filter((door) => door.face === face)
      .map((door) => thicknessOf(door.build)),
  );
}

export function bayBox({ bays, inside }: Cabinet, id: string): Box {
  const { x, z } = bays[id]!;
  return { x, y: [0, inside.depth], z };
}

export interface MovingPart {
  /** `frame`, `bed`, `spool` … */
  readonly what: string;
  /** The commanded position in which it is there. */
  readonly when: string;
  readonly box: Box;
}

/** Where a machine stands: the middle of its frame in its bay. Those that the file does not place share their bay evenly. */
export function standsAt(cabinet: Cabinet, id: string): readonly [number, number] {
  return standing(cabinet, id).at;
}

function standing(cabinet: Cabinet, id: string): StandingMachine {
  return standingIn(cabinet, cabinet.machines[id]!.bay).find((machine) => machine.id === id)!;
}

/** A machine's frame and all that moves, hangs or sticks out, in the cabinet's axes. */
export function machineParts(cabinet: Cabinet, id: string): readonly MovingPart[] {
  const { parts, at } = standing(cabinet, id);
  const { x, z } = cabinet.bays[cabinet.machines[id]!.bay]!;
  return parts.map(({ what, when, from, to }) => ({
    what,
    when,
    box: {
      x: [x[0] + at[0] + from[0], x[0] + at[0] + to[0]],
      y: [at[1] + from[1], at[1] + to[1]],
      z: [z[0] + from[2], z[0] + to[2]],
    },
  }));
}

export function frameBox(cabinet: Cabinet, id: string): Box {
  return machineParts(cabinet, id).find(({ what }) => what === 'frame')!.box;
}

/** Slab and foam below a machine. */
export function stackBox(cabinet: Cabinet, id: string): Box | undefined {
  const { standsOn, bay } = cabinet.machines[id]!;
  const height = stackHeight(cabinet.machines[id]!);
  if (!(height > 0)) return undefined;
  const { x, y } = frameBox(cabinet, id);
  const [width, depth] = [standsOn?.slab?.width ?? x[1] - x[0], standsOn?.slab?.depth ?? y[1] - y[0]];
  const [across, deep] = [(x[0] + x[1]) / 2, (y[0] + y[1]) / 2];
  const floor = cabinet.bays[bay]!.z[0];
  return {
    x: [across - width / 2, across + width / 2],
    y: [deep - depth / 2, deep + depth / 2],
    z: [floor, floor + height],
  };
}

/** All that a machine ever takes up. */
export function machineBox(cabinet: Cabinet, id: string): Box {
  const boxes = machineParts(cabinet, id).map(({ box }) => box);
  const span = (axis: 'x' | 'y' | 'z'): [number, number] => [
    Math.min(...boxes.map((box) => box[axis][0])),
    Math.max(...boxes.map((box) => box[axis][1])),
  ];
  return { x: span('x'), y: span('y'), z: span('z') };
}

export function bedBox(cabinet: Cabinet, id: string): Box {
  const { bay, bed } = cabinet.machines[id]!;
  const { x, z } = cabinet.bays[bay]!;
  const at = standsAt(cabinet, id);
  const [middle, top] = [x[0] + at[0], z[0] + bed.height];
  return {
    x: [middle - bed.width / 2, middle + bed.width / 2],
    y: [at[1] - bed.depth / 2, at[1] + bed.depth / 2],
    z: [top - bed.thickness, top],
  };
}

/** The board between two bays: the gap between them, or where they meet. */
export function partitionBox(cabinet: Cabinet, at: number): Box {
  const { bays, build } = cabinet.partitions[at]!;
  const [a, b] = bays.map((id) => bayBox(cabinet, id));
  const y: Box['y'] = [0, cabinet.inside.depth];
  const across = overlap(a!.x, b!.x);
  const along = overlap(a!.z, b!.z);
  const thick = thicknessOf(build);
  if (across[1] - across[0] > along[1] - along[0]) return { x: across, y, z: between(a!.z, b!.z, thick) };
  return { x: between(a!.x, b!.x, thick), y, z: along };
}

function overlap(a: readonly [number, number], b: readonly [number, number]): [number, number] {
  return [Math.max(a[0], b[0]), Math.min(a[1], b[1])];
}

function between(a: readonly [number, number], b: readonly [number, number], thick: number): [number, number] {
  const [low, high] = a[0] < b[0] ? [a[1], b[0]] : [b[1], a[0]];
  if (high - low > 1e-6) return [low, high];
  return [(low + high) / 2 - thick / 2, (low + high) / 2 + thick / 2];
}

/** A door leaf as it stands closed: over the bays that it opens. */
export function doorBox(cabinet: Cabinet, id: string): Box {
  const { face, bays, build } = cabinet.doors[id]!;
  const boxes = bays.map((bay) => bayBox(cabinet, bay));
  const span = (axis: 'x' | 'y' | 'z'): [number, number] => [
    Math.min(...boxes.map((box) => box[axis][0])),
    Math.max(...boxes.map((box) => box[axis][1])),
  ];
  const thick = thicknessOf(build);
  const whole: Box = { x: span('x'), y: span('y'), z: span('z') };
  const { inside } = cabinet;
  const flat: Readonly<Record<FaceName, Partial<Box>>> = {
    front: { y: [-thick, 0] },
    back: { y: [inside.depth, inside.depth + thick] },
    left: { x: [-thick, 0] },
    right: { x: [inside.width, inside.width + thick] },
    bottom: { z: [-thick, 0] },
    top: { z: [inside.height, inside.height + thick] },
  };
  return { ...whole, ...flat[face] };
}

/** A place on a face of the inside; `along` runs along x, or along y on the sides. */
export function placeOnFace(
  { inside }: Cabinet,
  { face, along, z }: { readonly face: FaceName; readonly along: number; readonly z: number },
): readonly [number, number, number] {
  switch (face) {
    case 'front':
      return [along, 0, z];
    case 'back':
      return [along, inside.depth, z];
    case 'left':
      return [0, along, z];
    case 'right':
      return [inside.width, along, z];
    case 'bottom':
      return [along, inside.depth / 2, 0];
    case 'top':
      return [along, inside.depth / 2, inside.height];
  }
}

export const outwards: Readonly<Record<FaceName, readonly [number, number, number]>> = {
  front: [0, -1, 0],
  back: [0, 1, 0],
  left: [-1, 0, 0],
  right: [1, 0, 0],
  bottom: [0, 0, -1],
  top: [0, 0, 1],
};

export function middleOf({ x, y, z }: Box): readonly [number, number, number] {
  return [(x[0] + x[1]) / 2, (y[0] + y[1]) / 2, (z[0] + z[1]) / 2];
}

/** Boxes that a name of the file stands for, by its path: what a remark can point at and a hand can pick. */
export function boxOf(cabinet: Cabinet, path: string): Box | undefined {
  const [group, id] = splitOnce(path);
  switch (group) {
    case 'machines':
      return id in cabinet.machines ? machineBox(cabinet, id) : undefined;
    case 'bays':
      return id in cabinet.bays ? bayBox(cabinet, id) : undefined;
    case 'doors':
      return id in cabinet.doors ? doorBox(cabinet, id) : undefined;
    case 'partitions': {
      const at = cabinet.partitions.findIndex((partition) => partition.id === id);
      return at < 0 ? undefined : partitionBox(cabinet, at);
    }
    case 'air': {
      const point = airPlace(cabinet, id);
      return point === undefined ? undefined : around(point, 0.03);
    }
    case 'sensors':
      return id in cabinet.sensors ? around(sensorPlace(cabinet, id), 0.01) : undefined;
    case 'people':
      return id in cabinet.people ? around(cabinet.people[id]!.at, 0.1) : undefined;
    default:
      return undefined;
  }
}

export function splitOnce(path: string): [string, string] {
  const at = path.indexOf('.');
  return at < 0 ? [path, ''] : [path.slice(0, at), path.slice(at + 1)];
}

function around([x, y, z]: readonly [number, number, number], half: number): Box {
  return { x: [x - half, x + half], y: [y - half, y + half], z: [z - half, z + half] };
}

export function sensorPlace(cabinet: Cabinet, id: string): readonly [number, number, number] {
  const { bay, height } = cabinet.sensors[id]!;
  const { x, y, z } = bayBox(cabinet, bay);
  return [x[0] + 0.12 * (x[1] - x[0]), (y[0] + y[1]) / 2, z[0] + height];
}

/** Where a way for air is drawn: on its face, or on the board between its two bays. */
export function airPlace(cabinet: Cabinet, id: string): readonly [number, number, number] | undefined {
  const path = cabinet.paths[id];
  if (path === undefined) return undefined;
  const [from, to] = [path.from, path.to].map((end) => (end in cabinet.bays ? end : undefined));
  if (from !== undefined && to !== undefined && from !== to) {
    const at = cabinet.partitions.findIndex(({ bays }) => bays.includes(from) && bays.includes(to));
    return middleOf(at < 0 ? bayBox(cabinet, to) : partitionBox(cabinet, at));
  }
  if (from !== undefined && from === to) {
    const { x, y, z } = bayBox(cabinet, from);
    return [x[1] - 0.14 * (x[1] - x[0]), (y[0] + y[1]) / 2, z[1] - 0.2 * (z[1] - z[0])];
  }
  return placeOnFace(cabinet, path.place);
}

/** The part of the file that a finding is about. */
export function partOfFinding(cabinet: Cabinet, part: string, day: string): string | undefined {
  const [first, rest] = splitOnce(part);
  const groups: readonly (readonly [string, object])[] = [
    ['machines', cabinet.machines],
    ['bays', cabinet.bays],
    ['air', cabinet.paths],
    ['doors', cabinet.doors],
    ['sensors', cabinet.sensors],
    ['people', cabinet.people],
  ];
  if (first === 'doors' && rest in cabinet.doors) return part;
  for (const [group, ids] of groups) if (first in ids) return `${group}.${first}`;
  for (const [group, ids] of groups)
    if (first === group && splitOnce(rest)[0] in ids) return `${group}.${splitOnce(rest)[0]}`;
  for (const board of first === 'shelves' ? [splitOnce(rest)[0], first] : [first])
    if (cabinet.partitions.some(({ id }) => id === board)) return `partitions.${board}`;
  const job = cabinet.days[day]?.jobs[rest] ?? cabinet.days[day]?.jobs[first];
  return job === undefined ? undefined : `machines.${job.machine}`;
}
