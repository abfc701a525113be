// A study of care, laid out for a terminal.

import {
  type CareRow,
  type CareStudy,
  dueByText,
  dueText,
  formatDuration,
  parseDate,
  type UnitSystem,
} from '@stillair/engine';
import { type EffectShown, effectText } from './effect-text.ts';
import { type Ink, inkFor } from './ink.ts';
import type { Io } from './io.ts';
import { sourceNotes } from './source-notes.ts';
import { table } from './table.ts';
import { hanging } from './text.ts';

export interface CareTextOptions {
  readonly all?: boolean;
  readonly units: UnitSystem;
}

/** Days ahead that belong to what comes next, and how many are told at least. */
const SOON = 60;
const LEAST = 6;

const CAUTION =
  'Intervals are common practice unless the file gives its own; makers’ instructions, local codes and licensed practice go before them. A date says when to look, not that a part works until then.';

export function careText(
  title: string,
  study: CareStudy,
  { path, found }: { readonly path: string; readonly found: boolean },
  options: CareTextOptions,
  io: Io,
): string {
  const ink = inkFor(io);
  const notes = sourceNotes();
  const { tasks } = study;
  const over = tasks.filter(({ verdict }) => verdict === 'fails');
  const now = tasks.filter(({ verdict }) => verdict === 'tight');
  const later = tasks.filter(({ verdict }) => verdict === 'holds');
  const unknown = tasks.filter(({ verdict }) => verdict === 'unknown');
  const soon = later.filter(
    ({ p50 }, at) =>
      options.all === true || at < Math.max(2, LEAST - over.length - now.length) || daysTo(study.today, p50) <= SOON,
  );
  const groups = [
    { head: 'Overdue', rows: over },
    { head: 'Due about now', rows: now },
    { head: 'Next', rows: soon },
    { head: 'Not known', rows: found ? unknown : options.all === true ? unknown : [] },
  ].filter(({ rows }) => rows.length > 0);
  const worn = tasks.filter(({ effects }) => effects !== undefined && effects.length > 0);
  const shown = { units: options.units, days: 2, mark: notes.mark };
  return [
    `${ink.strong(title)}\n${hanging('', opening(study, path, found), io.columns)}\n${hanging('', CAUTION, io.columns)}`,
    ...groups.map(
      ({ head, rows }) => `${ink.strong(head)}\n${rowsTable(rows, study.today, ink, io.columns, notes.mark)}`,
    ),
    worn.length === 0
      ? ''
      : `${ink.strong('What overdue parts do to the findings')}\n${wornTable(worn, options.all === true ? 5 : 2, shown, io.columns)}`,
    togetherText(study, worn, shown, io.columns),
    harmlessText(tasks, io.columns),
    notes.list(io.columns),
    study.remarks.length === 0 ? '' : study.remarks.map((text) => hanging('note: ', text, io.columns)).join('\n'),
    later.length > soon.length && options.all !== true
      ? ink.faint(`${later.length - soon.length} more are due later: --all`)
      : '',
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

function opening({ today, began, tasks, load }: CareStudy, path: string, found: boolean): string {
  const count = (verdict: CareRow['verdict']): number => tasks.filter((row) => row.verdict === verdict).length;
  if (!found)
    return `There is no diary (${path}), so that nothing is known of what was done. Of ${tasks.length} things that want care each is listed with its interval: --all. To begin one: stillair care FILE --done "${tasks[0]?.part ?? 'filter exhaust'} checked" --began YEAR-MONTH-DAY.`;
  const due = `Of ${tasks.length} things that want care ${count('fails')} are overdue on ${today} and ${count('tight')} due about now, by ${path} (since ${began ?? ''}).`;
  if (load === undefined)
    return `${due} No hours are known: neither does the diary hold jobs nor does the file give costs.times.`;
  const mean = load.weeks.reduce((sum, each) => sum + each, 0) / Math.max(load.weeks.length, 1);
  const from =
    load.from === 'costs.times'
      ? 'as often as costs.times has the days come, as the diary holds no jobs'
      : load.from === 'few weeks'
        ? 'by the few weeks that the diary holds'
        : `by the last ${load.weeks.length} weeks of the diary`;
  return `${due} Printing goes on for ${formatDuration(mean)} a week, ${from}.`;
}

function rowsTable(
  rows: readonly CareRow[],
  today: string,
  ink: Ink,
  width: number,
  mark: (source: string) => string,
): string {
  const columns = [
    { head: 'due', least: 10 },
    { head: 'what', least: 18 },
    { head: 'why', least: 24 },
  ];
  const cells = rows.map((row) => [dueText(row), row.says, `${dueByText(row)} ${mark(row.source)}`]);
  return table(columns, cells, width, (text, at, column) =>
    column === 0 && rows[at]!.verdict === 'fails' && daysTo(today, rows[at]!.p50) < 0 ? ink.alarm(text) : text,
  );
}

function wornTable(rows: readonly CareRow[], most: number, shown: EffectShown, width: number): string {
  const columns = [
    { head: 'part', least: 18 },
    { head: 'what it comes to', least: 28 },
  ];
  const cells = rows.map(({ ageing, effects = [] }) => [
    ageing?.says ?? '',
    [
      ...effects.slice(0, most).map((effect) => effectText(effect, shown, 'before')),
      ...(effects.length > most ? [`and ${effects.length - most} more`] : []),
    ].join('\n'),
  ]);
  return table(columns, cells, width);
}

/** Overdue parts whose age no finding asks after, or none is worse for. */
function harmlessText(tasks: readonly CareRow[], width: number): string {
  const tried = tasks.filter(({ effects }) => effects !== undefined && effects.length === 0);
  const failed = tasks.filter(({ fault }) => fault !== undefined);
  return [
    ...(tried.length === 0
      ? []
      : [hanging('', `No finding is worse when ${tried.map(({ ageing }) => ageing!.says).join('; ')}.`, width)]),
    ...failed.map(({ part, fault }) => hanging('', `Could not be run: ${part} worn: ${fault}`, width)),
  ].join('\n');
}

function togetherText(
  { together = [] }: CareStudy,
  worn: readonly CareRow[],
  shown: EffectShown,
  width: number,
): string {
  const alone = new Set(worn.flatMap(({ effects = [] }) => effects.map(({ id }) => id)));
  const more = together.filter(({ id }) => !alone.has(id));
  if (more.length === 0) return '';
  return hanging(
    'All of it together also: ',
    more
      .slice(0, 3)
      .map((effect) => effectText(effect, shown, 'before'))
      .join('; '),
    width,
  );
}

function daysTo(today: string, date: string | undefined): number {
  const [from, to] = [parseDate(today), parseDate(date ?? '')];
  return typeof from === 'number' && typeof to === 'number' ? to - from : Number.POSITIVE_INFINITY;
}
