// Schema of `power:` and of how a machine meets the mains.

import { conductor } from './conductor-form.ts';
import {
  breakerCurves,
  insulations,
  type MainsSpec,
  type PowerSpec,
  plugs,
  regions,
  type StripSpec,
  type SupplySpec,
  type WireSpec,
} from './power.ts';
import {
  count,
  type FieldsOf,
  mapOf,
  name,
  oneOrMore,
  points,
  quantity,
  type Schema,
  shortOr,
  thing,
  word,
} from './shape.ts';

const KWH = 3.6e6;
const price = { from: 0, to: 10 / KWH };
const where = (what: string): Schema<string> => name(`where ${what} is: a bay, or outside`);

const mainsFields: FieldsOf<MainsSpec> = {
  'power-factor': quantity('number', 'real over apparent power while it works', { above: 0, to: 1 }).optional(),
  inrush: quantity('electric-current', 'peak when it is switched on cold', { from: 0, to: 500 }).optional(),
  leakage: quantity('electric-current', 'standing current to earth', { from: 0, to: 0.1 }).optional(),
  plug: word(plugs, 'a bulky one covers the socket beside it').optional(),
};

export function mainsSchema(): Schema<MainsSpec> {
  return thing(mainsFields, 'how it meets the mains');
}

function stripSchema(): Schema<StripSpec> {
  return thing(
    {
      sockets: count('sockets that it has', 40).optional(),
      rating: quantity('electric-current', 'printed on it', { above: 0, to: 63 }).optional(),
      where: where('it').optional(),
      from: name('wall, or the strip into which it is plugged').optional(),
      feeds: oneOrMore(name('machine, source of heat or supply'), 'what is plugged into it').optional(),
    },
    'a strip of sockets',
  );
}

function supplySchema(): Schema<SupplySpec> {
  return thing(
    {
      voltage: quantity('voltage', 'direct current that it gives', { above: 0, to: 120 }).optional(),
      power: quantity('power', 'rated output', { above: 0, to: 2000 }).optional(),
      efficiency: quantity('share', 'at working load', { from: 0.3, to: 1 }).optional(),
      where: where('it').optional(),
      feeds: oneOrMore(name('air path or source of heat'), 'what it feeds').optional(),
      ...mainsFields,
    },
    'a supply of low voltage',
  );
}

function wireSchema(): Schema<WireSpec> {
  return thing(
    {
      supply: name('supply that feeds it').optional(),
      feeds: oneOrMore(name('air path or source of heat'), 'what it feeds').optional(),
      current: quantity('electric-current', 'that it carries, in place of what it feeds', {
        from: 0,
        to: 100,
      }).optional(),
      section: conductor('cross-section of its copper').optional(),
      length: quantity('length', 'one way', { above: 0, to: 100 }).optional(),
      insulation: word(insulations, 'of its cores').optional(),
      where: where('the warmest of it').optional(),
      fuse: quantity('electric-current', 'that protects it', { above: 0, to: 100 }).optional(),
      'fuse-at': quantity('length', 'from the supply to the fuse', { from: 0, to: 100 }).optional(),
    },
    'a low-voltage wire',
  );
}

export function powerSchema(): Schema<PowerSpec> {
  return thing(
    {
      region: word(regions, 'whose rules and usual values are taken').optional(),
      voltage: quantity('voltage', 'of the mains', { from: 90, to: 260 }).optional(),
      circuit: quantity('electric-current', "rating of the circuit's breaker", { above: 0, to: 63 }).optional(),
      breaker: word(breakerCurves, 'its curve').optional(),
      rcd: quantity('electric-current', 'trip current of the earth-fault device, 0 mA for none', {
        from: 0,
        to: 0.5,
      }).optional(),
      others: quantity('power', 'what else the circuit feeds', { from: 0, to: 10_000 }).optional(),
      stagger: quantity('duration', "from one machine's heating to the next's, where a lock sees to it", {
        from: 0,
        to: 86_400,
      }).optional(),
      switched: word(['together', 'one by one'], 'how everything is switched on').optional(),
      tariff: shortOr(
        quantity('energy-price', 'price of a kilowatt-hour', price),
        points('clock', 'energy-price', 'price from each time of day to the next', price),
        'price of a kilowatt-hour, or its course over the day',
      ).optional(),
      strips: mapOf(stripSchema(), 'strips of sockets', 'strip').optional(),
      supplies: mapOf(supplySchema(), 'supplies of low voltage', 'supply').optional(),
      wires: mapOf(wireSchema(), 'low-voltage wires', 'wire').optional(),
    },
    'electricity',
  );
}
