// stillair care FILE: what is due, overdue and next by the diary, and what overdue care does to the findings. It also enters what
// was done and what ran.

import {
  type Cabinet,
  type CareRow,
  type CareStudy,
  careCalendar,
  careTasksOf,
  faultRunner,
  care as studyCare,
  type UnitSystem,
} from '@stillair/engine';
import { careText } from '../care-text.ts';
import { type EntryOptions, entryFrom } from '../diary-entry.ts';
import { dayFrom, diaryBeside, enterInDiary, type Found, loadDiary } from '../diary-file.ts';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { longStudy } from '../long-study.ts';
import { exitCodeOf } from '../verdict-words.ts';
import { openTasks } from '../workers.ts';
import { printsTwice, writeOut } from '../write-out.ts';

export interface CareOptions extends EntryOptions {
  readonly diary?: string;
  readonly today?: string;
  readonly all?: boolean;
  readonly began?: string;
  readonly ics?: string;
  readonly json?: boolean;
  readonly units: UnitSystem;
  readonly samples: number;
  readonly workers?: number;
}

export async function care(file: string, options: CareOptions, io: Io): Promise<ExitCode> {
  if (printsTwice('care', options, io)) return 2;
  const source = await loadCabinet(file, 'care', io);
  if (source === undefined) return 2;
  const { cabinet } = source;
  const today = dayFrom(options.today, '--today', 'care', io);
  if (today === undefined) return 2;
  const path = options.diary ?? diaryBeside(file);
  const entering = options.done !== undefined || options.ran !== undefined;
  const found = await loadDiary(path, options.diary !== undefined && !entering, cabinet, today, 'care', io);
  if (found === undefined) return 2;
  if (entering) return enter(path, found, cabinet, today, options, io);
  const stray = (['reading', 'note', 'on', 'machine', 'for', 'mass', 'times', 'failed'] as const).find(
    (name) => options[name] !== undefined,
  );
  if (stray !== undefined) {
    io.err(`stillair care: --${stray} says more of what --done or --ran enters, and neither is given`);
    return 2;
  }
  const evaluator = openTasks({ runs: 'faults', source }, faultRunner(source), {
    workers: options.workers,
    stop: io.stop,
  });
  const study = await longStudy(evaluator, 'looking at what is worn', io, (hooks) =>
    studyCare(source, {
      ...hooks,
      today,
      samples: options.samples,
      ...(found === 'none' ? {} : { diary: found.diary }),
    }),
  );
  const { title } = cabinet;
  if (options.ics !== undefined) {
    const how = await writeOut('care', options.ics, careCalendar(study, title), io);
    if (how === undefined) return 2;
    if (how === 'written') io.err(`wrote ${options.ics}`);
  }
  if (options.ics === '-') return io.stop.aborted ? 130 : exitOf(study);
  if (options.json)
    io.out(JSON.stringify({ ...study, file, cabinet: title, ...(found === 'none' ? {} : { diary: path }) }, null, 2));
  else io.out(careText(title, study, { path, found: found !== 'none' }, options, io));
  if (study.stopped) io.err('Stopped: what overdue parts do to the findings is partial or missing, and so are bands.');
  return io.stop.aborted ? 130 : exitOf(study);
}

/** What is overdue, by the verdicts of the dates; and a finding that fails because of it. */
function exitOf({ tasks }: CareStudy): ExitCode {
  const broken = (row: CareRow): boolean => row.effects?.some(({ verdict }) => verdict === 'fails') ?? false;
  return tasks.some(broken) ? 1 : exitCodeOf(tasks);
}

async function enter(
  path: string,
  found: Exclude<Found, undefined>,
  cabinet: Cabinet,
  today: number,
  options: CareOptions,
  io: Io,
): Promise<ExitCode> {
  const began = dayFrom(options.began ?? options.today, '--began', 'care', io);
  if (began === undefined) return 2;
  if (options.began !== undefined && found !== 'none') {
    io.err(`stillair care: --began is for a first entry, and ${path} is there; change began: in it yourself`);
    return 2;
  }
  const made = entryFrom(options, careTasksOf(cabinet), today);
  if (typeof made === 'string') {
    io.err(`stillair care: ${made}`);
    return 2;
  }
  const { list, entry, first } = made;
  const since = options.began === undefined ? Math.min(began, first) : began;
  const line = await enterInDiary(
    { path, list, entry, title: cabinet.title, began: since },
    found,
    cabinet,
    today,
    'care',
    io,
  );
  if (line === undefined) return 2;
  io.out(`${path}, ${list}:\n  ${line}`);
  return 0;
}
