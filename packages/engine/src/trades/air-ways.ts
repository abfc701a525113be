// The day's air, path by path: how much, of which zone, with what in it.

import type { AirPath } from '../network/network.ts';
import { type Course, columnOf, courseOf } from './course.ts';
import { keptWith } from './kept.ts';
import type { DayRun } from './measure.ts';
import { fansIn } from './plant.ts';
import { courseOn } from './switched.ts';
import { zeros } from './zeros.ts';

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
  const values = zeros(times.length);
  const slopes = courses.every((course) => course.slopes !== undefined) ? zeros(times.length) : undefined;
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
  return keptWith(run, `density:${zone}`, () => densityCourse(run, zone));
}

function densityCourse(run: DayRun, zone: string): Course {
  const { density, constants } = run.record.network;
  const { times, values: temperatures } = temperatureOf(run, zone);
  const values = zeros(times.length);
  if (density.model === 'constant') return { times, values: values.fill(density.value) };
  const { atmosphere, gasConstant } = constants;
  for (let row = 0; row < values.length; row += 1) values[row] = atmosphere / (gasConstant * temperatures[row]!);
  return { times, values };
}

/** m³/s at the density of the air that flows. */
export function volumeFlow(run: DayRun, { name, from, to }: Pick<AirPath, 'name' | 'from' | 'to'>): Course {
  return keptWith(run, `volume flow:${name}`, () => {
    const { times, values: mass } = massFlow(run, name);
    const [a, b] = [zoneDensity(run, from).values, zoneDensity(run, to).values];
    const values = zeros(times.length);
    for (let row = 0; row < values.length; row += 1) values[row] = mass[row]! / (mass[row]! >= 0 ? a : b)[row]!;
    return { times, values };
  });
}

/** m³/s that enter a bay by all its paths, open doors left out; what comes from some zones may be left out too. */
export function bayInflow(run: DayRun, bay: string, without: ReadonlySet<string> = NONE): Course {
  const here = new Set(run.assembly.bays[bay]!.zones);
  const ways = pathsAround(run, here).map(({ name, from, to }) =>
    here.has(to) ? { name, other: from, sign: 1 } : { name, other: to, sign: -1 },
  );
  const left = [...new Set(ways.map(({ other }) => other))].filter((other) => without.has(other));
  return keptWith(run, `bay inflow:${bay} ${left.join(' ')}`, () => {
    const { flows, times } = run.record;
    const values = zeros(times.length);
    for (const { name, other, sign } of ways)
      if (!without.has(other)) addInflow(values, columnOf(flows, name), sign, zoneDensity(run, other).values);
    return { times, values };
  });
}

const NONE: ReadonlySet<string> = new Set();

function addInflow(sum: Float64Array, mass: Float64Array, sign: number, density: Float64Array): void {
  for (let row = 0; row < sum.length; row += 1) {
    const inward = sign * mass[row]!;
    if (inward > 0) sum[row]! += inward / density[row]!;
  }
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
  const { gravity } = record.network.constants;
  const side = (name: string): { pressure: Float64Array; density: Float64Array; height: number } => ({
    pressure: columnOf(record.pressures, name),
    density: zoneDensity(run, name).values,
    height: z - record.network.zones.find((candidate) => candidate.name === name)!.zRef,
  });
  const [inner, outer] = [side(zone), side(other)];
  const values = zeros(record.times.length);
  for (let row = 0; row < values.length; row += 1)
    values[row] =
      inner.pressure[row]! -
      inner.density[row]! * gravity * inner.height -
      (outer.pressure[row]! - outer.density[row]! * gravity * outer.height);
  return { times: record.times, values };
}

/** The paths of the network that a cabinet path became. */
export function piecesOf(run: DayRun, id: string): AirPath[] {
  const { name, pieces = [name] } = run.assembly.paths[id]!;
  return pieces.map((piece) => pathOf(run, piece));
}

export function pathOf(run: DayRun, name: string): AirPath {
  const path = pathsByName(run).get(name);
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

function pathsByName(run: DayRun): ReadonlyMap<string, AirPath> {
  return keptWith(run, 'paths:by name', () => new Map(run.record.network.paths.map((path) => [path.name, path])));
}
