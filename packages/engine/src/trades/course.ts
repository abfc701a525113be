// The course of one quantity over a day: the record's own rows, cubics between them where the record has slopes, else straight.
// Peaks sit on rows, so they are exact; two rows with equal time are the two sides of a jump.

import { hermite, hermiteSlope } from '../day/hermite.ts';
import type { DayRecord, Table } from '../day/record.ts';
import { zeros } from './zeros.ts';

export interface Course {
  /** s, never falling. */
  readonly times: Float64Array;
  readonly values: Float64Array;
  /** Per second, by row; absent for straight lines. */
  readonly slopes?: Float64Array | undefined;
}

export interface Moment {
  readonly value: number;
  /** s */
  readonly time: number;
}

/** A moment that is a row of a course: at a jump it tells which side is meant. */
export interface RowMoment extends Moment {
  readonly row: number;
}

/** Columns and courses already taken out of a table: many measures ask for the same ones. */
interface Taken {
  readonly columns: Float64Array[];
  readonly courses: Course[];
}

const taken = new WeakMap<Table, Taken>();

function takenOf(table: Table): Taken {
  let known = taken.get(table);
  if (known === undefined) {
    known = { columns: [], courses: [] };
    taken.set(table, known);
  }
  return known;
}

/** A column of a table of the record, with its slopes if the record has them. */
export function courseOf({ times }: DayRecord, table: Table, name: string, slopes?: Table): Course {
  const { courses } = takenOf(table);
  const column = columnIn(table, name);
  courses[column] ??= {
    times,
    values: columnAt(table, column),
    slopes: slopes?.names.length === table.names.length ? columnAt(slopes, column) : undefined,
  };
  return courses[column];
}

/** A column of a table, row by row. */
export function columnOf(table: Table, name: string): Float64Array {
  return columnAt(table, columnIn(table, name));
}

function columnAt(table: Table, column: number): Float64Array {
  const { columns } = takenOf(table);
  columns[column] ??= pick(table, column);
  return columns[column];
}

function pick({ names, values }: Table, column: number): Float64Array {
  const width = names.length;
  const picked = zeros(values.length / width);
  for (let row = 0, at = column; row < picked.length; row += 1, at += width) picked[row] = values[at]!;
  return picked;
}

/** Place of a column in the rows of a table; a missing name is a broken invariant. */
export function columnIn({ names }: Table, name: string): number {
  const column = names.indexOf(name);
  if (column < 0) throw new Error(`the record has no column "${name}"; it has ${names.join(', ')}`);
  return column;
}

/** A quantity computed row by row. */
export function courseFrom({ times }: DayRecord, valueAtRow: (row: number) => number): Course {
  const values = zeros(times.length);
  for (let row = 0; row < values.length; row += 1) values[row] = valueAtRow(row);
  return { times, values };
}

/** A course times a number. */
export function scaled({ times, values }: Course, factor: number): Course {
  const made = zeros(values.length);
  for (let row = 0; row < made.length; row += 1) made[row] = values[row]! * factor;
  return { times, values: made };
}

/** The part from `start` to `end`: after a jump at its start, before a jump at its end, ends interpolated. */
export function within(course: Course, start: number, end: number): Course {
  const { times, values, slopes } = course;
  const first = rowBefore(times, start);
  let last = rowBefore(times, end);
  while (last > first && times[last]! >= end) last -= 1;
  const closes = end > times[first]! && last + 1 < times.length;
  const from = Math.max(start, times[0]!);
  const cut = (whole: Float64Array, atStart: number, atEnd: number): Float64Array => {
    const part = zeros(1 + (last - first) + (closes ? 1 : 0));
    part.set(whole.subarray(first, last + 1));
    part[0] = atStart;
    if (closes) part[part.length - 1] = atEnd;
    return part;
  };
  return {
    times: cut(times, from, end),
    values: cut(values, valueAfter(course, first, from), closes ? valueAfter(course, last, end) : 0),
    slopes: slopes && cut(slopes, slopeAfter(course, first, from), closes ? slopeAfter(course, last, end) : 0),
  };
}

/** Value at `time` on the line that leaves `row`. */
function valueAfter({ times, values, slopes }: Course, row: number, time: number): number {
  const start = times[row]!;
  const length = (times[row + 1] ?? start) - start;
  if (!(length > 0) || time <= start) return values[row]!;
  const share = Math.min((time - start) / length, 1);
  if (slopes === undefined) return values[row]! + share * (values[row + 1]! - values[row]!);
  return hermite(share, length, values[row]!, slopes[row]!, values[row + 1]!, slopes[row + 1]!);
}

function slopeAfter({ times, values, slopes }: Course, row: number, time: number): number {
  const length = (times[row + 1] ?? times[row]!) - times[row]!;
  if (slopes === undefined || !(length > 0)) return slopes?.[row] ?? 0;
  const share = Math.min(Math.max((time - times[row]!) / length, 0), 1);
  return hermiteSlope(share, length, values[row]!, slopes[row]!, values[row + 1]!, slopes[row + 1]!);
}

