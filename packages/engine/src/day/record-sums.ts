// Sums over a whole record: energies, means, times on, and the highest values. Rows with equal times are the two sides of a jump.

import type { Network } from '../network/network.ts';
import { courseValue } from './course.ts';
import { hermiteIntegral } from './hermite.ts';
import type { DayRecord, Table } from './record.ts';
import { compileWhen, type Moment } from './when.ts';

export interface Peak {
  readonly value: number;
  /** s */
  readonly time: number;
}

/** Highest value of each column over all rows, and when it was first reached. */
export function peaksOf({ times }: DayRecord, { names, values }: Table): Readonly<Record<string, Peak>> {
  return byName(names, (column) => {
    let best = 0;
    for (let row = 1; row < times.length; row += 1) {
      if (values[row * names.length + column]! > values[best * names.length + column]!) best = row;
    }
    return { value: values[best * names.length + column]!, time: times[best]! };
  });
}

/** Time-weighted means of a contaminant by zone, over the cubics through its rows; a run without duration has its start. */
export function meansOf(record: DayRecord, contaminant: string): Readonly<Record<string, number>> {
  const { times } = record;
  const { names, values } = record.concentrations[contaminant]!;
  const slopes = record.concentrationSlopes?.[contaminant]?.values;
  const duration = times.at(-1)! - times[0]!;
  return byName(names, (column) => {
    const at = (row: number): number => row * names.length + column;
    if (duration === 0) return values[at(0)]!;
    let sum = 0;
    for (let row = 0; row + 1 < times.length; row += 1) {
      const length = times[row + 1]! - times[row]!;
      if (length === 0) continue;
      const [from, to] = [values[at(row)]!, values[at(row + 1)]!];
      sum +=
        slopes === undefined
          ? (length * (from + to)) / 2
          : hermiteIntegral(1, length, from, slopes[at(row)]!, to, slopes[at(row + 1)]!);
    }
    return sum / duration;
  });
}

/** How long each thermostat was on, s. */
export function runTimesOf({ times, thermostats: { names, values } }: DayRecord): Readonly<Record<string, number>> {
  return byName(names, (column) => {
    let sum = 0;
    for (let row = 0; row + 1 < times.length; row += 1) {
      sum += (times[row + 1]! - times[row]!) * values[row * names.length + column]!;
    }
    return sum;
  });
}

export interface Energies {
  /** Electrical energy of each bed, J. */
  readonly bed: Readonly<Record<string, number>>;
  /** Of each machine: its bed and the powers of its modes together, J. */
  readonly machine: Readonly<Record<string, number>>;
  /** Of each heat source, J. */
  readonly source: Readonly<Record<string, number>>;
}

export function energiesOf(record: DayRecord): Energies {
  const { network, times, bedPowers } = record;
  const beds = byName(bedPowers.names, (column) => {
    let sum = 0;
    for (let row = 0; row + 1 < times.length; row += 1) {
      const [from, to] = [row, row + 1].map((at) => bedPowers.values[at * bedPowers.names.length + column]!);
      sum += ((times[row + 1]! - times[row]!) * (from! + to!)) / 2;
    }
    return sum;
  });
  const withBed = new Set(network.machines.filter(({ bed }) => bed !== undefined).map(({ name }) => name));
  return {
    bed: Object.fromEntries(Object.entries(beds).filter(([name]) => withBed.has(name))),
    machine: Object.fromEntries(
      network.machines.map(({ name }) => [name, (beds[name] ?? 0) + modeEnergy(record, name)]),
    ),
    source: Object.fromEntries(network.heatSources.map((_, index) => sourceEnergy(record, index))),
  };
}

/** What the powers of a machine's modes add up to, J. */
function modeEnergy({ network, times }: DayRecord, machine: string): number {
  const modes = network.machines.find(({ name }) => name === machine)?.modes ?? [];
  return stretches(times).reduce((sum, { from, to }) => {
    const mode = modes.find(({ name }) => name === modeAt(network, machine, (from + to) / 2));
    return sum + (to - from) * (mode?.powers ?? []).reduce((watts, power) => watts + power.watts, 0);
  }, 0);
}

function sourceEnergy({ network, times, thermostats }: DayRecord, index: number): readonly [string, number] {
  const { name, watts, active, profile } = network.heatSources[index]!;
  const machines = network.machines.map((machine) => machine.name);
  const on = compileWhen(active, { thermostats: thermostats.names, machines });
  const count = thermostats.names.length;
  const energy = stretches(times).reduce((sum, { from, to, row }) => {
    const moment: Moment = {
      time: (from + to) / 2,
      thermostats: Uint8Array.from(thermostats.values.subarray(row * count, (row + 1) * count)),
      modes: machines.map((machine) => modeAt(network, machine, (from + to) / 2)),
    };
    if (!on(moment)) return sum;
    const factor = profile === undefined ? 1 : (courseValue(profile, from) + courseValue(profile, to)) / 2;
    return sum + (to - from) * watts * factor;
  }, 0);
  return [name, energy];
}

/** The steps between rows. Nothing switches within one, so its middle stands for it. */
function stretches(times: Float64Array): readonly { from: number; to: number; row: number }[] {
  return Array.from({ length: times.length - 1 }, (_, row) => ({ from: times[row]!, to: times[row + 1]!, row })).filter(
    ({ from, to }) => to > from,
  );
}

function modeAt({ schedule }: Network, machine: string, time: number): string {
  const entry = schedule.find((job) => job.machine === machine && job.start <= time && time < job.end);
  return entry?.mode ?? 'idle';
}

export function byName<Value>(
  names: readonly string[],
  value: (column: number) => Value,
): Readonly<Record<string, Value>> {
  return Object.fromEntries(names.map((name, column) => [name, value(column)]));
}
