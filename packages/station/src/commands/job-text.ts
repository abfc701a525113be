// What a job file comes to, laid out for a terminal, and as data for other programs.

import {
  type Extents,
  entryText,
  formatBand,
  formatDuration,
  formatQuantity,
  type JobReport,
  type JobRules,
  type JobSummary,
  type UnitSystem,
} from '@stillair/engine';
import { inkFor } from '../ink.ts';
import type { Io } from '../io.ts';
import { table } from '../table.ts';
import { hanging } from '../text.ts';
import { inked, verdictWords } from '../verdict-words.ts';

/** Set-points told before the rest is only counted. */
const MOST_SET_POINTS = 12;

/** Version 1: SI; what is not known is left out. */
export function jobData(file: string, job: JobSummary, report: JobReport, rules: JobRules): object {
  const { heating, entry, ...rest } = report;
  return {
    version: 1,
    file,
    rules,
    ...job,
    ...rest,
    ...(heating === undefined || heating === Infinity ? {} : { heating }),
    entry: { ...entry, text: entryText(entry) },
  };
}

export function jobText(
  file: string,
  job: JobSummary,
  report: JobReport,
  rules: JobRules,
  units: UnitSystem,
  io: Io,
): string {
  const ink = inkFor(io);
  const head = `${file}: ${count(job.moves, 'move')} in ${count(job.lines, 'line')}`;
  const sections = [
    ink.strong(head),
    whole(job, report, rules, units, io),
    setPoints(job, units, io),
    checks(report, units, io),
    remarks(job, report, rules, units)
      .map((text) => hanging('note: ', text, io.columns))
      .join('\n'),
    `${ink.faint('For a day of the cabinet file:')}\n${entryText(report.entry)}`,
  ];
  return sections.filter((section) => section !== '').join('\n\n');
}

function whole(job: JobSummary, report: JobReport, rules: JobRules, units: UnitSystem, io: Io): string {
  const { duration, waits, fan } = job;
  const length = (value: number): string => formatQuantity('length', value, units);
  const { material, diameter, masses, mass } = report;
  const counted = [
    [waits.heat, 'for heat'],
    [waits.homing, 'for homing'],
    [waits.pauses, 'for a person'],
    [waits.toolChanges, 'for another tool'],
  ] as const;
  const untimed = counted.filter(([times]) => times > 0).map(([times, what]) => `${what} ${times} ×`);
  const one = job.filament.length === 1;
  const filament = job.filament.map(({ tool, length: fed }, at): [string, string] => {
    const alone = masses === undefined || one ? '' : `, ${formatQuantity('mass', masses[at]!, units)}`;
    return [one ? 'filament' : `filament of tool ${tool}`, `${length(fed)} of ${thickness(diameter)}${alone}`];
  });
  const rows: (readonly [string, string])[] = [
    ['duration', formatDuration(duration.estimate)],
    ['at full speed throughout', formatDuration(duration.atSpeed)],
    ['stopping after each move', formatDuration(duration.stopAndGo)],
    ['of it printing', formatDuration(duration.printing)],
    ['of it going elsewhere', formatDuration(duration.travelling)],
    ['of it filament alone', formatDuration(duration.filament)],
    ...(duration.dwell > 0 ? [['of it dwelling', formatDuration(duration.dwell)] as const] : []),
    ...(report.heating === undefined ? [] : [['bed heating before', heatingText(report.heating)] as const]),
    ['waits, not timed', untimed.length === 0 ? 'none' : untimed.join(', ')],
    ...filament,
    ['mass', massText(mass, material, units)],
    ['printed, x y z', extentText(job.extents.printed, units)],
    ['goes, x y z', extentText(job.extents.all, units)],
    ...(report.height === undefined ? [] : [['height', length(report.height)] as const]),
    [
      'motion in depth',
      `${length(job.depth.way)}, mean ${speedText(report.bedSpeed, units)}, turns back ${job.depth.reversals} ×`,
    ],
    ['part fan', `mean ${formatQuantity('share', fan.mean)}, most ${formatQuantity('share', fan.most)}`],
    ['acceleration', `${formatQuantity('acceleration', rules.acceleration, units)} unless the file sets another`],
  ];
  return table([{ head: 'what', least: 26 }, { head: 'value' }], rows, io.columns);
}

