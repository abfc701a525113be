// Does the cabinet stand: with everything open, with a load hung on what is open, pushed at its top; and what the floor bears.

import { GRAVITY, tiltLimit, tippingPush, tipRatio } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import { formatQuantity } from '../../units/format.ts';
import { causes } from '../causes.ts';
import type { Limit, Measure, Step } from '../measure.ts';
import { floorLimit, freeHeightLimit, HUNG, pushLimit, tipHungLimit, tipOpenLimit } from './limits.ts';
import { type Body, bodyOf, centreOf, totalMass } from './masses.ts';
import { strapped } from './remedies.ts';

const STRAP = 'it is strapped to the wall: the strap and its screws must bear what is missing';
const CAUTION =
  'furniture that falls hurts people: strap it where children are, and do as its maker and local rules say';

export function stability(cabinet: Cabinet): Measure[] {
  const body = bodyOf(cabinet);
  const opens = body.furthest < body.front || body.weights.some(({ forward }) => forward > 0);
  return [
    ...(opens ? [tipOpen(cabinet, body), tipHung(cabinet, body)] : []),
    tipPush(cabinet, body),
    freeHeight(cabinet, body),
    floorLoad(cabinet, body),
  ];
}

/** A strap holds what statics alone would not: the number is told, and not held against a limit. */
function heldBy(cabinet: Cabinet, limit: Limit | undefined): { limit?: Limit } {
  return cabinet.structure.wallStrap || limit === undefined ? {} : { limit };
}

/** 1/ratio of the masses with all doors and shelves open; a load hung on what reaches furthest; a tilt forward. */
function usedUp({ weights, frontFeet, furthest }: Body, hung: number, tilt: number): number {
  const behind = (y: number, z: number): number => y - frontFeet - z * tilt;
  const masses = weights.map(({ mass, y, z, forward }) => ({ mass, behind: behind(y - forward, z) }));
  // The hung load is low: it adds no turning by the tilt.
  return 1 / tipRatio([...masses, { mass: hung, behind: behind(furthest, 0) }]);
}

function balance(text: string, value: number): Step {
  const formula = 'Σ m |b| before the front feet/Σ m b behind them';
  return { text, value, unit: 'share', formula, source: 'statics', inputs: ['structure.feet.inset'] };
}

function advice({ structure }: Cabinet): Step {
  return { text: structure.wallStrap ? STRAP : CAUTION };
}

function tipOpen(cabinet: Cabinet, body: Body): Measure {
  const value = usedUp(body, 0, 0);
  return {
    trade: 'structure',
    quantity: 'tip-open',
    part: 'cabinet',
    title: 'what open doors and shelves use of what holds it down',
    value,
    unit: 'share',
    ...heldBy(cabinet, tipOpenLimit(cabinet)),
    get steps(): readonly Step[] {
      const says = `all doors open and all shelves pulled out at once: ${openParts(body)}`;
      return [...weighing(body), balance(says, value), advice(cabinet)];
    },
    remedies: cabinet.structure.wallStrap ? [] : strapped,
    cause: causes.mayTip,
    weight: 1,
    better: 'lower',
  };
}

function tipHung(cabinet: Cabinet, body: Body): Measure {
  const tilt = HUNG.block / (body.backFeet - body.frontFeet);
  const value = usedUp(body, HUNG.mass, tilt);
  return {
    trade: 'structure',
    quantity: 'tip-hung',
    part: 'cabinet',
    title: 'what a child’s weight on the furthest open edge uses of what holds it down',
    value,
    unit: 'share',
    ...heldBy(cabinet, tipHungLimit(cabinet)),
    get steps(): readonly Step[] {
      return [
        ...weighing(body),
        {
          text: `${formatQuantity('length', body.frontFeet - body.furthest)} before the front feet hang`,
          value: HUNG.mass,
          unit: 'mass',
          source: 'ASTM F2057-23, test load, a laboratory’s page',
        },
        balance(`with ${formatQuantity('length', HUNG.block)} under its rear feet, as on carpet`, value),
        advice(cabinet),
      ];
    },
    remedies: cabinet.structure.wallStrap ? [] : strapped,
    cause: causes.mayTip,
    weight: 0.9,
    better: 'lower',
  };
}

