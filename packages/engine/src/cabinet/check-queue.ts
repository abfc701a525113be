// Does the queue make sense: machines and materials that there are, times in their order, no two pinned jobs in one place.

import { formatDuration, formatQuantity } from '../units/format.ts';
import { formatMoment, momentAfter } from '../units/week.ts';
import { findPart, kindsOf } from './catalogue.ts';
import { type Check, keysOf, mustBeKnown } from './check.ts';
import { quoted } from './complaint.ts';
import { factsFor, longestOn, machinesFor, readFor } from './job-file.ts';
import { QUEUE_LENGTH, type QueueJobSpec, type QueueSpec, takes } from './queue.ts';
import { oneOf } from './shape.ts';
import type { FilePath } from './source-tree.ts';

interface Pinned {
  readonly id: string;
  readonly start: number;
  readonly end: number;
}

export function checkQueue(check: Check): void {
  const { queue } = check.spec;
  if (queue === undefined) return;
  if (queue.like !== undefined) mustBeKnown(check, ['queue', 'like'], 'day', queue.like, check.ids('days'));
  checkAims(check, queue);
  checkDown(check, queue);
  const busy = new Map<string, Pinned[]>();
  for (const [id, job] of Object.entries(queue.jobs ?? {})) checkJob(check, queue, id, job, busy);
}

function checkDown(check: Check, { from, down = {} }: QueueSpec): void {
  const machines = check.ids('machines');
  for (const [machine, times] of Object.entries(down)) {
    const at: FilePath = ['queue', 'down', machine];
    if (!machines.includes(machine)) {
      const near = machines.length === 0 ? 'add the machine first' : `name one of ${machines.join(', ')}`;
      check.say(
        at,
        {
          code: 'machine-unknown',
          what: `there is no machine ${quoted(machine)}`,
          allowed: 'a machine of the file',
          mend: near,
        },
        { key: true },
      );
    }
    if (typeof from !== 'object' || from.date === undefined) continue;
    const origin = from.date;
    for (const { from: first, to } of times) {
      const begin = momentAfter(first, origin, from.clock);
      const end = momentAfter(to, origin, begin);
      if (end > begin) continue;
      check.say(at, {
        code: 'order-wrong',
        what: `it ends at ${formatMoment(origin, end)}, before it begins at ${formatMoment(origin, begin)}`,
        allowed: 'a moment and a later one',
        mend: 'change their order',
      });
    }
  }
}

function checkAims(check: Check, { aims = [] }: QueueSpec): void {
  const twice = aims.find((aim, at) => aims.indexOf(aim) !== at);
  if (twice !== undefined)
    check.say(
      ['queue', 'aims'],
      {
        code: 'said-twice',
        what: `${quoted(twice)} stands in it twice`,
        allowed: 'each aim once, the one that counts most first',
        mend: 'take one of them out',
      },
      { key: true },
    );
}

