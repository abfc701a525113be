// stillair job FILE: what a job file for a machine comes to: how long, how much, how hot, and whether it stays on the machine.

import {
  durationText,
  formatDate,
  formatNumber,
  isFault,
  type JobKnown,
  type JobReport,
  jobReport,
  parseQuantity,
  rulesOn,
  type UnitSystem,
  usualRules,
} from '@stillair/engine';
import { dayFrom, enterInDiary, loadDiary } from '../diary-file.ts';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { knownIn, readJobFile } from '../read-job-file.ts';
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

export async function job(file: string, options: JobOptions, io: Io): Promise<ExitCode> {
  const known = await knownOf(options, io);
  if (known === undefined) return 2;
  const acceleration = numberOf('acceleration', options.acceleration, [0.001, 1000]);
  if (typeof acceleration === 'string') return wrong(io, acceleration);
  const rules = { ...rulesOn(usualRules, known), ...(acceleration && { acceleration }), dwell: options.dwell };
  const summary = await readJobFile(file, rules, 'job', io);
  if (typeof summary === 'number') return summary;
  const report = jobReport(file, summary, known);
  if (options.diary !== undefined) return enter(report, known, options, io);
  if (options.json) io.out(JSON.stringify(jobData(file, summary, report, rules), null, 2));
  else io.out(jobText(file, summary, report, rules, options.units, io));
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
  const found = knownIn(source?.cabinet, { machine, material });
  return typeof found === 'string' ? nothing(io, found) : { ...found, ...(diameter && { diameter }) };
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
