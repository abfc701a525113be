// stillair compare FILE: the cabinet as it stands and every option, side by side.

import {
  AS_IT_STANDS,
  type Comparison,
  compare as compareOptions,
  type Row,
  type Sheet,
  type SummaryRow,
  type UnitSystem,
} from '@stillair/engine';
import { aboutText } from '../finding-text.ts';
import { inkFor } from '../ink.ts';
import type { ExitCode, Io } from '../io.ts';
import { optionNotesText } from '../judged.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { longStudy } from '../long-study.ts';
import { sourceNotes } from '../source-notes.ts';
import { hanging } from '../text.ts';
import { exitCodeOf } from '../verdict-words.ts';
import { openEvaluator } from '../workers.ts';
import { openingText } from './compare-opening.ts';
import { GRID_LEGEND, type GridCell, type GridRow, optionGrid } from './option-grid.ts';

export interface CompareOptions {
  readonly all?: boolean;
  readonly bands?: boolean;
  readonly json?: boolean;
  readonly units: UnitSystem;
  readonly samples: number;
  readonly workers?: number;
}

export async function compare(file: string, options: CompareOptions, io: Io): Promise<ExitCode> {
  const source = await loadCabinet(file, 'compare', io);
  if (source === undefined) return 2;
  const evaluator = openEvaluator(source, { workers: options.workers, stop: io.stop });
  const comparison = await longStudy(evaluator, 'varying inputs of every option', io, (hooks) =>
    compareOptions(source, { ...hooks, samples: options.samples }),
  );
  const days = Object.keys(source.cabinet.days).length;
  if (options.json) io.out(JSON.stringify({ ...comparison, file, cabinet: source.cabinet.title }, null, 2));
  else io.out(inWords(source.cabinet.title, comparison, { ...options, days }, io));
  if (comparison.stopped) io.err('Stopped: options that were not run are missing, and chances are of fewer samples.');
  return io.stop.aborted ? 130 : exitCodeOf(baseCells(comparison));
}

function baseCells({ rows, rest }: Comparison) {
  return [...rows, ...rest].flatMap(({ cells }) => cells[AS_IT_STANDS] ?? []);
}

interface Shown extends CompareOptions {
  readonly days: number;
}

function inWords(title: string, comparison: Comparison, shown: Shown, io: Io): string {
  const ink = inkFor(io);
  const { sheets, rows, rest, summary } = comparison;
  const letters = new Map(sheets.map(({ id }, at) => [id, letter(at)]));
  const nameOf = (id: string): string => letters.get(id)!;
  const notes = sourceNotes();
  const run = sheets.filter(({ fault }) => fault === undefined);
  const told = shown.all ? [...rows, ...rest].map((row) => ownRow(row, shown.days)) : summary.map(worstRow(shown.days));
  const bands = shown.all === true || shown.bands === true;
  const columns = run.map(({ id }) => ({ id, letter: nameOf(id) }));
  const what = shown.all ? 'Every finding' : 'Of each question the worst finding of each option';
  const more = [
    ...(bands ? [] : ['Bands and chances: --bands']),
    ...(shown.all ? [] : [`Every finding, ${rows.length + rest.length} rows: --all`]),
  ];
  return [
    `${ink.strong(title)}\n${openingText(comparison, nameOf, io.columns, ink)}`,
    `${hanging('', what, io.columns)}\n${hanging('', GRID_LEGEND, io.columns)}`,
    optionGrid([brokenRow(run), ...told], columns, { units: shown.units, width: io.columns, ink, notes, bands }),
    notes.list(io.columns),
    optionNotesText(run, nameOf, shown.days, io.columns),
    ink.faint(more.join('\n')),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

/** A … Z, then AA, AB … */
function letter(at: number): string {
  const last = String.fromCharCode(65 + (at % 26));
  return at < 26 ? last : letter(Math.floor(at / 26) - 1) + last;
}

/** How many limits each option breaks, and how often it would keep them all. */
function brokenRow(run: readonly Sheet[]): GridRow {
  const counts = run.map(({ broken }) => broken.length);
  const fewest = Math.min(...counts);
  const cells = run.map(({ id, broken, chanceOfAll }): [string, GridCell] => [
    id,
    {
      value: broken.length,
      verdict: broken.length > 0 ? 'fails' : 'holds',
      place: '',
      ...(chanceOfAll === undefined ? {} : { chance: chanceOfAll }),
    },
  ]);
  const best = counts.every((count) => count === fewest) ? [] : run.filter(({ broken }) => broken.length === fewest);
  return { title: 'limits broken', unit: 'number', cells: Object.fromEntries(cells), best: best.map(({ id }) => id) };
}

function worstRow(days: number): (row: SummaryRow) => GridRow {
  return ({ title, unit, cells, best }) => ({
    title,
    unit,
    best,
    cells: Object.fromEntries(
      Object.entries(cells).map(([id, cell]) => [id, { ...cell, place: aboutText(cell, days) }]),
    ),
  });
}

/** A row of one finding tells its place in the title. */
function ownRow(row: Row, days: number): GridRow {
  const { title, unit, cells, best, limit } = row;
  const held = limit === undefined ? { place: '' } : { place: '', limit };
  return {
    title: `${title}, ${aboutText(row, days)}`,
    unit,
    best,
    cells: Object.fromEntries(Object.entries(cells).map(([id, cell]) => [id, { ...cell, ...held }])),
  };
}
