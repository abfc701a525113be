// What a network file asks for, as plain data with a version: values at times, and sums over the run.

import { ICE_POINT } from '@stillair/physics';
import type { Network } from '../network/network.ts';
import type { NetworkFile, NetworkRun } from '../network/read-network.ts';
import { operatingPoints } from './operating-points.ts';
import { type AirMoment, partPressures, pressureDifference, volumeFlow } from './path-parts.ts';
import type { DayEvent, DayRecord, Table, Warning } from './record.ts';
import { byName, type Energies, energiesOf, meansOf, type Peak, peaksOf, runTimesOf } from './record-sums.ts';
import { type DayOptions, simulateDay } from './simulate-day.ts';

type ByName<Value> = Readonly<Record<string, Value>>;
/** One value for each of the answer's times. */
type Course = readonly number[];

export interface RunAnswer {
  /** s; at a time when something switches, the state is the one after it. */
  readonly times: Course;
  /** °C, of zones, nodes, wall nodes and sensors. */
  readonly temperatures: ByName<Course>;
  /** Pa at the zone's own height. */
  readonly pressures: ByName<Course>;
  /** kg/s, + from `from` to `to`; 0 for a path without area. */
  readonly flows: ByName<Course>;
  /** kg/s against the net flow, for tall openings. */
  readonly counterFlows: ByName<Course>;
  /** m³/s at the density where the air comes from. */
  readonly volumeFlows: ByName<Course>;
  /** Pa at the path's height, from `from` to `to`. */
  readonly pressureDifferences: ByName<Course>;
  /** Pa lost in each part of a fan path; `fan` is what a running fan gains. */
  readonly partPressures: ByName<ByName<Course>>;
  /** m³/s each way. */
  readonly exchanges: ByName<Course>;
  /** By contaminant and zone, in the contaminant's unit. */
  readonly concentrations: ByName<ByName<Course>>;
  /** W, by machine. */
  readonly bedPowers: ByName<Course>;
  /** In order of time. */
  readonly events: readonly DayEvent[];
  /** Highest temperature of each zone and node, °C. */
  readonly peaks: ByName<Peak>;
  readonly peakConcentrations: ByName<ByName<Peak>>;
  /** Time-weighted over the run. */
  readonly means: ByName<ByName<number>>;
  /** J over the run. */
  readonly energies: Energies;
  /** s on, by thermostat. */
  readonly runTimes: ByName<number>;
  readonly warnings: readonly Warning[];
}

export interface CrossingAnswer {
  readonly m3_h: number;
  readonly kg_s: number;
  readonly stable: boolean;
}

/** Every flow at which each fan path balances, from the smallest to the largest. */
export interface CrossingsAnswer {
  readonly operatingPoints: ByName<readonly CrossingAnswer[]>;
}

interface Heading {
  readonly version: 1;
  readonly id: string;
  readonly title: string;
  readonly analysis: 'network' | 'operating_points' | 'transient';
}

export type NetworkAnswer = Heading &
  (
    | RunAnswer
    | CrossingsAnswer
    | {
        readonly sweep: string;
        readonly answers: readonly ({ readonly value: number } & (RunAnswer | CrossingsAnswer))[];
      }
  );

/** Error allowed to a step, K: networks are run for comparison, so more exactly than a cabinet's day. */
const TOLERANCE = 1e-4;
const EVEN_POINTS = 24;

/**
 * Runs a network file and answers at these times (s), or at the start, the end and 24 even points between.
 * @throws RangeError when a time lies outside the run.
 */
export function answerNetwork(file: NetworkFile, times?: readonly number[], options: DayOptions = {}): NetworkAnswer {
  const heading = {
    version: 1,
    id: file.id,
    title: file.network.title,
    analysis: file.analysis === 'operating-points' ? 'operating_points' : file.analysis,
  } as const;
  const one = (run: NetworkRun): RunAnswer | CrossingsAnswer =>
    file.analysis === 'operating-points' ? crossingsOf(run.network) : answerRun(file, run, times, options);
  if (file.sweep === undefined) return { ...heading, ...one(file) };
  const { what, runs } = file.sweep;
  return { ...heading, sweep: what, answers: runs.map((run) => ({ value: run.value, ...one(run) })) };
}

function crossingsOf(network: Network): CrossingsAnswer {
  const points = operatingPoints(network);
  return {
    operatingPoints: Object.fromEntries(
      points.map(({ path, points: crossings }) => [
        path,
        crossings.map(({ flow, massFlow, stable }) => ({ m3_h: flow * 3600, kg_s: massFlow, stable })),
      ]),
    ),
  };
}

