// Electricity, filled in: the region's usual values, one strip and one supply where the file names none.

import { magneticBand } from '@stillair/physics';
import type { Profile } from '../units/profile.ts';
import { type Assumption, normal } from './assumption.ts';
import type { CabinetPath, HeatPart } from './cabinet.ts';
import { defaults } from './defaults.ts';
import { noted } from './fill-room.ts';
import type { Fallback, Ledger } from './ledger.ts';
import type { Origin } from './origin.ts';
import {
  OUTSIDE,
  type Power,
  type PowerSpec,
  type Region,
  type Strip,
  type Supply,
  type SupplySpec,
  WALL,
  type Wire,
} from './power.ts';
import type { FilePath } from './source-tree.ts';
import type { FileSpec, Given } from './spec.ts';

/** Voltage, circuit and strip in A, earth-fault device in A. Usual, from memory; the local code and what is printed decide. */
const usual: Readonly<Record<Region, readonly [voltage: number, circuit: number, strip: number, rcd: number]>> = {
  EU: [230, 16, 16, 0.03],
  UK: [230, 32, 13, 0.03],
  US: [120, 15, 15, 0],
  other: [230, 10, 10, 0.03],
};

const byCurrency: Readonly<Record<string, Region>> = { USD: 'US', GBP: 'UK', EUR: 'EU', CHF: 'EU' };

/** Ratings in which supplies are sold, W: typical, from memory. */
const SUPPLY_SIZES = [12, 24, 36, 60, 100, 150, 240, 350, 500] as const;
/** Room that a supply is given above its load where nobody chose it: common practice. */
const SUPPLY_ROOM = 1.25;
const DAY = 86_400;
const THIN_WIRE = 0.5e-6;
const FUSE_AT = 0.2;

/** Whom a supply of low voltage usually feeds: fans and lamps. */
export interface Fed {
  readonly paths: Readonly<Record<string, CabinetPath>>;
  readonly heats: Readonly<Record<string, HeatPart>>;
}

export function fillPower(spec: FileSpec, fed: Fed, ledger: Ledger): Power {
  const own: PowerSpec = spec.power ?? {};
  const file: FilePath = ['power'];
  const said = <T>(key: keyof PowerSpec, given: T | undefined, otherwise: T, how: string): T =>
    noted(ledger, `power.${key}`, given, [...file, key], otherwise, how);
  const number = (path: string, key: keyof PowerSpec, fallback: Fallback): number =>
    ledger.number(`power.${path}`, [{ quantity: own[key] as Given, file: [...file, key] }], fallback);
  const guess = byCurrency[spec.currency ?? 'EUR'] ?? 'other';
  const region = said('region', own.region, guess, 'as the currency of the file suggests');
  const [voltage, circuit, strip, rcd] = usual[region];
  const how = `usual in ${region === 'other' ? 'many places' : `the ${region}`}, from memory; your installation decides`;
  const supplies = fillSupplies(own, fed, ledger);
  const breaker = said('breaker', own.breaker, 'B', how);
  return {
    region,
    voltage: number('voltage', 'voltage', { value: voltage, how }),
    circuit: number('circuit', 'circuit', { value: circuit, how }),
    breaker,
    magnet: region === 'US' ? 0 : ledger.number('power.magnet', [], anyIn(magneticBand(1, breaker))),
    rcd: number('rcd', 'rcd', { value: rcd, how }),
    others: number('others', 'others', { value: 0, how: 'nothing else on this circuit, unless given' }),
    stagger: number('stagger', 'stagger', { value: 0, how: 'nothing keeps two machines from heating at once' }),
    switched: said('switched', own.switched, 'together', 'one switch, or power coming back, starts everything at once'),
    tariff: fillTariff(own, ledger),
    strips: fillStrips(own, spec, supplies, fed, strip, how, ledger),
    supplies,
    wires: fillWires(own, supplies, ledger),
  };
}

/** A breaker acts somewhere in the band of its curve, nobody knows where: as likely here as there. */
function anyIn({ from, to }: ReturnType<typeof magneticBand>): Assumption {
  const at = (share: number): number => from + share * (to - from);
  const why = `the magnet of a breaker acts between ${from} and ${to} times its rating (IEC 60898-1, from memory)`;
  return normal(at(0.5), at(0.1), at(0.9), why);
}

