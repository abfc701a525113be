// From a cabinet to the measures of all its days: assemble, simulate, ask every trade.

import type { Cabinet } from '../cabinet/cabinet.ts';
import { restingOnParts } from '../cabinet/resting-on-parts.ts';
import type { DayRecord } from '../day/record.ts';
import { simulateDay } from '../day/simulate-day.ts';
import { assemble } from '../network/assemble.ts';
import type { Network } from '../network/network.ts';
import { type DayRun, type Measure, STANDING, type Trade } from '../trades/measure.ts';
import { trades as allTrades } from '../trades/trades.ts';

export interface DayMeasure extends Measure {
  /** `trade/quantity/part/day`. */
  readonly id: string;
  /** Id of the day, or `STANDING`. */
  readonly day: string;
}

/** Simulates one day of a cabinet. */
export type RunDay = (cabinet: Cabinet, day: string) => DayRun;

export const runDay: RunDay = (cabinet, day) => {
  const assembly = assemble(cabinet, day);
  return { cabinet, day, assembly, record: recordOf(assembly.network, cabinet.days[day]!.repeated) };
};

function recordOf(network: Network, periodic: boolean): DayRecord {
  return simulateDay(network, { periodic });
}

/** Simulates a network once: another lamp or a longer shelf pin changes the cabinet, but not what its air does. */
export function runDayOnce(): RunDay {
  return runDayFrom((records, key, record) => {
    if (records.size < KEPT_RECORDS) records.set(key, record);
  });
}

/** The same for a search, which seldom comes back to what it ran first: the records used last are kept. */
export function runDayKept(): RunDay {
  return runDayFrom((records, key, record) => {
    records.delete(key);
    records.set(key, record);
    if (records.size > KEPT_RECORDS) records.delete(records.keys().next().value!);
  });
}

function runDayFrom(keep: (records: Map<string, DayRecord>, key: string, record: DayRecord) => void): RunDay {
  const records = new Map<string, DayRecord>();
  return (cabinet, day) => {
    const assembly = assemble(cabinet, day);
    const periodic = cabinet.days[day]!.repeated;
    const key = JSON.stringify([periodic, assembly.network]);
    const record = records.get(key) ?? recordOf(assembly.network, periodic);
    keep(records, key, record);
    return { cabinet, day, assembly, record };
  };
}

/** Records take a megabyte each. */
const KEPT_RECORDS = 12;

export function findingId(
  { trade, quantity, part }: Pick<Measure, 'trade' | 'quantity' | 'part'>,
  day: string,
): string {
  return `${trade}/${quantity}/${part}/${day}`;
}

/** Measures of one day by finding id, as plain data. Two measures of one id are a bug of their trade. */
export function measureDay(run: DayRun, trades: readonly Trade[] = allTrades): Map<string, DayMeasure> {
  return plainly(askDay(run, trades), run.day);
}

/** Measures that no day changes. */
export function measureStanding(cabinet: Cabinet, trades: readonly Trade[] = allTrades): Map<string, DayMeasure> {
  return plainly(askStanding(cabinet, trades), STANDING);
}

/** Measures of one day as trades give them, by finding id: steps and remedies may still have to be worked out. */
export function askDay(run: DayRun, trades: readonly Trade[] = allTrades): ReadonlyMap<string, Measure> {
  return byId(ofDay(run, trades), run.day);
}

/** The same of what no day changes. */
export function askStanding(cabinet: Cabinet, trades: readonly Trade[] = allTrades): ReadonlyMap<string, Measure> {
  return byId(ofCabinet(cabinet, trades), STANDING);
}

function ofDay(run: DayRun, trades: readonly Trade[]): readonly Measure[] {
  return trades.flatMap((trade) => trade.measure?.(run) ?? []);
}

function ofCabinet(cabinet: Cabinet, trades: readonly Trade[]): readonly Measure[] {
  return trades.flatMap((trade) => trade.standing?.(cabinet) ?? []);
}

function byId(measures: readonly Measure[], day: string): ReadonlyMap<string, Measure> {
  const named = new Map<string, Measure>();
  for (const measure of measures) {
    const id = findingId(measure, day);
    if (named.has(id)) throw new Error(`two measures are called ${id}`);
    named.set(id, measure);
  }
  return named;
}

