// A day hour by hour: the few numbers a person looks at, and what happens in between.

import { REFERENCE_DENSITY } from '@stillair/physics';
import { courseOf, valueAt } from '../trades/course.ts';
import { machinePower } from '../trades/machine-power.ts';
import type { DayRun } from '../trades/measure.ts';
import { formatClock } from '../units/format.ts';
import type { KindName } from '../units/unit-table.ts';
import { temperatureAt } from './trace.ts';

export interface DayColumn {
  /** Stable name for other programs. */
  readonly id: string;
  /** For people: `upper air`. */
  readonly label: string;
  readonly kind: KindName;
}

export interface DayRow {
  /** s after the day's start. */
  readonly time: number;
  /** SI, one a column. */
  readonly values: readonly number[];
  /** What starts or ends from this row to the next. */
  readonly happens: readonly string[];
}

export interface DayTable {
  readonly version: 1;
  readonly cabinet: string;
  readonly day: string;
  readonly columns: readonly DayColumn[];
  readonly rows: readonly DayRow[];
}

const HOUR = 3600;

/** Rows at every whole hour, or only at the times asked for. */
export function dayTable(run: DayRun, times: readonly number[] = wholeHours(run)): DayTable {
  const columns = columnsOf(run);
  const happenings = happeningsOf(run);
  return {
    version: 1,
    cabinet: run.cabinet.title,
    day: run.day,
    columns: columns.map(({ id, label, kind }) => ({ id, label, kind })),
    rows: times.map((time, at) => {
      const next = times[at + 1] ?? time + HOUR;
      const happens = happenings.filter((each) => each.time >= time && each.time < next);
      return { time, values: columns.map(({ at: value }) => value(time)), happens: happens.map(({ says }) => says) };
    }),
  };
}

function wholeHours({ cabinet, day }: DayRun): number[] {
  const hours = Math.floor(cabinet.days[day]!.length / HOUR);
  return Array.from({ length: hours + 1 }, (_, hour) => hour * HOUR);
}

type Column = DayColumn & { readonly at: (time: number) => number };

function columnsOf(run: DayRun): Column[] {
  const { cabinet, assembly, record } = run;
  const air = (id: string, label: string, zone: string): Column => ({
    id,
    label,
    kind: 'temperature',
    at: (time) => temperatureAt(record, zone, time),
  });
  const printZones = new Map(Object.entries(assembly.machines).map(([id, { printAir }]) => [printAir, id]));
  const bays = Object.entries(assembly.bays).flatMap(([bay, { zones }]) => {
    const zone = zones.find((each) => printZones.has(each)) ?? zones[0]!;
    const top = zones.at(-1)!;
    const low = air(`air.${bay}`, zones.length === 1 ? bay : `${bay} at print`, zone);
    return top === zone ? [low] : [low, air(`air.${bay}.top`, `${bay} top`, top)];
  });
  const chambers = Object.entries(assembly.machines).flatMap(([id, { chamber }]) =>
    chamber === undefined ? [] : [air(`air.${id}.chamber`, `in ${id}`, chamber)],
  );
  const fans = Object.entries(assembly.paths)
    .filter(([, { kind, fans: inPath }]) => kind === 'path' && inPath.length > 0)
    .map(([id, { name }]): Column => {
      const flow = courseOf(record, record.flows, name);
      return { id: `flow.${id}`, label: id, kind: 'flow', at: (time) => valueAt(flow, time) / REFERENCE_DENSITY };
    });
  const { particles } = record.concentrations;
  const counted: Column[] =
    particles === undefined
      ? []
      : [
          {
            id: 'particles.room',
            label: 'particles, room',
            kind: 'particle-concentration',
            at: (time) => valueAt(courseOf(record, particles, assembly.room), time),
          },
        ];
  const powers = Object.keys(cabinet.machines).map((machine) => machinePower(run, machine));
  const power = (time: number) => powers.reduce((sum, course) => sum + valueAt(course, time), 0);
  return [
    ...bays,
    ...chambers,
    air('air.room', 'room', assembly.room),
    ...fans,
    ...counted,
    ...(powers.length === 0 ? [] : [{ id: 'power', label: 'machines', kind: 'power', at: power } as const]),
  ];
}

function happeningsOf({ cabinet, day }: DayRun): { time: number; says: string }[] {
  const { jobs, doorOpenings } = cabinet.days[day]!;
  const ofJobs = Object.entries(jobs).flatMap(([id, { machine, start, duration }]) => [
    { time: start, says: `${formatClock(start)} ${id} starts on ${machine}` },
    { time: start + duration, says: `${formatClock(start + duration)} ${id} ends` },
  ]);
  const ofDoors = doorOpenings.map(({ door, start }) => ({
    time: start,
    says: `${formatClock(start)} door ${door} opens`,
  }));
  return [...ofJobs, ...ofDoors].sort((a, b) => a.time - b.time);
}
