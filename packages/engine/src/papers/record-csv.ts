// The whole record of a day as comma-separated text (RFC 4180): one line a step, one column a quantity, the unit in its head.

import type { DayRecord, Table } from '../day/record.ts';
import { csvCell } from './csv-cell.ts';

const ICE_POINT = 273.15;

/** Lines end with CR LF, as the standard has it; times given twice are the two sides of a switch. */
export function recordCsv(record: DayRecord): string {
  const celsius = (kelvin: number) => kelvin - ICE_POINT;
  const groups: readonly [Table, (name: string) => string, ((value: number) => number)?][] = [
    [record.temperatures, (name) => `${name} [degC]`, celsius],
    [record.pressures, (name) => `pressure ${name} [Pa]`],
    [record.flows, (name) => `flow ${name} [kg/s]`],
    [record.counterFlows, (name) => `flow against ${name} [kg/s]`],
    [record.exchanges, (name) => `exchange ${name} [m3/s]`],
    [record.fanSpeeds, (name) => `speed ${name} [1]`],
    [record.bedPowers, (name) => `bed ${name} [W]`],
    [record.thermostats, (name) => `on ${name} [1]`],
    ...Object.entries(record.concentrations).map(([contaminant, table]): [Table, (name: string) => string] => {
      const unit = record.network.contaminants.find(({ name }) => name === contaminant)?.unit ?? '';
      return [table, (name) => `${contaminant} ${name} [${unit}]`];
    }),
    [record.carbonLoads, (name) => `carbon ${name} [kg/kg]`],
  ];
  const head = ['time [s]', ...groups.flatMap(([{ names }, titled]) => names.map(titled))].map(csvCell).join(',');
  const lines = Array.from(record.times, (time, row) => {
    const values = groups.flatMap(([table, , shown = (value: number) => value]) => rowOf(table, row).map(shown));
    return [time, ...values].map(number).join(',');
  });
  return [head, ...lines, ''].join('\r\n');
}

function rowOf({ names, values }: Table, row: number): number[] {
  return Array.from(values.subarray(row * names.length, (row + 1) * names.length));
}

/** Seven significant digits: more than any of these is known to, few enough to keep the file small. */
function number(value: number): string {
  return String(Number(value.toPrecision(7)));
}