function checkJob(check: Check, queue: QueueSpec, id: string, job: QueueJobSpec, busy: Map<string, Pinned[]>): void {
  const at: FilePath = ['queue', 'jobs', id];
  const machines = check.ids('machines');
  const materials = [...check.ids('materials'), ...kindsOf(check.spec.parts, 'materials')];
  mustBeKnown(check, [...at, 'material'], 'material', job.material, materials);
  const named = job.machine ?? machines;
  const known = named.filter((machine, index) =>
    mustBeKnown(check, [...at, 'machine', index], 'machine', machine, machines),
  );
  if (machines.length === 0)
    check.say(
      at,
      {
        code: 'key-missing',
        what: 'there is no machine that could print it',
        allowed: 'a machine',
        mend: 'add the machine first',
      },
      { key: true },
    );
  checkBase(check, at, job, known);
  checkJobFile(check, at, id, job, known);
  if (typeof queue.from !== 'object' || queue.from.date === undefined) return;
  const origin = queue.from.date;
  const from = queue.from.clock;
  const until = from + (queue.length?.value ?? QUEUE_LENGTH);
  const clock = (time: number): string => formatMoment(origin, time);
  const length = lengthOf(check, id, job, known);
  if (length === undefined) return;
  const earliest = Math.max(from, job.earliest === undefined ? from : momentAfter(job.earliest, origin, from));
  if (earliest + length > until)
    check.say([...at, job.earliest !== undefined ? 'earliest' : job.for === undefined ? 'job-file' : 'for'], {
      code: 'beyond-the-plan',
      what: `begun at ${clock(earliest)} it would end ${formatDuration(earliest + length - until)} after the plan, which ends at ${clock(until)}`,
      allowed: `a job of at most ${formatDuration(until - from)} that begins by ${clock(Math.max(until - length, from))}`,
      mend: 'begin it earlier, or give the queue a longer length:',
    });
  if (job.due !== undefined) {
    const due = momentAfter(job.due, origin, from);
    if (due < earliest + length)
      check.say([...at, 'due'], {
        code: 'deadline-impossible',
        what: `it cannot be done by ${clock(due)}: begun at ${clock(earliest)} it ends at ${clock(earliest + length)}`,
        allowed: `${clock(earliest + length)} or later`,
        mend:
          job.earliest === undefined
            ? 'give it more time, or make it shorter'
            : 'give it more time, or let it begin earlier',
      });
  }
  if (job.pinned !== undefined) checkPinned(check, at, id, job, { origin, from, until, clock, length }, known, busy);
}

/** s; undefined when nothing says it, or the job file that does has not been read. */
function lengthOf({ files }: Check, id: string, job: QueueJobSpec, machines: readonly string[]): number | undefined {
  if (job.for !== undefined) return job.for.value;
  const facts = factsFor(files, id, job['job-file']);
  const able = facts === undefined ? [] : machinesFor(facts, machines);
  return able.length === 0 ? undefined : longestOn(facts!, able);
}

function checkJobFile(check: Check, at: FilePath, id: string, job: QueueJobSpec, machines: readonly string[]): void {
  const { 'job-file': path, base } = job;
  if (path === undefined) {
    // A key that is there and faulty has been complained of.
    if (!writtenKeys(check, id).some((key) => key === 'for' || key === 'job-file'))
      check.say(
        at,
        {
          code: 'key-missing',
          what: `${quoted(id)} does not say how long it takes`,
          allowed: 'for: with a duration, such as 2 h 30 min; or job-file: with a job file that says it',
          mend: 'add "for", or "job-file"',
        },
        { key: true },
      );
    return;
  }
  const read = readFor(check.files, id, path);
  if (read === undefined) return;
  const place: FilePath = [...at, 'job-file'];
  if ('refused' in read) {
    check.say(place, read.refused);
    return;
  }
  const mm = (sides: readonly number[]): string => sides.map((side) => formatQuantity('length', side)).join(' x ');
  if (job.for !== undefined && job.for.value < read.least)
    check.say([...at, 'for'], {
      code: 'job-file-conflict',
      what: `its job file takes at least ${formatDuration(read.least)}, every move at full speed`,
      allowed: `${formatDuration(read.least)} or more`,
      mend: 'take it out: the job file says how long it takes',
    });
  if (base !== undefined && read.base !== undefined && !takes(withRoom(base), read.base[0], read.base[1]))
    check.say([...at, 'base'], {
      code: 'job-file-conflict',
      what: `its job file prints on ${mm(read.base)}, lines for priming and skirts too`,
      allowed: `${mm(read.base)} or more`,
      mend: 'take it out: the job file says where it prints',
    });
  const named = machines.filter((machine) => read.on[machine] !== undefined);
  if (named.length > 0 && machinesFor(read, named).length === 0)
    check.say(place, {
      code: 'fits-no-machine',
      what: `it goes onto none of ${named.join(', ')}: ${named.map((machine) => `${machine}: ${read.on[machine]!.outside.join(', ')}`).join('; ')}`,
      allowed: 'a job file that stays on the bed and in the frame of one of its machines',
      mend:
        job.machine === undefined ? 'make it anew for one of these machines' : 'name a larger machine, or make it anew',
    });
}

