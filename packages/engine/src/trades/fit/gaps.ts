// What comes nearest to what: each machine against door, walls, shelf above and its neighbours, over all its positions.

import { solidGap } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import { causes } from '../causes.ts';
import { movedTo, type Part, reachOf, type Side } from '../machine-solids.ts';
import type { Measure, Remedy, Step } from '../measure.ts';
import { type ClearBay, clearBay, type StandingMachine, spareOf, standingIn } from '../standing-machines.ts';
import { airLimit, machineGap } from './limits.ts';
import { deeperCabinet, higherCabinet, moveMachine, spoolElsewhere, widerCabinet } from './remedies.ts';

const titles = {
  front: 'smallest gap before the machine, in full motion',
  back: 'smallest gap behind the machine, in full motion',
  sides: 'smallest gap beside the machine, in full motion',
  above: 'smallest gap above the machine, in full motion',
} as const;

const sidesOf: Readonly<Record<keyof typeof titles, readonly Side[]>> = {
  front: ['front'],
  back: ['back'],
  sides: ['left', 'right'],
  above: ['top'],
};

export function gaps(cabinet: Cabinet): Measure[] {
  return Object.keys(cabinet.bays).flatMap((bay) => {
    const clear = clearBay(cabinet, bay);
    const machines = standingIn(cabinet, bay);
    return [
      ...machines.flatMap((machine) =>
        (['front', 'back', 'sides', 'above'] as const).map((way) => gapTo(cabinet, bay, clear, machine, way)),
      ),
      ...between(cabinet, machines),
    ];
  });
}

/** Clear distance from a part, where it stands, to the bay's end on one side. */
function gapOf(part: Part, side: Side, [x, y]: readonly [number, number], clear: ClearBay): number {
  const reach = reachOf(part, side);
  switch (side) {
    case 'left':
      return x - reach;
    case 'right':
      return clear.width - x - reach;
    case 'front':
      return y - clear.front - reach;
    case 'back':
      return clear.back - y - reach;
    default:
      return clear.height - reach;
  }
}

function gapTo(
  cabinet: Cabinet,
  bay: string,
  clear: ClearBay,
  machine: StandingMachine,
  way: keyof typeof titles,
): Measure {
  const { id, parts, at } = machine;
  let [part, side, gap, least] = [parts[0]!, sidesOf[way][0]!, 0, Infinity];
  for (const candidate of parts)
    for (const towards of sidesOf[way]) {
      const free = gapOf(candidate, towards, at, clear);
      const spare = spareOf(cabinet, candidate, towards, free);
      if (spare < least) [part, side, gap, least] = [candidate, towards, free, spare];
    }
  const limit = airLimit(cabinet, part, side);
  return {
    trade: 'fit',
    quantity: `gap-${way}`,
    part: id,
    title: titles[way],
    value: gap,
    unit: 'length',
    limit,
    better: 'higher',
    get steps(): readonly Step[] {
      return [
        {
          text: `${part.what} (${part.when}) reaches ${words[side]}`,
          value: reachOf(part, side),
          unit: 'length',
          formula: side === 'top' ? 'slab, frame and what stands on it' : 'frame, way of the bed, clip, cable',
          inputs: part.inputs,
        },
        whereItStands(machine, side, clear),
        {
          text: `the nearest thing there is ${thingAt(cabinet, bay, side)}; between them is`,
          value: gap,
          unit: 'length',
        },
      ];
    },
    get remedies(): readonly Remedy[] {
      return [
        ...(side === 'top' ? [] : moveMachine(cabinet, bay, machine)),
        ...(part.what === 'spool' ? spoolElsewhere(id) : []),
        ...(side === 'front' || side === 'back' ? deeperCabinet(cabinet, bay, machine) : []),
        ...(side === 'left' || side === 'right' ? widerCabinet(cabinet, bay, machine) : []),
        ...(side === 'top' ? higherCabinet(cabinet, bay, limit.value - gap) : []),
      ].slice(0, 4);
    },
    cause: part.what.startsWith('bed')
      ? causes.bedTravels
      : part.what === 'spool'
        ? causes.spoolInTheWay
        : causes.bayTooSmall,
    weight: 0.9,
  };
}

