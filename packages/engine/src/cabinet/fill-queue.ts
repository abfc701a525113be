// The queue, filled in: times counted from the midnight before the plan begins, machines on which each job fits.

import { hoursOfWeek, momentAfter } from '../units/week.ts';
import type { Machine, Material, Person } from './cabinet.ts';
import { defaults } from './defaults.ts';
import type { Ledger } from './ledger.ts';
import { QUEUE_LENGTH, type Queue, type QueueJob, type QueueJobSpec, takes } from './queue.ts';
import type { FileSpec } from './spec.ts';

const STEP = 600;
/** First layers are watched so long. Common practice, no source. */
const ATTENDED = 15 * 60;
const ALL_DAYS = [0, 1, 2, 3, 4, 5, 6];

export function fillQueue(
  { queue, days }: FileSpec,
  known: {
    readonly machines: Readonly<Record<string, Machine>>;
    readonly materials: Readonly<Record<string, Material>>;
    readonly people: Readonly<Record<string, Person>>;
  },
  ledger: Ledger,
): Queue | undefined {
  if (queue === undefined) return undefined;
  const { date: origin = 0, clock: from } = queue.from;
  const until = from + (queue.length?.value ?? QUEUE_LENGTH);
  const hours = queue.present ?? [
    { written: 'daily', days: ALL_DAYS, windows: Object.values(known.people).flatMap(({ hours: own }) => own) },
  ];
  ledger.note('queue', ledger.given(['queue']));
  return {
    origin,
    from,
    until,
    step: queue.step?.value ?? STEP,
    like: queue.like ?? Object.keys(days)[0]!,
    aims: queue.aims ?? ['early'],
    present: hoursOfWeek(hours, origin, from, until),
    presentFrom:
      queue.present === undefined ? `the hours of ${Object.keys(known.people).join(', ')}, every day` : 'queue.present',
    jobs: Object.fromEntries(
      Object.entries(queue.jobs ?? {}).map(([id, job]) => [
        id,
        fillJob(job, known, { origin, from, attended: queue.attended?.value ?? ATTENDED }),
      ]),
    ),
  };
}

function fillJob(
  job: QueueJobSpec,
  {
    machines,
    materials,
  }: { machines: Readonly<Record<string, Machine>>; materials: Readonly<Record<string, Material>> },
  { origin, from, attended }: { origin: number; from: number; attended: number },
): QueueJob {
  const material = materials[job.material]!;
  const duration = job.for.value;
  const { base } = job;
  const fits = (id: string): boolean =>
    base === undefined || takes([machines[id]!.bed.width, machines[id]!.bed.depth], base[0]!, base[1]!);
  const when = (key: 'earliest' | 'due' | 'pinned'): Partial<Record<typeof key, number>> =>
    job[key] === undefined ? {} : { [key]: momentAfter(job[key], origin, from) };
  return {
    machines: (job.machine ?? Object.keys(machines)).filter(fits),
    material: job.material,
    duration,
    nozzle: job.nozzle?.value ?? material.nozzle,
    bed: job.bed?.value ?? material.bed,
    mass: job.mass?.value ?? defaults.printRate.value * duration,
    partSize: job['part-size']?.value ?? (base === undefined ? defaults.partSize.value : Math.max(...base)),
    copies: job.copies ?? 1,
    attended: job.attended?.value ?? attended,
    ...when('earliest'),
    ...when('due'),
    ...when('pinned'),
  };
}
