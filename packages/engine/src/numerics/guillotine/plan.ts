// A list of pieces cut out of as few sheets as can be: proven for short lists, by many tries for long ones.

import { randomStream, shuffled } from '../random.ts';
import { leastSheets } from './bound.ts';
import { type Fronts, frontsOf, groupsOf, pairsOf } from './fronts.ts';
import {
  type Area,
  cutAt,
  cutsOf,
  fits,
  type Piece,
  placed,
  type Region,
  regionsOf,
  type Stock,
  waste,
  ways,
} from './piece.ts';
import { inStrips } from './strips.ts';

export interface NestingPlan {
  /** One region for each sheet. */
  readonly sheets: readonly Region[];
  /** Pieces that fit no sheet, by their place in the list. */
  readonly tooLarge: readonly number[];
  /** No plan does with fewer: the bound by rounded areas, or the search that found it. */
  readonly atLeast: number;
  /** Nothing but the largest piece of waste of the last sheet: what is worth keeping. */
  readonly offcut: Area | undefined;
}

/** Beyond so many pairs of choices, those of a dozen boards, the exact search would take seconds. */
const MOST_PAIRS = 600_000;
/** Tries by luck: always, and for as long as nothing shows that fewer sheets would not do and the list is too long for the exact search. */
const TRIES = 120;
const MOST_TRIES = 1200;

export function nest(pieces: readonly Piece[], stock: Stock, seed = 1): NestingPlan {
  const tooLarge = pieces.flatMap((piece, at) =>
    ways(piece).some(([length, width]) => fits(length, width, stock)) ? [] : [at],
  );
  const fitting = pieces.flatMap((piece, at) => (tooLarge.includes(at) ? [] : [{ piece, at }]));
  const list = fitting.map(({ piece }) => piece);
  const bound = leastSheets(list, stock);
  const isShort = pairsOf(groupsOf(list)) <= MOST_PAIRS;
  const tried = list.length === 0 ? [] : bestTry(list, stock, seed, isShort ? Infinity : bound);
  const proven = tried.length > bound && isShort ? fewest(list, stock) : undefined;
  const sheets = proven !== undefined && proven.length < tried.length ? proven : tried;
  return {
    sheets: sheets.map((sheet) => renamed(sheet, fitting)),
    tooLarge,
    atLeast: proven === undefined ? bound : proven.length,
    offcut: offcutOf(sheets.at(-1)),
  };
}

function renamed(region: Region, names: readonly { readonly at: number }[]): Region {
  if (region.is === 'piece') return { ...region, piece: names[region.piece]!.at };
  if (region.is === 'waste') return region;
  const [one, other] = region.parts;
  return { ...region, parts: [renamed(one, names), renamed(other, names)] };
}

export function offcutOf(sheet: Region | undefined): Area | undefined {
  if (sheet === undefined) return undefined;
  const left = regionsOf(sheet).filter(({ is }) => is === 'waste');
  return left.reduce<Region | undefined>(
    (best, each) => (best === undefined || each.length * each.width > best.length * best.width ? each : best),
    undefined,
  );
}

/** The exact search: the least number of sheets that any guillotine plan takes. */
export function fewest(pieces: readonly Piece[], stock: Stock): readonly Region[] {
  const fronts = frontsOf(groupsOf(pieces), stock);
  const all = fronts.choices - 1;
  const best = new Float64Array(fronts.choices).fill(Infinity);
  const first = new Int32Array(fronts.choices).fill(-1);
  best[0] = 0;
  for (let choice = 1; choice <= all; choice++) {
    // The sheet that the first kind of piece is on: others are then counted once.
    const lead = fronts.counts(choice).findIndex((count) => count > 0);
    for (const part of [...fronts.partsOf(choice), choice]) {
      if (fronts.counts(part)[lead] === 0 || !fronts.fitsOnOne(part)) continue;
      const sheets = 1 + best[choice - part]!;
      if (sheets < best[choice]!) [best[choice], first[choice]] = [sheets, part];
    }
  }
  return Number.isFinite(best[all]!) ? unrolled(fronts, first) : [];
}

function unrolled(fronts: Fronts, first: Int32Array): readonly Region[] {
  const members = fronts.groups.map((group) => [...group.members]);
  const sheets: Region[] = [];
  for (let choice = fronts.choices - 1; choice > 0; choice -= first[choice]!) {
    const part = first[choice]!;
    const taken = fronts.counts(part).map((count, group) => members[group]!.splice(0, count));
    sheets.push(fronts.cut(part, taken));
  }
  return sheets.sort((a, b) => filled(b) - filled(a));
}

function filled(sheet: Region): number {
  return regionsOf(sheet).reduce((sum, each) => (each.is === 'piece' ? sum + each.length * each.width : sum), 0);
}

type Order = (a: Piece, b: Piece) => number;
const orders: readonly Order[] = [
  (a, b) => b.length * b.width - a.length * a.width,
  (a, b) => Math.max(b.length, b.width) - Math.max(a.length, a.width),
  (a, b) => b.width - a.width || b.length - a.length,
  (a, b) => b.length - a.length || b.width - a.width,
  (a, b) => b.length + b.width - a.length - a.width,
];

/** Which cut is made first beside a piece that is put into a corner. */
const splits = ['shorter left', 'longer left', 'across', 'along'] as const;
type Split = (typeof splits)[number];

