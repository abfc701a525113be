// Changes that may make room. The judge tries each in the file.

import type { Cabinet, Edit } from '../../cabinet/cabinet.ts';
import type { Remedy } from '../measure.ts';
import { millimetres, set } from '../remedy-edits.ts';
import { clearBay, type StandingMachine, wanted } from '../standing-machines.ts';

/** So that what is assumed may be a little more than that, m. */
const SPARE = 0.02;
/** Rounded up, so that the change does what it says. */
const up = (metres: number): number => Math.ceil(200 * metres) / 200;

/** Where its motion has equal room before and behind, and as much beside it as it has. */
export function moveMachine(cabinet: Cabinet, bay: string, { id, parts, at, placed }: StandingMachine): Remedy[] {
  if (!placed) return [];
  const clear = clearBay(cabinet, bay);
  const want = (side: 'left' | 'right' | 'front' | 'back'): number => wanted(cabinet, parts, side);
  const alone = Object.values(cabinet.machines).filter((machine) => machine.bay === bay).length === 1;
  const x = alone ? (want('left') + clear.width - want('right')) / 2 : at[0];
  const y = (clear.front + want('front') + clear.back - want('back')) / 2;
  if (Math.abs(x - at[0]) < 0.001 && Math.abs(y - at[1]) < 0.001) return [];
  return [
    {
      says: `stand ${id} with its middle ${millimetres(x)} from the left and ${millimetres(y)} from the front`,
      edits: [set(['machines', id, 'at'], [millimetres(x), millimetres(y)])],
    },
  ];
}

export function spoolElsewhere(id: string): Remedy[] {
  return [
    { says: `hang the spool of ${id} outside its bay`, edits: [set(['machines', id, 'motion', 'spool'], 'away')] },
  ];
}

const inside = ({ inside: { width, depth, height } }: Cabinet, more: Partial<Cabinet['inside']>): Edit =>
  set(
    ['cabinet', 'inside'],
    [width + (more.width ?? 0), depth + (more.depth ?? 0), height + (more.height ?? 0)].map(millimetres).join(' x '),
  );

/** As deep as the motion wants, and the machine in its middle. */
export function deeperCabinet(cabinet: Cabinet, bay: string, { id, parts, at, placed }: StandingMachine): Remedy[] {
  const clear = clearBay(cabinet, bay);
  const [front, back] = [wanted(cabinet, parts, 'front'), wanted(cabinet, parts, 'back')];
  const short = front + back - (clear.back - clear.front);
  if (!(short > 0)) return [];
  const more = up(short + SPARE);
  const y = (clear.front + front + clear.back + more - back) / 2;
  return [
    {
      says: `make the cabinet ${millimetres(more)} deeper`,
      edits: [
        inside(cabinet, { depth: more }),
        ...(placed ? [set(['machines', id, 'at'], [millimetres(at[0]), millimetres(y)])] : []),
      ],
    },
  ];
}

export function widerCabinet(cabinet: Cabinet, bay: string, { id, parts, at, placed }: StandingMachine): Remedy[] {
  const { x } = cabinet.bays[bay]!;
  const clear = clearBay(cabinet, bay);
  const [left, right] = [wanted(cabinet, parts, 'left'), wanted(cabinet, parts, 'right')];
  const short = left + right - clear.width;
  if (x[0] > 0 || x[1] < cabinet.inside.width || !(short > 0)) return [];
  const more = up(short + SPARE);
  return [
    {
      says: `make the cabinet ${millimetres(more)} wider`,
      edits: [
        inside(cabinet, { width: more }),
        ...(placed
          ? [set(['machines', id, 'at'], [millimetres((left + clear.width + more - right) / 2), millimetres(at[1])])]
          : []),
      ],
    },
  ];
}

/** Only the uppermost bay grows with the cabinet. */
export function higherCabinet(cabinet: Cabinet, bay: string, short: number): Remedy[] {
  const { z } = cabinet.bays[bay]!;
  if (z[1] < cabinet.inside.height) return [];
  const more = up(short + SPARE);
  return [
    {
      says: `make ${bay} and the cabinet ${millimetres(more)} higher`,
      edits: [
        inside(cabinet, { height: more }),
        set(['bays', bay, 'z'], `${millimetres(z[0])} to ${millimetres(z[1] + more)}`),
      ],
    },
  ];
}

/** A wider or a higher opening: the door’s own keys. */
export function freerDoor(cabinet: Cabinet, door: string): Remedy[] {
  const path = door === 'door' ? ['cabinet', 'door'] : ['cabinet', 'doors', door];
  const hang = cabinet.fit.doors[door];
  if (hang === undefined || hang.hinge === 'lifts off') return [];
  return [
    {
      says: `hang ${door === 'door' ? 'the door' : door} so that it lifts off`,
      edits: [set([...path, 'hinge'], 'lifts off'), set([...path, 'hinge-takes'], '0 mm')],
    },
  ];
}
