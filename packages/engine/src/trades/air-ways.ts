// The day's air, path by path: how much, of which zone, with what in it.

import type { DayRecord } from '../day/record.ts';
import type { AirPath } from '../network/network.ts';
import { type Course, columnIn, courseFrom, courseOf } from './course.ts';
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
  const { times } = run.record;
  const values = new Float64Array(times.length);
  const slopes = courses.every((course) => course.slopes !== undefined) ? new Float64Array(times.length) : undefined;
  for (const [at, course] of courses.entries()) {
    const share = volumes[at]! / whole;
    for (let row = 0; row < times.length; row += 1) {
      values[row] = values[row]! + share * course.values[row]!;
      if (slopes !== undefined) slopes[row] = slopes[row]! + share * course.slopes![row]!;
    }
  }
  return { times, values, slopes };
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

/** m³/s that enter a bay by all its paths that a test lets pass, open doors left out. */
export function bayInflow(run: DayRun, bay: string, kind: string, counts: (other: string) => boolean): Course {
  return keptWith(run.record, `bay inflow:${kind}:${bay}`, () => {
    const here = new Set(run.assembly.bays[bay]!.zones);
    const values = new Float64Array(run.record.times.length);
    for (const path of pathsAround(run, here)) {
      const [sign, other] = here.has(path.to) ? [1, path.from] : [-1, path.to];
      if (!counts(other)) continue;
      const { flows } = run.record;
      const density = zoneDensity(run, other).values;
      for (let row = 0, at = columnIn(flows, path.name); row < values.length; row += 1, at += flows.names.length) {
        const inward = sign * flows.values[at]!;
        if (inward > 0) values[row] = values[row]! + inward / density[row]!;
      }
    }
    return { times: run.record.times, values };
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

/** The paths of the network that a cabinet path became. */
export function piecesOf(run: DayRun, id: string): AirPath[] {
  const { name, pieces = [name] } = run.assembly.paths[id]!;
  return pieces.map((piece) => pathOf(run, piece));
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