function tipPush(cabinet: Cabinet, body: Body): Measure {
  const { y, z } = centreOf(body);
  const total = totalMass(body);
  const behind = Math.max(0, Math.min(y - body.frontFeet, body.backFeet - y));
  const value = tippingPush(total, behind, body.height);
  return {
    trade: 'structure',
    quantity: 'tip-push',
    part: 'cabinet',
    title: 'push at the top edge that begins to tip it, shut',
    value,
    unit: 'force',
    ...heldBy(cabinet, pushLimit(cabinet)),
    get steps(): readonly Step[] {
      return [
        ...weighing(body),
        { text: 'its centre above the floor', value: z, unit: 'length' },
        { text: `it falls by itself when it leans ${Math.round((tiltLimit(behind, z) * 180) / Math.PI)}°` },
        {
          text: 'the push, forward or backward, whichever is less',
          value,
          unit: 'force',
          formula: 'm g b/h',
          source: 'statics',
          inputs: ['structure.feet.inset'],
        },
      ];
    },
    remedies: cabinet.structure.wallStrap ? [] : strapped,
    cause: causes.mayTip,
    weight: 0.6,
    better: 'higher',
  };
}

function freeHeight(cabinet: Cabinet, { height, front, back }: Body): Measure {
  return {
    trade: 'structure',
    quantity: 'free-height',
    part: 'cabinet',
    title: cabinet.structure.wallStrap ? 'height of the cabinet' : 'height of the cabinet, which no strap holds',
    value: height,
    unit: 'length',
    ...heldBy(cabinet, freeHeightLimit(cabinet, back - front)),
    steps: [
      {
        text: 'its outer height on its feet',
        value: height,
        unit: 'length',
        inputs: ['inside', 'structure.feet.height'],
      },
      { text: 'its outer depth', value: back - front, unit: 'length' },
      { text: cabinet.structure.wallStrap ? 'it is strapped to the wall' : 'nothing is said to hold it to the wall' },
    ],
    remedies: cabinet.structure.wallStrap ? [] : strapped,
    cause: causes.mayTip,
    weight: 0.6,
    better: 'lower',
  };
}

function floorLoad(cabinet: Cabinet, body: Body): Measure {
  const value = GRAVITY * totalMass(body);
  return {
    trade: 'structure',
    quantity: 'floor-load',
    part: 'cabinet',
    title: 'weight of the cabinet and all in it',
    value,
    unit: 'force',
    limit: floorLimit(cabinet),
    get steps(): readonly Step[] {
      const { feet } = cabinet.structure;
      const area = feet.count > 0 ? (feet.count * Math.PI * feet.size ** 2) / 4 : 0;
      return [
        ...weighing(body),
        ...(area > 0
          ? [
              {
                text: `pressure below ${feet.count} feet, evenly shared`,
                value: value / area,
                unit: 'stress',
                inputs: ['structure.feet.size'],
              },
            ]
          : []),
        {
          text: 'its weight',
          value,
          unit: 'force',
          formula: 'm g',
          inputs: Object.keys(cabinet.machines).map((id) => `machines.${id}.mass`),
        },
      ];
    },
    remedies: [],
    cause: causes.heavyCabinet,
    weight: 0.5,
    better: 'lower',
  };
}

function weighing(body: Body): Step[] {
  const total = totalMass(body);
  const heaviest = [...body.weights].sort((a, b) => b.mass - a.mass).slice(0, 4);
  return [
    {
      text: `all of it; heaviest ${heaviest.map(({ what, mass }) => `${what} ${formatQuantity('mass', mass)}`).join(', ')}`,
      value: total,
      unit: 'mass',
    },
    { text: 'its centre behind the front feet', value: centreOf(body).y - body.frontFeet, unit: 'length' },
  ];
}

function openParts({ weights }: Body): string {
  const open = weights.filter(({ forward }) => forward > 0);
  return open.length === 0
    ? 'none'
    : open.map(({ what, forward }) => `${what} ${formatQuantity('length', forward)} forward`).join(', ');
}
