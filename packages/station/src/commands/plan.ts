// stillair plan FILE: when to start each job of the queue.

import {
  formatMoment,
  isFault,
  type KeptStart,
  momentAfter,
  type Plan,
  parseMoment,
  plan,
  planCalendar,
  planPicture,
  type ReadSource,
  type UnitSystem,
} from '@stillair/engine';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { longStudy } from '../long-study.ts';
import { openTrialEvaluator } from '../workers.ts';
import { printsTwice, tellWritten, writeOut } from '../write-out.ts';
import { planText } from './plan-text.ts';

export interface PlanCommandOptions {
  readonly now?: string;
  readonly keep?: string;
  readonly svg?: string;
  readonly ics?: string;
  readonly json?: boolean;
  readonly nodes?: number;
  readonly units: UnitSystem;
  readonly workers?: number;
}

const DAY = 86_400;

export async function planCommand(file: string, options: PlanCommandOptions, io: Io): Promise<ExitCode> {
  if (printsTwice('plan', options, io)) return 2;
  const source = await loadCabinet(file, 'plan', io);
  if (source === undefined) return 2;
  const { queue, title, machines } = source.cabinet;
  if (queue === undefined || Object.keys(queue.jobs).length === 0)
    return wrong(io, `there is no job that waits in ${file}: give it a queue: with from: and jobs: (docs/plan.md)`);
  const now = nowOf(options.now, source);
  if (typeof now === 'string') return wrong(io, now);
  const keep = await keptOf(options.keep, queue.origin, io);
  if (typeof keep === 'string') return wrong(io, keep);
  const evaluator = openTrialEvaluator(source, { workers: options.workers, stop: io.stop });
  const made = await longStudy(evaluator, 'planning', io, (hooks) =>
    plan(source, {
      ...hooks,
      keep,
      ...(now === undefined ? {} : { now }),
      ...(options.nodes === undefined ? {} : { nodes: options.nodes }),
      pause: () => new Promise((resolve) => setImmediate(resolve)),
    }),
  );
  const written = await write(made, source, Object.keys(machines), options, io);
  if (written === undefined) return 2;
  if (options.json) io.out(JSON.stringify({ ...made, file, cabinet: title }, null, 2));
  else if (!written) io.out(planText(made, source.cabinet, options.units, io));
  if (io.stop.aborted) {
    io.err('Stopped: the plan is not finished.');
    return 130;
  }
  return exitOf(made);
}

/** 1 when there is no plan, a deadline is missed, or a limit fails that the jobs do not break alone; 3 when something is not known. */
function exitOf({ found, jobs, checks, aims }: Plan): ExitCode {
  if (found === 'no' || jobs.some(({ late }) => late)) return 1;
  if (checks.some(({ verdict }) => verdict === 'fails')) return 1;
  return found === 'unknown' || aims.some(({ proved }) => !proved) ? 3 : 0;
}

/** s after the origin's midnight, or what is wrong with the words. */
function nowOf(text: string | undefined, { cabinet }: ReadSource): number | string | undefined {
  if (text === undefined) return undefined;
  const { origin, from, until } = cabinet.queue!;
  const moment = parseMoment(text);
  if (isFault(moment)) return `--now: ${moment.what}; ${moment.mend}`;
  const now = momentAfter(moment, origin, from);
  return now < until ? now : `--now: ${text} is after the plan, which ends at ${formatMoment(origin, until)}`;
}

/** Starts of an earlier plan, counted from this queue's origin. */
async function keptOf(path: string | undefined, origin: number, io: Io): Promise<readonly KeptStart[] | string> {
  if (path === undefined) return [];
  const reading = await io.read(path);
  if (!reading.ok) return `cannot read ${path}: ${reading.problem}`;
  let earlier: Partial<Plan>;
  try {
    earlier = JSON.parse(reading.text) as Partial<Plan>;
  } catch {
    return `${path} is no JSON: give what stillair plan --json printed`;
  }
  if (earlier?.version !== 1 || !Array.isArray(earlier.jobs) || typeof earlier.queue?.origin !== 'number')
    return `${path} is no plan of version 1: give what stillair plan --json printed`;
  const shift = (earlier.queue.origin - origin) * DAY;
  return earlier.jobs.map(({ id, machine, start }) => ({ id, machine, start: start + shift }));
}

/** Whether something was printed in place of the text; undefined when a file could not be written. */
async function write(
  made: Plan,
  { cabinet: { title } }: ReadSource,
  machines: readonly string[],
  options: PlanCommandOptions,
  io: Io,
): Promise<boolean | undefined> {
  const { svg, ics, units, json } = options;
  const files: readonly (readonly [string | undefined, () => string])[] = [
    [svg, () => planPicture(made, { title, machines, units })],
    [ics, () => planCalendar(made, title)],
  ];
  let printed = json === true;
  for (const [path, text] of files) {
    if (path === undefined) continue;
    const how = await writeOut('plan', path, text(), io);
    if (how === undefined) return undefined;
    if (how === 'printed') printed = true;
    else tellWritten(path, options, io);
  }
  return printed;
}

function wrong(io: Io, problem: string): ExitCode {
  io.err(`stillair plan: ${problem}`);
  return 2;
}