/** A price counts from its time to the next one's; before the first, yesterday's last. */
function fillTariff({ tariff }: PowerSpec, ledger: Ledger): Profile {
  if (tariff !== undefined && Array.isArray(tariff)) {
    ledger.note('power.tariff', ledger.given(['power', 'tariff']));
    const read = tariff as Profile;
    const day = read.filter(([time]) => time < DAY);
    return day[0] === undefined || day[0][0] > 0 ? [[0, read.at(-1)![1]], ...day] : day;
  }
  ledger.note('power.tariff.0.0', { kind: 'derived', how: 'the whole day' });
  const quantity = tariff as Exclude<typeof tariff, Profile | undefined> | undefined;
  return [
    [
      0,
      ledger.number('power.tariff.0.1', [{ quantity: quantity as Given, file: ['power', 'tariff'] }], defaults.tariff),
    ],
  ];
}

function fillSupplies({ supplies }: PowerSpec, fed: Fed, ledger: Ledger): Readonly<Record<string, Supply>> {
  const users = lowVoltageUsers(fed);
  const written: Readonly<Record<string, SupplySpec>> = supplies ?? (users.length === 0 ? {} : { 'low-voltage': {} });
  const taken = new Set(Object.values(written).flatMap(({ feeds = [] }) => feeds));
  return Object.fromEntries(
    Object.entries(written).map(([id, own]) => {
      const at = `power.supplies.${id}`;
      const file: FilePath = ['power', 'supplies', id];
      const number = (path: string, key: keyof SupplySpec, fallback: Fallback): number =>
        ledger.number(`${at}.${path}`, [{ quantity: own[key] as Given, file: [...file, key] }], fallback);
      const rest = users.filter((user) => !taken.has(user));
      const feeds = noted(
        ledger,
        `${at}.feeds`,
        own.feeds,
        [...file, 'feeds'],
        rest,
        'fans and lamps that nothing else feeds',
      );
      const load = feeds.reduce((sum, user) => sum + wattsOf(fed, user), 0);
      const size = SUPPLY_SIZES.find((watts) => watts >= SUPPLY_ROOM * load) ?? SUPPLY_ROOM * load;
      const adapter = size <= 100;
      return [
        id,
        {
          voltage: number('voltage', 'voltage', { value: 24, how: 'usual of fans and light strips' }),
          watts: number('watts', 'power', { value: size, how: 'the next common size above 1.25 times its load' }),
          efficiency: number('efficiency', 'efficiency', defaults.supplyEfficiency),
          where: noted(ledger, `${at}.where`, own.where, [...file, 'where'], OUTSIDE, 'outside unless said otherwise'),
          feeds,
          powerFactor: number('powerFactor', 'power-factor', defaults.powerFactor),
          inrush: number('inrush', 'inrush', adapter ? defaults.adapterInrush : defaults.inrush),
          leakage: number('leakage', 'leakage', adapter ? defaults.adapterLeakage : defaults.earthLeakage),
          plug: noted(
            ledger,
            `${at}.plug`,
            own.plug,
            [...file, 'plug'],
            adapter ? 'bulky' : 'plain',
            'small supplies are adapters in their plug',
          ),
        },
      ];
    }),
  );
}

/** Fans, and lamps, that need low voltage: by air path and source of heat. */
function lowVoltageUsers({ paths, heats }: Fed): string[] {
  return [
    ...Object.keys(paths).filter((id) => paths[id]!.parts.some(({ part }) => part === 'fan')),
    ...Object.keys(heats).filter((id) => heats[id]!.what === 'lamp'),
  ];
}

/** What a path's fans at full speed, or a source of heat, draw, W. */
export function wattsOf({ paths, heats }: Fed, user: string): number {
  const fans = (paths[user]?.parts ?? []).reduce((sum, part) => sum + (part.part === 'fan' ? part.watts : 0), 0);
  return fans + (heats[user]?.watts ?? 0);
}

