// A quarter turn of a cable channel, no tighter than its cables may be bent, with a lid that clips between its walls.

import { cableBend } from '@stillair/physics';
import type { FittingPart } from '../../cabinet/fittings.ts';
import { mm } from './ends.ts';
import { SLIDE, WALL } from './practice.ts';
import type { PrintedPart } from './printed-part.ts';
import { type Flat, turnedVolume } from './shape.ts';

const STEPS = 24;
const LID = 2;
const RIB = [2, 6] as const;

export function cableCorner(id: string, { size, cables, where }: FittingPart, bay: string | undefined): PrintedPart[] {
  const [low, high] = [size!.width, size!.depth, size!.height].sort((one, other) => one - other);
  // The channel of the file is measured outside; it lies on its wider side.
  const [clear, deep] = [mm(high!) - 2 * WALL, mm(low!) - WALL - LID];
  const radius = Math.max(...Object.values(cables).map(({ diameter, moved }) => mm(cableBend(diameter, moved))), 10);
  const [r0, r1, r2, r3] = [radius - WALL, radius, radius + clear, radius + clear + WALL];
  const trough: Flat[] = [
    [r0, 0],
    [r3, 0],
    [r3, WALL + deep],
    [r2, WALL + deep],
    [r2, WALL],
    [r1, WALL],
    [r1, WALL + deep],
    [r0, WALL + deep],
  ];
  const lid: Flat[] = [
    [r0, 0],
    [r3, 0],
    [r3, LID],
    [r2 - SLIDE, LID],
    [r2 - SLIDE, LID + RIB[1]],
    [r2 - SLIDE - RIB[0], LID + RIB[1]],
    [r2 - SLIDE - RIB[0], LID],
    [r1 + SLIDE + RIB[0], LID],
    [r1 + SLIDE + RIB[0], LID + RIB[1]],
    [r1 + SLIDE, LID + RIB[1]],
    [r1 + SLIDE, LID],
    [r0, LID],
  ];
  const shared = {
    count: 1,
    sizedFrom: [
      `fittings.${id}.size: section of ${mm(high!)} mm x ${mm(low!)} mm outside`,
      `tightest bend of its cables: ${Math.round(10 * radius) / 10} mm inside`,
    ],
    lies: 'flat, without support',
    ...(bay === undefined ? {} : { bay }),
  };
  return [
    {
      ...shared,
      id: `${id}-corner`,
      title: `corner of the cable channel ${id}`,
      shape: { kind: 'turned', outline: trough, degrees: 90, steps: STEPS },
      size: [r3, r3, WALL + deep],
      volume: turnedVolume(trough, 90, STEPS),
      thinnest: WALL,
      why: 'a channel that turns sharply bends its cables below what their sheath bears',
      check: ['one for each turn of the channel: how often it turns is not in the file', ...mainsWords(where)],
    },
    {
      ...shared,
      id: `${id}-corner-lid`,
      title: `lid of that corner`,
      shape: { kind: 'turned', outline: lid, degrees: 90, steps: STEPS },
      size: [r3, r3, LID + RIB[1]],
      volume: turnedVolume(lid, 90, STEPS),
      thinnest: LID,
      why: 'keeps dust and fingers out',
      check: ['one for each corner'],
    },
  ];
}

function mainsWords(where: string): readonly string[] {
  return [
    `mains and low voltage do not share a channel in ${where} unless both are insulated for the mains (IEC 60364-5-52, from memory)`,
  ];
}
