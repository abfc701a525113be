// The leaf of a door: its size from the bays that it opens, its mass, how it opens.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Hinge } from '../../cabinet/fit.ts';
import { doorSize } from '../door-size.ts';
import { arealMass } from '../standing-on.ts';

export interface Leaf {
  readonly width: number;
  readonly height: number;
  readonly mass: number;
  readonly hinge: Hinge;
}

export function leafOf(cabinet: Cabinet, id: string): Leaf {
  const door = cabinet.doors[id]!;
  const { width, height } = doorSize(cabinet, door);
  return { width, height, mass: width * height * arealMass(door.build), hinge: cabinet.fit.doors[id]?.hinge ?? 'left' };
}
