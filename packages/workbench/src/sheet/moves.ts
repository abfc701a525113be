// What a movement of a part on the sheet is in the file: an edit with whole millimetres.

import type { Cabinet, Edit } from '@stillair/engine';
import type { Axis } from './projection.ts';
import { splitOnce, standsAt } from './solids.ts';

export type Shift = Readonly<Record<Axis, number>>;

export const STILL: Shift = { x: 0, y: 0, z: 0 };

/** Groups of parts that can be moved on the sheet. */
export function canMove(path: string): boolean {
  return ['machines', 'air', 'sensors', 'people'].includes(splitOnce(path)[0]);
}

/** Edits that move a part by metres from where it is in this cabinet; none when nothing of it can move that way. */
export function moveEdits(cabinet: Cabinet, path: string, { x, y, z }: Shift): readonly Edit[] {
  const [group, id] = splitOnce(path);
  switch (group) {
    case 'machines': {
      if (!(id in cabinet.machines)) return [];
      const at = standsAt(cabinet, id);
      return [{ set: { [`machines.${id}.at`]: `${mm(at[0] + x)}, ${mm(at[1] + y)}` } }];
    }
    case 'air': {
      const place = cabinet.paths[id]?.place;
      if (place === undefined) return [];
      const along = place.face === 'left' || place.face === 'right' ? y : x;
      return [{ set: { [`air.${id}.at`]: { face: place.face, along: mm(place.along + along), z: mm(place.z + z) } } }];
    }
    case 'sensors': {
      const sensor = cabinet.sensors[id];
      return sensor === undefined ? [] : [{ set: { [`sensors.${id}.height`]: mm(Math.max(0, sensor.height + z)) } }];
    }
    case 'people': {
      const person = cabinet.people[id];
      if (person === undefined) return [];
      const at = [person.at[0] + x, person.at[1] + y, person.at[2] + z].map(mm).join(', ');
      return [{ set: { [`people.${id}.at`]: at } }];
    }
    default:
      return [];
  }
}

function mm(metres: number): string {
  return `${Math.round(metres * 1000)} mm`;
}
