// Every way in which few pieces can share one sheet: for each choice of pieces the smallest rectangles that hold them and fall
// apart by guillotine cuts. Exact, since whatever a saw takes apart was joined of two such rectangles.

import { type Area, cutAt, fits, HAIR, type Piece, placed, type Region, type Stock, waste, ways } from './piece.ts';

/** Alike pieces, and which they are. */
export interface Group {
  readonly piece: Piece;
  readonly members: readonly number[];
}

interface Box {
  readonly length: number;
  readonly width: number;
  readonly made:
    | { readonly of: 'piece'; readonly group: number; readonly way: readonly [number, number, boolean] }
    | { readonly of: 'two'; readonly way: 'across' | 'along'; readonly one: Box; readonly other: Box };
}

export interface Fronts {
  readonly groups: readonly Group[];
  /** How many choices there are: a choice takes so many of each group, counted with mixed base. */
  readonly choices: number;
  readonly counts: (choice: number) => readonly number[];
  readonly choiceOf: (counts: readonly number[]) => number;
  /** Every part of a choice but none and itself. */
  readonly partsOf: (choice: number) => readonly number[];
  readonly fitsOnOne: (choice: number) => boolean;
  /** The sheet cut into a choice that fits; `members` says which piece is the next of each group. */
  readonly cut: (choice: number, members: readonly (readonly number[])[]) => Region;
}

/** Pairs of a choice and a part of it: the work grows with them. */
export function pairsOf(groups: readonly Group[]): number {
  return groups.reduce((product, { members: { length } }) => (product * (length + 1) * (length + 2)) / 2, 1);
}

export function groupsOf(pieces: readonly Piece[]): readonly Group[] {
  const groups = new Map<string, { piece: Piece; members: number[] }>();
  for (const [at, piece] of pieces.entries()) {
    const key = `${piece.length} ${piece.width} ${piece.turned}`;
    const group = groups.get(key) ?? { piece, members: [] };
    group.members.push(at);
    groups.set(key, group);
  }
  return [...groups.values()];
}

export function frontsOf(groups: readonly Group[], stock: Stock): Fronts {
  const { kerf } = stock;
  const bases = groups.map(({ members }) => members.length + 1);
  const choices = bases.reduce((product, base) => product * base, 1);
  const counts = (choice: number): number[] => {
    let rest = choice;
    return bases.map((base) => {
      const count = rest % base;
      rest = Math.floor(rest / base);
      return count;
    });
  };
  const choiceOf = (each: readonly number[]): number =>
    each.reduceRight((sum, count, at) => sum * bases[at]! + count, 0);
  const partsOf = (choice: number): readonly number[] => {
    let found = [0];
    let unit = 1;
    for (const [at, count] of counts(choice).entries()) {
      const step = unit;
      if (count > 0)
        found = found.flatMap((part) => Array.from({ length: count + 1 }, (_, take) => part + take * step));
      unit *= bases[at]!;
    }
    return found.filter((part) => part !== 0 && part !== choice);
  };
  const whole = { length: stock.length + kerf, width: stock.width + kerf };
  const fronts: (readonly Box[])[] = [[]];
  const singles = new Map(
    groups.map((_, group) => [choiceOf(groups.map((__, at) => (at === group ? 1 : 0))), group] as const),
  );
  for (let choice = 1; choice < choices; choice++) {
    const front: Box[] = [];
    const group = singles.get(choice);
    if (group !== undefined)
      for (const way of ways(groups[group]!.piece))
        keep(front, { length: way[0] + kerf, width: way[1] + kerf, made: { of: 'piece', group, way } }, whole);
    for (const part of partsOf(choice)) {
      if (2 * part > choice) continue;
      for (const one of fronts[part]!)
        for (const other of fronts[choice - part]!) {
          join(front, 'across', one, other, whole);
          join(front, 'along', one, other, whole);
        }
    }
    fronts.push(front);
  }
  return {
    groups,
    choices,
    counts,
    choiceOf,
    partsOf,
    fitsOnOne: (choice) => choice === 0 || fronts[choice]!.length > 0,
    cut(choice, members) {
      const next = members.map((each) => [...each]);
      const box = fronts[choice]![0];
      const sheet: Area = { x: 0, y: 0, length: stock.length, width: stock.width };
      return box === undefined ? waste(sheet) : regionOf(box, sheet, kerf, next);
    },
  };
}

function join(front: Box[], way: 'across' | 'along', one: Box, other: Box, whole: Pick<Box, 'length' | 'width'>): void {
  const [length, width] =
    way === 'across'
      ? [one.length + other.length, Math.max(one.width, other.width)]
      : [Math.max(one.length, other.length), one.width + other.width];
  if (!fits(length, width, whole)) return;
  keep(front, { length, width, made: { of: 'two', way, one, other } }, whole);
}

/** Adds a rectangle unless one that is no larger is there, and drops those that are no smaller. */
function keep(front: Box[], box: Box, whole: Pick<Box, 'length' | 'width'>): void {
  if (!fits(box.length, box.width, whole)) return;
  for (const { length, width } of front) if (length <= box.length + HAIR && width <= box.width + HAIR) return;
  for (let at = front.length - 1; at >= 0; at--)
    if (box.length <= front[at]!.length + HAIR && box.width <= front[at]!.width + HAIR) front.splice(at, 1);
  front.push(box);
}

/** Sizes of boxes hold a kerf that the place itself lacks at its end. */
function regionOf({ made }: Box, place: Area, kerf: number, next: number[][]): Region {
  if (made.of === 'piece') return placed(next[made.group]!.shift()!, made.way, place, kerf);
  const at = (made.way === 'across' ? made.one.length : made.one.width) - kerf;
  return cutAt(
    made.way,
    at,
    place,
    kerf,
    (part) => regionOf(made.one, part, kerf, next),
    (part) => regionOf(made.other, part, kerf, next),
  );
}
