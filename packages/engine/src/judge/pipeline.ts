// From a cabinet to the measures of all its days: assemble, simulate, ask every trade.

import type { Cabinet } from '../cabinet/cabinet.ts';
import { simulateDay } from '../day/simulate-day.ts';
import { assemble } from '../network/assemble.ts';
import type { DayRun, Measure, Trade } from '../trades/measure.ts';
import { trades as allTrades } from '../trades/trades.ts';

export interface DayMeasure extends Measure {
  /** `trade/quantity/part/day`. */
  readonly id: string;
  readonly day: string;
}

/** Simulates one day of a cabinet. */
export function runDay(cabinet: Cabinet, day: string): DayRun {
  const assembly = assemble(cabinet, day);
  const record = simulateDay(assembly.network, { periodic: cabinet.days[day]!.repeated });
  return { cabinet, day, assembly, record };
}

export function findingId({ trade, quantity, part }: Measure, day: string): string {
  return `${trade}/${quantity}/${part}/${day}`;
}

/** Measures of one day by finding id. Two measures of one id are a bug of their trade. */
export function measureDay(run: DayRun, trades: readonly Trade[] = allTrades): Map<string, DayMeasure> {
  const measures = new Map<string, DayMeasure>();
  for (const trade of trades) {
    for (const measure of trade.measure(run)) {
      const id = findingId(measure, run.day);
      if (measures.has(id)) throw new Error(`two measures are called ${id}`);
      measures.set(id, { ...measure, id, day: run.day });
    }
  }
  return measures;
}

/** What a day comes to, and nothing about how: numbers by finding id. Findings without a value are left out. */
export interface Numbers {
  readonly values: Readonly<Record<string, number>>;
  readonly limits: Readonly<Record<string, number>>;
}

/** Numbers of all days: for samples and remedies, of which nobody asks the steps. */
export function numbersOfDays(cabinet: Cabinet, trades: readonly Trade[] = allTrades): Numbers {
  const numbers = { values: {}, limits: {} };
  for (const day of Object.keys(cabinet.days)) addNumbers(numbers, runDay(cabinet, day), trades);
  return numbers;
}

export function numbersOfDay(run: DayRun, trades: readonly Trade[] = allTrades): Numbers {
  const numbers = { values: {}, limits: {} };
  addNumbers(numbers, run, trades);
  return numbers;
}

function addNumbers(
  { values, limits }: { values: Record<string, number>; limits: Record<string, number> },
  run: DayRun,
  trades: readonly Trade[],
): void {
  for (const trade of trades)
    for (const measure of trade.measure(run)) {
      const id = findingId(measure, run.day);
      if (measure.value !== undefined) values[id] = measure.value;
      if (measure.limit !== undefined) limits[id] = measure.limit.value;
    }
}

export interface CabinetMeasures {
  /** By finding id, in the order of days and trades. */
  readonly measures: Map<string, DayMeasure>;
  /** What the simulation of a day warned of, each said once a day. */
  readonly warnings: readonly { readonly day: string; readonly message: string }[];
}

/** All days run and measured. */
export function measureDays(cabinet: Cabinet, trades: readonly Trade[] = allTrades): CabinetMeasures {
  const measures = new Map<string, DayMeasure>();
  const warnings: { day: string; message: string }[] = [];
  for (const day of Object.keys(cabinet.days)) {
    const run = runDay(cabinet, day);
    for (const [id, measure] of measureDay(run, trades)) measures.set(id, measure);
    for (const message of new Set(run.record.warnings.map((warning) => warning.message)))
      warnings.push({ day, message });
  }
  return { measures, warnings };
}

/** Measures of all days, in the order of days and trades. */
export function measureAll(cabinet: Cabinet, trades: readonly Trade[] = allTrades): Map<string, DayMeasure> {
  return measureDays(cabinet, trades).measures;
}
