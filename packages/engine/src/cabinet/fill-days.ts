// Days, their jobs and door openings.

import type { Day, Job, Material } from './cabinet.ts';
import { defaults } from './defaults.ts';
import { materialOn } from './fill-materials.ts';
import { fillCourse, noted } from './fill-room.ts';
import type { Ledger } from './ledger.ts';
import type { FilePath } from './source-tree.ts';
import type { DaySpec, FileSpec, JobSpec } from './spec.ts';

const DAY = 86_400;

export function fillDays(
  spec: FileSpec,
  materials: Readonly<Record<string, Material>>,
  ledger: Ledger,
): Readonly<Record<string, Day>> {
  return Object.fromEntries(
    Object.entries(spec.days).map(([id, day]) => [id, fillDay(id, day, spec, materials, ledger)]),
  );
}

function fillDay(
  id: string,
  day: DaySpec,
  spec: FileSpec,
  materials: Readonly<Record<string, Material>>,
  ledger: Ledger,
): Day {
  const at = `days.${id}`;
  const file: FilePath = ['days', id];
  const length = ledger.number(`${at}.length`, [{ quantity: day.length, file: [...file, 'length'] }], {
    value: DAY,
    how: 'a day of 24 h',
  });
  const course = (path: string, key: 'room-temperature' | 'outdoor-temperature'): Day['roomTemperature'] =>
    day[key] === undefined
      ? undefined
      : fillCourse(`${at}.${path}`, day[key], [...file, key], { value: 0, how: 'given' }, ledger);
  const room = course('roomTemperature', 'room-temperature');
  const outdoors = course('outdoorTemperature', 'outdoor-temperature');
  const doors = [...(spec.cabinet.door === undefined ? [] : ['door']), ...Object.keys(spec.cabinet.doors ?? {})];
  return {
    title: day.title ?? id,
    length,
    jobs: Object.fromEntries(
      Object.entries(day.jobs ?? {}).map(([job, written]) => [
        job,
        fillJob(`${at}.jobs.${job}`, written, [...file, 'jobs', job], spec, materials, ledger),
      ]),
    ),
    doorOpenings: (day.doors ?? []).map((opening, index) => {
      ledger.note(`${at}.doorOpenings.${index}`, ledger.given([...file, 'doors', index]));
      return { door: opening.door ?? doors[0]!, start: opening.at, duration: opening.for.value };
    }),
    ...(room === undefined ? {} : { roomTemperature: room }),
    ...(outdoors === undefined ? {} : { outdoorTemperature: outdoors }),
    repeated: noted(
      ledger,
      `${at}.repeated`,
      day.repeated,
      [...file, 'repeated'],
      false,
      'the day stands alone: everything begins at the temperature of the room',
    ),
  };
}

function fillJob(
  at: string,
  job: JobSpec,
  file: FilePath,
  spec: FileSpec,
  materials: Readonly<Record<string, Material>>,
  ledger: Ledger,
): Job {
  const machine = job.machine ?? Object.keys(spec.machines ?? {})[0]!;
  const material = materials[job.material]!;
  const duration = ledger.number(`${at}.duration`, [{ quantity: job.for, file: [...file, 'for'] }], {
    value: 3600,
    how: 'given',
  });
  ledger.note(`${at}.start`, ledger.given([...file, 'start']));
  const { value, low, high, why } = defaults.printRate;
  return {
    machine,
    material: materialOn(machine, job.material, spec),
    start: job.start,
    duration,
    nozzle: ledger.number(`${at}.nozzle`, [{ quantity: job.nozzle, file: [...file, 'nozzle'] }], {
      value: material.nozzle,
      how: `usual for ${job.material}`,
    }),
    bed: ledger.number(`${at}.bed`, [{ quantity: job.bed, file: [...file, 'bed'] }], {
      value: material.bed,
      how: `usual for ${job.material}`,
    }),
    mass: ledger.number(`${at}.mass`, [{ quantity: job.mass, file: [...file, 'mass'] }], {
      value: value * duration,
      how: `12 g/h; ${why}`,
      spread: { p10: low * duration, p50: value * duration, p90: high * duration, shape: 'log-normal' },
    }),
    partSize: ledger.number(
      `${at}.partSize`,
      [{ quantity: job['part-size'], file: [...file, 'part-size'] }],
      defaults.partSize,
    ),
  };
}
