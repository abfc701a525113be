// Costs: prices and lives that the file gives, and typical ones with their spread where it says nothing.

import type { Money } from '../units/money.ts';
import { type Assumption, decades, normal } from './assumption.ts';
import type { Cabinet } from './cabinet.ts';
import { findPart } from './catalogue.ts';
import type { Carcass, Costs, PriceRange } from './costs.ts';
import type { CostsSpec } from './costs-schema.ts';
import { priceOf } from './fill-prices.ts';
import type { Fallback, Ledger } from './ledger.ts';
import type { FileSpec, Given } from './spec.ts';

const HOUR = 3600;
const YEAR: number = 365.25 * 24 * HOUR;
const INVENTED = 'invented, typical';

type CostDefault =
  | 'pricePosition'
  | 'hoursFactor'
  | 'kerf'
  | 'wear'
  | 'machineLife'
  | 'failures'
  | 'waste'
  | 'filterLife'
  | 'carbonLife';

/** Prices in EUR: they are not converted into another money. */
export const costDefaults: Readonly<Record<CostDefault, Assumption>> = {
  pricePosition: normal(0.5, 0.1, 0.9, 'prices lie between their low and high ends, all alike dear or cheap'),
  hoursFactor: decades(1, 0.75, 1.5, `a joiner’s rule of thumb against real jobs; ${INVENTED}`),
  kerf: normal(0.0032, 0.002, 0.0045, 'table saw to panel saw, common practice'),
  wear: decades(0.05 / HOUR, 0.02 / HOUR, 0.15 / HOUR, `nozzles, belts and sheets in EUR; ${INVENTED}`),
  machineLife: decades(5000 * HOUR, 2000 * HOUR, 12_000 * HOUR, 'hours of printing, common practice'),
  failures: decades(0.07, 0.03, 0.16, 'prints that fail, common practice'),
  waste: decades(0.06, 0.02, 0.15, 'purging, skirts, supports, tails of spools; common practice'),
  filterLife: decades(1000 * HOUR, 400 * HOUR, 2500 * HOUR, 'about a year of printing, common practice'),
  carbonLife: decades(320 * HOUR, 200 * HOUR, 500 * HOUR, '200 to 500 hours of printing, common practice'),
};

/** What only the cost of a part asks after: no finding hangs on them, so that samples of findings leave them as they are. */
export const handPractice: Assumption = decades(600, 300, 1500, 'preparing, taking off, cleaning; common practice');
export const cabinetLifePractice: Assumption = decades(6.5 * YEAR, 5 * YEAR, 8 * YEAR, '5 to 8 years, common practice');

/** Cut off each edge of a new sheet, m. */
const TRIM = 0.007;

/** Set aside, common practice. */
const CONTINGENCY = { material: 0.1, hours: 0.2 };

