// The closed spaces of a cabinet: bays between which air passes, their air, and their openings to the outside.

import type { FireOpening } from '@stillair/physics';
import type { Cabinet, CabinetPath, Door, PathPart } from '../../cabinet/cabinet.ts';
import { bayVolume } from '../../cabinet/geometry.ts';
import { outletArea, sectionArea } from '../../network/section-area.ts';
import { doorSize } from '../door-size.ts';
import { bayOfEnd, connectedBays, OUTSIDE } from '../plant.ts';

export interface Space {
  /** `cabinet` when it is all of it, else its bays with hyphens between. */
  readonly part: string;
  readonly bays: readonly string[];
  /** m³ */
  readonly volume: number;
  readonly from: number;
  readonly to: number;
}

/** Spaces from the first bay on; bays that only a machine's chamber connects count as apart. */
export function spacesOf(cabinet: Cabinet): Space[] {
  const all = Object.keys(cabinet.bays);
  const spaces: Space[] = [];
  for (const bay of all) {
    if (spaces.some(({ bays }) => bays.includes(bay))) continue;
    const bays = connectedBays(cabinet, bay).filter((id) => cabinet.bays[id] !== undefined);
    const heights = bays.map((id) => cabinet.bays[id]!.z);
    spaces.push({
      part: bays.length === all.length ? 'cabinet' : bays.join('-'),
      bays,
      volume: bays.reduce((sum, id) => sum + bayVolume(cabinet.bays[id]!, cabinet.inside.depth), 0),
      from: Math.min(...heights.map(([low]) => low)),
      to: Math.max(...heights.map(([, high]) => high)),
    });
  }
  return spaces;
}

/** Ids of the paths between a space and the outside. */
export function pathsOut(cabinet: Cabinet, { bays }: Space): string[] {
  const inside = (end: string): boolean => bays.includes(bayOfEnd(cabinet, end) ?? '');
  return Object.keys(cabinet.paths).filter((id) => {
    const { from, to } = cabinet.paths[id]!;
    return (OUTSIDE.includes(from) && inside(to)) || (OUTSIDE.includes(to) && inside(from));
  });
}

export interface SpaceOpening extends FireOpening {
  readonly what: string;
}

/**
 * Everything through which air may come to a fire while doors are shut and fans stand still: paths as if their filters had
 * burnt away, the seals of doors, and the joints of the boards.
 *
 * @param flapsShut - Flaps hold all but their leakage back.
 */
export function openingsOf(cabinet: Cabinet, space: Space, flapsShut: boolean): SpaceOpening[] {
  const paths = pathsOut(cabinet, space).map((id) => pathOpening(id, cabinet.paths[id]!, flapsShut));
  const seals = Object.entries(cabinet.doors)
    .filter(([, { bays }]) => bays.some((bay) => space.bays.includes(bay)))
    .flatMap(([id, door]) => sealOpenings(id, door, cabinet));
  return [...paths, ...seals, ...joints(cabinet, space)].filter(({ area }) => area > 0);
}

function pathOpening(id: string, { parts, place }: CabinetPath, flapsShut: boolean): SpaceOpening {
  const areas = parts.flatMap((part) => outletArea(part) ?? []);
  const leak = parts.flatMap((part) => (part.part === 'flap' && flapsShut ? [part.leakArea] : []));
  const area = Math.min(...areas, ...leak, areas.length + leak.length === 0 ? 0 : Infinity);
  const level = place.face === 'top' || place.face === 'bottom';
  const height = level || leak.length > 0 ? 0 : heightOf(parts, area);
  return { what: `air.${id}`, area, from: place.z - height / 2, to: place.z + height / 2 };
}

/** Height of the opening where it pierces the wall; of what is not a hole, that of a round one of its area. */
function heightOf(parts: readonly PathPart[], area: number): number {
  const hole = parts.find((part) => part.part === 'hole');
  if (hole?.part === 'hole' && sectionArea(hole.section) * hole.count <= area * 1.001)
    return hole.section.shape === 'round' ? hole.section.diameter : hole.section.height;
  return Math.sqrt((4 * area) / Math.PI);
}

/** Width of a door's opening, and the heights of its lower and upper edge, m. */
export function doorOpening(cabinet: Cabinet, door: Door): { width: number; from: number; to: number } {
  const heights = door.bays.flatMap((id) => cabinet.bays[id]?.z ?? []);
  return { width: doorSize(cabinet, door).width, from: Math.min(...heights), to: Math.max(...heights) };
}

function sealOpenings(id: string, door: Door, cabinet: Cabinet): SpaceOpening[] {
  const { width, from, to } = doorOpening(cabinet, door);
  const what = `doors.${id}`;
  if (door.face === 'top' || door.face === 'bottom') {
    const area = 2 * (width + cabinet.inside.depth) * door.sealGap;
    return [{ what, area, from: to, to }];
  }
  return [
    { what, area: 2 * (to - from) * door.sealGap, from, to },
    { what, area: width * door.sealGap, from, to: from },
    { what, area: width * door.sealGap, from: to, to },
  ];
}

/** Joints of board to board, half of them below and half above. */
function joints({ inside, jointGap }: Cabinet, { from, to, volume }: Space): SpaceOpening[] {
  const width = volume / (inside.depth * Math.max(to - from, 1e-6));
  const area = 2 * (width + inside.depth) * jointGap;
  return [
    { what: 'joints', area, from, to: from },
    { what: 'joints', area, from: to, to },
  ];
}
