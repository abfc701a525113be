// stillair plan FILE: when to start each job of the queue.

import {
  formatMoment,
  isFault,
  momentAfter,
  type Plan,
  parseMoment,
  plan,
  planCalendar,
  planPicture,
  planRunner,
  type ReadSource,
  type UnitSystem,
} from '@stillair/engine';
import { earlierPlan } from '../earlier-plan.ts';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { longStudy } from '../long-study.ts';
import { jobsWait, noJobWaits, withJobFiles } from '../with-job-files.ts';
import { openTasks } from '../workers.ts';
import { printsTwice, tellWritten, writeOut } from '../write-out.ts';
import { planText } from './plan-text.ts';

export interface PlanCommandOptions {
  readonly now?: string;
  readonly keep?: string;
  readonly svg?: string;
  readonly ics?: string;
  readonly json?: boolean;
  readonly nodes?: number;
  readonly samples: number;
  readonly units: UnitSystem;
  readonly workers?: number;
}

export async function planCommand(file: string, options: PlanCommandOptions, io: Io): Promise<ExitCode> {
  if (printsTwice('plan', options, io)) return 2;
  const loaded = await loadCabinet(file, 'plan', io);
  if (loaded === undefined) return 2;
  const { queue, title, machines } = loaded.cabinet;
  if (queue === undefined || !jobsWait(loaded.cabinet)) return wrong(io, noJobWaits(file));
  const source = await withJobFiles(loaded, io);
  if (typeof source === 'number') return source;
  const now = nowOf(options.now, source);
  if (typeof now === 'string') return wrong(io, now);
  const earlier = options.keep === undefined ? undefined : await earlierPlan(options.keep, queue.origin, io);
  if (typeof earlier === 'string') return wrong(io, earlier);
  const evaluator = openTasks({ runs: 'trials', source }, planRunner(source), {
    workers: options.workers,
    stop: io.stop,
  });
  const made = await longStudy(evaluator, 'planning', io, (hooks) =>
    plan(source, {
      ...hooks,
      ...(earlier === undefined ? {} : { keep: earlier.starts, cuts: earlier.cuts }),
      samples: options.samples,
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
    io.err(
      made.found === 'yes' && made.samples.asked > 0
        ? `Stopped: ${made.samples.ran} of ${made.samples.asked} samples of the week ran; bands rest on these.`
        : 'Stopped: the plan is not finished.',
    );
    return 130;
  }
  return exitOf(made);
}

/** 1 when there is no plan, a deadline is missed or a limit fails; 3 when one is tight, or something is not proved. */
function exitOf({ found, jobs, checks, aims }: Plan): ExitCode {
  if (found === 'no' || jobs.some(({ late }) => late)) return 1;
  if (checks.some(({ verdict }) => verdict === 'fails')) return 1;
  const tight = checks.some(({ verdict }) => verdict === 'tight');
  return found === 'unknown' || tight || aims.some(({ proved }) => !proved) ? 3 : 0;
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