function fillStrips(
  { strips }: PowerSpec,
  spec: FileSpec,
  supplies: Readonly<Record<string, Supply>>,
  fed: Fed,
  rating: number,
  how: string,
  ledger: Ledger,
): Readonly<Record<string, Strip>> {
  const lowVoltage = new Set(Object.values(supplies).flatMap(({ feeds }) => feeds));
  const users = [
    ...Object.keys(spec.machines ?? {}),
    ...Object.keys(supplies),
    ...Object.keys(fed.heats).filter((id) => !lowVoltage.has(id)),
  ];
  if (users.length === 0 && strips === undefined) return {};
  const written = strips ?? { strip: {} };
  const taken = new Set(Object.values(written).flatMap(({ feeds = [] }) => feeds));
  const open = Object.keys(written).find((id) => written[id]!.feeds === undefined);
  return Object.fromEntries(
    Object.entries(written).map(([id, own]) => {
      const at = `power.strips.${id}`;
      const file: FilePath = ['power', 'strips', id];
      const rest = id === open ? users.filter((user) => !taken.has(user)) : [];
      const feeds = noted(ledger, `${at}.feeds`, own.feeds, [...file, 'feeds'], rest, 'whatever no other strip feeds');
      ledger.note(
        `${at}.sockets`,
        own.sockets === undefined
          ? { kind: 'derived', how: 'as many as are needed, as none are given' }
          : ledger.given([...file, 'sockets']),
      );
      return [
        id,
        {
          sockets: own.sockets ?? 0,
          rating: ledger.number(`${at}.rating`, [{ quantity: own.rating, file: [...file, 'rating'] }], {
            value: rating,
            how,
          }),
          where: noted(ledger, `${at}.where`, own.where, [...file, 'where'], OUTSIDE, 'outside unless said otherwise'),
          from: noted(
            ledger,
            `${at}.from`,
            own.from,
            [...file, 'from'],
            WALL,
            'in a wall socket unless said otherwise',
          ),
          feeds,
        },
      ];
    }),
  );
}

function fillWires(
  { wires = {} }: PowerSpec,
  supplies: Readonly<Record<string, Supply>>,
  ledger: Ledger,
): Readonly<Record<string, Wire>> {
  return Object.fromEntries(
    Object.entries(wires).map(([id, own]) => {
      const at = `power.wires.${id}`;
      const file: FilePath = ['power', 'wires', id];
      const { section = { area: THIN_WIRE }, current, fuse } = own;
      const supply = noted(
        ledger,
        `${at}.supply`,
        own.supply,
        [...file, 'supply'],
        Object.keys(supplies)[0] ?? '',
        'the only supply',
      );
      const origin: Origin =
        own.section === undefined
          ? { kind: 'derived', how: 'a thin fan wire of 0.5 mm², unless given' }
          : ledger.given([...file, 'section']);
      for (const number of ['section', 'gauge']) ledger.note(`${at}.${number}`, origin);
      return [
        id,
        {
          supply,
          feeds: noted(
            ledger,
            `${at}.feeds`,
            own.feeds,
            [...file, 'feeds'],
            supplies[supply]?.feeds ?? [],
            'all that its supply feeds',
          ),
          ...(current === undefined
            ? {}
            : {
                current: ledger.number(`${at}.current`, [{ quantity: current, file: [...file, 'current'] }], {
                  value: 0,
                  how: 'given',
                }),
              }),
          section: section.area,
          ...(section.gauge === undefined ? {} : { gauge: section.gauge }),
          length: ledger.number(
            `${at}.length`,
            [{ quantity: own.length, file: [...file, 'length'] }],
            defaults.wireLength,
          ),
          insulation: noted(
            ledger,
            `${at}.insulation`,
            own.insulation,
            [...file, 'insulation'],
            'PVC',
            'usual of thin wires',
          ),
          where: noted(ledger, `${at}.where`, own.where, [...file, 'where'], OUTSIDE, 'outside unless said otherwise'),
          ...(fuse === undefined
            ? {}
            : {
                fuse: ledger.number(`${at}.fuse`, [{ quantity: fuse, file: [...file, 'fuse'] }], {
                  value: 0,
                  how: 'given',
                }),
              }),
          fuseAt: ledger.number(`${at}.fuseAt`, [{ quantity: own['fuse-at'], file: [...file, 'fuse-at'] }], {
            value: FUSE_AT,
            how: 'near the supply unless said otherwise',
          }),
        },
      ];
    }),
  );
}
