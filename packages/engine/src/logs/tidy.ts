// What is wrong with the values of one column, and what is done about it. Nothing is made up: values are left out, never filled in,
// and a wrong unit is put right only where the numbers can mean nothing else.

import { formatClock, formatDuration } from '../units/format.ts';
import type { LogKind, LogRemark, Reading } from './log.ts';
import { type LogUnit, units } from './log-unit.ts';

/** A value as the log wrote it. */
export interface RawReading {
  readonly time: number;
  readonly written: number;
  readonly line: number;
}

export interface Tidied {
  readonly readings: readonly Reading[];
  readonly remarks: readonly LogRemark[];
  readonly unit: LogUnit;
}

/** Written values that one-wire thermometers and loggers give when they have none: common practice, no source. */
const NO_VALUE: ReadonlySet<number> = new Set([-127, 85, 999, -999, 9999, -9999, 32_767, 65_535]);

/** What a cabinet or its room can show, in SI. */
const POSSIBLE: Readonly<Record<LogKind, readonly [number, number]>> = {
  temperature: [233.15, 423.15],
  humidity: [0, 1.05],
  power: [0, 20_000],
  concentration: [0, 1e15],
};

/** A jump away from both neighbours and back, in SI. */
const SPIKE: Readonly<Record<LogKind, number>> = {
  temperature: 6,
  humidity: 0.25,
  power: Number.POSITIVE_INFINITY,
  concentration: Number.POSITIVE_INFINITY,
};

export function tidied(raw: readonly RawReading[], unit: LogUnit, column: string, certain: boolean): Tidied {
  const remarks: LogRemark[] = [];
  const say = (remark: Omit<LogRemark, 'column'>): void => void remarks.push({ ...remark, column });
  const spoken = without(
    raw,
    ({ written }) => NO_VALUE.has(written) && standsOut(written, raw),
    (gone) =>
      say({
        code: 'no-value',
        what: `${gone[0]!.written} ${unit.text} is what a sensor says when it has no value`,
        done: 'left out',
        line: gone[0]!.line,
        count: gone.length,
      }),
  );
  const meant = unitMeant(spoken, unit);
  if (meant !== unit)
    say({
      code: 'unit-wrong',
      what: `the values (${middle(spoken)} in the middle) cannot be ${unit.text}${certain ? ', which the header says' : ''}`,
      done: `taken as ${meant.text}`,
      ...(spoken[0] === undefined ? {} : { line: spoken[0].line }),
      count: spoken.length,
    });
  const { kind } = meant;
  const si = spoken.map(({ time, written, line }) => ({ time, line, value: written * meant.scale + meant.shift }));
  const [low, high] = POSSIBLE[kind];
  const possible = without(
    si,
    ({ value }) => value < low || value > high,
    (gone) =>
      say({
        code: 'impossible',
        what: `no ${kind} in or near a cabinet is so`,
        done: 'left out',
        line: gone[0]!.line,
        count: gone.length,
      }),
  );
  const smooth = without(
    possible,
    (_, at) => isSpike(possible, at, SPIKE[kind]),
    (gone) =>
      say({
        code: 'spike',
        what: 'a single value far from those before and after it',
        done: 'left out',
        line: gone[0]!.line,
        count: gone.length,
      }),
  );
  return { readings: smooth.map(({ time, value }) => ({ time, value })), remarks, unit: meant };
}

function without<T>(
  all: readonly T[],
  drop: (each: T, at: number) => boolean,
  tell: (gone: readonly T[]) => void,
): readonly T[] {
  const gone = all.filter(drop);
  if (gone.length === 0) return all;
  tell(gone);
  return all.filter((each, at) => !drop(each, at));
}

/** A reading of just 85 is no fault where the others are near it. */
function standsOut(written: number, raw: readonly RawReading[]): boolean {
  const sorted = raw.map((each) => each.written).sort((a, b) => a - b);
  return Math.abs(written - (sorted[sorted.length >> 1] ?? written)) > 25;
}

