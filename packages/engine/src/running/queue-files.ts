// Job files that the queue names, read once each: what opens them is handed in. What comes of it is a cabinet whose queue has all its
// jobs, or complaints that point at the entry and say which line of the job file was wrong.

import type { Complaint } from '../cabinet/complaint.ts';
import type { JobFileFacts, JobFileOn, JobFileRefused, JobFiles } from '../cabinet/job-file.ts';
import type { UnreadJob } from '../cabinet/queue.ts';
import { readCabinet } from '../cabinet/read-cabinet.ts';
import { type JobAnswer, type JobSummary, type Span, usualRules } from '../jobs/job.ts';
import { jobReport, rulesOn } from '../jobs/job-report.ts';
import { endJob, openJob, takeBytes } from '../jobs/read-job.ts';
import type { ReadSource } from '../judge/judge.ts';
import { formatQuantity } from '../units/format.ts';

/** A file in pieces; a piece is good until the next is asked for. Asking throws when the disk fails. */
export type OpenedJobFile =
  | { readonly ok: true; readonly bytes: number; readonly pieces: AsyncIterable<Uint8Array> }
  /** In words that follow "cannot read NAME: ". */
  | { readonly ok: false; readonly problem: string };

export interface QueueFilesOptions {
  /** Opens a job file by its path from the folder of the cabinet file on. */
  readonly open: (path: string) => Promise<OpenedJobFile>;
  /** Megabytes read, of all files begun so far. */
  readonly progress?: (done: number, all: number) => void;
  readonly stop?: () => boolean;
}

export type QueueFilesAnswer =
  | { readonly ok: true; readonly source: ReadSource }
  | { readonly ok: false; readonly complaints: readonly Complaint[] }
  | { readonly ok: false; readonly complaints: readonly []; readonly stopped: true };

const MEGABYTE = 1e6;
/** Reading takes a second for some tens of megabytes. */
const LARGEST = 1e9;

/** The same cabinet with what its job files say; as it is where it names none that is not read. */
export async function readQueueFiles(
  source: ReadSource,
  { open, progress, stop = () => false }: QueueFilesOptions,
): Promise<QueueFilesAnswer> {
  const unread = Object.entries(source.cabinet.queue?.unread ?? {});
  if (unread.length === 0) return { ok: true, source };
  const found: Record<string, JobFileFacts | JobFileRefused> = {};
  let [before, all] = [0, 0];
  for (const path of new Set(unread.map(([, job]) => job.path))) {
    const jobs = unread.filter(([, job]) => job.path === path);
    const speeds = new Set(jobs.flatMap(([, { machines }]) => machines.map((id) => accelerationOn(source, id))));
    const opened = await open(path);
    if (!opened.ok) {
      for (const [id] of jobs) found[id] = missing(path, opened.problem);
      continue;
    }
    if (opened.bytes > LARGEST) {
      for (const [id] of jobs) found[id] = tooLarge(path, opened.bytes);
      continue;
    }
    all += opened.bytes;
    const told = (bytes: number): void => progress?.((before + bytes) / MEGABYTE, all / MEGABYTE);
    const read = await answersOf(path, opened.pieces, [...speeds], told, stop);
    before += opened.bytes;
    if (stop()) return { ok: false, complaints: [], stopped: true };
    for (const [id, job] of jobs)
      found[id] = 'problem' in read ? missing(path, read.problem) : entryOf(source, job, read);
  }
  const answer = readCabinet(source.file, source.text, [], found as JobFiles);
  if (!answer.ok) return { ok: false, complaints: answer.complaints };
  return { ok: true, source: { ...source, cabinet: answer.cabinet, origins: answer.origins } };
}

function accelerationOn({ cabinet }: ReadSource, machine: string): number {
  return rulesOn(usualRules, { at: { cabinet, machine } }).acceleration;
}

