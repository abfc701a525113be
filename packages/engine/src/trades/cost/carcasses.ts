// Carcasses that are thought of: what each costs all in, bought or built.

import { type Panel, type SheetPart, sheetsFor, skinJoints, skinPanels } from '@stillair/physics';
import type { Cabinet } from '../../cabinet/cabinet.ts';
import type { Carcass } from '../../cabinet/costs.ts';
import type { Measure, Step } from '../measure.ts';
import { joinersHours } from './joiners-hours.ts';
import { INVENTED, inMoney, middleOf } from './money.ts';

export function carcasses(cabinet: Cabinet): Measure[] {
  return Object.entries(cabinet.carcasses).map(([id, carcass]) => carcassPrice(cabinet, id, carcass));
}

function carcassPrice(cabinet: Cabinet, id: string, carcass: Carcass): Measure {
  const { costs } = cabinet;
  const shared = {
    trade: 'cost',
    quantity: 'carcass-price',
    part: `carcasses.${id}`,
    title: inMoney(`${carcass.title}: what it costs with its changes`, cabinet),
    unit: 'money',
    remedies: [],
    weight: 0.2,
    better: 'lower',
  } as const;
  const changes = Object.values(carcass.changes).reduce((sum, price) => sum + middleOf(cabinet, price), 0);
  const made = carcass.price === undefined && carcass.from === 'built' ? builtPrice(cabinet, carcass) : undefined;
  const price = carcass.price === undefined ? made?.price : middleOf(cabinet, carcass.price);
  if (price === undefined)
    return {
      ...shared,
      missing:
        carcass.from === 'bought'
          ? `its price is not said: give carcasses.${id}.price`
          : `no sheet or price of ${carcass.board} is known in ${cabinet.currency}: give carcasses.${id}.price`,
      steps: [],
    };
  return {
    ...shared,
    value: price + changes,
    get steps(): readonly Step[] {
      return [
        made === undefined
          ? { text: `as it is ${carcass.from}`, value: price, unit: 'money', inputs: [`carcasses.${id}`] }
          : {
              text: `${made.sheets} whole sheets of ${carcass.board} and ${Math.round(made.hours)} hours${costs.hour === undefined ? ' of your own time' : ''}, without doors and shelves`,
              value: price,
              unit: 'money',
              source: INVENTED,
              inputs: ['costs.boards', 'costs.pricePosition'],
            },
        ...Object.entries(carcass.changes).map(([what, change]) => ({
          text: what,
          value: middleOf(cabinet, change),
          unit: 'money',
          inputs: [`carcasses.${id}`],
        })),
        { text: 'whether the machines go into it and come out again is the question of fit' },
      ];
    },
  };
}

/** One skin of its board in whole sheets, and a joiner's hours for it. */
function builtPrice(
  cabinet: Cabinet,
  { inside, board, thickness }: Carcass,
): { price: number; sheets: number; hours: number } | undefined {
  const { costs } = cabinet;
  const sheet = costs.sheets[board];
  const perArea = costs.boards[board];
  if (sheet === undefined || perArea === undefined) return undefined;
  const panels = skinPanels(inside, 0, thickness);
  const [length, width] = sheet;
  const { planned, tooLarge } = sheetsFor(panels.map(withGrain), {
    length,
    width,
    trim: costs.trim,
    kerf: costs.kerf,
    turned: costs.turned,
  });
  if (tooLarge.length > 0) return undefined;
  const hours =
    joinersHours({ parts: panels.length, joints: skinJoints(panels), doors: 0, shelves: 0 }) *
    costs.hoursFactor *
    (1 + costs.contingencyHours);
  const rate = costs.hour === undefined ? 0 : middleOf(cabinet, costs.hour);
  return {
    price: planned * length * width * middleOf(cabinet, perArea) * (1 + costs.contingencyMaterial) + hours * rate,
    sheets: planned,
    hours,
  };
}

/** Grain runs upwards on what stands, from left to right on what lies: a part's length lies along it. */
function withGrain({ face, length, width }: Panel): SheetPart {
  return face === 'top' || face === 'bottom' ? { length, width } : { length: width, width: length };
}
