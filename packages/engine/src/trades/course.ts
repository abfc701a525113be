// The course of one quantity over a day: the record's own rows, straight between them. Peaks sit on rows, so they are exact;
// two rows with equal time are the two sides of a jump.

import type { DayRecord, Table } from '../day/record.ts';

export interface Course {
  /** s, never falling. */
  readonly times: Float64Array;
  readonly values: Float64Array;
}

export interface Moment {
  readonly value: number;
  /** s */
  readonly time: number;
}

/** Columns already taken out of a table: many measures ask for the same few. */
const taken = new WeakMap<Table, Map<string, Course>>();

/** A column of a table of the record; a missing name is a broken invariant. */
export function courseOf({ times }: DayRecord, table: Table, name: string): Course {
  const known = taken.get(table) ?? new Map<string, Course>();
  taken.set(table, known);
  const before = known.get(name);
  if (before !== undefined) return before;
  const column = table.names.indexOf(name);
  if (column < 0) throw new Error(`the record has no column "${name}"; it has ${table.names.join(', ')}`);
  const width = table.names.length;
  const values = new Float64Array(times.length);
  for (let row = 0; row < times.length; row += 1) values[row] = table.values[row * width + column]!;
  known.set(name, { times, values });
  return { times, values };
}

/** A quantity computed row by row. */
export function courseFrom({ times }: DayRecord, valueAtRow: (row: number) => number): Course {
  const values = new Float64Array(times.length);
  for (let row = 0; row < values.length; row += 1) values[row] = valueAtRow(row);
  return { times, values };
}

/** The part from `start` to `end`: after a jump at its start, before a jump at its end, ends interpolated. */
export function within(course: Course, start: number, end: number): Course {
  const { times, values } = course;
  const first = rowBefore(times, start);
  let last = rowBefore(times, end);
  while (last > first && times[last]! >= end) last -= 1;
  const inner = Array.from({ length: last - first }, (_, at) => first + 1 + at);
  const ends = end > times[first]! && last + 1 < times.length ? [valueAfter(course, last, end)] : [];
  return {
    times: Float64Array.from([Math.max(start, times[0]!), ...inner.map((row) => times[row]!), ...ends.map(() => end)]),
    values: Float64Array.from([valueAfter(course, first, start), ...inner.map((row) => values[row]!), ...ends]),
  };
}

/** Value at `time` on the straight line that leaves `row`. */
function valueAfter({ times, values }: Course, row: number, time: number): number {
  const [start, end] = [times[row]!, times[row + 1] ?? times[row]!];
  if (!(end > start) || time <= start) return values[row]!;
  const share = Math.min((time - start) / (end - start), 1);
  return values[row]! + share * (values[row + 1]! - values[row]!);
}

/** The value at a time; at a jump, the one after it. */
export function valueAt(course: Course, time: number): number {
  return valueAfter(course, rowBefore(course.times, time), time);
}

export function largest({ times, values }: Course): Moment {
  let best = 0;
  for (let row = 1; row < values.length; row += 1) if (values[row]! > values[best]!) best = row;
  return { value: values[best]!, time: times[best]! };
}

export function smallest({ times, values }: Course): Moment {
  let best = 0;
  for (let row = 1; row < values.length; row += 1) if (values[row]! < values[best]!) best = row;
  return { value: values[best]!, time: times[best]! };
}

/** Time integral by the trapezium rule, exact for straight lines between rows. */
export function integralOf({ times, values }: Course): number {
  let sum = 0;
  for (let row = 1; row < times.length; row += 1)
    sum += ((values[row]! + values[row - 1]!) / 2) * (times[row]! - times[row - 1]!);
  return sum;
}

