// The day's air, path by path: how much, of which zone, with what in it.

import type { DayRecord } from '../day/record.ts';
import type { AirPath } from '../network/network.ts';
import { type Course, courseFrom, courseOf } from './course.ts';
import { keptWith } from './kept.ts';
import type { DayRun } from './measure.ts';
import { fansIn } from './plant.ts';
import { courseOn } from './switched.ts';

/** Zones whose air the cabinet encloses: bays and machines' own chambers. */
export function insideZones({ assembly }: DayRun): Set<string> {
  const chambers = Object.values(assembly.machines).flatMap(({ chamber }) => chamber ?? []);
  return new Set([...Object.values(assembly.bays).flatMap(({ zones }) => zones), ...chambers]);
}

/** Volume-weighted mean over a bay's zones of any table of zones. */
export function bayCourse(run: DayRun, bay: string, of: (zone: string) => Course): Course {
  const { zones, volumes } = run.assembly.bays[bay]!;
  const courses = zones.map(of);
  if (courses.length === 1) return courses[0]!;
  const whole = volumes.reduce((sum, volume) => sum + volume, 0);
  const mean = (pick: (course: Course) => Float64Array | undefined): Float64Array | undefined => {
    if (courses.some((course) => pick(course) === undefined)) return undefined;
    return courseFrom(run.record, (row) =>
      courses.reduce((sum, course, at) => sum + (pick(course)![row]! * volumes[at]!) / whole, 0),
    ).values;
  };
  return { times: run.record.times, values: mean(({ values }) => values)!, slopes: mean(({ slopes }) => slopes) };
}

export function temperatureOf({ record }: DayRun, name: string): Course {
  return courseOf(record, record.temperatures, name, record.slopes);
}

/** A contaminant's level in a zone. */
export function levelOf({ record }: DayRun, contaminant: string, zone: string): Course {
  const table = record.concentrations[contaminant];
  if (table === undefined) throw new Error(`the record has no contaminant "${contaminant}"`);
  return courseOf(record, table, zone, record.concentrationSlopes?.[contaminant]);
}

/** kg/s, positive from `from` to `to`. */
export function massFlow({ record }: Pick<DayRun, 'record'>, path: string): Course {
  return courseOf(record, record.flows, path);
}

/** Density of a zone's air, as the network takes it. */
export function zoneDensity(run: DayRun, zone: string): Course {
  return keptWith(run.record, `density:${zone}`, () => densityCourse(run, zone));
}

function densityCourse(run: DayRun, zone: string): Course {
  const { density, constants } = run.record.network;
  const temperature = temperatureOf(run, zone);
  return courseFrom(run.record, (row) =>
    density.model === 'constant'
      ? density.value
      : constants.atmosphere / (constants.gasConstant * temperature.values[row]!),
  );
}

/** m³/s at the density of the air that flows. */
export function volumeFlow(run: DayRun, { name, from, to }: Pick<AirPath, 'name' | 'from' | 'to'>): Course {
  return keptWith(run.record, `volume flow:${name}`, () => {
    const { values: mass } = massFlow(run, name);
    const [a, b] = [zoneDensity(run, from).values, zoneDensity(run, to).values];
    return courseFrom(run.record, (row) => mass[row]! / (mass[row]! >= 0 ? a[row]! : b[row]!));
  });
}

/** m³/s that enter a set of zones by a path between inside and outside of it; 0 while the air leaves by it. */
export function inflowOf(run: DayRun, path: AirPath, here: ReadonlySet<string>): Course {
  const sign = here.has(path.to) ? 1 : -1;
  return keptWith(run.record, `inflow ${sign}:${path.name}`, () => {
    const { values } = volumeFlow(run, path);
    return courseFrom(run.record, (row) => Math.max(sign * values[row]!, 0));
  });
}

/** Paths that lead into or out of a set of zones, open doors left out. */
export function pathsAround({ record }: DayRun, here: ReadonlySet<string>): AirPath[] {
  return record.network.paths.filter(
    ({ type, from, to }) => type !== 'tall-opening' && here.has(from) !== here.has(to),
  );
}

/** Pressure of a zone's air at a height against another zone's there, Pa. */
export function pressureBetween(run: DayRun, zone: string, other: string, z: number): Course {
  const { record } = run;
  const side = (name: string): Course => {
    const { zRef } = record.network.zones.find((candidate) => candidate.name === name)!;
    const pressure = courseOf(record, record.pressures, name);
    const density = zoneDensity(run, name);
    return courseFrom(
      record,
      (row) => pressure.values[row]! - density.values[row]! * record.network.constants.gravity * (z - zRef),
    );
  };
  const [inner, outer] = [side(zone), side(other)];
  return courseFrom(record, (row) => inner.values[row]! - outer.values[row]!);
}

export function pathOf({ record }: DayRun, name: string): AirPath {
  const path = pathsByName(record).get(name);
  if (path === undefined) throw new Error(`the network has no path "${name}"`);
  return path;
}

/** Share of full speed of each fan of a cabinet path over the day, in the order of its parts. */
export function fanShares(run: DayRun, id: string): Course[] {
  const { record, assembly, cabinet } = run;
  const places = assembly.paths[id]!;
  const turned = record.network.recirculations.find(
    ({ name }) => places.kind === 'recirculation' && name === places.name,
  );
  if (turned !== undefined) {
    const on = courseOn(run, turned.active);
    return fansIn(cabinet.paths[id]!).map(() => on);
  }
  return places.fans.map((name) => courseOf(record, record.fanSpeeds, name));
}

function pathsByName(record: DayRecord): ReadonlyMap<string, AirPath> {
  return keptWith(record, 'paths:by name', () => new Map(record.network.paths.map((path) => [path.name, path])));
}
