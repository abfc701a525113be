// Reading one column of a record as a function of time, exactly as the solver left it: cubics where slopes were kept,
// straight lines elsewhere. Rows of equal time are the two sides of a jump; asked just there, the later one answers.

import { hermite, hermiteCrossing, hermiteIntegral, hermiteTurns } from './hermite.ts';
import type { DayRecord, Table } from './record.ts';

export interface Series {
  /** s, never falling. */
  readonly times: Float64Array;
  readonly values: Float64Array;
  /** Per second, by row; absent for straight lines. */
  readonly slopes: Float64Array | undefined;
}

export interface Extreme {
  readonly value: number;
  /** s */
  readonly time: number;
}

/** One column of a table; `slopes` is the table of its slopes, if the record has one. */
export function seriesOf(times: Float64Array, table: Table, name: string, slopes?: Table): Series {
  const column = table.names.indexOf(name);
  if (column < 0) throw new RangeError(`seriesOf: name is "${name}"; the record has ${table.names.join(', ')}`);
  const pick = ({ names, values }: Table): Float64Array =>
    Float64Array.from(times, (_, row) => values[row * names.length + column]!);
  return { times, values: pick(table), slopes: slopes === undefined ? undefined : pick(slopes) };
}

/** Temperature of a zone, node or sensor, K. */
export function temperatureSeries(record: DayRecord, name: string): Series {
  return seriesOf(record.times, record.temperatures, name, record.slopes);
}

/** Concentration of a contaminant in a zone. */
export function concentrationSeries(record: DayRecord, contaminant: string, zone: string): Series {
  const table = record.concentrations[contaminant];
  if (table === undefined) {
    const known = Object.keys(record.concentrations).join(', ');
    throw new RangeError(`concentrationSeries: contaminant is "${contaminant}"; the record has ${known}`);
  }
  return seriesOf(record.times, table, zone, record.concentrationSlopes?.[contaminant]);
}

/** Last row at or before `time`; the first row for earlier times. */
function rowAt({ times }: Series, time: number): number {
  let low = 0;
  let high = times.length;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (times[middle]! <= time) low = middle;
    else high = middle;
  }
  return low;
}

/** Values and slopes at both ends of the interval after `row`; straight lines have their own slope. */
function interval(
  { times, values, slopes }: Series,
  row: number,
): { length: number; y0: number; s0: number; y1: number; s1: number } {
  const length = times[row + 1]! - times[row]!;
  const y0 = values[row]!;
  const y1 = values[row + 1]!;
  const straight = length > 0 ? (y1 - y0) / length : 0;
  return { length, y0, s0: slopes?.[row] ?? straight, y1, s1: slopes?.[row + 1] ?? straight };
}

/** Value at a time; before the first and after the last row, theirs. */
export function valueAt(series: Series, time: number): number {
  const row = rowAt(series, time);
  if (row === series.times.length - 1 || time <= series.times[row]!) return series.values[row]!;
  const { length, y0, s0, y1, s1 } = interval(series, row);
  return hermite((time - series.times[row]!) / length, length, y0, s0, y1, s1);
}

/** Greatest value between two times (the whole record unless given), and when it is first reached. */
export function greatest(series: Series, start?: number, end?: number): Extreme {
  const [from, to] = within(series, start, end);
  let best: Extreme = { value: valueAt(series, from), time: from };
  const offer = (value: number, time: number): void => {
    if (value > best.value) best = { value, time };
  };
  eachPiece(series, from, to, (row, low, high) => {
    const piece = interval(series, row);
    const { length, y0, s0, y1, s1 } = piece;
    const start0 = series.times[row]!;
    offer(hermite(low, length, y0, s0, y1, s1), start0 + low * length);
    const turns: number[] = [];
    const count = hermiteTurns(length, y0, s0, y1, s1, turns);
    for (const share of turns.slice(0, count)) {
      if (share > low && share < high) offer(hermite(share, length, y0, s0, y1, s1), start0 + share * length);
    }
    offer(hermite(high, length, y0, s0, y1, s1), start0 + high * length);
  });
  return best;
}

/** Least value between two times, and when it is first reached. */
export function least(series: Series, start?: number, end?: number): Extreme {
  const turned = { times: series.times, values: series.values.map((v) => -v), slopes: series.slopes?.map((s) => -s) };
  const { value, time } = greatest(turned, start, end);
  return { value: -value, time };
}

/** Integral over time between two times (the whole record unless given). */
export function integral(series: Series, start?: number, end?: number): number {
  const [from, to] = within(series, start, end);
  let sum = 0;
  eachPiece(series, from, to, (row, low, high) => {
    const { length, y0, s0, y1, s1 } = interval(series, row);
    sum += hermiteIntegral(high, length, y0, s0, y1, s1) - hermiteIntegral(low, length, y0, s0, y1, s1);
  });
  return sum;
}

/** Mean over time; of no time, the value there. */
export function mean(series: Series, start?: number, end?: number): number {
  const [from, to] = within(series, start, end);
  return to > from ? integral(series, from, to) / (to - from) : valueAt(series, from);
}

