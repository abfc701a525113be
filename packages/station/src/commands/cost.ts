// stillair cost FILE [JOBFILE]: what parts really cost, one job, all jobs of the days, or a month of the diary.

import {
  type Diary,
  isFault,
  jobReport,
  monthCost,
  type NewJob,
  type PartCostOptions,
  parseClock,
  parsePeriod,
  partCosts,
  plan,
  planRunner,
  queueCosts,
  type ReadSource,
  rulesOn,
  type UnitSystem,
  usualRules,
} from '@stillair/engine';
import { monthCsv, monthText, partsCsv, partsText, queueCsv, queueText } from '../cost-text.ts';
import { dayFrom, diaryBeside, loadDiary } from '../diary-file.ts';
import { earlierPlan } from '../earlier-plan.ts';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { longStudy } from '../long-study.ts';
import { progressLine } from '../progress.ts';
import { knownIn, readJobFile } from '../read-job-file.ts';
import { unknownName } from '../unknown-name.ts';
import { jobsWait, noJobWaits, withJobFiles } from '../with-job-files.ts';
import { openTasks } from '../workers.ts';
import { printsTwice, tellWritten, writeOut } from '../write-out.ts';

export interface CostOptions {
  readonly machine?: string;
  readonly material?: string;
  readonly job?: string;
  readonly day?: string;
  readonly start?: string;
  readonly parts?: string;
  readonly queue?: boolean;
  readonly plan?: string;
  readonly month?: string;
  readonly diary?: string;
  readonly today?: string;
  readonly csv?: string;
  readonly json?: boolean;
  readonly units: UnitSystem;
  readonly samples: number;
  readonly workers?: number;
}

const NINE = 9 * 3600;

export async function cost(file: string, jobFile: string | undefined, options: CostOptions, io: Io): Promise<ExitCode> {
  if (printsTwice('cost', options, io)) return 2;
  const source = await loadCabinet(file, 'cost', io);
  if (source === undefined) return 2;
  const wrong = wrongWords(source, jobFile, options);
  if (wrong !== undefined) return refuse(wrong, io);
  const today = dayFrom(options.today, '--today', 'cost', io);
  if (today === undefined) return 2;
  const path = options.diary ?? diaryBeside(file);
  const asked = options.diary !== undefined || options.month !== undefined;
  const found = await loadDiary(path, asked, source.cabinet, today, 'cost', io);
  if (found === undefined) return 2;
  const diary = found === 'none' ? undefined : found.diary;
  const hooks = { samples: options.samples, stop: () => io.stop.aborted, progress: progressLine(io, 'running days') };
  try {
    if (options.month !== undefined) return await ofMonth(source, diary!, path, today, options, hooks, io);
    if (options.queue === true || options.plan !== undefined) return await ofQueue(source, diary, today, options, io);
    return await ofJobs(source, jobFile, diary, today, options, hooks, io);
  } finally {
    io.progress('');
  }
}

type Hooks = Pick<PartCostOptions, 'progress' | 'stop' | 'samples'>;

async function ofJobs(
  source: ReadSource,
  jobFile: string | undefined,
  diary: Diary | undefined,
  today: number,
  options: CostOptions,
  hooks: Hooks,
  io: Io,
): Promise<ExitCode> {
  const { file, cabinet } = source;
  const put = jobFile === undefined ? undefined : await newJob(jobFile, source, options, io);
  if (typeof put === 'number') return put;
  const { day, job, parts } = options;
  const withJob = Object.keys(cabinet.days).filter(
    (id) => job === undefined || Object.hasOwn(cabinet.days[id]!.jobs, job),
  );
  const costs = await partCosts(source, {
    ...hooks,
    today,
    ...(diary === undefined ? {} : { diary }),
    days: day === undefined ? withJob : [day],
    ...(job === undefined ? {} : { job }),
    ...(put === undefined ? {} : { put }),
    ...(parts === undefined ? {} : { partsAJob: Number(parts) }),
  });
  const data = { ...costs, file, cabinet: cabinet.title, ...(jobFile === undefined ? {} : { jobFile }) };
  const written = await give(
    data,
    () => partsCsv(costs),
    () => partsText(cabinet.title, costs, options.units, io),
    options,
    io,
  );
  if (written !== 0) return written;
  if (io.stop.aborted) return 130;
  return costs.parts.length === 0 || costs.parts.some(({ total }) => total.value === undefined) ? 3 : 0;
}

async function ofQueue(
  loaded: ReadSource,
  diary: Diary | undefined,
  today: number,
  options: CostOptions,
  io: Io,
): Promise<ExitCode> {
  const source = await withJobFiles(loaded, io);
  if (typeof source === 'number') return source;
  const { file, cabinet } = source;
  const { origin } = cabinet.queue!;
  const given = options.plan === undefined ? undefined : await earlierPlan(options.plan, origin, io);
  if (typeof given === 'string') return refuse(given, io);
  const { samples, workers } = options;
  const evaluator = openTasks({ runs: 'trials', source }, planRunner(source), { workers, stop: io.stop });
  const made = await longStudy(evaluator, 'planning and running the week', io, async (hooks) => {
    const pause = (): Promise<void> => new Promise((resolve) => setImmediate(resolve));
    const starts = given?.starts ?? (await plan(source, { ...hooks, pause })).jobs;
    if (starts.length === 0) return undefined;
    return queueCosts(source, { ...hooks, starts, samples, today, ...(diary === undefined ? {} : { diary }) });
  });
  if (made === undefined) {
    if (io.stop.aborted) return 130;
    io.err(`stillair cost: there is no plan whose cost could be told; stillair plan ${file} says why`);
    return 1;
  }
  const data = { ...made, file, cabinet: cabinet.title, ...(options.plan === undefined ? {} : { plan: options.plan }) };
  const written = await give(
    data,
    () => queueCsv(made),
    () => queueText(cabinet.title, made, options.units, io),
    options,
    io,
  );
  if (written !== 0) return written;
  return io.stop.aborted ? 130 : made.total.value === undefined ? 3 : 0;
}

