// stillair job FILE: what a job file for a machine comes to: how long, how much, how hot, and whether it stays on the machine.

import {
  durationText,
  endJob,
  formatComplaint,
  formatDate,
  formatNumber,
  isFault,
  type JobKnown,
  type JobReport,
  jobReport,
  materialsOf,
  nearest,
  openJob,
  parseQuantity,
  rulesOn,
  takeBytes,
  type UnitSystem,
  usualRules,
} from '@stillair/engine';
import { dayFrom, enterInDiary, loadDiary } from '../diary-file.ts';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { progressLine } from '../progress.ts';
import { fileProblem } from '../read-file.ts';
import { exitCodeOf } from '../verdict-words.ts';
import { jobData, jobText } from './job-text.ts';

export interface JobOptions {
  readonly cabinet?: string;
  readonly machine?: string;
  readonly material?: string;
  readonly acceleration?: string;
  readonly diameter?: string;
  readonly dwell: 'milliseconds' | 'seconds';
  readonly diary?: string;
  readonly on?: string;
  readonly start?: string;
  readonly json?: boolean;
  readonly units: UnitSystem;
}

const MEGABYTE = 1e6;

export async function job(file: string, options: JobOptions, io: Io): Promise<ExitCode> {
  const known = await knownOf(options, io);
  if (known === undefined) return 2;
  const acceleration = numberOf('acceleration', options.acceleration, [0.001, 1000]);
  if (typeof acceleration === 'string') return wrong(io, acceleration);
  const rules = { ...rulesOn(usualRules, known), ...(acceleration && { acceleration }), dwell: options.dwell };

  const stream = await io.stream(file);
  if (!stream.ok) return wrong(io, `cannot read ${file}: ${stream.problem}`);
  const reading = openJob(file, rules);
  const progress = progressLine(io, 'reading, MB');
  try {
    for await (const piece of stream.pieces) {
      takeBytes(reading, piece);
      progress(Math.floor(reading.bytes / MEGABYTE), Math.ceil(stream.bytes / MEGABYTE));
      if (reading.done || io.stop.aborted) break;
    }
  } catch (error) {
    return wrong(io, `cannot read ${file}: ${fileProblem(error)}`);
  } finally {
    io.progress('');
  }
  if (io.stop.aborted) {
    io.err(`Stopped: ${Math.floor(reading.bytes / MEGABYTE)} of ${Math.ceil(stream.bytes / MEGABYTE)} MB were read`);
    return 130;
  }
  const answer = endJob(reading);
  if (!answer.ok) {
    io.err(answer.complaints.map(formatComplaint).join('\n\n'));
    const faults = answer.complaints.length + answer.more;
    io.err(`\n${faults === 1 ? '1 fault' : `${faults} faults or more`} in ${file}; nothing was computed.`);
    return 2;
  }
  const report = jobReport(file, answer.job, known);
  if (options.diary !== undefined) return enter(report, known, options, io);
  if (options.json) io.out(JSON.stringify(jobData(file, answer.job, report, rules), null, 2));
  else io.out(jobText(file, answer.job, report, rules, options.units, io));
  return exitCodeOf(report.checks);
}

/** Into the diary as a job that ran; its time is the estimate, and what the file does not know is left out. */
async function enter({ entry }: JobReport, { at }: JobKnown, options: JobOptions, io: Io): Promise<ExitCode> {
  const path = options.diary!;
  if (at === undefined) return wrong(io, '--diary: say with --cabinet which cabinet it is the diary of');
  const today = dayFrom(undefined, '--on', 'job', io);
  const day = dayFrom(options.on, '--on', 'job', io);
  if (today === undefined || day === undefined) return 2;
  const found = await loadDiary(path, false, at.cabinet, today, 'job', io);
  if (found === undefined) return 2;
  const line = await enterInDiary(
    {
      path,
      list: 'jobs',
      title: at.cabinet.title,
      began: day,
      entry: {
        on: formatDate(day),
        job: entry.name,
        machine: entry.machine,
        material: entry.material,
        start: options.start,
        for: durationText(entry.for),
        mass: entry.mass === undefined ? undefined : `${formatNumber(entry.mass * 1000, 2)} g`,
      },
    },
    found,
    at.cabinet,
    today,
    'job',
    io,
  );
  if (line === undefined) return 2;
  io.out(`${path}, jobs:\n  ${line}`);
  return 0;
}

/** Machine, material and filament as the person named them; undefined after a complaint. */
async function knownOf(asked: JobOptions, io: Io): Promise<JobKnown | undefined> {
  const { cabinet: file, machine, material } = asked;
  const diameter = numberOf('length', asked.diameter, [0.0005, 0.01]);
  if (typeof diameter === 'string') return nothing(io, diameter);
  if (file === undefined && machine !== undefined) {
    return nothing(io, '--machine names one of a cabinet file: say which with --cabinet');
  }
  const source = file === undefined ? undefined : await loadCabinet(file, 'job', io);
  if (file !== undefined && source === undefined) return undefined;
  const cabinet = source?.cabinet;
  const materials = materialsOf(cabinet);
  if (material !== undefined && !Object.hasOwn(materials, material)) {
    return nothing(io, unknownName('material', material, materials));
  }
  const known: JobKnown = { ...(material && { material }), ...(diameter && { diameter }) };
  if (cabinet === undefined) return known;
  const machines = Object.keys(cabinet.machines);
  const chosen = machine ?? (machines.length === 1 ? machines[0]! : undefined);
  if (chosen === undefined) return nothing(io, `--machine: say which of ${machines.join(', ')} runs this job`);
  if (!Object.hasOwn(cabinet.machines, chosen)) return nothing(io, unknownName('machine', chosen, cabinet.machines));
  return { ...known, at: { cabinet, machine: chosen } };
}

function unknownName(what: string, name: string, among: Readonly<Record<string, unknown>>): string {
  const near = nearest(name, Object.keys(among));
  const instead = near === undefined ? `there are ${Object.keys(among).join(', ')}` : `did you mean ${near}?`;
  return `--${what}: there is no ${name}; ${instead}`;
}

/** An SI value within its bounds, undefined where none was given, or what is wrong with it. */
function numberOf(
  kind: 'acceleration' | 'length',
  text: string | undefined,
  [least, most]: readonly [number, number],
): number | string | undefined {
  if (text === undefined) return undefined;
  const name = kind === 'length' ? 'diameter' : kind;
  const quantity = parseQuantity(kind, text);
  if (isFault(quantity)) return `--${name}: ${quantity.what}; ${quantity.allowed}`;
  if (quantity.value >= least && quantity.value <= most) return quantity.value;
  return `--${name}: ${text} is not between ${least} and ${most} ${kind === 'length' ? 'm' : 'm/s2'}`;
}

function nothing(io: Io, problem: string): undefined {
  io.err(`stillair job: ${problem}`);
  return undefined;
}

function wrong(io: Io, problem: string): ExitCode {
  io.err(`stillair job: ${problem}`);
  return 2;
}
