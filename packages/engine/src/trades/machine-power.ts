// What each machine draws from its socket over the day: its bed, the loss of its supply, and what its mode needs.

import { type Course, columnOf } from './course.ts';
import type { DayRun } from './measure.ts';
import { zeros } from './zeros.ts';

/** W, row by row of the record; two rows of equal time are the two sides of a switch. */
export function machinePower({ record }: DayRun, machine: string): Course {
  const { network, times, bedPowers } = record;
  const { bed, modes } = network.machines.find(({ name }) => name === machine)!;
  const wattsOf = new Map(modes.map((mode) => [mode.name, mode.powers.reduce((sum, { watts }) => sum + watts, 0)]));
  const mine = network.schedule.filter((entry) => entry.machine === machine);
  const heats = bedPowers.names.includes(machine) ? columnOf(bedPowers, machine) : undefined;
  const factor = 1 + (bed?.supply?.share ?? 0);
  const values = zeros(times.length);
  for (let row = 0; row < values.length; row += 1) {
    const time = times[row]!;
    const before = row + 1 < times.length && times[row + 1] === time;
    const mode = mine.find(({ start, end }) => (before ? start < time && time <= end : start <= time && time < end));
    values[row] = (heats === undefined ? 0 : heats[row]!) * factor + (wattsOf.get(mode?.mode ?? 'idle') ?? 0);
  }
  return { times, values };
}
