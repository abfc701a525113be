// stillair drift FILE LOG: has the cabinet drifted since its file was put right, since when, and what would explain it?

import {
  type DriftStudy,
  driftAdvice,
  driftAlarmText,
  drift as driftOf,
  driftOpeningText,
  driftPicture,
  driftVerdictText,
  formatNumber,
  isFault,
  parseQuantity,
  placeText,
  type ReadSource,
  sizeText,
  type UnitSystem,
  unknownText,
} from '@stillair/engine';
import { inkFor } from '../ink.ts';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { openLogEvaluator } from '../log-tasks.ts';
import { longStudy } from '../long-study.ts';
import { table } from '../table.ts';
import { hanging } from '../text.ts';
import { unknownName } from '../unknown-name.ts';
import { printsTwice, tellWritten, writeOut } from '../write-out.ts';
import { openLog } from './calibrate.ts';
import { remarksText } from './calibration-text.ts';

export interface DriftOptions {
  readonly day?: string;
  readonly settled?: string;
  readonly column?: readonly string[];
  readonly shift?: string;
  readonly svg?: string;
  readonly json?: boolean;
  readonly units: UnitSystem;
  readonly workers?: number;
}

export async function drift(file: string, logFile: string, options: DriftOptions, io: Io): Promise<ExitCode> {
  if (printsTwice('drift', options, io)) return 2;
  const source = await loadCabinet(file, 'drift', io);
  if (source === undefined) return 2;
  const complain = (text: string): ExitCode => {
    io.err(`stillair drift: ${text}`);
    return 2;
  };
  const days = Object.keys(source.cabinet.days);
  const day = options.day ?? source.cabinet.calibration?.day ?? days[0]!;
  if (!days.includes(day)) return complain(unknownName('day', day, days));
  const settled = options.settled === undefined ? undefined : parseQuantity('duration', options.settled);
  if (settled !== undefined && isFault(settled)) return complain(`--settled: ${settled.what}; ${settled.mend}`);
  const log = await openLog(source, logFile, options, io);
  if ('fault' in log) return complain(`${log.fault}; ${log.mend}`);
  let study: DriftStudy;
  try {
    study = await longStudy(
      openLogEvaluator(source, { workers: options.workers, stop: io.stop }),
      'running the days',
      io,
      (hooks) => driftOf(source, log, { ...hooks, day, ...(settled === undefined ? {} : { settled: settled.value }) }),
    );
  } catch (error) {
    if (error instanceof RangeError) return complain(error.message.replace(/^(?:drift|calibrate): /, ''));
    throw error;
  }
  if (options.json) io.out(JSON.stringify({ ...study, file, cabinet: source.cabinet.title }, null, 2));
  else io.out(driftText(source, study, options.units, io));
  if (study.stopped) {
    io.err('Stopped: what could explain a drift was not asked to the end.');
    return 130;
  }
  if (options.svg !== undefined) {
    const picture = driftPicture(source.cabinet.title, study);
    const how = await writeOut('drift', options.svg, picture, io);
    if (how === undefined) return 2;
    if (how === 'written') tellWritten(options.svg, options, io);
  }
  return study.drifted || study.tooShort ? 3 : 0;
}

function driftText({ cabinet }: ReadSource, study: DriftStudy, units: UnitSystem, io: Io): string {
  const ink = inkFor(io);
  const width = io.columns;
  return [
    `${ink.strong(cabinet.title)}\n${hanging('', driftOpeningText(study), width)}`,
    remarksText(study.log.remarks, width),
    study.columns.length === 0 ? '' : columnTable(study, units, width),
    hanging('', study.drifted ? ink.strong(driftVerdictText(study, units)) : driftVerdictText(study, units), width),
    study.explanations.length === 0
      ? ''
      : `${ink.strong('What would explain it')}\n${explanationTable(study, units, width)}`,
    study.drifted ? hanging('', driftAdvice(study), width) : '',
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function columnTable({ columns }: DriftStudy, units: UnitSystem, width: number): string {
  return table(
    [
      { head: 'column', least: 6 },
      { head: 'place', least: 6 },
      { head: 'hours', align: 'right' },
      { head: 'scatter', align: 'right' },
      { head: 'carried over an hour', align: 'right' },
      { head: 'sum, of its limit', align: 'right' },
      { head: 'alarm', least: 12 },
    ],
    columns.map((column) => [
      column.name,
      placeText(column.place),
      String(column.hours),
      sizeText(column, column.noise.spread, units),
      formatNumber(column.noise.carry, 2),
      `${formatNumber(column.cusum.most, 1)} of ${formatNumber(column.cusum.limit, 1)}`,
      driftAlarmText(column),
    ]),
    width,
  );
}

function explanationTable({ explanations }: DriftStudy, units: UnitSystem, width: number): string {
  return table(
    [
      { head: 'if this alone changed', least: 16 },
      { head: 'from', align: 'right' },
      { head: 'to', align: 'right' },
      { head: 'it explains', align: 'right' },
      { head: 'of what is off', least: 10 },
    ],
    explanations.map(({ label, unit, was, value, explains, atBound }) => [
      label,
      unknownText(unit, was, units),
      unknownText(unit, value, units),
      `${Math.round(100 * explains)} %`,
      atBound ? 'at the end of what it may be' : '',
    ]),
    width,
  );
}
