// The jobs of a day, each with what the trades ask about it.

import type { Job, Machine, Material } from '../cabinet/cabinet.ts';
import { keptWith } from './kept.ts';
import type { DayRun } from './measure.ts';

export interface Print {
  /** Id of the job in its day. */
  readonly id: string;
  /** `machine.job`: the part that a finding about this print is about. */
  readonly part: string;
  readonly machineId: string;
  readonly job: Job;
  readonly machine: Machine;
  readonly material: Material;
  /** Within the day, s. */
  readonly start: number;
  readonly end: number;
}

export function printsOf(run: DayRun): readonly Print[] {
  return keptWith(run, 'prints:', () => findPrints(run));
}

function findPrints({ cabinet, day, record }: DayRun): Print[] {
  const last = record.times[record.times.length - 1]!;
  return Object.entries(cabinet.days[day]!.jobs).flatMap(([id, job]) => {
    const machine = cabinet.machines[job.machine]!;
    const material = cabinet.materials[job.material]!;
    const [start, end] = [Math.max(job.start, 0), Math.min(job.start + job.duration, last)];
    const part = `${job.machine}.${id}`;
    return end > start ? [{ id, part, machineId: job.machine, job, machine, material, start, end }] : [];
  });
}
