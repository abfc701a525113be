// What each thing draws from its socket over the day, and what flows where it is plugged in.

import type { Cabinet } from '../cabinet/cabinet.ts';
import { fanShares } from './air-ways.ts';
import { type Course, columnOf, courseOf, scaled } from './course.ts';
import { keptWith } from './kept.ts';
import { machinePower } from './machine-power.ts';
import type { DayRun } from './measure.ts';
import { fansIn } from './plant.ts';
import { courseOn } from './switched.ts';
import { zeros } from './zeros.ts';

/** Real power of whatever is plugged in: a machine, a supply, a source of heat, W. */
export function powerOf(run: DayRun, user: string): Course {
  return keptWith(run, `socket power:${user}`, () => {
    const { cabinet } = run;
    if (cabinet.machines[user] !== undefined) return machinePower(run, user);
    const supply = cabinet.power.supplies[user];
    if (supply === undefined) return lowVoltagePower(run, user);
    const { times, values: output } = outputOf(run, user);
    const values = zeros(times.length);
    for (let row = 0; row < values.length; row += 1) values[row] = output[row]! / supply.efficiency;
    return { times, values };
  });
}

/** What a supply gives, W. */
export function outputOf(run: DayRun, supply: string): Course {
  return keptWith(run, `supply output:${supply}`, () =>
    sumOf(
      run,
      run.cabinet.power.supplies[supply]!.feeds.map((user) => lowVoltagePower(run, user)),
    ),
  );
}

/** Fans of an air path, or a source of heat, W. */
export function lowVoltagePower(run: DayRun, user: string): Course {
  return keptWith(run, `fed power:${user}`, () => {
    const path = run.cabinet.paths[user];
    const fans = path === undefined ? [] : fansOf(run, user);
    return sumOf(run, run.cabinet.heats[user] === undefined ? fans : [...fans, heatPower(run, user)]);
  });
}

/** Affinity laws: power follows the cube of speed. */
function fansOf(run: DayRun, id: string): Course[] {
  const shares = fanShares(run, id);
  return fansIn(run.cabinet.paths[id]!).map(({ watts, speed }, at) => {
    const { times, values: share } = shares[at]!;
    const values = zeros(times.length);
    for (let row = 0; row < values.length; row += 1) values[row] = watts * (speed * share[row]!) ** 3;
    return { times, values };
  });
}

/** What holds air at a temperature draws what it needs; everything else is on or off. */
function heatPower(run: DayRun, id: string): Course {
  const { record } = run;
  if (record.bedPowers.names.includes(id)) return courseOf(record, record.bedPowers, id);
  const source = record.network.heatSources.find(({ name }) => name === id);
  if (source === undefined) return { times: record.times, values: zeros(record.times.length) };
  return scaled(courseOn(run, source.active), source.watts);
}

export function sumOf({ record }: DayRun, courses: readonly Course[]): Course {
  const [only] = courses;
  if (only !== undefined && courses.length === 1) return only;
  const values = zeros(record.times.length);
  for (const { values: one } of courses) for (let row = 0; row < values.length; row += 1) values[row]! += one[row]!;
  return { times: record.times, values };
}

/** Real over apparent power: what heats or lights straight from the mains has 1. */
export function powerFactorOf({ machines, power }: Cabinet, user: string): number {
  return machines[user]?.mains.powerFactor ?? power.supplies[user]?.powerFactor ?? 1;
}

/** Everything that this cabinet draws from its circuit: machines, supplies, and what neither of these feeds. */
export function usersOf({ machines, power, heats }: Cabinet): string[] {
  const fed = new Set(Object.values(power.supplies).flatMap(({ feeds }) => feeds));
  return [...Object.keys(machines), ...Object.keys(power.supplies), ...Object.keys(heats).filter((id) => !fed.has(id))];
}

/** Everything behind a strip, strips plugged into it included. */
export function behindStrip({ power }: Cabinet, id: string): string[] {
  const further = Object.keys(power.strips).filter((other) => power.strips[other]!.from === id);
  return [...power.strips[id]!.feeds, ...further.flatMap((other) => behindStrip({ power } as Cabinet, other))];
}

/** Current of several users together, A. */
export function currentOf(run: DayRun, key: string, users: readonly string[], others = 0): Course {
  return keptWith(run, `current:${key}`, () => {
    const { cabinet, record } = run;
    const { voltage } = cabinet.power;
    const values = zeros(record.times.length).fill(others / voltage);
    for (const user of users) {
      const { values: watts } = powerOf(run, user);
      const perWatt = 1 / (voltage * powerFactorOf(cabinet, user));
      for (let row = 0; row < values.length; row += 1) values[row]! += watts[row]! * perWatt;
    }
    return { times: record.times, values };
  });
}

/** All of the circuit, A. */
export function circuitCurrent(run: DayRun): Course {
  return currentOf(run, 'circuit', usersOf(run.cabinet), run.cabinet.power.others);
}

/** Real power of the cabinet, W, without what else the circuit feeds. */
export function cabinetPower(run: DayRun): Course {
  return keptWith(run, 'cabinet power:', () =>
    sumOf(
      run,
      usersOf(run.cabinet).map((user) => powerOf(run, user)),
    ),
  );
}

/** Zones of the air around a place: a bay, or the room for whatever is outside. */
export function warmestAt({ cabinet, record, assembly }: DayRun, where: string): number {
  const zones = cabinet.bays[where] === undefined ? [assembly.room] : assembly.bays[where]!.zones;
  return Math.max(
    ...zones.map((zone) => {
      const values = columnOf(record.temperatures, zone);
      let most = values[0]!;
      for (const value of values) if (value > most) most = value;
      return most;
    }),
  );
}
