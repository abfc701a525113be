// Days, their jobs and door openings.

import type { Day, Job, Material } from './cabinet.ts';
import { defaults } from './defaults.ts';
import { materialOn } from './fill-materials.ts';
import { fillCourse, noted } from './fill-room.ts';
import type { Ledger } from './ledger.ts';
import type { Spread } from './origin.ts';
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
  const cut = cutOf(day['power-cut'], length);
  const doors = [...(spec.cabinet.door === undefined ? [] : ['door']), ...Object.keys(spec.cabinet.doors ?? {})];
  return {
    title: day.title ?? id,
    length,
    jobs: Object.fromEntries(
      Object.entries(day.jobs ?? {})
        .filter(([, { start }]) => !within(start, cut))
        .map(([job, written]) => {
          const path = `${at}.jobs.${job}`;
          const whole = fillJob(path, written, [...file, 'jobs', job], spec, materials, ledger);
          return [job, cut === undefined ? whole : shortened(path, whole, cut, ledger)];
        }),
    ),
    doorOpenings: (day.doors ?? []).map((opening, index) => {
      ledger.note(`${at}.doorOpenings.${index}`, ledger.given([...file, 'doors', index]));
      return { door: opening.door ?? doors[0]!, start: opening.at, duration: opening.for.value };
    }),
    ...(room === undefined ? {} : { roomTemperature: room }),
    ...(outdoors === undefined ? {} : { outdoorTemperature: outdoors }),
    ...(cut === undefined ? {} : { powerCut: cut }),
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

function cutOf(written: DaySpec['power-cut'], length: number): Day['powerCut'] {
  if (written === undefined || written === null) return undefined;
  const [start, end] = written;
  return start < length ? [start, Math.min(end, length)] : undefined;
}

function within(time: number, cut: Day['powerCut']): boolean {
  return cut !== undefined && cut[0] <= time && time < cut[1];
}

/**
 * A print that loses its power is lost: machines are not taken to carry on where they stopped. What its length and mass might have come
 * to without the cut ends there too, or else samples would print on.
 */
function shortened(at: string, job: Job, [cut]: readonly [number, number], ledger: Ledger): Job {
  const { start, duration, mass } = job;
  if (start >= cut) return job;
  const left = cut - start;
  const atMost = (seconds: number): number => Math.min(seconds, left);
  if (duration > left) {
    const share = left / duration;
    endsWithPower(`${at}.duration`, atMost, ledger);
    endsWithPower(`${at}.mass`, (kilograms) => kilograms * share, ledger);
    return { ...job, duration: left, mass: mass * share };
  }
  const origin = ledger.origins.get(`${at}.duration`);
  if (origin?.spread !== undefined)
    ledger.note(`${at}.duration`, { ...origin, spread: changed(origin.spread, atMost) });
  return job;
}

function endsWithPower(at: string, until: (whole: number) => number, ledger: Ledger): void {
  const spread = ledger.origins.get(at)?.spread;
  const how = 'until the power fails';
  ledger.note(at, { kind: 'derived', how, ...(spread === undefined ? {} : { spread: changed(spread, until) }) });
}

function changed({ p10, p50, p90, shape }: Spread, change: (value: number) => number): Spread {
  return { p10: change(p10), p50: change(p50), p90: change(p90), shape };
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
    ...(job['bed-stuck'] === true ? { bedStuck: true as const } : {}),
  };
}