export function fillCosts(
  spec: FileSpec,
  { faces, doors, partitions, days, currency }: Pick<Cabinet, 'faces' | 'doors' | 'partitions' | 'days' | 'currency'>,
  ledger: Ledger,
): Costs {
  const costs: CostsSpec = spec.costs ?? {};
  const number = (name: string, quantity: Given, keys: readonly string[], fallback: Fallback): number =>
    ledger.number(`costs.${name}`, [{ quantity, file: ['costs', ...keys] }], fallback);
  const own = (name: keyof typeof costDefaults, quantity: Given, key: string): number =>
    number(name, quantity, [key], costDefaults[name]);
  const builds = [...Object.values(faces), ...Object.values(doors), ...partitions].map(({ build }) => build);
  const boards = [...new Set(builds.flatMap(({ layers }) => layers.map(({ material }) => material)))];
  const printed = [
    ...new Set(Object.values(days).flatMap(({ jobs }) => Object.values(jobs).map(({ material }) => material))),
  ];
  const { carcass, hour, hours, cut, wear, 'hand-hour': handHour } = costs;
  for (const key of ['carcass', 'hour', 'cut', 'wear'] as const)
    if (costs[key] !== undefined) ledger.note(`costs.${key}`, ledger.given(['costs', key]));
  if (handHour !== undefined) ledger.note('costs.handHour', ledger.given(['costs', 'hand-hour']));
  if (hours !== undefined) ledger.note('costs.hoursFactor', { kind: 'derived', how: 'the hours are given' });
  return {
    pricePosition: number('pricePosition', undefined, [], costDefaults.pricePosition),
    ...(carcass === undefined ? {} : { carcass: rangeOf(carcass) }),
    ...(hour === undefined ? {} : { hour: rangeOf(hour) }),
    ...(hours === undefined ? {} : { hours: number('hours', hours, ['hours'], { value: 0, how: 'given' }) }),
    hoursFactor: hours === undefined ? number('hoursFactor', undefined, [], costDefaults.hoursFactor) : 1,
    ...(cut === undefined ? {} : { cut: rangeOf(cut) }),
    kerf: own('kerf', costs.kerf, 'kerf'),
    trim: number('trim', costs.trim, ['trim'], { value: TRIM, how: '5 to 10 mm each, common practice' }),
    turned: costs.turned ?? false,
    sheets: Object.fromEntries(
      boards.flatMap((board) => {
        const own = costs.sheets?.[board];
        const [length, width] = own ?? findPart(spec.parts, 'boards', board)?.spec.sheet ?? [];
        if (length === undefined || width === undefined) return [];
        ledger.note(
          `costs.sheets.${board}`,
          own === undefined
            ? { kind: 'catalogue', part: `boards.${board}`, source: 'usual size of a mill' }
            : ledger.given(['costs', 'sheets', board]),
        );
        return [[board, [length, width] as const]];
      }),
    ),
    boards: boardPrices(spec, boards, ledger),
    devices: currency === 'EUR' ? devicePrices(spec, ledger) : {},
    contingencyMaterial: number('contingencyMaterial', costs.contingency?.material, ['contingency', 'material'], {
      value: CONTINGENCY.material,
      how: '10 % of the material, common practice',
    }),
    contingencyHours: number('contingencyHours', costs.contingency?.hours, ['contingency', 'hours'], {
      value: CONTINGENCY.hours,
      how: '20 % of the hours, common practice',
    }),
    wear: wear === undefined ? number('wear', undefined, [], costDefaults.wear) : middle(wear) / HOUR,
    machineLife: own('machineLife', costs['machine-life'], 'machine-life'),
    failures: own('failures', costs.failures, 'failures'),
    waste: own('waste', costs.waste, 'waste'),
    filterLife: own('filterLife', costs['filter-life'], 'filter-life'),
    carbonLife: own('carbonLife', costs['carbon-life'], 'carbon-life'),
    hand: number('hand', costs.hand, ['hand'], { value: handPractice.value, how: handPractice.why }),
    ...(handHour === undefined ? {} : { handHour: rangeOf(handHour) }),
    cabinetLife: number('cabinetLife', costs['cabinet-life'], ['cabinet-life'], {
      value: cabinetLifePractice.value,
      how: cabinetLifePractice.why,
    }),
    filament: Object.fromEntries(
      printed.flatMap((material) => {
        const price = filamentPrice(spec, material, currency);
        if (price === undefined) return [];
        ledger.note(`costs.filament.${material}`, {
          kind: 'catalogue',
          part: `materials.${material}`,
          source: price.source,
        });
        return [[material, { low: price.low, high: price.high }]];
      }),
    ),
    times: Object.fromEntries(
      Object.entries(costs.times ?? {}).map(([day, quantity]) => [
        day,
        ledger.number(`costs.times.${day}`, [{ quantity, file: ['costs', 'times', day] }], { value: 0, how: 'given' }),
      ]),
    ),
  };
}

