// The largest mean of a course over any window of a given length.

import { hermite, hermiteIntegral } from '../day/hermite.ts';
import { type Course, lengthOf, type Moment, meanOf, pieceIntegral } from './course.ts';

/** Where windows begin and end: all that depends on the rows' times alone. */
interface Windows {
  readonly ends: Float64Array;
  readonly endRows: Int32Array;
  readonly begins: Float64Array;
  readonly beginRows: Int32Array;
}

/** Windows already laid over a record's times: every guideline of one averaging time asks for the same ones. */
const laid = new WeakMap<Float64Array, Map<string, Windows>>();

/**
 * Largest mean over any window of the given length. A day that is too short for the window is averaged as a whole; one that
 * repeats is followed round into its next morning.
 */
export function largestMean(course: Course, window: number, repeats: boolean): Moment {
  const { times, values } = course;
  if (!(lengthOf(course) > window)) return { value: meanOf(course), time: times[times.length - 1]! };
  const { ends, endRows, begins, beginRows } = windowsOf(times, window, repeats);
  const sums = new Float64Array(times.length);
  let [least, most] = [values[0]!, values[0]!];
  for (let row = 1; row < times.length; row += 1) {
    sums[row] = sums[row - 1]! + pieceIntegral(course, row);
    if (values[row]! < least) least = values[row]!;
    if (values[row]! > most) most = values[row]!;
  }
  const total = sums[times.length - 1]!;
  const meanTo = (end: number, endRow: number, begin: number, beginRow: number): number =>
    (integralTo(course, sums, end, endRow) + (begin > end ? total : 0) - integralTo(course, sums, begin, beginRow)) /
    window;

  const means = new Float64Array(ends.length);
  let best = 0;
  for (let at = 0; at < ends.length; at += 1) {
    means[at] = meanTo(ends[at]!, endRows[at]!, begins[at]!, beginRows[at]!);
    if (means[at]! > means[best]!) best = at;
  }
  let found: Moment = { value: means[best]!, time: ends[best]! };
  // Between two such ends the slope of the mean, value(end) − value(begin), is a straight line (nearly, for cubics): the mean is
  // largest where that line falls through zero. It cannot rise by more than the course's whole range would lift it.
  for (let at = 0; at + 1 < ends.length; at += 1) {
    const gap = ends[at + 1]! - ends[at]!;
    if (!(gap > 0)) continue;
    if (Math.max(means[at]!, means[at + 1]!) + (gap * (most - least)) / window <= found.value) continue;
    const [end, endRow, begin, beginRow] = [ends[at]!, endRows[at]!, begins[at]!, beginRows[at]!];
    const slopeAt = (step: number): number =>
      valueIn(course, endRow, end + step) - valueIn(course, beginRow, begin + step);
    const [early, late] = [slopeAt(gap / 4), slopeAt((3 * gap) / 4)];
    if (early <= late) continue;
    const step = gap * (0.25 + (0.5 * early) / (early - late));
    if (!(step > 0 && step < gap)) continue;
    const value = meanTo(end + step, endRow, begin + step, beginRow);
    if (value > found.value) found = { value, time: end + step };
  }
  return found;
}

/** All windows of which either end meets a row. */
function windowsOf(times: Float64Array, window: number, repeats: boolean): Windows {
  const key = `${window} ${repeats}`;
  const known = laid.get(times) ?? new Map<string, Windows>();
  laid.set(times, known);
  const before = known.get(key);
  if (before !== undefined) return before;
  const start = times[0]!;
  const last = times[times.length - 1]!;
  const length = last - start;
  const earliest = repeats ? start : start + window;
  const offered = new Float64Array(2 * times.length + 1);
  let count = 0;
  const offer = (end: number): void => {
    if (end >= earliest && end <= last) offered[count++] = end;
  };
  for (const time of times) {
    offer(time);
    offer(time + window > last && repeats ? time + window - length : time + window);
  }
  offer(earliest);
  const ends = offered.subarray(0, count).sort();
  const begins = ends.map((end) => (end - window < start ? end - window + length : end - window));
  const made = { ends, begins, endRows: rowsAt(times, ends), beginRows: rowsAt(times, begins) };
  known.set(key, made);
  return made;
}

/** Last row at or before each moment; the moments rise, but may fall back to the start. */
function rowsAt(times: Float64Array, moments: Float64Array): Int32Array {
  const rows = new Int32Array(moments.length);
  let row = 0;
  for (let at = 0; at < moments.length; at += 1) {
    if (moments[at]! < times[row]!) row = 0;
    while (row + 1 < times.length && times[row + 1]! <= moments[at]!) row += 1;
    rows[at] = row;
  }
  return rows;
}

/** Integral from the course's start to a time in the interval after `row`. */
function integralTo(course: Course, sums: Float64Array, time: number, row: number): number {
  const { times, values, slopes } = course;
  const span = time - times[row]!;
  if (!(span > 0) || row + 1 >= times.length) return sums[row]!;
  const length = times[row + 1]! - times[row]!;
  const [y0, y1] = [values[row]!, values[row + 1]!];
  if (slopes === undefined) return sums[row]! + span * (y0 + ((y1 - y0) * span) / (2 * length));
  return sums[row]! + hermiteIntegral(span / length, length, y0, slopes[row]!, y1, slopes[row + 1]!);
}

function valueIn({ times, values, slopes }: Course, row: number, time: number): number {
  const span = time - times[row]!;
  if (!(span > 0) || row + 1 >= times.length) return values[row]!;
  const length = times[row + 1]! - times[row]!;
  const [y0, y1] = [values[row]!, values[row + 1]!];
  if (slopes === undefined) return y0 + ((y1 - y0) * span) / length;
  return hermite(span / length, length, y0, slopes[row]!, y1, slopes[row + 1]!);
}
