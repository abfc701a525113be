// A job file beside what the person, or the cabinet, knows more: its material and mass, its machine, its entry in a cabinet file.

import { bedChangeTime, filamentLength } from '@stillair/physics';
import { describedBed } from '../cabinet/bed-description.ts';
import type { Cabinet } from '../cabinet/cabinet.ts';
import type { JobRules, JobSummary, Span } from './job.ts';
import { entryName, type JobEntry } from './job-entry.ts';
import { catalogueMaterials, type JobMaterial, type MaterialFacts, materialOf } from './job-material.ts';
import { type JobCheck, jobOnMachine } from './job-on-machine.ts';

/** Of filament, m, where nothing says another. */
export const USUAL_DIAMETER = 0.00175;

export interface JobKnown {
  /** Name of a material of the cabinet or the catalogue. */
  readonly material?: string;
  /** Of the filament, m. */
  readonly diameter?: number;
  readonly at?: { readonly cabinet: Cabinet; readonly machine: string };
}

export interface JobReport {
  readonly machine?: string;
  readonly material?: JobMaterial;
  readonly diameter: number;
  /** kg of each tool's filament, as `job.filament`; none without a material. */
  readonly masses?: readonly number[];
  readonly mass?: number;
  /** Highest place that is printed, m. */
  readonly height?: number;
  /** Largest side of the box around all that is printed, m: skirts and lines for priming too. */
  readonly partSize?: number;
  /** Mean speed of a bed that moves in depth, m/s. */
  readonly bedSpeed: number;
  /** s in which this machine's bed gets to its set-point from the room's temperature; Infinity when it cannot. */
  readonly heating?: number;
  readonly checks: readonly JobCheck[];
  readonly entry: JobEntry;
}

export function materialsOf(cabinet: Cabinet | undefined): Readonly<Record<string, MaterialFacts>> {
  return cabinet?.materials ?? catalogueMaterials();
}

/** What is taken for granted on a machine of a cabinet. */
export function rulesOn(rules: JobRules, { at }: JobKnown): JobRules {
  const acceleration = at?.cabinet.machines[at.machine]?.shaking.acceleration;
  return acceleration === undefined ? rules : { ...rules, acceleration };
}

export function jobReport(file: string, job: JobSummary, known: JobKnown): JobReport {
  const { at } = known;
  const material = materialOf(known.material, job.held, materialsOf(at?.cabinet));
  const diameter = known.diameter ?? at?.cabinet.machines[at.machine]?.drive.filament ?? USUAL_DIAMETER;
  const perKilogram = material && filamentLength(1, material.density, diameter);
  const masses = perKilogram === undefined ? undefined : job.filament.map(({ length }) => length / perKilogram);
  const mass = masses?.reduce((sum, each) => sum + each, 0);
  const { x, y, z } = job.extents.printed;
  const sides = [x, y, z].flatMap((span) => (span === undefined ? [] : [lengthOf(span)]));
  const partSize = sides.length === 0 ? undefined : Math.max(...sides);
  const heating = at && heatingTime(job, at.cabinet, at.machine);
  const whole = job.duration.estimate + (heating !== undefined && heating < Infinity ? heating : 0);
  const entry: JobEntry = {
    name: entryName(file),
    ...(at === undefined ? {} : { machine: at.machine }),
    ...(material === undefined ? {} : { material: material.name }),
    ...(material?.how === 'nearest' ? { materialTaken: true } : {}),
    for: whole,
    ...(job.held.nozzle === undefined ? {} : { nozzle: job.held.nozzle }),
    ...(job.held.bed === undefined ? {} : { bed: job.held.bed }),
    ...(mass === undefined || mass === 0 ? {} : { mass }),
    ...(partSize === undefined || partSize === 0 ? {} : { partSize }),
  };
  return {
    ...(at === undefined ? {} : { machine: at.machine }),
    ...(material === undefined ? {} : { material }),
    diameter,
    ...(masses === undefined ? {} : { masses }),
    ...(mass === undefined ? {} : { mass }),
    ...(z === undefined ? {} : { height: z[1] }),
    ...(partSize === undefined ? {} : { partSize }),
    bedSpeed: job.duration.estimate > 0 ? job.depth.way / job.duration.estimate : 0,
    ...(heating === undefined ? {} : { heating }),
    checks: at === undefined ? [] : jobOnMachine(job, at.cabinet, at.machine),
    entry,
  };
}

function lengthOf([low, high]: Span): number {
  return high - low;
}

/** From the room's mean temperature, in still air; none when the file sets no bed or never waits for heat. */
function heatingTime({ held, waits }: JobSummary, { room, machines }: Cabinet, machine: string): number | undefined {
  const { bed } = machines[machine]!;
  if (held.bed === undefined || waits.heat === 0) return undefined;
  const courses = room.temperature.map(([, kelvin]) => kelvin);
  const cold = courses.reduce((sum, each) => sum + each, 0) / courses.length;
  if (held.bed <= cold) return 0;
  return bedChangeTime(describedBed(bed), bed.heatCapacity, bed.powerMax, cold, held.bed, cold);
}
