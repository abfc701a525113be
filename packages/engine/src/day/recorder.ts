// Keeps the rows of a day while it runs and hands them over as a record.

import type { Network } from '../network/network.ts';
import type { Day } from './day.ts';
import type { DayRecord, Ledger, Table } from './record.ts';

/** All columns of a row lie together; `width` is their number. */
export interface Recorder {
  rows: number;
  values: Float64Array;
  readonly width: number;
}

const FIRST_ROWS = 512;

/** Room of the last finished day, for the next one to write in: saves clearing half a megabyte a day, and changes no result. */
let spare: Float64Array | undefined;

export function newRecorder(day: Day): Recorder {
  const points = day.plant.heat.layout.names.length;
  const { air, heat, bedPower, moment, c } = day;
  const width =
    1 +
    2 * points +
    air.pressure.length +
    2 * air.flow.length +
    heat.exchangeFlow.length +
    air.speed.length +
    bedPower.length +
    moment.thermostats.length +
    2 * c.length;
  const values =
    spare !== undefined && spare.length >= FIRST_ROWS * width ? spare : new Float64Array(FIRST_ROWS * width);
  spare = undefined;
  return { rows: 0, values, width };
}

/** Adds the day's present state as a row, its columns in the order in which `toRecord` takes them out. */
export function addRow(recorder: Recorder, day: Day): void {
  if ((recorder.rows + 1) * recorder.width > recorder.values.length) {
    const wide = new Float64Array(2 * recorder.values.length);
    wide.set(recorder.values);
    recorder.values = wide;
  }
  const { plant, air, y, heatRate, c } = day;
  const { layout, capacity } = plant.heat;
  const { slotOf } = layout;
  const { values } = recorder;
  const points = layout.names.length;
  let at = recorder.rows * recorder.width;
  recorder.rows += 1;
  values[at] = day.moment.time;
  at += 1;
  for (let i = 0; i < points; i += 1) {
    const slot = slotOf[i]!;
    values[at + i] = y[slot]!;
    values[at + points + i] = heatRate[slot]! / capacity[slot]!;
  }
  at = put(values, at + 2 * points, air.pressure);
  at = put(values, at, air.flow);
  at = put(values, at, air.counter);
  at = put(values, at, day.heat.exchangeFlow);
  at = put(values, at, air.speed);
  at = put(values, at, day.bedPower);
  for (let i = 0; i < day.moment.thermostats.length; i += 1) values[at + i] = day.moment.thermostats[i]!;
  at += day.moment.thermostats.length;
  const { zones, count, cells, placeOf, volume } = plant.transport;
  for (let k = 0; k < count; k += 1) {
    for (let z = 0; z < zones; z += 1) {
      const cell = placeOf[z]! * count + k;
      values[at + k * zones + z] = c[cell]!;
      values[at + c.length + k * zones + z] = day.transportRate[cell]! / volume[cell]!;
    }
  }
  for (let l = cells; l < c.length; l += 1) {
    values[at + l] = c[l]!;
    values[at + c.length + l] = day.transportRate[l]!;
  }
}

function put(values: Float64Array, at: number, from: Float64Array): number {
  for (let i = 0; i < from.length; i += 1) values[at + i] = from[i]!;
  return at + from.length;
}

/** The finished record. The recorder is not to be used again. */
export function toRecord(recorder: Recorder, day: Day, work: DayRecord['work'], ledger: Ledger | undefined): DayRecord {
  const { network, transport } = day.plant;
  const { rows, values, width } = recorder;
  let first = 0;
  const take = (count: number): Float64Array => {
    const part = new Float64Array(rows * count);
    for (let row = 0; row < rows; row += 1) {
      const from = row * width + first;
      for (let i = 0; i < count; i += 1) part[row * count + i] = values[from + i]!;
    }
    first += count;
    return part;
  };
  const table = (names: readonly string[]): Table => ({ names, values: take(names.length) });
  const named = (list: readonly { readonly name: string }[]): string[] => list.map(({ name }) => name);
  const zones = named(network.zones);
  const paths = named(network.paths);
  const carbon = named(transport.carbon);
  const { names } = day.plant.heat.layout;
  const record = {
    network,
    times: take(1),
    temperatures: table(names),
    slopes: table(names),
    pressures: table(zones),
    flows: table(paths),
    counterFlows: table(paths),
    exchanges: table(named(network.exchanges)),
    fanSpeeds: table(named(day.plant.air.fans.flat())),
    bedPowers: table(named(network.machines)),
    thermostats: table(named(network.thermostats)),
    concentrations: tables(network, () => table(zones)),
    carbonLoads: table(carbon),
    concentrationSlopes: tables(network, () => table(zones)),
    events: day.events,
    warnings: day.warnings,
    ...(ledger === undefined ? {} : { ledger }),
    work,
  };
  spare = values;
  return record;
}

function tables({ contaminants }: Network, next: () => Table): Readonly<Record<string, Table>> {
  return Object.fromEntries(contaminants.map(({ name }) => [name, next()]));
}