function answerRun(
  { analysis }: NetworkFile,
  { network, absentPaths }: NetworkRun,
  asked: readonly number[] | undefined,
  options: DayOptions,
): RunAnswer {
  // The air network alone is the first moment of a run.
  const duration = analysis === 'network' ? 0 : network.duration;
  const times = analysis === 'network' ? [0] : (asked ?? evenTimes(duration));
  for (const time of times) {
    if (!(time >= 0 && time <= duration)) {
      throw new RangeError(`answerNetwork: time is ${time}; it must be from 0 to ${duration} s`);
    }
  }
  // The solver steps exactly onto every time that is asked for, so that nothing is read between two rows.
  const stops = { ...network, duration, breaks: [...network.breaks, ...times] };
  const record = simulateDay(stops, { tolerance: TOLERANCE, ...options });
  const rows = times.map((time) => lastRowAt(record.times, time));
  return { times, ...valuesAt(record, rows, absentPaths), ...sumsOf(record) };
}

function evenTimes(duration: number): Course {
  if (duration === 0) return [0];
  return Array.from({ length: EVEN_POINTS + 2 }, (_, i) => (i * duration) / (EVEN_POINTS + 1));
}

/** Of two rows at one time the second: the state after what switched. */
function lastRowAt(times: Float64Array, time: number): number {
  let [low, high] = [0, times.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (times[middle]! <= time) low = middle + 1;
    else high = middle;
  }
  return Math.max(low - 1, 0);
}

type Values = Pick<
  RunAnswer,
  | 'temperatures'
  | 'pressures'
  | 'flows'
  | 'counterFlows'
  | 'volumeFlows'
  | 'pressureDifferences'
  | 'partPressures'
  | 'exchanges'
  | 'concentrations'
  | 'bedPowers'
>;

function valuesAt(record: DayRecord, rows: readonly number[], absentPaths: readonly string[]): Values {
  const { network } = record;
  const moments = rows.map((row) => momentOf(record, row));
  const perPath = (value: (moment: AirMoment, path: Network['paths'][number]) => number): ByName<Course> =>
    Object.fromEntries(network.paths.map((path) => [path.name, moments.map((moment) => value(moment, path))]));
  const nought = Object.fromEntries(absentPaths.map((name) => [name, rows.map(() => 0)]));
  const tall = new Set(network.paths.filter(({ type }) => type === 'tall-opening').map(({ name }) => name));
  const withBed = new Set(network.machines.filter(({ bed }) => bed !== undefined).map(({ name }) => name));
  return {
    temperatures: courses(record.temperatures, rows, (kelvin) => kelvin - ICE_POINT),
    pressures: courses(record.pressures, rows),
    flows: { ...courses(record.flows, rows), ...nought },
    counterFlows: only(courses(record.counterFlows, rows), tall),
    volumeFlows: { ...perPath(volumeFlow), ...nought },
    pressureDifferences: perPath(pressureDifference),
    partPressures: Object.fromEntries(
      network.paths.flatMap((path) => {
        if (path.type !== 'fan-path') return [];
        const each = moments.map((moment) => partPressures(moment, path));
        const parts = Object.keys(each[0] ?? {});
        return [[path.name, Object.fromEntries(parts.map((part) => [part, each.map((at) => at[part]!)]))]];
      }),
    ),
    exchanges: courses(record.exchanges, rows),
    concentrations: Object.fromEntries(
      Object.entries(record.concentrations).map(([contaminant, table]) => [contaminant, courses(table, rows)]),
    ),
    bedPowers: only(courses(record.bedPowers, rows), withBed),
  };
}

function sumsOf(record: DayRecord): Omit<RunAnswer, keyof Values | 'times'> {
  const contaminants = Object.entries(record.concentrations);
  return {
    events: record.events,
    peaks: Object.fromEntries(
      Object.entries(peaksOf(record, record.temperatures)).map(([name, { value, time }]) => [
        name,
        { value: value - ICE_POINT, time },
      ]),
    ),
    peakConcentrations: Object.fromEntries(contaminants.map(([name, table]) => [name, peaksOf(record, table)])),
    means: Object.fromEntries(contaminants.map(([name]) => [name, meansOf(record, name)])),
    energies: energiesOf(record),
    runTimes: runTimesOf(record),
    warnings: record.warnings,
  };
}

function momentOf({ network, temperatures, pressures, flows, fanSpeeds }: DayRecord, row: number): AirMoment {
  const column =
    ({ names, values }: Table) =>
    (name: string): number =>
      values[row * names.length + names.indexOf(name)]!;
  return {
    network,
    temperature: column(temperatures),
    pressure: column(pressures),
    flow: column(flows),
    speed: column(fanSpeeds),
  };
}

function courses(
  { names, values }: Table,
  rows: readonly number[],
  convert: (value: number) => number = (value) => value,
): ByName<Course> {
  return byName(names, (column) => rows.map((row) => convert(values[row * names.length + column]!)));
}

function only<Value>(all: ByName<Value>, names: ReadonlySet<string>): ByName<Value> {
  return Object.fromEntries(Object.entries(all).filter(([name]) => names.has(name)));
}
