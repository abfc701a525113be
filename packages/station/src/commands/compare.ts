// stillair compare FILE: the cabinet as it stands and every option, side by side.

import {
  AS_IT_STANDS,
  answerOf,
  type BestFor,
  type Comparison,
  compare as compareOptions,
  type Row,
  type Settling,
  type Sheet,
  type SummaryCell,
  type SummaryRow,
  type UnitSystem,
} from '@stillair/engine';
import { bandOf, quantity, shortLimit, unitOf, withoutUnit } from '../finding-text.ts';
import { inkFor } from '../ink.ts';
import type { ExitCode, Io } from '../io.ts';
import { loadCabinet } from '../load-cabinet.ts';
import { progressLine } from '../progress.ts';
import { type SourceNotes, sourceNotes } from '../source-notes.ts';
import { table } from '../table.ts';
import { hanging } from '../text.ts';
import { exitCodeOf, inked, verdictWords } from '../verdict-words.ts';
import { openEvaluator } from '../workers.ts';

export interface CompareOptions {
  readonly all?: boolean;
  readonly json?: boolean;
  readonly units: UnitSystem;
  readonly samples: number;
  readonly workers?: number;
}

/** Columns of a table that a terminal can hold beside the rows' titles; more sheets are told in further tables. */
const ABREAST = 3;

export async function compare(file: string, options: CompareOptions, io: Io): Promise<ExitCode> {
  const source = await loadCabinet(file, 'compare', io);
  if (source === undefined) return 2;
  const evaluator = openEvaluator(source, { workers: options.workers, stop: io.stop });
  let comparison: Comparison;
  try {
    comparison = await compareOptions(source, {
      samples: options.samples,
      evaluate: evaluator.evaluate,
      progress: progressLine(io, 'varying inputs of every option'),
      stop: () => io.stop.aborted,
    });
  } finally {
    io.progress('');
    await evaluator.close();
  }
  const days = Object.keys(source.cabinet.days).length;
  if (options.json) io.out(JSON.stringify({ ...comparison, file, cabinet: source.cabinet.title }, null, 2));
  else io.out(inWords(source.cabinet.title, comparison, { ...options, days, file }, io));
  if (comparison.stopped) io.err('Stopped: options that were not run are missing, and chances are of fewer samples.');
  return io.stop.aborted ? 130 : exitCodeOf(baseCells(comparison));
}

function baseCells({ rows, rest }: Comparison) {
  return [...rows, ...rest].flatMap(({ cells }) => cells[AS_IT_STANDS] ?? []);
}

interface Shown extends CompareOptions {
  readonly days: number;
  readonly file: string;
}

function inWords(title: string, comparison: Comparison, shown: Shown, io: Io): string {
  const ink = inkFor(io);
  const { sheets, rows, rest, summary } = comparison;
  const letters = new Map(sheets.map(({ id }, at) => [id, letter(at)]));
  const notes = sourceNotes();
  const nameOf = (id: string): string => letters.get(id)!;
  const answer = answerOf(comparison, nameOf).map((line) => hanging('', line, io.columns));
  const tables = groups(sheets).map((group) =>
    shown.all
      ? sideBySide([...rows, ...rest], group, letters, shown, notes, io)
      : worstSideBySide(summary, group, letters, shown, notes, io),
  );
  const hidden = shown.all ? '' : `Every finding of every option, ${rows.length + rest.length} rows: --all`;
  return [
    `${ink.strong(title)}\n${sheets.map((sheet) => legend(sheet, letters, comparison, io)).join('\n')}`,
    answer.join('\n'),
    wants(comparison, letters, io),
    shown.all
      ? ''
      : hanging(
          '',
          'Of each question the worst finding of each option; % says how often it keeps its limit:',
          io.columns,
        ),
    ...tables,
    notes.list(io.columns),
    ink.faint(hidden),
  ]
    .filter((text) => text !== '')
    .join('\n\n');
}

/** A … Z, then AA, AB … */
function letter(at: number): string {
  const last = String.fromCharCode(65 + (at % 26));
  return at < 26 ? last : letter(Math.floor(at / 26) - 1) + last;
}

function legend(sheet: Sheet, letters: ReadonlyMap<string, string>, { currency }: Comparison, io: Io): string {
  const { low, high } = sheet.price;
  const price = high > 0 ? `, to buy: ${range(low, high)} ${currency}` : '';
  const name = sheet.id === AS_IT_STANDS ? '' : `${sheet.id}: `;
  const fault = sheet.fault === undefined ? '' : ` (cannot be run: ${sheet.fault})`;
  return hanging(`  ${letters.get(sheet.id)!}  `, `${name}${sheet.title}${price}${fault}`, io.columns);
}

function range(low: number, high: number): string {
  const [from, to] = [Math.round(low), Math.round(high)];
  return from === to ? `${from}` : `${from} to ${to}`;
}

function wants({ wants: all }: Comparison, letters: ReadonlyMap<string, string>, io: Io): string {
  return all.map((want) => hanging(`  ${want.want.padEnd(6)} `, bestText(want, letters), io.columns)).join('\n');
}

function bestText(
  { best, tied, alike, chances, settle, measuredBy }: BestFor,
  letters: ReadonlyMap<string, string>,
): string {
  if (best === undefined) return `nothing to compare (${measuredBy})`;
  const all = [best, ...tied].map((id) => letters.get(id)!);
  if (alike) return `${list(all)} alike (${measuredBy})`;
  if (tied.length === 0) return `${all[0]}, in ${percent(chances[best]!)} of the samples (${measuredBy})`;
  const rest = settle === undefined ? 'no one measurement would settle it' : settlingText(settle, letters);
  return `not settled between ${list(all)} (${measuredBy}); ${rest}`;
}

