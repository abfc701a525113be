// The leaf of a door: its size from the bays that it opens, its mass, how it opens.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Hinge } from '../../cabinet/fit.ts';
import { arealMass } from '../standing-on.ts';

export interface Leaf {
  readonly width: number;
  readonly height: number;
  readonly mass: number;
  readonly hinge: Hinge;
}

export function leafOf({ bays, doors, fit, inside }: Cabinet, id: string): Leaf {
  const { bays: opened, build, face } = doors[id]!;
  const range = (axis: 'x' | 'z'): number =>
    Math.max(...opened.map((bay) => bays[bay]![axis][1])) - Math.min(...opened.map((bay) => bays[bay]![axis][0]));
  const flat = face === 'top' || face === 'bottom';
  const width = face === 'left' || face === 'right' ? inside.depth : range('x');
  const height = flat ? inside.depth : range('z');
  return { width, height, mass: width * height * arealMass(build), hinge: fit.doors[id]?.hinge ?? 'left' };
}
