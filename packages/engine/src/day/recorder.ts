// Keeps the rows of a day while it runs and hands them over as a record. Every table of the record is filled row by row.

import type { Network } from '../network/network.ts';
import type { Day } from './day.ts';
import type { DayRecord, Ledger, Table } from './record.ts';

export interface Recorder {
  rows: number;
  /** Rows that there is room for. */
  room: number;
  readonly times: Column;
  readonly temperatures: Column;
  readonly slopes: Column;
  readonly pressures: Column;
  readonly flows: Column;
  readonly counterFlows: Column;
  readonly exchanges: Column;
  readonly fanSpeeds: Column;
  readonly bedPowers: Column;
  readonly thermostats: Column;
  readonly carbonLoads: Column;
  /** By contaminant. */
  readonly concentrations: readonly Column[];
  readonly concentrationSlopes: readonly Column[];
  readonly all: readonly Column[];
}

/** The values of one table, `width` to a row. */
interface Column {
  readonly width: number;
  values: Float64Array;
}

const FIRST_ROWS = 512;

/** Room of the last finished day, for the next one to write in: saves clearing half a megabyte a day, and changes no result. */
let spare: Recorder | undefined;

export function newRecorder(day: Day): Recorder {
  const { air, heat, bedPower, moment, plant } = day;
  const points = plant.heat.layout.names.length;
  const { count, zones, carbon } = plant.transport;
  const widths = [
    ...[1, points, points, air.pressure.length, air.flow.length, air.flow.length, heat.exchangeFlow.length],
    ...[air.speed.length, bedPower.length, moment.thermostats.length, carbon.length],
    ...new Array<number>(2 * count).fill(zones),
  ];
  const kept = spare;
  spare = undefined;
  if (kept?.all.length === widths.length && kept.all.every(({ width }, i) => width === widths[i])) {
    kept.rows = 0;
    return kept;
  }
  const all = widths.map((width): Column => ({ width, values: new Float64Array(FIRST_ROWS * width) }));
  return {
    rows: 0,
    room: FIRST_ROWS,
    times: all[0]!,
    temperatures: all[1]!,
    slopes: all[2]!,
    pressures: all[3]!,
    flows: all[4]!,
    counterFlows: all[5]!,
    exchanges: all[6]!,
    fanSpeeds: all[7]!,
    bedPowers: all[8]!,
    thermostats: all[9]!,
    carbonLoads: all[10]!,
    concentrations: all.slice(11, 11 + count),
    concentrationSlopes: all.slice(11 + count),
    all,
  };
}

/** Adds the day's present state as a row. */
export function addRow(recorder: Recorder, day: Day): void {
  if (recorder.rows === recorder.room) {
    for (const column of recorder.all) {
      const wide = new Float64Array(2 * column.values.length);
      wide.set(column.values);
      column.values = wide;
    }
    recorder.room *= 2;
  }
  const { plant, air, heat, y, heatRate, c, transportRate, moment } = day;
  const { rows } = recorder;
  recorder.rows += 1;
  recorder.times.values[rows] = moment.time;
  const { layout, capacity } = plant.heat;
  const { slotOf } = layout;
  const { width } = recorder.temperatures;
  const temperatures = recorder.temperatures.values;
  const slopes = recorder.slopes.values;
  for (let i = 0; i < width; i += 1) {
    const slot = slotOf[i]!;
    temperatures[rows * width + i] = y[slot]!;
    slopes[rows * width + i] = heatRate[slot]! / capacity[slot]!;
  }
  put(recorder.pressures, rows, air.pressure);
  put(recorder.flows, rows, air.flow);
  put(recorder.counterFlows, rows, air.counter);
  put(recorder.exchanges, rows, heat.exchangeFlow);
  put(recorder.fanSpeeds, rows, air.speed);
  put(recorder.bedPowers, rows, day.bedPower);
  put(recorder.thermostats, rows, moment.thermostats);
  const { zones, count, cells, placeOf, volume } = plant.transport;
  for (let k = 0; k < count; k += 1) {
    const amounts = recorder.concentrations[k]!.values;
    const rates = recorder.concentrationSlopes[k]!.values;
    for (let z = 0; z < zones; z += 1) {
      const cell = placeOf[z]! * count + k;
      amounts[rows * zones + z] = c[cell]!;
      rates[rows * zones + z] = transportRate[cell]! / volume[cell]!;
    }
  }
  if (c.length > cells) put(recorder.carbonLoads, rows, c.subarray(cells));
}

function put({ width, values }: Column, row: number, from: Float64Array | Uint8Array): void {
  values.set(from, row * width);
}

/** The finished record. The recorder is not to be used again. */
export function toRecord(recorder: Recorder, day: Day, work: DayRecord['work'], ledger: Ledger | undefined): DayRecord {
  const { network, transport } = day.plant;
  const take = ({ width, values }: Column): Float64Array => values.slice(0, recorder.rows * width);
  const table = (names: readonly string[], column: Column): Table => ({ names, values: take(column) });
  const named = (list: readonly { readonly name: string }[]): string[] => list.map(({ name }) => name);
  const zones = named(network.zones);
  const paths = named(network.paths);
  const { names } = day.plant.heat.layout;
  const ofZones = (columns: readonly Column[]): Readonly<Record<string, Table>> =>
    tables(network, zones, columns, take);
  const record = {
    network,
    times: take(recorder.times),
    temperatures: table(names, recorder.temperatures),
    slopes: table(names, recorder.slopes),
    pressures: table(zones, recorder.pressures),
    flows: table(paths, recorder.flows),
    counterFlows: table(paths, recorder.counterFlows),
    exchanges: table(named(network.exchanges), recorder.exchanges),
    fanSpeeds: table(named(day.plant.air.fans.flat()), recorder.fanSpeeds),
    bedPowers: table(named(network.machines), recorder.bedPowers),
    thermostats: table(named(network.thermostats), recorder.thermostats),
    concentrations: ofZones(recorder.concentrations),
    carbonLoads: table(named(transport.carbon), recorder.carbonLoads),
    concentrationSlopes: ofZones(recorder.concentrationSlopes),
    events: day.events,
    warnings: day.warnings,
    ...(ledger === undefined ? {} : { ledger }),
    work,
  };
  spare = recorder;
  return record;
}

function tables(
  { contaminants }: Network,
  names: readonly string[],
  columns: readonly Column[],
  take: (column: Column) => Float64Array,
): Readonly<Record<string, Table>> {
  return Object.fromEntries(contaminants.map(({ name }, k) => [name, { names, values: take(columns[k]!) }]));
}