function settlingText(
  { label, how, turnsAt, within, below, above, settles }: Settling,
  letters: ReadonlyMap<string, string>,
): string {
  const { kind, value } = turnsAt;
  const turn =
    kind === 'times'
      ? `${value.toPrecision(2)} times what is assumed`
      : `${Math.abs(value).toFixed(1)} K ${value < 0 ? 'below' : 'above'} what is assumed`;
  const accuracy = kind === 'times' ? `${within.toPrecision(1)} times what is assumed` : `${within.toFixed(1)} K`;
  return [
    `to settle it between ${letters.get(below)!} and ${letters.get(above)!}, measure: ${label} (${how})`,
    `below ${turn} ${letters.get(below)!} is better, above it ${letters.get(above)!}`,
    `known to within ${accuracy} it tells the better one in ${percent(settles)} of the samples`,
  ].join('; ');
}

function list(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? '') : `${words.slice(0, -1).join(', ')} and ${words.at(-1)}`;
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}

/** Sheets that stand in one table: the cabinet as it stands is in each. */
function groups(sheets: readonly Sheet[]): Sheet[][] {
  const [base, ...options] = sheets.filter(({ fault }) => fault === undefined);
  if (base === undefined) return [];
  const count = Math.max(1, Math.ceil(options.length / (ABREAST - 1)));
  const size = Math.ceil(options.length / count);
  return Array.from({ length: count }, (_, at) => [base, ...options.slice(at * size, (at + 1) * size)]);
}

function sideBySide(
  rows: readonly Row[],
  sheets: readonly Sheet[],
  letters: ReadonlyMap<string, string>,
  { units, days }: Shown,
  notes: SourceNotes,
  io: Io,
): string {
  const ink = inkFor(io);
  const columns = [
    { head: 'what', least: 24 },
    ...sheets.map(({ id }) => ({ head: letters.get(id)!, align: 'right', least: 10 }) as const),
    { head: 'limit', least: 9 },
  ];
  const lines = rows.map(({ title, part, day, unit, limit, ...row }) => {
    const about = `${title}, ${part}${days > 1 ? `, ${day}` : ''}`;
    const one = Object.values(row.cells).find(({ value }) => value !== undefined)?.value;
    const beside = one === undefined ? '' : quantity(unit, one, units);
    const bound = limit === undefined ? '' : `${shortLimit(limit, unit, units, beside)} ${notes.mark(limit.source)}`;
    return [about, ...sheets.map(({ id }) => cellText({ ...row, unit }, id, sheets.length, units)), bound];
  });
  return table(columns, lines, io.columns, (text, row, column) => {
    const sheet = sheets[column - 1];
    const cell = sheet === undefined ? undefined : rows[row]!.cells[sheet.id];
    return cell === undefined ? text : inked(ink, cell.verdict, text);
  });
}

/** One row for each question, holding what is worst in each option; where that is, when it is not the same in all. */
function worstSideBySide(
  summary: readonly SummaryRow[],
  sheets: readonly Sheet[],
  letters: ReadonlyMap<string, string>,
  { units, days }: Shown,
  notes: SourceNotes,
  io: Io,
): string {
  const ink = inkFor(io);
  const columns = [
    { head: 'what', least: 24 },
    ...sheets.map(({ id }) => ({ head: letters.get(id)!, align: 'right', least: 10 }) as const),
    { head: 'limit', least: 9 },
  ];
  const place = ({ part, day }: SummaryCell): string => (days > 1 ? `${part}, ${day}` : part);
  const lines = summary.map((row) => {
    const cells = sheets.flatMap(({ id }) => row.cells[id] ?? []);
    const places = [...new Set(cells.map(place))];
    const bounds = [
      ...new Set(
        cells.flatMap(({ value, limit }) => {
          if (limit === undefined) return [];
          const beside = value === undefined ? '' : quantity(row.unit, value, units);
          return [`${shortLimit(limit, row.unit, units, beside)} ${notes.mark(limit.source)}`];
        }),
      ),
    ];
    return [
      places.length === 1 ? `${row.title}, ${places[0]!}` : row.title,
      ...sheets.map(({ id }) => {
        const cell = row.cells[id];
        const where = cell === undefined || places.length === 1 ? '' : place(cell);
        return [cellText(row, id, sheets.length, units), where].filter(Boolean).join('\n');
      }),
      bounds.join('\n'),
    ];
  });
  return table(columns, lines, io.columns, (text, row, column) => {
    const sheet = sheets[column - 1];
    const cell = sheet === undefined ? undefined : summary[row]!.cells[sheet.id];
    return cell === undefined ? text : inked(ink, cell.verdict, text);
  });
}

/** The value, its band from 10 to 90 %, and what is or is not well about it. */
function cellText(
  row: Pick<Row | SummaryRow, 'cells' | 'unit' | 'best'>,
  id: string,
  abreast: number,
  units: UnitSystem,
): string {
  const cell = row.cells[id];
  if (cell === undefined) return 'gone';
  const value = cell.value === undefined ? 'unknown' : quantity(row.unit, cell.value, units);
  const { p10, p90 } = cell;
  const band =
    p10 === undefined || p90 === undefined ? '' : withoutUnit(bandOf(row.unit, p10, p90, units), unitOf(value));
  const chance = cell.chance === undefined ? '' : ` ${percent(cell.chance)}`;
  const mark = cell.verdict === 'fails' || cell.verdict === 'tight' ? `${verdictWords[cell.verdict]}${chance}` : '';
  const star = row.best.includes(id) && row.best.length < abreast ? 'best' : '';
  return [value, band, [star, mark].filter(Boolean).join(' ')].filter(Boolean).join('\n');
}
