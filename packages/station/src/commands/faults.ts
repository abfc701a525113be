// stillair faults FILE: every single fault, what it comes to, and what in the file catches it.

import {
  catchText,
  type FaultRow,
  type FaultStudy,
  faultRunner,
  faults as studyFaults,
  type UnitSystem,
} from '@stillair/engine';
import { effectText } from '../effect-text.ts';
import { type Ink, inkFor } from '../ink.ts';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { longStudy } from '../long-study.ts';
import { sourceNotes } from '../source-notes.ts';
import { table } from '../table.ts';
import { hanging } from '../text.ts';
import { unknownName } from '../unknown-name.ts';
import { openTasks } from '../workers.ts';

export interface FaultsOptions {
  readonly day?: string;
  readonly all?: boolean;
  readonly json?: boolean;
  readonly units: UnitSystem;
  readonly samples: number;
  readonly workers?: number;
}

export async function faults(file: string, options: FaultsOptions, io: Io): Promise<ExitCode> {
  const source = await loadCabinet(file, 'faults', io);
  if (source === undefined) return 2;
  const known = Object.keys(source.cabinet.days);
  const { day } = options;
  if (day !== undefined && !known.includes(day)) {
    io.err(`stillair faults: ${unknownName('day', day, known)}`);
    return 2;
  }
  const evaluator = openTasks({ runs: 'faults', source }, faultRunner(source), {
    workers: options.workers,
    stop: io.stop,
  });
  const study = await longStudy(evaluator, 'running faults', io, (hooks) =>
    studyFaults(source, { ...hooks, ...(day === undefined ? {} : { days: [day] }), samples: options.samples }),
  );
  const { title } = source.cabinet;
  if (options.json) io.out(JSON.stringify({ ...study, file, cabinet: title }, null, 2));
  else io.out(inWords(title, study, options, io));
  if (study.stopped) {
    const left = study.faults.filter(({ notRun }) => notRun === true).length;
    io.err(`Stopped: ${left} of ${study.faults.length} faults were not run, and bands are partial or missing.`);
  }
  return io.stop.aborted ? 130 : exitOf(study);
}

/** 1 when a fault that nothing catches in time breaks a limit of people or machine; 3 when any fault has an effect at all. */
function exitOf(study: FaultStudy): ExitCode {
  const open = study.faults.filter(({ caught }) => caught !== 'in time').flatMap(({ effects }) => effects);
  if (open.some(({ severity, verdict }) => verdict === 'fails' && (severity === 'people' || severity === 'machine')))
    return 1;
  return study.faults.some(({ effects }) => effects.length > 0) ? 3 : 0;
}

const CAUTION =
  'One fault at a time, each for the whole day; a judgement of severity, not a proof. It is no substitute for local codes and licensed practice, and what no trade judges (a loose terminal, a print that lets go) is not seen.';

function inWords(title: string, study: FaultStudy, options: FaultsOptions, io: Io): string {
  const ink = inkFor(io);
  const notes = sourceNotes();
  const ran = study.faults.filter(({ notRun, fault }) => notRun !== true && fault === undefined);
  const acting = ran.filter(({ effects }) => effects.length > 0);
  const idle = ran.filter(({ effects }) => effects.length === 0);
  const failed = study.faults.filter(({ fault }) => fault !== undefined);
  const groups = [
    { head: 'Nothing in the file catches these', rows: acting.filter(({ caught }) => caught === 'nothing') },
    { head: 'Caught too late', rows: acting.filter(({ caught }) => caught === 'late') },
    { head: 'Caught in time', rows: acting.filter(({ caught }) => caught === 'in time') },
  ].filter(({ rows }) => rows.length > 0);
  const most = options.all === true ? 3 : 1;
  const days = study.days.length;
  return [
    `${ink.strong(title)}\n${hanging('', openingOf(study, acting), io.columns)}\n${hanging('', CAUTION, io.columns)}`,
    ...groups.map(
      ({ head, rows }) =>
        `${ink.strong(head)}\n${faultTable(rows, { most, days, units: options.units, width: io.columns, ink, mark: notes.mark })}`,
    ),
    notes.list(io.columns),
    ...(idle.length > 0
      ? [
          hanging(
            '',
            `No finding is worse for: ${idle.map(({ id }) => id.replace('/', ' of ')).join('; ')}.`,
            io.columns,
          ),
        ]
      : []),
    ...failed.map(({ id, fault }) => hanging('', `Could not be run: ${id.replace('/', ' of ')}: ${fault}`, io.columns)),
    ...(options.all === true ? [] : [ink.faint('Up to three effects of each fault: --all; all of them: --json')]),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function openingOf({ faults: all, protection }: FaultStudy, acting: readonly FaultRow[]): string {
  const open = acting.filter(({ caught }) => caught === 'nothing');
  const of = (severity: string) =>
    open.filter((row) => row.severity === severity && row.effects[0]!.verdict === 'fails').length;
  const [people, machine] = [of('people'), of('machine')];
  const worst = [
    ...(people > 0 ? [`${people} break${people === 1 ? 's' : ''} a limit that concerns people`] : []),
    ...(machine > 0 ? [`${machine} one of a machine`] : []),
  ];
  const counted = `Of ${all.length} single faults ${acting.length} make a finding worse. Nothing in the file catches ${open.length} of these${worst.length === 0 ? '' : `; of them ${worst.join(' and ')}`}.`;
  const said =
    protection === undefined
      ? ' The file does not say what protects the cabinet (protection:), so that nothing is counted as catching.'
      : '';
  return counted + said;
}

interface Shown {
  readonly most: number;
  readonly days: number;
  readonly units: UnitSystem;
  readonly width: number;
  readonly ink: Ink;
  readonly mark: (source: string) => string;
}

function faultTable(rows: readonly FaultRow[], shown: Shown): string {
  const columns = [
    { head: 'class', least: 7 },
    { head: 'fault', least: 18 },
    { head: 'what it comes to', least: 28 },
    // Where nothing acts in any of these, there is nothing to say.
    ...(rows.some(({ catches }) => catches.length > 0) ? [{ head: 'what acts', least: 12 }] : []),
  ];
  const cells = rows.map((row) => [
    row.severity ?? '',
    row.says,
    row.effects
      .slice(0, shown.most)
      .map((effect) => effectText(effect, shown, 'when'))
      .join('\n'),
    row.catches.map(catchText).join('\n'),
  ]);
  const colour = (text: string, at: number, column: number): string => {
    if (column !== 0) return text;
    const { severity, effects } = rows[at]!;
    const grave = effects[0]?.verdict === 'fails' && (severity === 'people' || severity === 'machine');
    return grave ? shown.ink.alarm(text) : text;
  };
  return table(columns, cells, shown.width, colour);
}
