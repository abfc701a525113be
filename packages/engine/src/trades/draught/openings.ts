// Where air enters and leaves the bay of a print: place, direction and size of each opening, in the cabinet's own coordinates
// (x from the left, y from the front, z from the inside floor).

import type { Bay, Cabinet, CabinetPath, PathPart } from '../../cabinet/cabinet.ts';
import type { Print } from '../prints.ts';

export type Point = readonly [x: number, y: number, z: number];

export interface Opening {
  readonly place: Point;
  /** Unit vector into the bay. */
  readonly inward: Point;
  /** m² */
  readonly area: number;
  /** Height of a slot ten times as long as high; absent for all other shapes. */
  readonly slot?: number;
}

export interface Box {
  readonly low: Point;
  readonly high: Point;
}

/** The printed part as a box, and the bed that it stands on. */
export interface Target extends Box {
  readonly bed: Box;
}

/** The end of a path that lies in a bay. `leaving`: the end at which air leaves the path's parts, moving from `from` to `to`. */
export function openingOf(cabinet: Cabinet, path: CabinetPath, bay: Bay, last: boolean): Opening | undefined {
  const parts = last ? [...path.parts].reverse() : path.parts;
  const size = parts.map(sizeOf).find((found) => found !== undefined);
  return size === undefined ? undefined : { ...placeOf(cabinet, path, bay), ...size };
}

function sizeOf(part: PathPart): Pick<Opening, 'area' | 'slot'> | undefined {
  switch (part.part) {
    case 'hole': {
      const { section, count } = part;
      if (section.shape === 'round') return { area: (count * Math.PI * section.diameter ** 2) / 4 };
      const [short, long] = [section.width, section.height].sort((a, b) => a - b) as [number, number];
      return { area: count * short * long, ...(long >= 10 * short && count === 1 ? { slot: short } : {}) };
    }
    case 'loss':
      return { area: part.area };
    case 'duct':
    case 'fan':
      return { area: (Math.PI * part.diameter ** 2) / 4 };
    case 'filter':
    case 'carbon':
      return { area: part.faceArea };
    case 'flap':
      return undefined;
  }
}

function placeOf({ inside }: Cabinet, { place }: CabinetPath, bay: Bay): Pick<Opening, 'place' | 'inward'> {
  const { along, z } = place;
  const [left, right] = bay.x;
  switch (place.face) {
    case 'front':
      return { place: [along, 0, z], inward: [0, 1, 0] };
    case 'back':
      return { place: [along, inside.depth, z], inward: [0, -1, 0] };
    case 'left':
      return { place: [left, along, z], inward: [1, 0, 0] };
    case 'right':
      return { place: [right, along, z], inward: [-1, 0, 0] };
    case 'top':
    case 'bottom': {
      // A hole in a shelf enters the bay above it through its floor, the one below through its ceiling.
      const [floor, ceiling] = bay.z;
      const low = Math.abs(z - floor) < Math.abs(z - ceiling);
      return { place: [along, inside.depth / 2, low ? floor : ceiling], inward: [0, 0, low ? 1 : -1] };
    }
  }
}

/** Box of what is printed: on the bed's middle, as wide and high as the part's largest span. */
export function targetOf({ bays }: Cabinet, { job, machine }: Print): Target {
  const bay = bays[machine.bay]!;
  const [x, y] = [bay.x[0] + machine.at[0], machine.at[1]];
  const top = bay.z[0] + machine.bed.height;
  const { width, depth, thickness } = machine.bed;
  const [halfX, halfY] = [Math.min(job.partSize, machine.bed.width) / 2, Math.min(job.partSize, machine.bed.depth) / 2];
  return {
    low: [x - halfX, y - halfY, top],
    high: [x + halfX, y + halfY, top + job.partSize],
    bed: { low: [x - width / 2, y - depth / 2, top - thickness], high: [x + width / 2, y + depth / 2, top] },
  };
}

/** Nearest distance from a point to the box. */
export function distanceTo({ low, high }: Box, point: Point): number {
  return Math.hypot(...point.map((value, axis) => outsideBy(value, low[axis]!, high[axis]!)));
}

/** How far the box lies along and beside a ray: 0 beside when the ray meets it; undefined when all of it lies behind. */
export function alongAndBeside(
  { low, high }: Box,
  { place, inward }: Pick<Opening, 'place' | 'inward'>,
): { along: number; beside: number } | undefined {
  const axis = inward.findIndex((component) => component !== 0);
  const sign = inward[axis]!;
  const reach = (edge: number): number => sign * (edge - place[axis]!);
  const [near, far] = [reach(low[axis]!), reach(high[axis]!)].sort((a, b) => a - b) as [number, number];
  if (far <= 0) return undefined;
  const others = [0, 1, 2].filter((other) => other !== axis);
  const beside = Math.hypot(...others.map((other) => outsideBy(place[other]!, low[other]!, high[other]!)));
  return { along: Math.max(near, 0), beside };
}

function outsideBy(value: number, low: number, high: number): number {
  return Math.max(low - value, value - high, 0);
}
