// Hands: do they get to the plug, past the machine, and can one take the spool off and the machine out?

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { causes } from '../causes.ts';
import { movedTo, type Part } from '../machine-solids.ts';
import type { Measure, Step } from '../measure.ts';
import { type ClearBay, clearBay, type StandingMachine, standingIn } from '../standing-machines.ts';
import { handRoom, liftLimit, reachLimit, spoolOff } from './limits.ts';
import { spoolElsewhere } from './remedies.ts';

export function hands(cabinet: Cabinet): Measure[] {
  return Object.keys(cabinet.bays).flatMap((bay) => {
    const clear = clearBay(cabinet, bay);
    return standingIn(cabinet, bay).flatMap((machine) => [
      handPast(cabinet, clear, machine),
      reachToPlug(cabinet, bay, machine),
      lift(cabinet, machine.id),
      ...spool(cabinet, clear, machine),
    ]);
  });
}

/** The widest gap beside or above the frame, through which a hand goes to what lies behind. */
function handPast(cabinet: Cabinet, clear: ClearBay, { id, at }: StandingMachine): Measure {
  const { frame } = cabinet.fit.machines[id]!;
  const frameTop = frame.height;
  const gaps = [
    ['left of it', at[0] - frame.width / 2],
    ['right of it', clear.width - at[0] - frame.width / 2],
    ['above it', clear.height - frameTop],
  ] as const;
  const [where, widest] = gaps.reduce((a, b) => (b[1] > a[1] ? b : a));
  return {
    trade: 'fit',
    quantity: 'hand-room',
    part: id,
    title: 'widest way past the frame for a hand',
    value: widest,
    unit: 'length',
    limit: handRoom(cabinet),
    better: 'higher',
    get steps(): readonly Step[] {
      return gaps.map(([place, value]) => ({
        text: `gap ${place}${place === where ? ', the widest' : ''}`,
        value,
        unit: 'length',
        inputs: [`fit.machines.${id}.frame`],
      }));
    },
    remedies: [],
    cause: causes.outOfReach,
    weight: 0.3,
  };
}

function reachToPlug(cabinet: Cabinet, bay: string, { id, at }: StandingMachine): Measure {
  const { frame } = cabinet.fit.machines[id]!;
  const toBack = Object.values(cabinet.doors).some(({ face, bays }) => face === 'back' && bays.includes(bay));
  const value = toBack ? cabinet.inside.depth - at[1] - frame.depth / 2 : at[1] + frame.depth / 2;
  return {
    trade: 'fit',
    quantity: 'reach',
    part: id,
    title: 'reach from the opening to the plug behind the frame',
    value,
    unit: 'length',
    limit: reachLimit(cabinet),
    better: 'lower',
    get steps(): readonly Step[] {
      return [
        { text: 'middle of the frame from the front', value: at[1], unit: 'length', inputs: [`machines.${id}.at`] },
        { text: 'depth of the frame', value: frame.depth, unit: 'length', inputs: [`fit.machines.${id}.frame`] },
      ];
    },
    remedies: [],
    cause: causes.outOfReach,
    weight: 0.3,
  };
}

function lift(cabinet: Cabinet, id: string): Measure {
  const { mass } = cabinet.machines[id]!;
  return {
    trade: 'fit',
    quantity: 'lift',
    part: id,
    title: 'mass to be lifted when the machine is brought out',
    value: mass,
    unit: 'mass',
    limit: liftLimit(cabinet),
    better: 'lower',
    get steps(): readonly Step[] {
      return [
        {
          text: 'mass of the machine, its slab left in place',
          value: mass,
          unit: 'mass',
          inputs: [`machines.${id}.mass`],
        },
      ];
    },
    remedies: [],
    cause: causes.tooHeavy,
    weight: 0.5,
  };
}

function spool(cabinet: Cabinet, clear: ClearBay, { id, parts, at }: StandingMachine): Measure[] {
  const found = parts.find(({ what }) => what === 'spool');
  if (found === undefined) return [];
  const { spoolSize } = cabinet.fit.machines[id]!;
  const stands = movedTo(found, at);
  const free = alongAxle(stands, clear);
  const reach = (stands.from[1] + stands.to[1]) / 2;
  return [
    {
      trade: 'fit',
      quantity: 'spool-off',
      part: id,
      title: 'free way along the axle to take the spool off',
      value: free,
      unit: 'length',
      limit: spoolOff(cabinet, spoolSize.width),
      better: 'higher',
      get steps(): readonly Step[] {
        return [{ text: `free beside the spool (${found.when})`, value: free, unit: 'length', inputs: found.inputs }];
      },
      get remedies() {
        return spoolElsewhere(id);
      },
      cause: causes.spoolInTheWay,
      weight: 0.4,
    },
    {
      trade: 'fit',
      quantity: 'spool-reach',
      part: id,
      title: 'reach from the opening to the spool',
      value: reach,
      unit: 'length',
      limit: reachLimit(cabinet),
      better: 'lower',
      get steps(): readonly Step[] {
        return [
          {
            text: `middle of the spool (${found.when}) from the front`,
            value: reach,
            unit: 'length',
            inputs: found.inputs,
          },
        ];
      },
      get remedies() {
        return spoolElsewhere(id);
      },
      cause: causes.outOfReach,
      weight: 0.3,
    },
  ];
}

/** The longer of the two free ways along a spool's axle. */
function alongAxle({ from, to, round }: Part, { width, back }: ClearBay): number {
  return round === 0 ? Math.max(from[0], width - to[0]) : back - to[1];
}
