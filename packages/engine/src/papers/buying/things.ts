// Everything that is bought, by kind: how many, what it costs, and where in the cabinet it goes.

import type { Cabinet, PathPart } from '../../cabinet/cabinet.ts';
import { cutListOf } from '../../joinery/cut-list.ts';
import { formatQuantity, type UnitSystem } from '../../units/format.ts';
import { lotPlans } from '../joinery/sheet-plans.ts';

export interface Thing {
  readonly what: string;
  readonly count: number;
  readonly where: readonly string[];
  /** Of all of them; absent when nobody said a price. */
  readonly price?: { readonly low: number; readonly high: number };
  /** Paths of the parts in the cabinet that are of this kind. */
  readonly parts: readonly string[];
  readonly group: 'boards' | 'air' | 'other' | 'protection' | 'fastenings';
}

export function thingsToBuy(cabinet: Cabinet, units: UnitSystem): readonly Thing[] {
  return [
    ...boards(cabinet, units),
    ...air(cabinet, units),
    ...seals(cabinet),
    ...lamps(cabinet),
    ...supplies(cabinet),
    ...devices(cabinet),
  ];
}

function boards(cabinet: Cabinet, units: UnitSystem): Thing[] {
  const { costs } = cabinet;
  if (costs.carcass !== undefined)
    return [
      { what: 'carcass, as it is bought', count: 1, where: [], price: costs.carcass, parts: [], group: 'boards' },
    ];
  // The same plans as on the sheets that are taken to the saw.
  const plans = lotPlans(cabinet);
  return cutListOf(cabinet).lots.map((lot): Thing => {
    const sheet = costs.sheets[lot.board];
    const plan = plans.find(
      ({ lot: { board, thickness } }) => board === lot.board && thickness === lot.thickness,
    )?.plan;
    const perArea = costs.boards[lot.board];
    const whole = sheet !== undefined && plan !== undefined && plan.tooLarge.length === 0;
    const area = whole ? plan.sheets.length * sheet[0] * sheet[1] : lot.area;
    const size = (length: number): string => formatQuantity('length', length, units);
    return {
      what: `${lot.board} ${formatQuantity('length', lot.thickness, units)}${whole ? `, sheets of ${size(sheet[0])} x ${size(sheet[1])}` : `, cut to size: ${formatQuantity('area', area, units)}`}`,
      count: whole ? plan.sheets.length : lot.parts.length,
      where: [`${lot.parts.length} ${lot.parts.length === 1 ? 'part' : 'parts'} of the cut list`],
      ...(perArea === undefined ? {} : { price: { low: perArea.low * area, high: perArea.high * area } }),
      parts: [],
      group: 'boards',
    };
  });
}

function air(cabinet: Cabinet, units: UnitSystem): Thing[] {
  const kinds = new Map<string, Thing>();
  for (const [id, { parts }] of Object.entries(cabinet.paths)) {
    for (const [at, part] of parts.entries()) {
      if (part.part === 'hole') continue;
      const what = kindOf(part, units);
      const path = `paths.${id}.parts.${at}`;
      const price = cabinet.prices[path];
      const known = kinds.get(what);
      kinds.set(what, {
        what,
        count: (known?.count ?? 0) + 1,
        where: [...new Set([...(known?.where ?? []), id])],
        ...(price === undefined || (known !== undefined && known.price === undefined)
          ? {}
          : { price: { low: (known?.price?.low ?? 0) + price.low, high: (known?.price?.high ?? 0) + price.high } }),
        parts: [...(known?.parts ?? []), path],
        group: 'air',
      });
    }
  }
  return [...kinds.values()];
}

export function kindOf(part: PathPart, units: UnitSystem): string {
  switch (part.part) {
    case 'fan':
      return `fan: ${part.kind}`;
    case 'filter':
      return `filter: ${part.kind}`;
    case 'carbon':
      return `carbon: ${part.kind}`;
    case 'duct':
      return `${part.flexible ? 'flexible' : 'smooth'} duct ${formatQuantity('length', part.diameter, units)}, ${formatQuantity('length', part.length, units)}`;
    case 'loss':
      return part.what;
    case 'flap':
      return 'back-draught flap';
    case 'hole':
      return 'hole';
  }
}

function seals({ doors, prices }: Cabinet): Thing[] {
  return Object.keys(doors).flatMap((id): Thing[] => {
    const price = prices[`doors.${id}.seal`];
    return price === undefined
      ? []
      : [{ what: `seal of ${id}, all round`, count: 1, where: [id], price, parts: [], group: 'other' }];
  });
}

function lamps({ heats, prices }: Cabinet): Thing[] {
  return Object.entries(heats).map(([id, { what, watts, bay }]) => {
    const price = prices[`heats.${id}`];
    return {
      what: `${what} ${id}, ${formatQuantity('power', watts)}`,
      count: 1,
      where: [bay],
      ...(price === undefined ? {} : { price }),
      parts: [],
      group: 'other',
    } satisfies Thing;
  });
}

function supplies({ power }: Cabinet): Thing[] {
  return [
    ...Object.entries(power.strips).map(
      ([id, { sockets, rating, where }]): Thing => ({
        what: `strip ${id}: ${sockets} sockets, ${rating} A`,
        count: 1,
        where: [where],
        parts: [],
        group: 'other',
      }),
    ),
    ...Object.entries(power.supplies).map(
      ([id, { voltage, watts, where }]): Thing => ({
        what: `supply ${id}: ${voltage} V, ${watts} W`,
        count: 1,
        where: [where],
        parts: [],
        group: 'other',
      }),
    ),
    ...Object.entries(power.wires).map(
      ([id, { length, section }]): Thing => ({
        what: `wire ${id}: two cores of ${Math.round(section * 1e8) / 100} mm², ${length} m`,
        count: 1,
        where: [],
        parts: [],
        group: 'other',
      }),
    ),
  ];
}

const named = (what: string, id: string): string => (what === id ? what : `${what} ${id}`);

function devices({ protection, costs }: Cabinet): Thing[] {
  const priced = (path: string): Pick<Thing, 'price'> => {
    const price = costs.devices[path];
    return price === undefined ? {} : { price };
  };
  return [
    ...Object.entries(protection.chain ?? {}).map(
      ([id, { what }]): Thing => ({
        what: named(what, id),
        count: 1,
        where: ['cut-off chain'],
        ...priced(`chain.${id}`),
        parts: [],
        group: 'protection',
      }),
    ),
    ...Object.entries(protection.detectors ?? {}).map(
      ([id, { what, where }]): Thing => ({
        what: named(`${what} detector`, id),
        count: 1,
        where: [where],
        ...priced(`detectors.${id}`),
        parts: [],
        group: 'protection',
      }),
    ),
    ...(protection.extinguisher === undefined
      ? []
      : [
          {
            what: `extinguisher, ${protection.extinguisher.agent} ${formatQuantity('mass', protection.extinguisher.mass)}`,
            count: 1,
            where: ['by the way out'],
            ...priced('extinguisher'),
            parts: [],
            group: 'protection',
          } satisfies Thing,
        ]),
  ];
}