/** Answers by acceleration: the file passes by once, however many machines may print it. */
async function answersOf(
  path: string,
  pieces: AsyncIterable<Uint8Array>,
  speeds: readonly number[],
  progress: (bytes: number) => void,
  stop: () => boolean,
): Promise<ReadonlyMap<number, JobAnswer> | { readonly problem: string }> {
  const readings = speeds.map((acceleration) => openJob(path, { ...usualRules, acceleration }));
  try {
    for await (const piece of pieces) {
      for (const reading of readings) takeBytes(reading, piece);
      progress(readings[0]?.bytes ?? 0);
      if (stop() || readings.every(({ done }) => done)) break;
    }
  } catch (error) {
    return { problem: error instanceof Error ? error.message : String(error) };
  }
  return new Map(readings.map((reading, at) => [speeds[at]!, endJob(reading)] as const));
}

function entryOf(
  source: ReadSource,
  { path, machines, material }: UnreadJob,
  read: ReadonlyMap<number, JobAnswer>,
): JobFileFacts | JobFileRefused {
  const on: Record<string, JobFileOn> = {};
  let job: JobSummary | undefined;
  for (const machine of machines) {
    const answer = read.get(accelerationOn(source, machine))!;
    if (!answer.ok) return refused(path, answer);
    job = answer.job;
    const report = jobReport(path, job, { material, at: { cabinet: source.cabinet, machine } });
    const outside = report.checks
      .filter(({ verdict }) => verdict === 'fails')
      .map(({ title, value }) => `${title} is short by ${formatQuantity('length', -(value ?? 0))}`);
    const heats = report.heating !== Number.POSITIVE_INFINITY;
    on[machine] = {
      duration: report.entry.for,
      ...(report.entry.mass === undefined ? {} : { mass: report.entry.mass }),
      outside: heats ? outside : [...outside, 'its bed never gets as warm as the job file sets it'],
    };
  }
  // No machine takes the base that is written: that is complained of when the cabinet is read.
  if (job === undefined) return { path, least: 0, on };
  const { held, extents, duration } = job;
  const { x, y } = extents.printed;
  const sides = Object.values(extents.printed).map(lengthOf);
  return {
    path,
    least: duration.atSpeed,
    on,
    ...(held.nozzle === undefined ? {} : { nozzle: held.nozzle }),
    ...(held.bed === undefined ? {} : { bed: held.bed }),
    ...(x === undefined || y === undefined ? {} : { base: [lengthOf(x), lengthOf(y)] as const }),
    ...(sides.length === 0 ? {} : { partSize: Math.max(...sides) }),
  };
}

const lengthOf = ([low, high]: Span): number => high - low;

const ALLOWED = 'a job file in plain text, as RS-274 and ISO 6983 have it';

function missing(path: string, problem: string): JobFileRefused {
  const refusal = {
    code: 'job-file-missing',
    what: `its job file cannot be read: ${problem}`,
    allowed: 'a file that is there, by its path from the folder of this file on',
    mend: 'put it there, mend the path, or write for: in its place',
  };
  return { path, refused: refusal };
}

function tooLarge(path: string, bytes: number): JobFileRefused {
  const refusal = {
    code: 'job-file-large',
    what: `its job file has ${Math.round(bytes / MEGABYTE)} MB`,
    allowed: `at most ${LARGEST / MEGABYTE} MB`,
    mend: 'write for: and mass: in its place',
  };
  return { path, refused: refusal };
}

/** With the place in the job file; further faults are counted. */
function refused(path: string, { complaints, more }: Extract<JobAnswer, { readonly ok: false }>): JobFileRefused {
  const [first] = complaints;
  const others = complaints.length - 1 + more;
  const beside = others > 0 ? `, and ${others === 1 ? '1 fault more' : `${others} faults more`}` : '';
  const place = first === undefined ? path : `${path}:${first.where.line}:${first.where.column}`;
  return {
    path,
    refused: {
      code: 'job-file-refused',
      what: `its job file is refused: ${place} ${first?.what ?? ''}${beside}`,
      allowed: first?.allowed ?? ALLOWED,
      mend: first?.mend ?? 'make it anew',
    },
  };
}