/** Many orders and ways of splitting: the fewest sheets, then the largest off-cut, then the fewest cuts. Goes on while above `enough`. */
function bestTry(pieces: readonly Piece[], stock: Stock, seed: number, enough: number): readonly Region[] {
  const random = randomStream(seed);
  let best: { sheets: readonly Region[]; offcut: number; cuts: number } | undefined;
  const consider = (sheets: readonly Region[]): void => {
    const left = offcutOf(sheets.at(-1));
    const offcut = left === undefined ? 0 : left.length * left.width;
    const cuts = sheets.reduce((sum, sheet) => sum + cutsOf(sheet).length, 0);
    const better =
      best === undefined ||
      sheets.length < best.sheets.length ||
      (sheets.length === best.sheets.length &&
        (offcut > best.offcut + 1e-9 || (offcut > best.offcut - 1e-9 && cuts < best.cuts)));
    if (better) best = { sheets, offcut, cuts };
  };
  const places = pieces.map((_, at) => at);
  // The plan that the bill counts by is tried too: no plan of the bench takes more sheets.
  consider(inStrips(pieces, stock));
  for (const order of orders)
    for (const split of splits) {
      const sorted = [...places].sort((a, b) => order(pieces[a]!, pieces[b]!) || a - b);
      consider(inTurn(pieces, sorted, split, stock));
    }
  for (let turn = 0; turn < TRIES || (turn < MOST_TRIES && best!.sheets.length > enough); turn++) {
    // Sorted by size, with luck: pure luck would put small pieces first.
    const luck = shuffled(pieces.length, random);
    const weight = places.map((at) => pieces[at]!.length * pieces[at]!.width * (0.6 + 0.8 * random()));
    const order = [...luck].sort((a, b) => weight[b]! - weight[a]!);
    consider(inTurn(pieces, order, splits[turn % splits.length]!, stock));
  }
  return best!.sheets;
}

interface Open {
  readonly area: Area;
  readonly sheet: number;
}

interface Laid {
  readonly at: number;
  readonly way: readonly [number, number, boolean];
  readonly split: 'across' | 'along';
}

/** Each piece into the place that it leaves least of, in the first sheet that has one. */
function inTurn(pieces: readonly Piece[], order: readonly number[], split: Split, stock: Stock): readonly Region[] {
  const { kerf } = stock;
  let open: Open[] = [];
  const laid = new Map<string, Laid>();
  let sheets = 0;
  const key = (sheet: number, { x, y }: Area): string => `${sheet} ${x} ${y}`;
  for (const at of order) {
    const choose = (): { place: Open; way: readonly [number, number, boolean] } | undefined => {
      let best: { place: Open; way: readonly [number, number, boolean]; left: number } | undefined;
      for (const place of open)
        for (const way of ways(pieces[at]!)) {
          if (!fits(way[0], way[1], place.area)) continue;
          const left = Math.min(place.area.length - way[0], place.area.width - way[1]);
          if (
            best === undefined ||
            place.sheet < best.place.sheet ||
            (place.sheet === best.place.sheet && left < best.left - 1e-9)
          )
            best = { place, way, left };
        }
      return best;
    };
    let chosen = choose();
    if (chosen === undefined) {
      open.push({ area: { x: 0, y: 0, length: stock.length, width: stock.width }, sheet: sheets });
      sheets++;
      chosen = choose()!;
    }
    const { place, way } = chosen;
    const { x, y, length, width } = place.area;
    const [overLength, overWidth] = [length - way[0], width - way[1]];
    const cut =
      split === 'across' || split === 'along'
        ? split
        : overLength < overWidth === (split === 'shorter left')
          ? 'along'
          : 'across';
    laid.set(key(place.sheet, place.area), { at, way, split: cut });
    const beside: Area = {
      x: x + way[0] + kerf,
      y,
      length: overLength - kerf,
      width: cut === 'across' ? width : way[1],
    };
    const above: Area = {
      x,
      y: y + way[1] + kerf,
      length: cut === 'across' ? way[0] : length,
      width: overWidth - kerf,
    };
    open = open.filter((each) => each !== place);
    for (const area of [beside, above])
      if (area.length > 1e-9 && area.width > 1e-9) open.push({ area, sheet: place.sheet });
  }
  const build = (sheet: number, area: Area): Region => {
    const found = laid.get(key(sheet, area));
    if (found === undefined || area.length <= 1e-9 || area.width <= 1e-9) return waste(area);
    const { at, way, split: cut } = found;
    const corner = (place: Area): Region => placed(at, way, place, kerf);
    const acrossFirst = (): Region =>
      cutAt(
        'across',
        way[0],
        area,
        kerf,
        (part) => column(part),
        (part) => build(sheet, part),
      );
    const column = (part: Area): Region =>
      part.width > way[1] + 1e-9
        ? cutAt('along', way[1], part, kerf, corner, (above) => build(sheet, above))
        : corner(part);
    const row = (part: Area): Region =>
      part.length > way[0] + 1e-9
        ? cutAt('across', way[0], part, kerf, corner, (next) => build(sheet, next))
        : corner(part);
    if (cut === 'across') return area.length > way[0] + 1e-9 ? acrossFirst() : column(area);
    return area.width > way[1] + 1e-9
      ? cutAt('along', way[1], area, kerf, row, (above) => build(sheet, above))
      : row(area);
  };
  return Array.from({ length: sheets }, (_, sheet) =>
    build(sheet, { x: 0, y: 0, length: stock.length, width: stock.width }),
  );
}