/** Integral of the product of two courses with the same rows, trapezium rule on the products. */
export function integralOfProduct(a: Course, b: Course): number {
  const { times } = a;
  let sum = 0;
  for (let row = 1; row < times.length; row += 1) {
    const span = times[row]! - times[row - 1]!;
    if (span > 0) sum += ((a.values[row]! * b.values[row]! + a.values[row - 1]! * b.values[row - 1]!) / 2) * span;
  }
  return sum;
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
export function timeAbove({ times, values }: Course, limit: number): number {
  let sum = 0;
  for (let row = 1; row < times.length; row += 1) {
    const [a, b] = [values[row - 1]! - limit, values[row]! - limit];
    const span = times[row]! - times[row - 1]!;
    if (a > 0 && b > 0) sum += span;
    else if (a > 0 || b > 0) sum += (span * Math.max(a, b)) / Math.abs(b - a);
  }
  return sum;
}

/** First time at or after the start at which the course is at or above (or below) a level. */
export function firstReaching({ times, values }: Course, level: number, from: 'below' | 'above'): number | undefined {
  const sign = from === 'below' ? 1 : -1;
  for (let row = 0; row < times.length; row += 1) {
    const over = sign * (values[row]! - level);
    if (over < 0) continue;
    if (row === 0) return times[0]!;
    const before = sign * (values[row - 1]! - level);
    return times[row]! - ((times[row]! - times[row - 1]!) * over) / (over - before || 1);
  }
  return undefined;
}

/**
 * Largest mean over any window of the given length. A day that is too short for the window is averaged as a whole; one that
 * repeats is followed round into its next morning.
 */
export function largestMean(course: Course, window: number, repeats: boolean): Moment {
  const { times, values } = course;
  const start = times[0]!;
  const length = lengthOf(course);
  if (!(length > window)) return { value: meanOf(course), time: times[times.length - 1]! };
  const sums = new Float64Array(times.length);
  for (let row = 1; row < times.length; row += 1)
    sums[row] = sums[row - 1]! + ((values[row]! + values[row - 1]!) / 2) * (times[row]! - times[row - 1]!);
  const total = sums[times.length - 1]!;
  const integralTo = (time: number, hint: number): number => {
    const value = valueAfter(course, hint, time);
    return sums[hint]! + ((values[hint]! + value) / 2) * (time - times[hint]!);
  };
  const wrap = (time: number): number => (time < start ? time + length : time);
  // Between two times at which either end of the window meets a row, the slope of the mean, value(end) − value(begin), is a
  // straight line: the mean is largest at such a time or where that line falls through zero.
  const last = start + length;
  const earliest = repeats ? start : start + window;
  const shifted = Float64Array.from(times, (time) =>
    time + window > last && repeats ? time + window - length : time + window,
  );
  const ends = Float64Array.from(
    [...times, ...shifted, earliest].filter((end) => end >= earliest && end <= last),
  ).sort();
  let best: Moment = { value: Number.NEGATIVE_INFINITY, time: start };
  const consider = (end: number, endRow: number, begin: number, beginRow: number): void => {
    const upTo = integralTo(end, endRow) + (begin > end ? total : 0);
    const value = (upTo - integralTo(begin, beginRow)) / window;
    if (value > best.value) best = { value, time: end };
  };
  let [endRow, beginRow] = [0, 0];
  for (let at = 0; at < ends.length; at += 1) {
    const end = ends[at]!;
    const begin = wrap(end - window);
    endRow = rowOnward(times, end, endRow);
    beginRow = rowOnward(times, begin, begin < times[beginRow]! ? 0 : beginRow);
    consider(end, endRow, begin, beginRow);
    const gap = (ends[at + 1] ?? end) - end;
    if (!(gap > 0)) continue;
    const slopeAt = (step: number): number =>
      valueAfter(course, endRow, end + step) - valueAfter(course, beginRow, begin + step);
    const [early, late] = [slopeAt(gap / 4), slopeAt((3 * gap) / 4)];
    if (early <= late) continue;
    const step = gap * (0.25 + (0.5 * early) / (early - late));
    if (step > 0 && step < gap) consider(end + step, endRow, begin + step, beginRow);
  }
  return best;
}

/** Last row at or before a time, from an earlier row on. */
function rowOnward(times: Float64Array, time: number, from: number): number {
  let row = from;
  while (row + 1 < times.length && times[row + 1]! <= time) row += 1;
  return row;
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