/** The value at a time; at a jump, the one after it. */
export function valueAt(course: Course, time: number): number {
  return valueAfter(course, rowBefore(course.times, time), time);
}

export function largest({ times, values }: Course): RowMoment {
  let best = 0;
  for (let row = 1; row < values.length; row += 1) if (values[row]! > values[best]!) best = row;
  return { value: values[best]!, time: times[best]!, row: best };
}

/** The same of a column that nothing else is asked of. */
export function largestInColumn({ times }: DayRecord, table: Table, name: string): Moment {
  return largest({ times, values: columnOf(table, name) });
}

export function smallest({ times, values }: Course): RowMoment {
  let best = 0;
  for (let row = 1; row < values.length; row += 1) if (values[row]! < values[best]!) best = row;
  return { value: values[best]!, time: times[best]!, row: best };
}

/** Time integral, exact for the lines between rows. */
export function integralOf(course: Course): number {
  let sum = 0;
  for (let row = 1; row < course.times.length; row += 1) sum += pieceIntegral(course, row);
  return sum;
}

/** Integral from the row before up to `row`. */
export function pieceIntegral({ times, values, slopes }: Course, row: number): number {
  const span = times[row]! - times[row - 1]!;
  const straight = ((values[row]! + values[row - 1]!) / 2) * span;
  return slopes === undefined ? straight : straight + ((slopes[row - 1]! - slopes[row]!) * span * span) / 12;
}

/** Integral of the product of two courses with the same rows: Simpson's rule between rows. */
export function integralOfProduct(a: Course, b: Course): number {
  const { times, values: as } = a;
  const { values: bs } = b;
  let sum = 0;
  for (let row = 1; row < times.length; row += 1) {
    const span = times[row]! - times[row - 1]!;
    if (!(span > 0)) continue;
    const ends = as[row]! * bs[row]! + as[row - 1]! * bs[row - 1]!;
    if (ends !== 0) sum += (span / 6) * (ends + 4 * middleBefore(a, row) * middleBefore(b, row));
  }
  return sum;
}

/** Value half way between the row before and `row`. */
function middleBefore({ times, values, slopes }: Course, row: number): number {
  const straight = (values[row]! + values[row - 1]!) / 2;
  if (slopes === undefined) return straight;
  return straight + ((slopes[row - 1]! - slopes[row]!) * (times[row]! - times[row - 1]!)) / 8;
}

export function lengthOf({ times }: Course): number {
  return times[times.length - 1]! - times[0]!;
}

/** Time-weighted mean. */
export function meanOf(course: Course): number {
  const length = lengthOf(course);
  return length > 0 ? integralOf(course) / length : course.values[0]!;
}

/** How long the course lies above a limit, s. */
export function timeAbove(course: Course, limit: number): number {
  const { times, values } = course;
  let sum = 0;
  for (let row = 1; row < times.length; row += 1) {
    const before = values[row - 1]! > limit;
    const after = values[row]! > limit;
    const span = times[row]! - times[row - 1]!;
    if (before && after) sum += span;
    else if (before !== after && span > 0) {
      const crossing = crossingBefore(course, row, limit);
      sum += before ? crossing - times[row - 1]! : times[row]! - crossing;
    }
  }
  return sum;
}

/** First time at or after the start at which the course is at or above (or below) a level. */
export function firstReaching(course: Course, level: number, from: 'below' | 'above'): number | undefined {
  const { times, values } = course;
  const sign = from === 'below' ? 1 : -1;
  for (let row = 0; row < times.length; row += 1) {
    if (sign * (values[row]! - level) < 0) continue;
    return row === 0 || times[row] === times[row - 1] ? times[row]! : crossingBefore(course, row, level);
  }
  return undefined;
}

/** When the course crosses a level between the row before and `row`, which lie on different sides of it. */
function crossingBefore(course: Course, row: number, level: number): number {
  const { times, values, slopes } = course;
  const [t0, y0, y1] = [times[row - 1]!, values[row - 1]!, values[row]!];
  if (slopes === undefined) return t0 + ((times[row]! - t0) * (level - y0)) / (y1 - y0 || 1);
  let [low, high] = [t0, times[row]!];
  for (let halving = 0; halving < 40; halving += 1) {
    const middle = (low + high) / 2;
    if (valueAfter(course, row - 1, middle) < level === y0 < level) low = middle;
    else high = middle;
  }
  return high;
}

/** Last row at or before a time, by bisection. */
function rowBefore(times: Float64Array, time: number): number {
  let [low, high] = [0, times.length - 1];
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if (times[middle]! <= time) low = middle;
    else high = middle - 1;
  }
  return low;
}
