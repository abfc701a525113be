// stillair calibrate FILE [LOG]: what a log, or a few readings, put right in the file; how surely; what to read next.

import {
  type CalibrationStudy,
  dialReadings,
  editText,
  calibrate as fitted,
  knownUnknowns,
  type Log,
  type LogFault,
  logPicture,
  nearest,
  placedColumn,
  type ReadSource,
  readLog,
  shiftOf,
  type UnitSystem,
  unknownNamed,
  withReadings,
} from '@stillair/engine';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { openLogEvaluator } from '../log-tasks.ts';
import { longStudy } from '../long-study.ts';
import { unknownName } from '../unknown-name.ts';
import { printsTwice, tellWritten, writeOut } from '../write-out.ts';
import { calibrationText } from './calibration-text.ts';

export interface CalibrateOptions {
  readonly day?: string;
  readonly readings?: readonly string[];
  readonly column?: readonly string[];
  readonly shift?: string;
  readonly fit?: readonly string[];
  readonly prior?: boolean;
  readonly write?: boolean;
  readonly svg?: string;
  readonly json?: boolean;
  readonly units: UnitSystem;
  readonly workers?: number;
}

export async function calibrate(
  file: string,
  logFile: string | undefined,
  options: CalibrateOptions,
  io: Io,
): Promise<ExitCode> {
  if (printsTwice('calibrate', options, io)) return 2;
  const source = await loadCabinet(file, 'calibrate', io);
  if (source === undefined) return 2;
  const complain = (text: string): ExitCode => {
    io.err(`stillair calibrate: ${text}`);
    return 2;
  };
  const days = Object.keys(source.cabinet.days);
  const day = options.day ?? days[0]!;
  if (!days.includes(day)) return complain(unknownName('day', day, days));
  const strange = options.fit?.find((id) => unknownNamed(id, source) === undefined);
  if (strange !== undefined) return complain(noUnknown(strange, source));
  const log = await openLog(source, logFile, options, io);
  if ('fault' in log) return complain(`${log.fault}; ${log.mend}`);
  let study: CalibrationStudy;
  try {
    study = await longStudy(
      openLogEvaluator(source, { workers: options.workers, stop: io.stop }),
      'running the day',
      io,
      (hooks) =>
        fitted(source, log, {
          ...hooks,
          day,
          ...(options.fit === undefined ? {} : { fit: options.fit }),
          ...(options.prior === undefined ? {} : { prior: options.prior }),
        }),
    );
  } catch (error) {
    if (error instanceof RangeError) return complain(error.message.replace(/^calibrate: /, ''));
    throw error;
  }
  if (options.json) io.out(JSON.stringify({ ...study, file, cabinet: source.cabinet.title }, null, 2));
  else io.out(calibrationText(source, study, options, io));
  if (study.stopped) {
    io.err('Stopped: nothing was fitted and nothing was written.');
    return 130;
  }
  return finish(file, source, study, options, io);
}

async function finish(
  file: string,
  source: ReadSource,
  study: CalibrationStudy,
  options: CalibrateOptions,
  io: Io,
): Promise<ExitCode> {
  const tell = (path: string): void => tellWritten(path, options, io);
  if (options.svg !== undefined) {
    const how = await writeOut('calibrate', options.svg, logPicture(source.cabinet.title, study, options.units), io);
    if (how === undefined) return 2;
    if (how === 'written') tell(options.svg);
  }
  if (options.write === true && study.edits.length > 0) {
    const problem = await io.write(file, editText(source.text, study.edits), 'whole');
    if (problem !== undefined) {
      io.err(`stillair calibrate: cannot write ${file}: ${problem}`);
      return 2;
    }
    tell(file);
  }
  const sure = study.unknowns.length > 0 && study.converged && study.unknowns.every(({ atBound }) => !atBound);
  return sure ? 0 : 3;
}

/** The log named, or readings typed; both are one log when both are there. */
export async function openLog(
  source: ReadSource,
  logFile: string | undefined,
  { readings = [], column = [], shift }: Pick<CalibrateOptions, 'readings' | 'column' | 'shift'>,
  io: Io,
): Promise<Log | LogFault> {
  if (logFile === undefined && readings.length === 0)
    return {
      fault: 'there is neither a log nor a reading',
      mend: 'name a CSV file, or type --readings "14:05 top 41 °C"',
    };
  const columns: Record<string, string> = {};
  for (const text of column) {
    const placed = placedColumn(text);
    if (placed === undefined) return { fault: `--column "${text}" has no "="`, mend: 'write --column "Temp 1=top"' };
    columns[placed[0]] = placed[1];
  }
  const moved = shift === undefined ? 0 : shiftOf(shift);
  if (moved === undefined)
    return { fault: `--shift "${shift}" is no time`, mend: 'write it such as "1 h" or "-30 min"' };
  const typed = readings.length === 0 ? undefined : dialReadings(readings, source.cabinet);
  if (typed !== undefined && ('fault' in typed || logFile === undefined)) return typed;
  const reading = await io.read(logFile!);
  if (!reading.ok) return { fault: `cannot read ${logFile}: ${reading.problem}`, mend: 'name a CSV file' };
  const log = readLog(logFile!, reading.text, source.cabinet, { columns, shift: moved });
  return 'fault' in log || typed === undefined ? log : withReadings(log, typed);
}

function noUnknown(id: string, source: ReadSource): string {
  const known = knownUnknowns(source);
  const near = nearest(id, known);
  return `--fit: there is no unknown "${id}"; ${near === undefined ? `there are: ${known.join(', ')}, and the paths that check names` : `did you mean ${near}?`}`;
}
