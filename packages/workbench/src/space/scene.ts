// The cabinet as solids for the 3-D view: the same boxes as on the sheet, with how they look.

import type { Cabinet } from '@stillair/engine';
import { momentOf } from '../day/moment.ts';
import type { ShownDay } from '../engine/protocol.ts';
import type { Box } from '../sheet/projection.ts';
import { bayBox, bedBox, doorBox, insideBox, machineParts, outsideBox, partitionBox } from '../sheet/solids.ts';

export interface Solid {
  readonly part: string;
  readonly box: Box;
  readonly look: 'wall' | 'board' | 'glass' | 'door' | 'machine' | 'bed' | 'air';
  /** K, of air. */
  readonly temperature?: number;
}

export function solidsOf(cabinet: Cabinet, day: ShownDay, time: number): readonly Solid[] {
  return [
    ...walls(cabinet),
    ...cabinet.partitions.map(
      ({ id }, at): Solid => ({ part: `partitions.${id}`, box: partitionBox(cabinet, at), look: 'board' }),
    ),
    ...Object.entries(cabinet.doors).map(
      ([id, { build }]): Solid => ({
        part: `doors.${id}`,
        box: doorBox(cabinet, id),
        look: build.solarTransmittance > 0 ? 'glass' : 'door',
      }),
    ),
    ...Object.keys(cabinet.machines).flatMap((id): Solid[] => [
      ...machineParts(cabinet, id).map(({ box }): Solid => ({ part: `machines.${id}`, box, look: 'machine' })),
      { part: `machines.${id}`, box: bedBox(cabinet, id), look: 'bed' },
    ]),
    ...Object.keys(cabinet.bays).map(
      (id): Solid => ({
        part: `bays.${id}`,
        box: bayBox(cabinet, id),
        look: 'air',
        temperature: warmest(day, id, time),
      }),
    ),
  ];
}

function warmest(day: ShownDay, bay: string, time: number): number {
  return Math.max(...(day.sheet.bays[bay] ?? [[293]]).map((zone) => zone[momentOf(day, time)]!));
}

/** The carcass without its front, so that one sees into it. */
function walls(cabinet: Cabinet): Solid[] {
  const [inner, outer] = [insideBox(cabinet), outsideBox(cabinet)];
  const wall = (face: string, box: Partial<Box>): Solid => ({
    part: `faces.${face}`,
    box: { ...outer, ...box },
    look: 'wall',
  });
  return [
    wall('left', { x: [outer.x[0], inner.x[0]] }),
    wall('right', { x: [inner.x[1], outer.x[1]] }),
    wall('bottom', { x: inner.x, z: [outer.z[0], inner.z[0]] }),
    wall('top', { x: inner.x, z: [inner.z[1], outer.z[1]] }),
    wall('back', { x: inner.x, z: inner.z, y: [inner.y[1], outer.y[1]] }),
  ];
}
