// What the cabinet would have shown: one date of a log simulated with given values of the unknowns, read where the log was read.
// Tasks and outcomes are plain data, so that they can be spread over workers.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { readCabinet } from '../../cabinet/read-cabinet.ts';
import { simulateDay } from '../../day/simulate-day.ts';
import { type BatchHooks, type CabinetSource, inTurn } from '../../judge/variants.ts';
import type { LogKind } from '../../logs/log.ts';
import type { Place } from '../../logs/places.ts';
import { assemble } from '../../network/assemble.ts';
import { sensorZone } from '../../network/assemble-controls.ts';
import type { Assembly } from '../../network/assembly.ts';
import type { Network } from '../../network/network.ts';
import { levelOf, temperatureOf } from '../../trades/air-ways.ts';
import { type Course, valueAt } from '../../trades/course.ts';
import { cabinetPower } from '../../trades/draws.ts';
import { humidityOf } from '../../trades/filament/air.ts';
import { machinePower } from '../../trades/machine-power.ts';
import type { DayRun } from '../../trades/measure.ts';
import type { Profile } from '../../units/profile.ts';
import type { LogDay } from './log-days.ts';
import { withValues } from './unknowns.ts';

/** Smallest concentration that counts, so that logarithms stay finite: in the contaminant's own unit. */
const FLOOR: Readonly<Record<string, number>> = { particles: 1e7 };
const USUAL_FLOOR = 0.1;
/** Error allowed to a step, K: difference quotients ask for more than pictures do. */
const TOLERANCE = 0.005;

/** Where and when else the cabinet could be read: for the next reading. */
export interface Grid {
  readonly places: readonly { readonly place: Place; readonly kind: LogKind }[];
  readonly times: readonly number[];
}

export interface LogPlan {
  readonly day: string;
  readonly days: readonly LogDay[];
  readonly grid: Grid;
}

export interface LogTask {
  /** Which date of the plan. */
  readonly date: number;
  /** By id of the unknown. */
  readonly values: Readonly<Record<string, number>>;
  readonly grid: boolean;
}

export interface LogOutcome {
  /** By probe and time; concentrations in logarithms. */
  readonly values: readonly (readonly number[])[];
  /** By place and time of the grid, when asked for. */
  readonly grid?: readonly (readonly number[])[];
  readonly fault?: string;
}

export type EvaluateLog = (
  tasks: readonly LogTask[],
  hooks: BatchHooks,
) => Promise<readonly (LogOutcome | undefined)[]>;

/** A function that runs the tasks of one plan. */
export function logRunner(source: CabinetSource, plan: LogPlan): (task: LogTask) => LogOutcome {
  const answer = readCabinet(source.file, source.text);
  const cabinet = answer.ok ? answer.cabinet : undefined;
  return ({ date, values, grid }) => {
    if (cabinet === undefined) return { values: [], fault: 'the file cannot be read' };
    try {
      const { probes, room, outdoors } = plan.days[date]!;
      const run = runOf(withValues(cabinet, plan.day, values), plan.day, room, outdoors);
      const read = probes.map(({ place, kind, times }) => readings(run, place, kind, times));
      if (!grid) return { values: read };
      return {
        values: read,
        grid: plan.grid.places.map(({ place, kind }) => readings(run, place, kind, plan.grid.times)),
      };
    } catch (error) {
      return { values: [], fault: error instanceof Error ? error.message : String(error) };
    }
  };
}

export function evaluateLogHere(source: CabinetSource, plan: LogPlan): EvaluateLog {
  return inTurn(logRunner(source, plan));
}

/** A day whose room, and outdoors, are as they were measured. */
function runOf(cabinet: Cabinet, day: string, room?: Profile, outdoors?: Profile): DayRun {
  const own = cabinet.days[day]!;
  const held: Cabinet = {
    ...cabinet,
    room: room === undefined ? cabinet.room : { ...cabinet.room, held: true },
    days: {
      ...cabinet.days,
      [day]: {
        ...own,
        ...(room === undefined ? {} : { roomTemperature: [[0, room[0]![1]]] }),
        ...(outdoors === undefined ? {} : { outdoorTemperature: [[0, outdoors[0]![1]]] }),
      },
    },
  };
  const built = assemble(held, day);
  const network = follows(follows(built.network, ['room', 'room without cabinet'], room), ['outdoors'], outdoors);
  const assembly: Assembly = { ...built, network };
  return {
    cabinet: held,
    day,
    assembly,
    record: simulateDay(network, { periodic: own.repeated, tolerance: TOLERANCE }),
  };
}

function follows(network: Network, zones: readonly string[], profile: Profile | undefined): Network {
  if (profile === undefined) return network;
  return {
    ...network,
    zones: network.zones.map((zone) =>
      zones.some((name) => zone.name === name || zone.name.startsWith(`${name} at `)) &&
      zone.temperature.kind === 'fixed'
        ? { ...zone, temperature: { kind: 'fixed', profile } }
        : zone,
    ),
  };
}

function readings(run: DayRun, place: Place, kind: LogKind, times: readonly number[]): number[] {
  if (times.length === 0) return [];
  const course = courseAt(run, place, kind);
  if (kind !== 'concentration') return times.map((time) => valueAt(course, time));
  return times.map((time) => logarithm(valueAt(course, time), place.contaminant));
}

/** Concentrations are compared in logarithms: they span decades. */
export function logarithm(value: number, contaminant: string | undefined): number {
  return Math.log(Math.max(value, FLOOR[contaminant ?? ''] ?? USUAL_FLOOR));
}

function courseAt(run: DayRun, place: Place, kind: LogKind): Course {
  if (kind === 'power') return place.what === 'machine' ? machinePower(run, place.id) : cabinetPower(run);
  if (kind === 'temperature') return temperatureOf(run, place.what === 'sensor' ? place.id : zoneOf(run, place));
  const zone = zoneOf(run, place);
  if (kind === 'concentration') return levelOf(run, place.contaminant!, zone);
  const humidity = humidityOf(run, zone);
  if (humidity === undefined) throw new Error('this day carries no water');
  return humidity;
}

/** Air of a sensor, or of a place: a bay's at its top, as for a thermostat that names the bay. */
function zoneOf({ cabinet, assembly }: DayRun, { what, id }: Place): string {
  if (what === 'sensor') return sensorZone(cabinet, assembly.bays, cabinet.sensors[id]!);
  return what === 'bay' ? assembly.bays[id]!.zones.at(-1)! : what;
}
