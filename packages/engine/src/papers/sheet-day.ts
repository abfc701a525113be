// What a drawn cabinet shows of its day: the state of every bay, air path and machine at even moments, for a time cursor.

import { bayCourse, fanShares, piecesOf, temperatureOf, volumeFlow } from '../trades/air-ways.ts';
import { type Course, valueAt } from '../trades/course.ts';
import { machinePower } from '../trades/machine-power.ts';
import type { DayRun } from '../trades/measure.ts';
import { turnsAirRound } from '../trades/plant.ts';

export interface SheetDay {
  readonly day: string;
  readonly title: string;
  /** s, even, from the start to the end of the day. */
  readonly times: readonly number[];
  /** K, of the air of each bay, low then high; one list where it is one zone. */
  readonly bays: Readonly<Record<string, readonly (readonly number[])[]>>;
  /** K */
  readonly room: readonly number[];
  /** m³/s from `from` to `to`, by air path; a path that turns a bay's own air round gives what it turns. */
  readonly flows: Readonly<Record<string, readonly number[]>>;
  /** Share of full speed of the strongest fan of a path, by air path with a fan. */
  readonly fans: Readonly<Record<string, readonly number[]>>;
  /** W drawn from the socket, by machine. */
  readonly machines: Readonly<Record<string, readonly number[]>>;
}

/** Moments of a day of 24 h: every five minutes. */
const MOMENTS = 288;

export function sheetDay(run: DayRun): SheetDay {
  const { cabinet, assembly, day } = run;
  const { length, title } = cabinet.days[day]!;
  const times = Array.from({ length: MOMENTS + 1 }, (_, at) => (length * at) / MOMENTS);
  const along = (course: Course): number[] => times.map((time) => valueAt(course, time));
  const ids = Object.keys(cabinet.paths);
  const fanned = ids.filter((id) => assembly.paths[id]!.fans.length > 0 || fanShares(run, id).length > 0);
  return {
    day,
    title,
    times,
    bays: mapped(Object.keys(assembly.bays), (bay) =>
      assembly.bays[bay]!.zones.length === 1
        ? [along(bayCourse(run, bay, (zone) => temperatureOf(run, zone)))]
        : assembly.bays[bay]!.zones.map((zone) => along(temperatureOf(run, zone))),
    ),
    room: along(temperatureOf(run, assembly.room)),
    flows: mapped(ids, (id) => along(flowOf(run, id))),
    fans: mapped(fanned, (id) => {
      const shares = fanShares(run, id).map(along);
      return times.map((_, at) => Math.max(...shares.map((share) => share[at]!)));
    }),
    machines: mapped(Object.keys(cabinet.machines), (id) => along(machinePower(run, id))),
  };
}

/** All pieces of a path together: a hole across the border of low and high air became several. */
function flowOf(run: DayRun, id: string): Course {
  const { times } = run.record;
  if (turnsAirRound(run.cabinet.paths[id]!)) {
    const flow = run.assembly.paths[id]!.flow ?? 0;
    const [share] = fanShares(run, id);
    return { times, values: Float64Array.from(times, (_, row) => flow * (share?.values[row] ?? 1)) };
  }
  const pieces = piecesOf(run, id).map((piece) => volumeFlow(run, piece).values);
  return { times, values: Float64Array.from(times, (_, row) => pieces.reduce((sum, piece) => sum + piece[row]!, 0)) };
}

function mapped<Value>(ids: readonly string[], of: (id: string) => Value): Record<string, Value> {
  return Object.fromEntries(ids.map((id) => [id, of(id)]));
}
