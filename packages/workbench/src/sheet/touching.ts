// What touches what: where a moving part of a machine reaches into a wall, the door, a board above, or another machine.

import { type Cabinet, clearBay } from '@stillair/engine';
import type { Axis, Box } from './projection.ts';
import { machineParts } from './solids.ts';

export interface Touch {
  /** Where the two are in one place. */
  readonly box: Box;
  /** m, the least way to part them. */
  readonly deep: number;
  readonly says: string;
}

/** Less than this is the thickness of a line. */
const HAIR = 0.0005;

export function touchesIn(cabinet: Cabinet): readonly Touch[] {
  const found: Touch[] = [];
  const ids = Object.keys(cabinet.machines);
  for (const [at, id] of ids.entries()) {
    const { bay } = cabinet.machines[id]!;
    const { x, z } = cabinet.bays[bay]!;
    const clear = clearBay(cabinet, bay);
    const bounds: readonly (readonly [Axis, 0 | 1, number, string])[] = [
      ['x', 0, x[0], 'the left wall'],
      ['x', 1, x[1], 'the right wall'],
      ['y', 0, clear.front, 'the door'],
      ['y', 1, clear.back, 'the back'],
      ['z', 1, z[1], 'what is above'],
    ];
    for (const { what, when, box } of machineParts(cabinet, id)) {
      for (const [axis, side, bound, name] of bounds) {
        const deep = side === 0 ? bound - box[axis][0] : box[axis][1] - bound;
        if (deep < HAIR) continue;
        const beyond: Box = { ...box, [axis]: side === 0 ? [box[axis][0], bound] : [bound, box[axis][1]] };
        found.push({ box: beyond, deep, says: `${id}, ${what} (${when}) into ${name}` });
      }
    }
    for (const other of ids.slice(at + 1)) {
      if (cabinet.machines[other]!.bay !== bay) continue;
      const touch = worstOverlap(cabinet, id, other);
      if (touch !== undefined) found.push(touch);
    }
  }
  return deepestOfEach(found);
}

function worstOverlap(cabinet: Cabinet, id: string, other: string): Touch | undefined {
  let worst: Touch | undefined;
  for (const a of machineParts(cabinet, id))
    for (const b of machineParts(cabinet, other)) {
      const box = {
        x: [Math.max(a.box.x[0], b.box.x[0]), Math.min(a.box.x[1], b.box.x[1])],
        y: [Math.max(a.box.y[0], b.box.y[0]), Math.min(a.box.y[1], b.box.y[1])],
        z: [Math.max(a.box.z[0], b.box.z[0]), Math.min(a.box.z[1], b.box.z[1])],
      } as const;
      const deep = Math.min(box.x[1] - box.x[0], box.y[1] - box.y[0], box.z[1] - box.z[0]);
      if (deep < HAIR || (worst !== undefined && worst.deep >= deep)) continue;
      worst = { box, deep, says: `${id}, ${a.what} (${a.when}) against ${other}, ${b.what}` };
    }
  return worst;
}

/** One mark for each machine and neighbour: several parts reach into one wall, and the deepest counts. */
function deepestOfEach(touches: readonly Touch[]): readonly Touch[] {
  const deepest = new Map<string, Touch>();
  for (const touch of touches) {
    const key = `${touch.says.split(',')[0]}|${/ (?:into|against) .*$/.exec(touch.says)?.[0] ?? ''}`;
    const known = deepest.get(key);
    if (known === undefined || known.deep < touch.deep) deepest.set(key, touch);
  }
  return [...deepest.values()];
}
