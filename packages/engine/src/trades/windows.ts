// Windows of one length laid over a day so that either end meets a row: all of a running mean that depends on the rows' times alone.
import { zeros } from './zeros.ts';

/** Moments of a day, each with the last row at or before it. */
export interface Places {
  readonly times: Float64Array;
  readonly rows: Int32Array;
}

export interface Windows {
  readonly ends: Places;
  readonly begins: Places;
}

/** Windows already laid over a record's times: every guideline of one averaging time asks for the same ones. */
const laid = new WeakMap<Float64Array, Map<string, Windows>>();

/** The day is longer than the window. One that repeats is followed round: windows may begin in its evening and end in its morning. */
export function windowsOver(times: Float64Array, window: number, repeats: boolean): Windows {
  let known = laid.get(times);
  if (known === undefined) {
    known = new Map();
    laid.set(times, known);
  }
  const key = `${window} ${repeats}`;
  let windows = known.get(key);
  if (windows === undefined) {
    windows = layWindows(times, window, repeats);
    known.set(key, windows);
  }
  return windows;
}

function layWindows(times: Float64Array, window: number, repeats: boolean): Windows {
  const start = times[0]!;
  const length = times[times.length - 1]! - start;
  const ends = endsOf(times, window, repeats);
  const begins = zeros(ends.length);
  for (let at = 0; at < begins.length; at += 1) {
    const begin = ends[at]! - window;
    begins[at] = begin < start ? begin + length : begin;
  }
  return { ends: placesAt(times, ends), begins: placesAt(times, begins) };
}

/** Every row, and a window after every row, in order. */
function endsOf(times: Float64Array, window: number, repeats: boolean): Float64Array {
  const rows = times.length;
  const last = times[rows - 1]!;
  const length = last - times[0]!;
  // From this row on a window reaches into the next morning: those ends come first, or not at all.
  const beyond = times.findIndex((time) => time + window > last);
  const after = zeros(repeats ? rows : beyond);
  for (let row = 0; row < beyond; row += 1) after[after.length - beyond + row] = times[row]! + window;
  for (let row = beyond; repeats && row < rows; row += 1) after[row - beyond] = times[row]! + window - length;
  const first = repeats ? 0 : times.findIndex((time) => time >= times[0]! + window);
  return merged(times.subarray(first), after);
}

function merged(some: Float64Array, others: Float64Array): Float64Array {
  const all = zeros(some.length + others.length);
  for (let at = 0, a = 0, b = 0; at < all.length; at += 1)
    all[at] = b === others.length || (a < some.length && some[a]! <= others[b]!) ? some[a++]! : others[b++]!;
  return all;
}

/** The moments rise, but may fall back to the start. */
function placesAt(times: Float64Array, moments: Float64Array): Places {
  const rows = new Int32Array(moments.length);
  let row = 0;
  for (let at = 0; at < moments.length; at += 1) {
    if (moments[at]! < times[row]!) row = 0;
    while (row + 1 < times.length && times[row + 1]! <= moments[at]!) row += 1;
    rows[at] = row;
  }
  return { times: moments, rows };
}