/** Time above a level between two times, s. */
export function timeAbove(series: Series, level: number, start?: number, end?: number): number {
  const [from, to] = within(series, start, end);
  let sum = 0;
  eachPiece(series, from, to, (row, low, high) => {
    const { length, y0, s0, y1, s1 } = interval(series, row);
    const turns: number[] = [];
    const count = hermiteTurns(length, y0, s0, y1, s1, turns);
    const stops = [low, ...turns.slice(0, count).filter((share) => share > low && share < high), high];
    for (let k = 0; k + 1 < stops.length; k += 1) {
      const [a, b] = [stops[k]!, stops[k + 1]!];
      const atA = hermite(a, length, y0, s0, y1, s1) > level;
      const atB = hermite(b, length, y0, s0, y1, s1) > level;
      if (atA && atB) sum += (b - a) * length;
      else if (atA !== atB) {
        const share = hermiteCrossing(level, length, y0, s0, y1, s1, a, b, atB);
        sum += (atA ? share - a : b - share) * length;
      }
    }
  });
  return sum;
}

/**
 * Greatest mean over any window of `length` seconds, and when that window ends. The integral is exact; windows are tried from
 * and to every row and between them on a grid of a hundredth of the window, then refined.
 */
export function greatestMovingMean(series: Series, length: number): Extreme {
  if (!(length > 0)) throw new RangeError(`greatestMovingMean: length is ${length}; it must be above 0`);
  const { times } = series;
  const first = times[0]!;
  const last = times.at(-1)!;
  if (last - first <= length) return { value: mean(series), time: last };
  const running = runningIntegral(series);
  const meanUntil = (end: number): number => (running(end) - running(end - length)) / length;
  const ends = new Set<number>([first + length, last]);
  for (const time of times) {
    if (time >= first + length) ends.add(time);
    if (time + length <= last) ends.add(time + length);
  }
  for (let end = first + length; end < last; end += 0.01 * length) ends.add(end);
  const sorted = [...ends].sort((a, b) => a - b);
  let best = 0;
  const means = sorted.map(meanUntil);
  means.forEach((value, k) => {
    if (value > means[best]!) best = k;
  });
  return refine(
    meanUntil,
    sorted[Math.max(best - 1, 0)]!,
    sorted[best]!,
    sorted[Math.min(best + 1, sorted.length - 1)]!,
  );
}

/** Golden section about the best of three neighbours. */
function refine(value: (time: number) => number, low: number, middle: number, high: number): Extreme {
  const share = 0.5 * (3 - Math.sqrt(5));
  let [from, to] = [low, high];
  let best: Extreme = { value: value(middle), time: middle };
  for (let k = 0; k < 40; k += 1) {
    const [a, b] = [from + share * (to - from), to - share * (to - from)];
    const [atA, atB] = [value(a), value(b)];
    if (atA > best.value) best = { value: atA, time: a };
    if (atB > best.value) best = { value: atB, time: b };
    if (atA >= atB) to = b;
    else from = a;
  }
  return best;
}

/** Integral from the start to a time, quickly for many times. */
function runningIntegral(series: Series): (time: number) => number {
  const { times } = series;
  const sums = new Float64Array(times.length);
  for (let row = 0; row + 1 < times.length; row += 1) {
    const { length, y0, s0, y1, s1 } = interval(series, row);
    sums[row + 1] = sums[row]! + (length > 0 ? hermiteIntegral(1, length, y0, s0, y1, s1) : 0);
  }
  return (time) => {
    const row = rowAt(series, time);
    if (row === times.length - 1 || time <= times[row]!) return sums[row]!;
    const { length, y0, s0, y1, s1 } = interval(series, row);
    return sums[row]! + hermiteIntegral((time - times[row]!) / length, length, y0, s0, y1, s1);
  };
}

/** Values at `count` even times from the first to the last row. */
export function resample(
  series: Series,
  count: number,
): { readonly times: Float64Array; readonly values: Float64Array } {
  if (!(count >= 2)) throw new RangeError(`resample: count is ${count}; it must be 2 or more`);
  const first = series.times[0]!;
  const span = series.times.at(-1)! - first;
  const times = Float64Array.from({ length: count }, (_, i) => first + (span * i) / (count - 1));
  return { times, values: times.map((time) => valueAt(series, time)) };
}

function within({ times }: Series, start: number | undefined, end: number | undefined): [number, number] {
  const first = times[0]!;
  const last = times.at(-1)!;
  const from = Math.min(Math.max(start ?? first, first), last);
  return [from, Math.max(Math.min(end ?? last, last), from)];
}

/** Calls with every interval between two times, and the shares of it that lie between them. */
function eachPiece(
  series: Series,
  from: number,
  to: number,
  call: (row: number, low: number, high: number) => void,
): void {
  const { times } = series;
  for (let row = rowAt(series, from); row + 1 < times.length && times[row]! < to; row += 1) {
    const length = times[row + 1]! - times[row]!;
    if (length === 0) continue;
    const low = Math.max(0, (from - times[row]!) / length);
    const high = Math.min(1, (to - times[row]!) / length);
    if (high > low) call(row, low, high);
  }
}