const words: Readonly<Record<Side, string>> = {
  left: 'to the left of the middle of its frame',
  right: 'to the right of the middle of its frame',
  front: 'before the middle of its frame',
  back: 'behind the middle of its frame',
  top: 'above the floor of the bay',
};

function whereItStands({ id, at, placed }: StandingMachine, side: Side, clear: ClearBay): Step {
  if (side === 'top')
    return { text: 'clear height of the bay', value: clear.height, unit: 'length', inputs: ['fit.tolerance'] };
  const along = side === 'left' || side === 'right' ? 0 : 1;
  const from = along === 0 ? 'left wall' : 'front';
  return placed
    ? {
        text: `its frame’s middle stands from the ${from}`,
        value: at[along],
        unit: 'length',
        inputs: [`machines.${id}.at`],
      }
    : {
        text: `the file does not say where it stands: taken so that its motion has equal room on both sides, its middle from the ${from}`,
        value: at[along],
        unit: 'length',
      };
}

function thingAt(cabinet: Cabinet, bay: string, side: Side): string {
  if (side === 'front') {
    const door = Object.keys(cabinet.doors).find((id) => {
      const { face, bays } = cabinet.doors[id]!;
      return face === 'front' && bays.includes(bay);
    });
    return door === undefined ? 'the front' : `the shut ${door === 'door' ? 'door' : `door ${door}`}`;
  }
  if (side === 'back') return 'the back';
  const board = cabinet.partitions.find(({ bays }) => {
    const other = bays.includes(bay) ? bays.find((id) => id !== bay)! : undefined;
    if (other === undefined) return false;
    const [mine, its] = [cabinet.bays[bay]!, cabinet.bays[other]!];
    if (side === 'top') return its.z[0] >= mine.z[1] - 1e-6;
    return side === 'left' ? its.x[1] <= mine.x[0] + 1e-6 : its.x[0] >= mine.x[1] - 1e-6;
  });
  return board === undefined ? `the ${side}` : `board ${board.id}`;
}

/** Machines that share a bay, against one another in every pair of positions. */
function between(cabinet: Cabinet, machines: readonly StandingMachine[]): Measure[] {
  return machines.flatMap((one, index) =>
    machines.slice(index + 1).map((other): Measure => {
      let [gap, mine, its] = [Infinity, one.parts[0]!, other.parts[0]!];
      for (const a of one.parts) {
        const from = movedTo(a, [one.at[0] - other.at[0], one.at[1] - other.at[1]]);
        for (const b of other.parts) {
          const found = solidGap(from, b);
          if (found < gap) [gap, mine, its] = [found, a, b];
        }
      }
      return {
        trade: 'fit',
        quantity: 'gap-between',
        part: `${one.id}.${other.id}`,
        title: 'smallest gap between two machines, in full motion',
        value: gap,
        unit: 'length',
        limit: machineGap(cabinet),
        better: 'higher',
        get steps(): readonly Step[] {
          return [
            { text: `${mine.what} of ${one.id} (${mine.when})`, inputs: mine.inputs },
            { text: `${its.what} of ${other.id} (${its.when})`, inputs: its.inputs },
            { text: 'between them is', value: gap, unit: 'length', formula: 'distance of boxes and cylinders' },
          ];
        },
        get remedies(): readonly Remedy[] {
          return [mine, its].some(({ what }) => what === 'spool')
            ? [...spoolElsewhere(one.id), ...spoolElsewhere(other.id)]
            : [];
        },
        cause: causes.bayTooSmall,
        weight: 0.9,
      };
    }),
  );
}
