// Which unknowns a log is asked for when nobody says: one after another, the one that it shows most beside those already taken, as long
// as it leaves less than half of what was unknown.

import type { Matrix } from '../../numerics/dense.ts';
import type { Unknown } from './unknowns.ts';

/** More unknowns than these are seldom told apart by a few thermometers. */
const MOST = 5;
/** What one log shows of an unknown, as a signal over noise, from which on it leaves less than half: √(1 + 1.7²) = 2. */
const SHOWN = 1.73;

export interface Choice {
  readonly taken: readonly number[];
  readonly left: readonly { readonly at: number; readonly why: string }[];
}

/** Where what the file says counts too, unknowns need not be told apart: those that the readings show most share what is off. */
export function strongest(white: Matrix, most: number = MOST): Choice {
  const columns = columnsIn(white);
  const shown = columns
    .map((column, at) => ({ at, length: lengthOf(column) }))
    .filter(({ length }) => length >= SHOWN)
    .sort((a, b) => b.length - a.length);
  const taken = shown.slice(0, most).map(({ at }) => at);
  const left = columns.flatMap((_, at) =>
    taken.includes(at)
      ? []
      : [
          {
            at,
            why: shown.some((each) => each.at === at) ? `${most} unknowns are enough` : 'the readings hardly show it',
          },
        ],
  );
  return { taken: taken.sort((a, b) => a - b), left };
}

/** `white`: slopes of the log by unknown, in white units a width. */
export function chosen(white: Matrix, unknowns: readonly Unknown[], most: number = MOST): Choice {
  const columns = columnsIn(white);
  const rest = columns.map((column) => column.slice());
  const taken: number[] = [];
  while (taken.length < Math.min(most, white.rows)) {
    let best = -1;
    for (const at of rest.keys())
      if (!taken.includes(at) && (best < 0 || lengthOf(rest[at]!) > lengthOf(rest[best]!))) best = at;
    if (best < 0 || lengthOf(rest[best]!) < SHOWN) break;
    taken.push(best);
    takeOut(rest, rest[best]!.slice());
  }
  const left = columns.flatMap((column, at) => {
    if (taken.includes(at)) return [];
    if (lengthOf(column) < SHOWN) return [{ at, why: 'the log hardly shows it' }];
    if (lengthOf(rest[at]!) >= SHOWN) return [{ at, why: `${most} unknowns are enough for one log` }];
    const like = taken.reduce(
      (most_, other) => (likeness(column, columns[other]!) > likeness(column, columns[most_]!) ? other : most_),
      taken[0]!,
    );
    return [{ at, why: `the log cannot tell it from ${unknowns[like]!.label} and the others` }];
  });
  return { taken: [...taken].sort((a, b) => a - b), left };
}

function columnsIn({ rows, columns, values }: Matrix): Float64Array[] {
  return Array.from({ length: columns }, (_, column) =>
    Float64Array.from({ length: rows }, (_unused, row) => values[row * columns + column]!),
  );
}

/** What of each column stands at right angles to a direction. */
function takeOut(columns: readonly Float64Array[], direction: Float64Array): void {
  const square = lengthOf(direction) ** 2;
  for (const column of columns) {
    let dot = 0;
    for (const [row, each] of direction.entries()) dot += each * column[row]!;
    for (const [row, each] of direction.entries()) column[row] = column[row]! - (dot / square) * each;
  }
}

function lengthOf(column: Float64Array): number {
  return Math.sqrt(column.reduce((sum, each) => sum + each * each, 0));
}

function likeness(a: Float64Array, b: Float64Array): number {
  let dot = 0;
  for (const [row, each] of a.entries()) dot += each * b[row]!;
  return Math.abs(dot) / (lengthOf(a) * lengthOf(b) || 1);
}