async function ofMonth(
  source: ReadSource,
  diary: Diary,
  path: string,
  today: number,
  options: CostOptions,
  hooks: Hooks,
  io: Io,
): Promise<ExitCode> {
  const [year, month] = options.month!.split('-').map(Number) as [number, number];
  const cost = await monthCost(source, { ...hooks, diary, year, month, today });
  const { title } = source.cabinet;
  const data = { ...cost, file: source.file, cabinet: title, diary: path };
  const written = await give(
    data,
    () => monthCsv(cost),
    () => monthText(title, cost, path, io),
    options,
    io,
  );
  if (written !== 0) return written;
  return io.stop.aborted ? 130 : cost.total.value === undefined ? 3 : 0;
}

/** As a table, as data, or into a file. */
async function give(data: object, csv: () => string, text: () => string, options: CostOptions, io: Io): Promise<0 | 2> {
  const { json, csv: out } = options;
  if (out !== undefined) {
    const how = await writeOut('cost', out, csv(), io);
    if (how === undefined) return 2;
    if (how === 'written') tellWritten(out, options, io);
  }
  if (json) io.out(JSON.stringify(data, null, 2));
  else if (out === undefined) io.out(text());
  return 0;
}

/** A job file as a job of a machine of the cabinet; or the status after a complaint. */
async function newJob(
  jobFile: string,
  { cabinet }: ReadSource,
  options: CostOptions,
  io: Io,
): Promise<NewJob | 2 | 130> {
  const known = knownIn(cabinet, { machine: options.machine, material: options.material });
  if (typeof known === 'string') return refuse(known, io);
  const summary = await readJobFile(jobFile, rulesOn(usualRules, known), 'cost', io);
  if (typeof summary === 'number') return summary;
  const { entry } = jobReport(jobFile, summary, known);
  if (entry.material === undefined || entry.mass === undefined)
    return refuse(`${jobFile} says nothing of its material: name it with --material`, io);
  const start = options.start === undefined ? NINE : parseClock(options.start);
  return { entry, machine: known.at!.machine, material: entry.material, start: start as number };
}

/** What is wrong with the options, before anything is computed. */
function wrongWords(
  { file, cabinet }: ReadSource,
  jobFile: string | undefined,
  options: CostOptions,
): string | undefined {
  const { day, job, start, parts, month, machine, material } = options;
  const week = options.queue === true ? '--queue' : options.plan === undefined ? undefined : '--plan';
  const other = Object.entries({ month, day, job, parts }).find(([, value]) => value !== undefined)?.[0];
  if (week !== undefined && jobFile !== undefined)
    return `${week} is of the jobs that wait in the file; name the job file there with job-file:`;
  if (week !== undefined && other !== undefined) return `${week} is of the whole queue: it goes without --${other}`;
  if (week !== undefined && !jobsWait(cabinet)) return noJobWaits(file);
  const days = Object.keys(cabinet.days);
  if (day !== undefined && !days.includes(day)) return unknownName('day', day, days);
  const jobs = days
    .filter((id) => day === undefined || id === day)
    .flatMap((id) => Object.keys(cabinet.days[id]!.jobs));
  if (job !== undefined && !jobs.includes(job)) return unknownName('job', job, [...new Set(jobs)]);
  if (jobFile !== undefined && job !== undefined)
    return '--job names one of the file, and a job file is given: one of the two';
  if (month !== undefined && (jobFile !== undefined || job !== undefined || day !== undefined))
    return '--month is of the whole diary: it goes with no job and no day';
  if (month !== undefined && typeof parsePeriod(`${month}-01`) !== 'object') return `--month: "${month}" is no month`;
  if (month !== undefined && isFault(parsePeriod(`${month}-01`) as object))
    return `--month: "${month}" is no month; write year and month, such as 2026-11`;
  const stray = Object.entries({ start, machine, material }).find(([, value]) => value !== undefined)?.[0];
  if (stray !== undefined && jobFile === undefined)
    return `--${stray} says how a job file is printed, and none is given`;
  if (start !== undefined && typeof parseClock(start) !== 'number')
    return `--start: "${start}" is no time of day, such as 9:00`;
  if (parts !== undefined && !/^[1-9]\d{0,3}$/.test(parts))
    return `--parts: "${parts}" is no whole number from 1 to 9999`;
  return undefined;
}

function refuse(problem: string, io: Io): 2 {
  io.err(`stillair cost: ${problem}`);
  return 2;
}
