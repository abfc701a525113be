// Where an entry of the queue says otherwise than its job file: what is written goes first, and that is said.

import { formatDuration, formatQuantity } from '../units/format.ts';
import type { JobFileFacts } from './job-file.ts';
import { longestOn, machinesFor } from './job-file.ts';
import type { QueueJobSpec } from './queue.ts';

/** Shares and amounts below which two values are told as one. */
const SHARE = 0.01;
const MINUTE = 60;
const HALF_DEGREE = 0.5;
const MILLIMETRE = 1e-3;

export function jobFileRemarks(job: QueueJobSpec, facts: JobFileFacts, named: readonly string[]): string[] {
  const machines = machinesFor(facts, named);
  const { on, nozzle, bed, partSize } = facts;
  const times = machines.map((machine) => on[machine]!.duration);
  const longest = longestOn(facts, machines);
  const mass = machines.map((machine) => on[machine]!.mass).find((each) => each !== undefined);
  const apart = (written: number, read: number, least: number): boolean =>
    Math.abs(written - read) > Math.max(least, SHARE * read);
  const wins = (key: string, shown: string, of: string): string =>
    `${key}: ${shown} is taken as it is written; its job file comes to ${of}`;
  const degrees = (key: 'nozzle' | 'bed', read: number | undefined): string[] => {
    const written = job[key]?.value;
    return written === undefined || read === undefined || Math.abs(written - read) < HALF_DEGREE
      ? []
      : [wins(key, formatQuantity('temperature', written), formatQuantity('temperature', read))];
  };
  return [
    ...named
      .filter((machine) => !machines.includes(machine))
      .map((machine) => `it does not go onto ${machine}: ${on[machine]!.outside.join(', ')}`),
    ...(job.for !== undefined && apart(job.for.value, longest, MINUTE)
      ? [wins('for', formatDuration(job.for.value), `${formatDuration(longest)}, heating included`)]
      : []),
    ...(job.for === undefined && longest - Math.min(...times) > MINUTE
      ? [
          `the longest of its times is taken: ${machines.map((machine, at) => `${formatDuration(times[at]!)} on ${machine}`).join(', ')}`,
        ]
      : []),
    ...(job.mass !== undefined && mass !== undefined && apart(job.mass.value, mass, 0)
      ? [wins('mass', formatQuantity('mass', job.mass.value), formatQuantity('mass', mass))]
      : []),
    ...degrees('nozzle', nozzle),
    ...degrees('bed', bed),
    ...(job['part-size'] !== undefined && partSize !== undefined && apart(job['part-size'].value, partSize, MILLIMETRE)
      ? [wins('part-size', formatQuantity('length', job['part-size'].value), formatQuantity('length', partSize))]
      : []),
  ];
}
