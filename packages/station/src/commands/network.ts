// stillair network FILE: what a bare network of air, heat and contaminants does.

import {
  answerNetwork,
  type CrossingsAnswer,
  formatComplaint,
  type NetworkAnswer,
  type NetworkFile,
  type RunAnswer,
  readNetwork,
} from '@stillair/engine';
import { inkFor } from '../ink.ts';
import type { ExitCode, Io } from '../io.ts';
import { table } from '../table.ts';

export interface NetworkOptions {
  readonly at?: readonly number[];
  readonly json?: boolean;
}

/** Events told before the rest is only counted. */
const MOST_EVENTS = 30;

export async function network(path: string, options: NetworkOptions, io: Io): Promise<ExitCode> {
  const reading = await io.read(path);
  if (!reading.ok) {
    io.err(`stillair network: cannot read ${path}: ${reading.problem}`);
    return 2;
  }
  const file = readNetwork(path, reading.text);
  if ('complaints' in file) {
    io.err(file.complaints.map(formatComplaint).join('\n\n'));
    return 2;
  }
  const late = timeOutside(file, options.at ?? []);
  if (late !== undefined) {
    io.err(`stillair network: --at: ${late} s is after the end of the run, ${file.network.duration} s`);
    return 2;
  }
  const answer = answerNetwork(file, options.at);
  if (options.json) io.out(JSON.stringify(answer, null, 2));
  else io.out(inWords(answer, options.at, io));
  return 0;
}

function timeOutside({ analysis, network: { duration } }: NetworkFile, times: readonly number[]): number | undefined {
  return analysis === 'transient' ? times.find((time) => time > duration) : undefined;
}

function inWords(answer: NetworkAnswer, asked: readonly number[] | undefined, io: Io): string {
  const ink = inkFor(io);
  const title = ink.strong(answer.title || answer.id);
  if (!('answers' in answer)) return [title, ...sections(answer, asked, io)].join('\n\n');
  const runs = answer.answers.map((each) =>
    [ink.strong(`${answer.sweep} = ${each.value}`), ...sections(each, asked, io)].join('\n\n'),
  );
  return [title, ...runs].join('\n\n');
}

function sections(answer: RunAnswer | CrossingsAnswer, asked: readonly number[] | undefined, io: Io): string[] {
  if ('operatingPoints' in answer) return [crossings(answer, io)];
  const at = columnsOf(answer.times, asked);
  const section = (head: string, values: Readonly<Record<string, readonly number[]>>) =>
    courses(head, values, answer.times, at, io);
  return [
    section('temperature, °C', answer.temperatures),
    section('pressure, Pa', answer.pressures),
    section('air flow, kg/s', answer.flows),
    ...Object.entries(answer.concentrations).map(([name, zones]) => section(name, zones)),
    section('bed power, W', answer.bedPowers),
    events(answer, io),
    ...answer.warnings.map(({ message }) => `note: ${message}`),
  ].filter((text) => text !== '');
}

/** Which of the answer's times stand in the table: those asked for, else the first and the last. */
function columnsOf(times: readonly number[], asked: readonly number[] | undefined): number[] {
  if (asked !== undefined || times.length < 3) return times.map((_, at) => at);
  return [0, times.length - 1];
}

function courses(
  head: string,
  values: Readonly<Record<string, readonly number[]>>,
  times: readonly number[],
  at: readonly number[],
  io: Io,
): string {
  const rows = Object.entries(values).map(([name, course]) => [name, ...at.map((column) => digits(course[column]!))]);
  if (rows.length === 0) return '';
  const heads = at.map((column) => ({ head: `${digits(times[column]!)} s`, align: 'right', least: 8 }) as const);
  return table([{ head }, ...heads], rows, io.columns);
}

function crossings({ operatingPoints }: CrossingsAnswer, io: Io): string {
  const rows = Object.entries(operatingPoints).flatMap(([path, points]) =>
    points.map(({ m3_h, kg_s, stable }) => [path, digits(m3_h), digits(kg_s), stable ? 'stable' : 'not stable']),
  );
  const right = { align: 'right', least: 8 } as const;
  const columns = [
    { head: 'operating point of' },
    { head: 'm³/h', ...right },
    { head: 'kg/s', ...right },
    { head: '' },
  ];
  return table(columns, rows, io.columns);
}

function events({ events: all }: RunAnswer, io: Io): string {
  if (all.length === 0) return '';
  const rows = all.slice(0, MOST_EVENTS).map(({ time, what, to }) => [digits(time), what, to]);
  const more = all.length > MOST_EVENTS ? `\nand ${all.length - MOST_EVENTS} more; --json gives all` : '';
  return table([{ head: 'at, s', align: 'right' }, { head: 'what' }, { head: 'becomes' }], rows, io.columns) + more;
}

/** Six digits: these runs are for comparison. */
function digits(value: number): string {
  return String(Number(value.toPrecision(6)));
}
