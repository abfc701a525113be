// What the listed parts cost: the person's own price for a kind, else the catalogue's invented, typical one.

import type { Money } from '../units/money.ts';
import type { Build, Cabinet } from './cabinet.ts';
import { findPart, type PartGroup } from './catalogue.ts';
import { piecesOf } from './geometry.ts';
import type { FileSpec } from './spec.ts';

type Prices = Cabinet['prices'];
type Price = Prices[string];

export function fillPrices(
  spec: FileSpec,
  cabinet: Pick<Cabinet, 'inside' | 'bays' | 'faces' | 'doors' | 'partitions' | 'paths'>,
): Prices {
  const prices: Record<string, Price> = {};
  const put = (path: string, group: PartGroup, kind: string, amount: number): void => {
    const price = priceOf(spec, group, kind);
    if (price === undefined) return;
    const { money, source } = price;
    const factor = money.per === 'piece' ? 1 : amount;
    prices[path] = { low: money.low * factor, high: money.high * factor, source };
  };
  const boards = (path: string, { layers }: Build, area: number): void => {
    const known = layers.flatMap(({ material }) => priceOf(spec, 'boards', material) ?? []);
    if (known.length === 0) return;
    const sum = (pick: (money: Money) => number): number =>
      known.reduce((total, { money }) => total + pick(money) * area, 0);
    prices[path] = { low: sum(({ low }) => low), high: sum(({ high }) => high), source: known[0]!.source };
  };

  const pieces = piecesOf(cabinet);
  for (const [name, { build }] of Object.entries(cabinet.faces)) {
    const bare = pieces.filter(
      ({ face, bay, behind }) =>
        face === name &&
        behind.kind === 'outside' &&
        !Object.values(cabinet.doors).some((door) => door.face === name && door.bays.includes(bay)),
    );
    boards(
      `faces.${name}`,
      build,
      bare.reduce((total, { area }) => total + area, 0),
    );
  }
  for (const [id, door] of Object.entries(cabinet.doors)) {
    const covered = pieces.filter(({ face, bay }) => face === door.face && door.bays.includes(bay));
    boards(
      `doors.${id}`,
      door.build,
      covered.reduce((total, { area }) => total + area, 0),
    );
    const seal =
      id === 'door' ? (spec.cabinet.door?.seal ?? spec.cabinet.doors?.[id]?.seal) : spec.cabinet.doors?.[id]?.seal;
    const round = covered.reduce((total, { width, from, to }) => total + 2 * (width + to - from), 0);
    if (seal !== undefined) put(`doors.${id}.seal`, 'seals', seal, round);
  }
  for (const [index, { build, bays }] of cabinet.partitions.entries()) {
    const shared = pieces.filter(
      ({ bay, behind }) => bay === bays[0] && behind.kind === 'bay' && behind.bay === bays[1],
    );
    boards(
      `partitions.${index}`,
      build,
      shared.reduce((total, { area }) => total + area, 0),
    );
  }
  for (const [id, path] of Object.entries(cabinet.paths)) {
    const written = spec.air?.[id];
    const first = path.parts.length - (written?.parts?.length ?? 0);
    for (const [index, part] of (written?.parts ?? []).entries()) {
      if (!('kind' in part)) continue;
      const length = part.part === 'duct' ? (part.length?.value ?? 1) : 1;
      put(`paths.${id}.parts.${first + index}`, groupOf(part.part), part.kind, length);
    }
  }
  for (const [id, { kind }] of Object.entries(spec.heats ?? {})) {
    if (kind !== undefined) put(`heats.${id}`, 'heats', kind, 1);
  }
  for (const [id, { kind }] of Object.entries(spec.machines ?? {})) put(`machines.${id}`, 'machines', kind, 1);
  return prices;
}

/** The group of the catalogue in which a part of an air path is looked up. */
export function groupOf(part: string): PartGroup {
  const groups: Readonly<Record<string, PartGroup>> = {
    fan: 'fans',
    filter: 'filters',
    carbon: 'carbons',
    duct: 'ducts',
    flap: 'flaps',
  };
  return groups[part] ?? 'fittings';
}

/** The person's own price of a kind, else the catalogue's where it is in the file's money: nothing is converted. */
export function priceOf(
  spec: FileSpec,
  group: PartGroup,
  kind: string,
): { readonly money: Money; readonly source: string } | undefined {
  const own = spec.prices?.[kind];
  if (own !== undefined) return { money: own, source: 'the cabinet file' };
  const found = findPart(spec.parts, group, kind);
  const money = found?.spec.price;
  if (money === undefined || found === undefined || money.currency !== (spec.currency ?? 'EUR')) return undefined;
  return { money, source: found.own ? 'the cabinet file' : `invented, typical; ${money.currency}` };
}
