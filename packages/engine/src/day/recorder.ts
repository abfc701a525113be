// Keeps the rows of a day while it runs and hands them over as a record.

import type { Network } from '../network/network.ts';
import type { Day } from './day.ts';
import type { DayRecord, Ledger, Table } from './record.ts';

interface Column {
  values: Float64Array;
  readonly width: number;
}

export interface Recorder {
  rows: number;
  capacity: number;
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
  readonly cells: Column;
  readonly cellSlopes: Column;
}

export function newRecorder({ plant, air, heat, bedPower, moment, c }: Day): Recorder {
  const rows = 512;
  const column = (width: number): Column => ({ values: new Float64Array(rows * width), width });
  const points = plant.heat.layout.names.length;
  return {
    rows: 0,
    capacity: rows,
    times: column(1),
    temperatures: column(points),
    slopes: column(points),
    pressures: column(air.pressure.length),
    flows: column(air.flow.length),
    counterFlows: column(air.flow.length),
    exchanges: column(heat.exchangeFlow.length),
    fanSpeeds: column(air.speed.length),
    bedPowers: column(bedPower.length),
    thermostats: column(moment.thermostats.length),
    cells: column(c.length),
    cellSlopes: column(c.length),
  };
}

/** Adds the day's present state as a row. */
export function addRow(recorder: Recorder, day: Day): void {
  if (recorder.rows === recorder.capacity) widen(recorder);
  const row = recorder.rows++;
  const { plant, air } = day;
  const { slotOf } = plant.heat.layout;
  const { temperatures, slopes, cells, cellSlopes } = recorder;
  recorder.times.values[row] = day.moment.time;
  const points = temperatures.width;
  for (let i = 0; i < points; i += 1) {
    const slot = slotOf[i]!;
    temperatures.values[row * points + i] = day.y[slot]!;
    slopes.values[row * points + i] = day.heatRate[slot]! / plant.heat.capacity[slot]!;
  }
  copy(recorder.pressures, row, air.pressure);
  copy(recorder.flows, row, air.flow);
  copy(recorder.counterFlows, row, air.counter);
  copy(recorder.exchanges, row, day.heat.exchangeFlow);
  copy(recorder.fanSpeeds, row, air.speed);
  copy(recorder.bedPowers, row, day.bedPower);
  copy(recorder.thermostats, row, day.moment.thermostats);
  copy(cells, row, day.c);
  const { zones, volume } = plant.transport;
  const all = plant.transport.count * zones;
  for (let k = 0; k < cellSlopes.width; k += 1) {
    cellSlopes.values[row * cellSlopes.width + k] = day.transportRate[k]! / (k < all ? volume[k % zones]! : 1);
  }
}

function copy(column: Column, row: number, from: Float64Array | Uint8Array): void {
  if (column.width > 0) column.values.set(from, row * column.width);
}

function widen(recorder: Recorder): void {
  recorder.capacity *= 2;
  for (const part of Object.values(recorder)) {
    if (typeof part === 'number') continue;
    const column = part as Column;
    const wide = new Float64Array(recorder.capacity * column.width);
    wide.set(column.values);
    column.values = wide;
  }
}

/** The finished record. */
export function toRecord(recorder: Recorder, day: Day, work: DayRecord['work'], ledger: Ledger | undefined): DayRecord {
  const { network } = day.plant;
  const { rows } = recorder;
  const table = (names: readonly string[], column: Column): Table => ({
    names,
    values: column.values.slice(0, rows * column.width),
  });
  const zoneNames = network.zones.map(({ name }) => name);
  const pathNames = network.paths.map(({ name }) => name);
  return {
    network,
    times: recorder.times.values.slice(0, rows),
    temperatures: table(day.plant.heat.layout.names, recorder.temperatures),
    slopes: table(day.plant.heat.layout.names, recorder.slopes),
    pressures: table(zoneNames, recorder.pressures),
    flows: table(pathNames, recorder.flows),
    counterFlows: table(pathNames, recorder.counterFlows),
    exchanges: table(
      network.exchanges.map(({ name }) => name),
      recorder.exchanges,
    ),
    fanSpeeds: table(
      day.plant.air.fans.flat().map(({ name }) => name),
      recorder.fanSpeeds,
    ),
    bedPowers: table(
      network.machines.map(({ name }) => name),
      recorder.bedPowers,
    ),
    thermostats: table(
      network.thermostats.map(({ name }) => name),
      recorder.thermostats,
    ),
    concentrations: byContaminant(network, recorder.cells, rows),
    concentrationSlopes: byContaminant(network, recorder.cellSlopes, rows),
    carbonLoads: carbonTable(day, recorder, rows),
    events: day.events,
    warnings: day.warnings,
    ...(ledger === undefined ? {} : { ledger }),
    work,
  };
}

function byContaminant(
  { contaminants, zones }: Network,
  column: Column,
  rows: number,
): Readonly<Record<string, Table>> {
  const names = zones.map(({ name }) => name);
  return Object.fromEntries(
    contaminants.map(({ name }, k) => [name, { names, values: part(column, rows, k * zones.length, zones.length) }]),
  );
}

function carbonTable({ plant }: Day, { cells }: Recorder, rows: number): Table {
  const { carbon, count, zones } = plant.transport;
  return { names: carbon.map(({ name }) => name), values: part(cells, rows, count * zones, carbon.length) };
}

function part(column: Column, rows: number, first: number, width: number): Float64Array {
  const values = new Float64Array(rows * width);
  for (let row = 0; row < rows; row += 1) {
    const start = row * column.width + first;
    values.set(column.values.subarray(start, start + width), row * width);
  }
  return values;
}