function writtenKeys({ tree }: Check, id: string): readonly string[] {
  const { jobs } = (tree.plain['queue'] ?? {}) as { readonly jobs?: Readonly<Record<string, unknown>> };
  return keysOf(jobs?.[id]);
}

/** Sides are told in whole millimetres. */
function withRoom([width, depth]: readonly number[]): readonly [number, number] {
  return [width! + 1e-3, depth! + 1e-3];
}

function checkBase(check: Check, at: FilePath, { base, machine }: QueueJobSpec, machines: readonly string[]): void {
  if (base === undefined || machines.length === 0) return;
  const [width, depth] = base as [number, number];
  const beds = machines.map((id) => bedOf(check, id));
  if (beds.some((bed) => bed === undefined || takes(bed, width, depth))) return;
  check.say([...at, 'base'], {
    code: 'fits-no-machine',
    what: `no bed of ${machines.join(', ')} takes ${formatQuantity('length', width)} x ${formatQuantity('length', depth)}`,
    allowed: `at most ${oneOf([...new Set(beds.map((bed) => `${formatQuantity('length', bed![0])} x ${formatQuantity('length', bed![1])}`))])}`,
    mend: machine === undefined ? 'split the part' : 'name a machine with a larger bed, or split the part',
  });
}

function bedOf(check: Check, id: string): readonly [number, number] | undefined {
  const machine = check.spec.machines?.[id];
  if (machine === undefined) return undefined;
  const size = machine.bed?.size ?? findPart(check.spec.parts, 'machines', machine.kind)?.spec.bed?.size;
  return size === undefined ? undefined : [size[0]!, size[1]!];
}

function checkPinned(
  check: Check,
  at: FilePath,
  id: string,
  job: QueueJobSpec,
  {
    origin,
    from,
    until,
    clock,
    length,
  }: { origin: number; from: number; until: number; clock: (time: number) => string; length: number },
  machines: readonly string[],
  busy: Map<string, Pinned[]>,
): void {
  const path: FilePath = [...at, 'pinned'];
  const start = momentAfter(job.pinned!, origin, from);
  const end = start + length;
  const [machine] = machines;
  if (machines.length > 1)
    check.say(path, {
      code: 'pinned-nowhere',
      what: `it is pinned to ${clock(start)}, but not to a machine: it may run on ${machines.join(', ')}`,
      allowed: 'one machine',
      mend: 'add machine: and the one on which it is',
    });
  if ((job.copies ?? 1) > 1)
    check.say(path, {
      code: 'two-places-at-once',
      what: `${job.copies} copies cannot all start at ${clock(start)} on one machine`,
      allowed: 'one copy',
      mend: 'write the copies as jobs of their own',
    });
  if (end <= from || end > until)
    check.say(path, {
      code: 'beyond-the-plan',
      what: `from ${clock(start)} to ${clock(end)} it lies outside the plan, which goes from ${clock(from)} to ${clock(until)}`,
      allowed: 'a job that ends within the plan',
      mend: end <= from ? 'take it out: it is done' : 'give the queue a longer length:',
    });
  if (job.due !== undefined && momentAfter(job.due, origin, from) < end)
    check.say(path, {
      code: 'deadline-impossible',
      what: `pinned to ${clock(start)} it ends at ${clock(end)}, after its deadline`,
      allowed: 'a deadline after its end',
      mend: 'pin it to an earlier time, or give it a later due:',
    });
  if (machine === undefined || machines.length > 1) return;
  const others = busy.get(machine) ?? [];
  const other = others.find((known) => start < known.end && known.start < end);
  if (other !== undefined)
    check.say(path, {
      code: 'jobs-clash',
      what: `${quoted(machine)} prints ${quoted(other.id)} then, which is pinned from ${clock(other.start)} to ${clock(other.end)}`,
      allowed: 'one job at a time on a machine',
      mend: `pin it to ${clock(other.end)} or later, or to another machine`,
    });
  busy.set(machine, [...others, { id, start, end }]);
}
