// The queue, filled in: times counted from the midnight before the plan begins, machines on which each job fits.

import { hoursOfWeek, momentAfter } from '../units/week.ts';
import type { Machine, Material, Person } from './cabinet.ts';
import { defaults } from './defaults.ts';
import { factsFor, type JobFileFacts, type JobFiles, longestOn, machinesFor } from './job-file.ts';
import { jobFileRemarks } from './job-file-remarks.ts';
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
  files: JobFiles,
): Queue | undefined {
  if (queue === undefined) return undefined;
  const entries = Object.entries(queue.jobs ?? {});
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
    down: Object.fromEntries(
      Object.entries(queue.down ?? {}).map(([machine, times]) => [
        machine,
        times.map(({ from: first, to }) => {
          const begin = momentAfter(first, origin, from);
          return [begin, momentAfter(to, origin, begin)] as const;
        }),
      ]),
    ),
    jobs: Object.fromEntries(
      entries.flatMap(([id, job]) => {
        const facts = factsFor(files, id, job['job-file']);
        if (job['job-file'] !== undefined && facts === undefined) return [];
        const plan = { origin, from, attended: queue.attended?.value ?? ATTENDED };
        return [[id, fillJob(job, facts, known, plan)] as const];
      }),
    ),
    unread: Object.fromEntries(
      entries.flatMap(([id, job]) => {
        const { 'job-file': path, material } = job;
        if (path === undefined || factsFor(files, id, path) !== undefined) return [];
        return [[id, { path, material, machines: machinesOf(job, known.machines) }] as const];
      }),
    ),
  };
}

/** Those named, or all, whose bed takes its base. */
function machinesOf({ machine, base }: QueueJobSpec, machines: Readonly<Record<string, Machine>>): readonly string[] {
  const fits = (id: string): boolean =>
    base === undefined || takes([machines[id]!.bed.width, machines[id]!.bed.depth], base[0]!, base[1]!);
  return (machine ?? Object.keys(machines)).filter(fits);
}

function fillJob(
  job: QueueJobSpec,
  facts: JobFileFacts | undefined,
  {
    machines,
    materials,
  }: { machines: Readonly<Record<string, Machine>>; materials: Readonly<Record<string, Material>> },
  { origin, from, attended }: { origin: number; from: number; attended: number },
): QueueJob {
  const material = materials[job.material]!;
  const { base } = job;
  const named = machinesOf(job, machines);
  const able = facts === undefined ? named : machinesFor(facts, named);
  const duration = job.for?.value ?? longestOn(facts!, able);
  const mass = able.map((machine) => facts?.on[machine]?.mass).find((each) => each !== undefined);
  const when = (key: 'earliest' | 'due' | 'pinned'): Partial<Record<typeof key, number>> =>
    job[key] === undefined ? {} : { [key]: momentAfter(job[key], origin, from) };
  return {
    machines: able,
    material: job.material,
    duration,
    nozzle: job.nozzle?.value ?? facts?.nozzle ?? material.nozzle,
    bed: job.bed?.value ?? facts?.bed ?? material.bed,
    mass: job.mass?.value ?? mass ?? defaults.printRate.value * duration,
    partSize:
      job['part-size']?.value ?? facts?.partSize ?? (base === undefined ? defaults.partSize.value : Math.max(...base)),
    copies: job.copies ?? 1,
    attended: job.attended?.value ?? attended,
    ...when('earliest'),
    ...when('due'),
    ...when('pinned'),
    ...(facts === undefined ? {} : { jobFile: facts.path, remarks: jobFileRemarks(job, facts, named) }),
  };
}