function massText(mass: number | undefined, material: JobReport['material'], units: UnitSystem): string {
  if (mass === undefined || material === undefined) return 'unknown: say the material with --material';
  const as = material.how === 'nearest' ? `taken for ${material.name}, whose set-points are nearest` : material.name;
  return `${formatQuantity('mass', mass, units)} (${as})`;
}

function heatingText(seconds: number): string {
  return seconds === Infinity ? 'never: its heater is too weak' : formatDuration(seconds);
}

function extentText({ x, y, z }: Extents, units: UnitSystem): string {
  const spans = [x, y, z].map((span) => {
    if (span === undefined) return 'nowhere';
    const [low, high] = span;
    return low === high ? formatQuantity('length', low, units) : formatBand('length', low, high, units);
  });
  return spans.join(' · ');
}

/** To the hundredth of a millimetre, as filament is sold. */
function thickness(diameter: number): string {
  return `${Math.round(diameter * 1e5) / 100} mm`;
}

function speedText(value: number, units: UnitSystem): string {
  return units === 'imperial' ? formatQuantity('speed', value, units) : `${Math.round(value * 1000)} mm/s`;
}

function setPoints({ setPoints: all, setPointsMore }: JobSummary, units: UnitSystem, io: Io): string {
  if (all.length === 0) return '';
  const shown = all.slice(0, MOST_SET_POINTS);
  const rows = shown.map(({ at, what, tool, to, waits }) => [
    formatDuration(at),
    tool === undefined || tool === 0 ? what : `${what} ${tool}`,
    to === undefined ? 'off' : formatQuantity('temperature', to, units),
    waits ? 'waits until it is' : '',
  ]);
  const more = all.length - shown.length + setPointsMore;
  const columns = [
    { head: 'after', align: 'right', least: 10 },
    { head: 'what' },
    { head: 'set to' },
    { head: '' },
  ] as const;
  return table(columns, rows, io.columns) + (more > 0 ? `\nand ${more} more; --json gives more of them` : '');
}

function checks({ checks: all, machine }: JobReport, units: UnitSystem, io: Io): string {
  if (all.length === 0) return '';
  const ink = inkFor(io);
  const rows = all.map(({ title, value, missing, verdict }) => [
    title,
    value === undefined ? `needs ${missing}` : formatQuantity('length', value, units),
    verdictWords[verdict],
  ]);
  const columns = [
    { head: `on ${machine}` },
    { head: 'left', align: 'right', least: 8 },
    { head: '', least: 7 },
  ] as const;
  return table(columns, rows, io.columns, (text, row, column) =>
    column === 2 ? inked(ink, all[row]!.verdict, text) : text,
  );
}

function remarks(job: JobSummary, report: JobReport, rules: JobRules, units: UnitSystem): string[] {
  const { unknown, unknownMore, waits } = job;
  const untold = waits.heat + waits.homing + waits.pauses + waits.toolChanges > 0;
  return [
    ...(untold
      ? [
          report.heating === undefined
            ? 'waiting for heat, homing, pauses and tool changes come on top of the duration and of "for" below.'
            : '"for" below has the heating of the bed; that of the nozzle, homing, pauses and tool changes come on top.',
        ]
      : []),
    ...job.notes.map((text) => `${text}.`),
    ...(unknown.length === 0
      ? []
      : [
          `not understood and left out: ${unknown.map(({ word, times }) => `${word} ${times} ×`).join(', ')}${unknownMore > 0 ? `, and others ${unknownMore} ×` : ''}.`,
        ]),
    `corners are taken as an arc would that passes ${formatQuantity('length', rules.deviation, units)} from their point; the machine may know other rules.`,
  ];
}

function count(number: number, what: string): string {
  return `${number} ${what}${number === 1 ? '' : 's'}`;
}