const middle = (raw: readonly RawReading[]): number => quantile(raw, 0.5);

function quantile(raw: readonly RawReading[], share: number): number {
  const sorted = raw.map(({ written }) => written).sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? Number.NaN;
}

/** Air of a room or a cabinet that would never be cooler than 45 °C, or never warmer than 5 °C, was written in another unit. */
function unitMeant(raw: readonly RawReading[], unit: LogUnit): LogUnit {
  if (unit.kind === 'humidity') {
    const most = quantile(raw, 0.99);
    return most <= 1 && quantile(raw, 0.5) > 0.05 ? { ...unit, scale: 1, text: 'a share of 1' } : unit;
  }
  if (unit.kind !== 'temperature' || raw.length === 0) return unit;
  const [coldest, warmest] = [quantile(raw, 0.1), quantile(raw, 0.9)];
  if (unit === units.celsius && coldest > 250) return units.kelvin;
  if (unit === units.celsius && coldest > 45 && coldest < 180) return units.fahrenheit;
  if (unit === units.fahrenheit && warmest < 42 && warmest > 8 && coldest > -5) return units.celsius;
  if (unit === units.kelvin && warmest < 150) return coldest > 45 ? units.fahrenheit : units.celsius;
  return unit;
}

function isSpike(all: readonly { readonly time: number; readonly value: number }[], at: number, most: number): boolean {
  const [before, here, after] = [all[at - 1], all[at]!, all[at + 1]];
  if (before === undefined || after === undefined || after.time - before.time > 1800) return false;
  const away = Math.min(Math.abs(here.value - before.value), Math.abs(here.value - after.value));
  return (
    away > most &&
    Math.sign(here.value - before.value) === Math.sign(here.value - after.value) &&
    away > 3 * Math.abs(after.value - before.value)
  );
}

/** In order of time, one value a time. */
export function inOrder(
  raw: readonly RawReading[],
  column: string,
): { readonly raw: readonly RawReading[]; readonly remarks: readonly LogRemark[] } {
  const remarks: LogRemark[] = [];
  const late = raw.filter(({ time }, at) => at > 0 && time < raw[at - 1]!.time);
  const sorted = late.length === 0 ? raw : [...raw].sort((a, b) => a.time - b.time || a.line - b.line);
  if (late.length > 0)
    remarks.push({
      code: 'out-of-order',
      what: 'rows are not in order of time (a clock put back looks the same)',
      done: 'sorted',
      line: late[0]!.line,
      count: late.length,
      column,
    });
  const single = sorted.filter(({ time }, at) => at === 0 || time !== sorted[at - 1]!.time);
  if (single.length < sorted.length) {
    const again = sorted.find(({ time }, at) => at > 0 && time === sorted[at - 1]!.time)!;
    remarks.push({
      code: 'duplicate',
      what: 'several rows of one time',
      done: 'the first of each was taken',
      line: again.line,
      count: sorted.length - single.length,
      column,
    });
  }
  return { raw: single, remarks };
}

/** Stretches without rows, much longer than usual. */
export function gapsIn(readings: readonly Reading[], column: string): LogRemark[] {
  const steps = readings.slice(1).map(({ time }, at) => time - readings[at]!.time);
  const usual = [...steps].sort((a, b) => a - b)[steps.length >> 1] ?? 0;
  const gaps = steps.flatMap((step, at) =>
    step > 5 * usual && step > 900 ? [{ step, from: readings[at]!.time }] : [],
  );
  if (gaps.length === 0) return [];
  const longest = gaps.reduce((most, each) => (each.step > most.step ? each : most));
  return [
    {
      code: 'gap',
      what: `no rows for ${formatDuration(longest.step)} from ${formatClock(longest.from)}${gaps.length > 1 ? `, and ${gaps.length - 1} shorter ${gaps.length === 2 ? 'gap' : 'gaps'}` : ''}`,
      done: 'left empty',
      count: gaps.length,
      column,
    },
  ];
}