function plainly(measures: ReadonlyMap<string, Measure>, day: string): Map<string, DayMeasure> {
  return new Map([...measures].map(([id, measure]) => [id, { ...measure, id, day }]));
}

/** What a day comes to, and nothing about how: numbers by finding id. */
export interface Numbers {
  readonly values: Readonly<Record<string, number>>;
  readonly limits: Readonly<Record<string, number>>;
  /** Ids of what is asked and cannot be told. */
  readonly unknown: readonly string[];
}

/** Numbers of all days and of what no day changes: for samples and remedies, of which nobody asks the steps. */
export function numbersOfDays(
  cabinet: Cabinet,
  trades: readonly Trade[] = allTrades,
  run: RunDay = runDay,
  days: readonly string[] = Object.keys(cabinet.days),
  standing: AskStanding = (asked) => ofCabinet(asked, trades),
): Numbers {
  const numbers = { values: {}, limits: {}, unknown: [] };
  addNumbers(numbers, standing(cabinet), STANDING);
  for (const day of days) addNumbers(numbers, ofDay(run(cabinet, day), trades), day);
  return numbers;
}

export function numbersOfDay(run: DayRun, trades: readonly Trade[] = allTrades): Numbers {
  const numbers = { values: {}, limits: {}, unknown: [] };
  addNumbers(numbers, ofDay(run, trades), run.day);
  return numbers;
}

/** What a verdict needs of a measure. */
export type Told = Pick<Measure, 'trade' | 'quantity' | 'part' | 'value' | 'limit' | 'unit' | 'logarithmic' | 'weight'>;

/** Asks what no day changes. */
export type AskStanding = (cabinet: Cabinet) => readonly Told[];

/** The same for cabinets of which most are alike: what rests on parts that they share is not worked out again. */
export function standingOfMany(trades: readonly Trade[] = allTrades): AskStanding {
  const questions = trades
    .flatMap(({ standing }) => (standing === undefined ? [] : (standing.questions ?? [standing])))
    .map((question) => restingOnParts((cabinet: Cabinet) => question(cabinet).map(told)));
  return (cabinet) => questions.flatMap((question) => question(cabinet));
}

function told({ trade, quantity, part, value, limit, unit, logarithmic, weight }: Measure): Told {
  return {
    trade,
    quantity,
    part,
    unit,
    weight,
    ...(value === undefined ? {} : { value }),
    ...(limit === undefined ? {} : { limit }),
    ...(logarithmic === undefined ? {} : { logarithmic }),
  };
}

/** Numbers while they are gathered. */
export interface GatheredNumbers extends Numbers {
  readonly values: Record<string, number>;
  readonly limits: Record<string, number>;
  readonly unknown: string[];
}

export function addNumbers({ values, limits, unknown }: GatheredNumbers, measures: readonly Told[], day: string): void {
  for (const measure of measures) {
    const id = findingId(measure, day);
    if (measure.value === undefined) unknown.push(id);
    else values[id] = measure.value;
    if (measure.limit !== undefined) limits[id] = measure.limit.value;
  }
}

export interface CabinetMeasures {
  /** By finding id: what no day changes, then day by day, in the order of trades. */
  readonly measures: Map<string, DayMeasure>;
  /** What the simulation of a day warned of, each said once a day. */
  readonly warnings: readonly { readonly day: string; readonly message: string }[];
}

/** The cabinet measured as it stands, and all its days run and measured. */
export function measureDays(
  cabinet: Cabinet,
  trades: readonly Trade[] = allTrades,
  runOf: RunDay = runDay,
): CabinetMeasures {
  const measures = measureStanding(cabinet, trades);
  const warnings: { day: string; message: string }[] = [];
  for (const day of Object.keys(cabinet.days)) {
    const run = runOf(cabinet, day);
    for (const [id, measure] of measureDay(run, trades)) measures.set(id, measure);
    for (const message of warningsOf(run)) warnings.push({ day, message });
  }
  return { measures, warnings };
}

/** What the simulation of a day warned of, each said once. */
export function warningsOf({ record }: DayRun): readonly string[] {
  return [...new Set(record.warnings.map(({ message }) => message))];
}

/** Measures as it stands and of all days. */
export function measureAll(cabinet: Cabinet, trades: readonly Trade[] = allTrades): Map<string, DayMeasure> {
  return measureDays(cabinet, trades).measures;
}