/** A kilogram of a filament; a material of the file's own costs what it is like. */
function filamentPrice(
  spec: FileSpec,
  material: string,
  currency: string,
): (PriceRange & { source: string }) | undefined {
  const kinds = [material, material.replace(/ on .*$/, '')].flatMap((id) => [id, spec.materials?.[id]?.like ?? id]);
  const own = kinds.map((kind) => spec.prices?.[kind]).find((price) => price !== undefined);
  const found = kinds
    .map((kind) => findPart(spec.parts, 'materials', kind)?.spec.price)
    .find((price) => price !== undefined);
  const price = own ?? found;
  if (price === undefined || price.currency !== currency) return undefined;
  return { ...rangeOf(price), source: own === undefined ? `${INVENTED}; ${price.currency}` : 'the cabinet file' };
}

function boardPrices(spec: FileSpec, boards: readonly string[], ledger: Ledger): Costs['boards'] {
  return Object.fromEntries(
    boards.flatMap((board) => {
      const price = priceOf(spec, 'boards', board);
      if (price === undefined || price.money.per !== 'm2') return [];
      ledger.note(`costs.boards.${board}`, { kind: 'catalogue', part: `boards.${board}`, source: price.source });
      return [[board, rangeOf(price.money)]];
    }),
  );
}

/** Typical prices in EUR, invented. */
const DEVICE_PRICES: Readonly<Record<string, PriceRange>> = {
  'stop button': { low: 8, high: 25 },
  'smoke relay': { low: 25, high: 80 },
  'heat relay': { low: 20, high: 60 },
  'reset thermostat': { low: 8, high: 20 },
  'self-reset thermostat': { low: 2, high: 8 },
  'thermal link': { low: 1, high: 4 },
  watchdog: { low: 10, high: 30 },
  'door switch': { low: 4, high: 15 },
  smoke: { low: 12, high: 35 },
  heat: { low: 12, high: 35 },
  contactor: { low: 20, high: 45 },
};
/** Of an extinguisher: a part of its own, and for each kilogram of its agent. */
const EXTINGUISHER = { low: 20, high: 40, lowPerKilogram: 15, highPerKilogram: 35 };

function devicePrices({ protection = {} }: FileSpec, ledger: Ledger): Costs['devices'] {
  const { chain = {}, detectors = {}, extinguisher } = protection;
  const found = [
    ...Object.entries(chain).map(([id, { what }]) => [`chain.${id}`, what] as const),
    ...(Object.keys(chain).length > 0 ? [['chain', 'contactor'] as const] : []),
    ...Object.entries(detectors).map(([id, { what }]) => [`detectors.${id}`, what] as const),
  ].map(([path, what]) => [path, DEVICE_PRICES[what]!] as const);
  const mass = extinguisher?.mass.value ?? 0;
  const { low, high, lowPerKilogram, highPerKilogram } = EXTINGUISHER;
  const gas =
    extinguisher === undefined
      ? []
      : [['extinguisher', { low: low + lowPerKilogram * mass, high: high + highPerKilogram * mass }] as const];
  ledger.note('costs.devices', { kind: 'catalogue', part: 'devices', source: `${INVENTED}; EUR` });
  return Object.fromEntries([...found, ...gas]);
}

export function fillCarcasses(
  { carcasses = {}, cabinet }: FileSpec,
  ledger: Ledger,
): Readonly<Record<string, Carcass>> {
  return Object.fromEntries(
    Object.entries(carcasses).map(([id, carcass]) => {
      const { title = id, inside, opening, from, price, changes = {}, 'made-of': build = cabinet['made-of'] } = carcass;
      ledger.note(`carcasses.${id}`, ledger.given(['carcasses', id]));
      const [width, depth, height] = inside;
      const [clearWidth, clearHeight] = opening ?? [width!, height!];
      const outer = build.layers[0]!;
      return [
        id,
        {
          title,
          inside: { width: width!, depth: depth!, height: height! },
          opening: [clearWidth!, clearHeight!],
          from,
          ...(price === undefined ? {} : { price: rangeOf(price) }),
          board: outer.board,
          thickness: outer.thickness,
          changes: Object.fromEntries(Object.entries(changes).map(([what, money]) => [what, rangeOf(money)])),
        } satisfies Carcass,
      ];
    }),
  );
}

function rangeOf({ low, high }: Money): PriceRange {
  return { low, high };
}

function middle({ low, high }: Money): number {
  return (low + high) / 2;
}
