// A log of the real cabinet that a person picked, or readings that they typed, held against the file. None of it leaves the computer.

import {
  type CalibrationStudy,
  calibrate,
  dialReadings,
  drift,
  driftPicture,
  type Log,
  type LogFault,
  type LogOutcome,
  type LogPlan,
  type LogTask,
  logPicture,
  logRunner,
  placedColumn,
  type ReadSource,
  readLog,
  shiftOf,
  withReadings,
} from '@stillair/engine';
import type { Hands, Hooks, Spread } from './hands.ts';
import { measuredOver } from './measured.ts';
import type { Results, Wishes } from './protocol.ts';

export async function calibrateBy(
  source: ReadSource,
  wishes: Wishes,
  hands: Hands,
  { progress, stop }: Hooks,
): Promise<Results['calibrate']> {
  const log = await logOf(source, wishes);
  if ('fault' in log) return log;
  const { units = 'metric' } = wishes;
  const day = dayOf(source, wishes);
  const study = await plainly(() =>
    calibrate(source, log, { day, evaluate: (plan) => evaluating(source, plan, hands), progress, stop }),
  );
  return {
    study,
    overlay: measuredOver(source.cabinet, study, units),
    ...pictured(study, () => logPicture(source.cabinet.title, study, units)),
  };
}

export async function driftBy(
  source: ReadSource,
  wishes: Wishes,
  hands: Hands,
  { progress, stop }: Hooks,
): Promise<Results['drift']> {
  const log = await logOf(source, wishes);
  if ('fault' in log) return log;
  const { calibration } = source.cabinet;
  const day = dayOf(source, wishes, calibration?.day);
  const study = await plainly(() =>
    drift(source, log, { day, evaluate: (plan) => evaluating(source, plan, hands), progress, stop }),
  );
  return { study, ...pictured(study, () => driftPicture(source.cabinet.title, study)) };
}

function evaluating(source: ReadSource, plan: LogPlan, hands: Hands): Spread<LogTask, LogOutcome> {
  return hands.spread({ runs: 'log', text: source.text, plan, here: logRunner(source, plan) });
}

/** A study that was stopped has no column to draw. */
function pictured(
  { columns }: { readonly columns: CalibrationStudy['columns'] | readonly unknown[] },
  draw: () => string,
): { readonly picture?: string } {
  return columns.length === 0 ? {} : { picture: draw() };
}

function dayOf({ cabinet }: ReadSource, { days }: Wishes, usual = Object.keys(cabinet.days)[0]!): string {
  return days?.[0] ?? usual;
}

/** The file that was picked, or the readings typed; both are one log where both are there. */
export async function logOf(
  { cabinet }: Pick<ReadSource, 'cabinet'>,
  { file, readings = [], columns: placed = [], shift }: Omit<Wishes, 'samples'>,
): Promise<Log | LogFault> {
  const typed = readings.length === 0 ? undefined : dialReadings(readings, cabinet);
  if (typed !== undefined && ('fault' in typed || file === undefined)) return typed;
  if (file === undefined)
    return { fault: 'there is neither a log nor a reading', mend: 'pick a log, or type a reading' };
  const columns: Record<string, string> = {};
  for (const line of placed) {
    const one = placedColumn(line);
    if (one === undefined) return { fault: `"${line}" says no place of a column`, mend: 'write it such as Temp 1=top' };
    columns[one[0]] = one[1];
  }
  const moved = shift === undefined ? 0 : shiftOf(shift);
  if (moved === undefined)
    return { fault: `"${shift}" is no time to shift by`, mend: 'write it such as 1 h or -30 min' };
  const log = readLog(file.name, await file.text(), cabinet, { columns, shift: moved });
  return 'fault' in log || typed === undefined ? log : withReadings(log, typed);
}

/** What is wrong with a log is told without the name of a function before it. */
async function plainly<Study>(run: () => Promise<Study>): Promise<Study> {
  try {
    return await run();
  } catch (error) {
    if (error instanceof RangeError) throw new Error(error.message.replace(/^(?:drift|calibrate): /, ''));
    throw error;
  }
}
