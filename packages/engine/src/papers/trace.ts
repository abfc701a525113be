// Columns of a record as lines to draw: sampled as finely as the paper shows, jumps kept.

import { hermite } from '../day/hermite.ts';
import type { DayRecord, Table } from '../day/record.ts';

/** Points of a line: time s and value. */
export type Points = readonly (readonly [time: number, value: number])[];

/** Share of the day between two points of a drawn line: finer than half a millimetre on paper. */
const FINENESS = 1 / 700;

/** A temperature over the day, K, with the record's own cubics between its rows. */
export function temperatureTrace({ times, temperatures, slopes }: DayRecord, name: string): Points {
  const value = columnOf(temperatures, name);
  const slope = columnOf(slopes, name);
  return trace(times, value, (row, share) => {
    const length = times[row + 1]! - times[row]!;
    return hermite(share, length, value(row), slope(row), value(row + 1), slope(row + 1));
  });
}

/** A temperature at one time, K; where something switches just then, after it. */
export function temperatureAt({ times, temperatures, slopes }: DayRecord, name: string, time: number): number {
  const value = columnOf(temperatures, name);
  const slope = columnOf(slopes, name);
  let row = times.length - 1;
  while (row > 0 && times[row]! > time) row--;
  const length = row + 1 < times.length ? times[row + 1]! - times[row]! : 0;
  if (!(length > 0)) return value(row);
  return hermite((time - times[row]!) / length, length, value(row), slope(row), value(row + 1), slope(row + 1));
}

/** Any other column over the day, with straight lines between its rows. */
export function straightTrace({ times }: DayRecord, table: Table, name: string): Points {
  const value = columnOf(table, name);
  return trace(times, value, (row, share) => value(row) + share * (value(row + 1) - value(row)));
}

/** The value of a column by row. */
export function columnOf({ names, values }: Table, name: string): (row: number) => number {
  const column = names.indexOf(name);
  if (column < 0) throw new Error(`the record has no column "${name}"`);
  return (row) => values[row * names.length + column]!;
}

/** Rows that follow each other by less than the fineness give their least and greatest value; longer steps are filled. */
function trace(
  times: Float64Array,
  value: (row: number) => number,
  between: (row: number, share: number) => number,
): Points {
  const last = times.length - 1;
  const fine = (times[last]! - times[0]!) * FINENESS;
  const points: [number, number][] = [];
  let bin: [number, number][] = [];
  const flush = () => {
    if (bin.length <= 4) points.push(...bin);
    else points.push(...extremes(bin));
    bin = [];
  };
  for (let row = 0; row <= last; row++) {
    const time = times[row]!;
    if (bin.length > 0 && time - bin[0]![0] > fine) flush();
    bin.push([time, value(row)]);
    const gap = row < last ? times[row + 1]! - time : 0;
    const pieces = Math.floor(gap / fine);
    if (pieces < 2) continue;
    flush();
    for (let piece = 1; piece < pieces; piece++)
      points.push([time + (gap * piece) / pieces, between(row, piece / pieces)]);
  }
  flush();
  return points;
}

/** First, least, greatest and last of some neighbouring points, in the order of time. */
function extremes(bin: readonly [number, number][]): [number, number][] {
  let least = 0;
  let greatest = 0;
  for (const [at, [, value]] of bin.entries()) {
    if (value < bin[least]![1]) least = at;
    if (value > bin[greatest]![1]) greatest = at;
  }
  const kept = [...new Set([0, least, greatest, bin.length - 1])].sort((a, b) => a - b);
  return kept.map((at) => bin[at]!);
}
