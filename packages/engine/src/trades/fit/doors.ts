// The floor that each door and the person behind it need.

import { doorSweep } from '@stillair/physics';
import type { Cabinet, Door } from '../../cabinet/cabinet.ts';
import { causes } from '../causes.ts';
import { doorSize } from '../door-size.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { PERSON, swingRoom } from './limits.ts';
import { freerDoor } from './remedies.ts';

export function doors(cabinet: Cabinet): Measure[] {
  return Object.entries(cabinet.doors).flatMap(([id, door]) => {
    if (door.face === 'top' || door.face === 'bottom') return [];
    const hang = cabinet.fit.doors[id]!;
    const thickness = door.build.layers.reduce((sum, layer) => sum + layer.thickness, 0);
    const leaf = doorSize(cabinet, door);
    const sweep =
      hang.hinge === 'slides' || hang.hinge === 'lifts off'
        ? 0
        : doorSweep(hang.hinge === 'left' || hang.hinge === 'right' ? leaf.width : leaf.height, thickness);
    const free = hang.before ?? freeFloor(cabinet, door);
    return [
      {
        trade: 'fit',
        quantity: 'swing-room',
        part: id,
        title: 'floor left before the open door and a person',
        value: free - sweep - PERSON,
        unit: 'length',
        limit: swingRoom(cabinet),
        better: 'higher',
        get steps(): readonly Step[] {
          return [
            {
              text:
                hang.before === undefined
                  ? 'free floor: the room’s depth less the cabinet’s, when it stands at a wall'
                  : 'free floor before the cabinet',
              value: free,
              unit: 'length',
              inputs: [hang.before === undefined ? 'room.size.depth' : `fit.doors.${id}.before`],
            },
            {
              text: `what the leaf sweeps, hinge: ${hang.hinge}`,
              value: sweep,
              unit: 'length',
              formula: '√(w² + t²)',
              inputs: [`fit.doors.${id}.hinge`],
            },
            { text: 'a person', value: PERSON, unit: 'length' },
          ];
        },
        get remedies(): readonly Remedy[] {
          return freerDoor(cabinet, id);
        },
        cause: causes.doorNeedsFloor,
        weight: 0.3,
      } satisfies Measure,
    ];
  });
}

function freeFloor({ room, inside, faces }: Cabinet, { face }: Door): number {
  const deep = face === 'front' || face === 'back';
  const boards = (name: 'front' | 'back' | 'left' | 'right'): number =>
    faces[name].build.layers.reduce((sum, layer) => sum + layer.thickness, 0) + faces[name].gap;
  return deep
    ? room.size.depth - inside.depth - boards('front') - boards('back')
    : room.size.width - inside.width - boards('left') - boards('right');
}
