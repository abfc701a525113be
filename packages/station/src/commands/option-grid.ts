// Options side by side in few columns: for each row a line that says what it is, and beneath it one short cell an option.

import {
  type Cell,
  formatNumberBeside,
  type KindName,
  type Limit,
  shownUnitName,
  type UnitSystem,
  type Verdict,
} from '@stillair/engine';
import type { Ink } from '../ink.ts';
import type { SourceNotes } from '../source-notes.ts';
import { hanging, pad, textWidth, whole } from '../text.ts';
import { inked, verdictOrder } from '../verdict-words.ts';

export interface GridCell extends Cell {
  readonly limit?: Limit;
  /** Where and when it is so. */
  readonly place: string;
}

export interface GridRow {
  readonly title: string;
  readonly unit: string;
  /** By sheet id; a sheet in which nothing of the kind exists has none. */
  readonly cells: Readonly<Record<string, GridCell>>;
  /** Sheets that are best, where one is better than another. */
  readonly best: readonly string[];
}

export interface GridColumn {
  readonly id: string;
  readonly letter: string;
}

export interface GridLook {
  readonly units: UnitSystem;
  readonly width: number;
  readonly ink: Ink;
  readonly notes: SourceNotes;
  /** Lines with the 10th and 90th percentile and the chance of keeping the limit beneath each row. */
  readonly bands: boolean;
}

/** What stands behind a number; a cell without a sign keeps its limit or has none. */
const signs: Readonly<Record<Verdict, string>> = { fails: 'x', tight: '~', unknown: '?', holds: ' ', told: ' ' };

/** One line that says what the signs mean. */
export const GRID_LEGEND = 'x fails, ~ tight (limit inside the band), ? unknown, * best, – not there';

/** Options that a person can follow across a line. */
const MOST_ABREAST = 8;
const LEAST_CELL = 7;

/** Rows under heads by how ill they are; in blocks where there are more options than fit beside each other, the first in each. */
export function optionGrid(rows: readonly GridRow[], columns: readonly GridColumn[], look: GridLook): string {
  const lead = look.bands ? 6 : 2;
  const needed = Math.max(LEAST_CELL, ...rows.map((row) => widestCell(row, columns, look)));
  const abreast = Math.min(MOST_ABREAST, Math.max(2, Math.floor((look.width - lead) / needed)));
  const cellWidth = Math.max(needed, Math.floor((look.width - lead) / Math.min(abreast, columns.length)) - 2);
  const size = Math.min(cellWidth, 12);
  return blocks(columns, abreast)
    .flatMap((block) => sections(rows, block, { ...look, lead, size }))
    .join('\n\n');
}

interface Drawn extends GridLook {
  readonly lead: number;
  readonly size: number;
}

function blocks(columns: readonly GridColumn[], abreast: number): (readonly GridColumn[])[] {
  const [base, ...others] = columns;
  if (base === undefined) return [];
  if (columns.length <= abreast) return [columns];
  const count = Math.ceil(others.length / (abreast - 1));
  const each = Math.ceil(others.length / count);
  return Array.from({ length: count }, (_, at) => [base, ...others.slice(at * each, (at + 1) * each)]);
}

const heads: Readonly<Record<Verdict, string>> = {
  fails: 'Fails in some option',
  tight: 'Tight in some option, fails in none',
  unknown: 'Unknown in some option',
  holds: 'Holds in all options',
  told: 'Without a limit',
};

function sections(rows: readonly GridRow[], columns: readonly GridColumn[], drawn: Drawn): string[] {
  return verdictOrder.flatMap((verdict) => {
    const mine = rows.filter((row) => worstOf(row) === verdict);
    if (mine.length === 0) return [];
    const letters = columns.map(({ letter }) => `${pad(letter, drawn.size - 2, 'right')}  `).join('');
    const head = `${' '.repeat(drawn.lead)}${letters}`.trimEnd();
    return [
      [
        drawn.ink.strong(heads[verdict]),
        drawn.ink.strong(head),
        ...mine.map((row) => rowText(row, columns, drawn)),
      ].join('\n'),
    ];
  });
}

function worstOf({ cells }: GridRow): Verdict {
  const verdicts = Object.values(cells).map(({ verdict }) => verdict);
  return verdictOrder.find((verdict) => verdicts.includes(verdict)) ?? 'told';
}

function rowText(row: GridRow, columns: readonly GridColumn[], drawn: Drawn): string {
  const { ink, width, units, lead, size } = drawn;
  const unit = unitOf(row, units);
  const cellOf = (id: string): GridCell | undefined => row.cells[id];
  const title = hanging('', `${row.title}${unit === '' ? '' : `, ${unit}`}${limitsText(row, columns, drawn)}`, width);
  const line = (label: string, text: (id: string) => string) =>
    `${label.padEnd(lead)}${columns.map(({ id }) => pad(text(id), size, 'right')).join('')}`.trimEnd();
  const values = line('', (id) => {
    const text = cellText(row, id, columns.length, units);
    const cell = cellOf(id);
    const padded = pad(text, size, 'right');
    return cell === undefined ? padded : inked(ink, cell.verdict, padded);
  });
  const of = (label: string, value: (cell: GridCell) => string | undefined): string[] => {
    const texts = columns.map(({ id }) => {
      const cell = cellOf(id);
      return cell === undefined ? undefined : value(cell);
    });
    if (texts.every((text) => text === undefined)) return [];
    return [ink.faint(line(label, (id) => `${texts[columns.findIndex((column) => column.id === id)] ?? ''}  `))];
  };
  const bands = drawn.bands
    ? [
        ...of('90 %', ({ p90 }) => (p90 === undefined ? undefined : number(row, p90, units))),
        ...of('10 %', ({ p10 }) => (p10 === undefined ? undefined : number(row, p10, units))),
        ...of('kept', ({ chance }) => (chance === undefined ? undefined : `${Math.round(chance * 100)} %`)),
      ]
    : [];
  return [title, values, ...bands, ...placesText(row, columns, drawn)].join('\n');
}

/** Where and when, told where something fails: a person must know what to look at. */
function placesText(row: GridRow, columns: readonly GridColumn[], { ink, width, lead }: Drawn): string[] {
  const failing = columns.filter(({ id }) => row.cells[id]?.verdict === 'fails');
  const groups = lettersBy(failing, ({ id }) => row.cells[id]!.place).filter(([place]) => place !== '');
  if (groups.length === 0) return [];
  const alike = groups.length === 1;
  const text = groups.map(([place, letters]) => (alike ? place : `${letters.join(' ')}: ${place}`)).join('; ');
  return [ink.faint(hanging(`${' '.repeat(lead)}fails at `, text, width))];
}

/** `, at most 38 [1]`; where options are held against different limits, each with the letters that it is for. */
function limitsText(row: GridRow, columns: readonly GridColumn[], { units, notes }: Drawn): string {
  const shown = ({ kind, value, source }: Limit) =>
    whole(`${kind === 'at-most' ? 'at most' : 'at least'} ${number(row, value, units)} ${notes.mark(source)}`);
  const limited = columns.filter(({ id }) => row.cells[id]?.limit !== undefined);
  const groups = lettersBy(limited, ({ id }) => shown(row.cells[id]!.limit!));
  if (groups.length === 0) return '';
  if (groups.length === 1) return `, ${groups[0]![0]}`;
  return `, ${groups.map(([text, letters]) => `${text} for ${letters.join(' ')}`).join('; ')}`;
}

function lettersBy(
  columns: readonly GridColumn[],
  keyOf: (column: GridColumn) => string,
): (readonly [string, readonly string[]])[] {
  const groups = new Map<string, string[]>();
  for (const column of columns) {
    const key = keyOf(column);
    groups.set(key, [...(groups.get(key) ?? []), column.letter]);
  }
  return [...groups];
}

function widestCell(row: GridRow, columns: readonly GridColumn[], { units, bands }: GridLook): number {
  const texts = columns.flatMap(({ id }) => {
    const { p10, p90 } = row.cells[id] ?? {};
    const ends = bands ? [p10, p90].flatMap((end) => (end === undefined ? [] : [`${number(row, end, units)}  `])) : [];
    return [cellText(row, id, columns.length, units), ...ends];
  });
  return 1 + Math.max(...texts.map(textWidth));
}

/** The number, then two signs: how it stands against its limit, and whether it is the best of its row. */
function cellText(row: GridRow, id: string, abreast: number, units: UnitSystem): string {
  const cell = row.cells[id];
  if (cell === undefined) return '–  ';
  const sign = signs[cell.verdict];
  const star = row.best.includes(id) && row.best.length < abreast ? '*' : ' ';
  const value = cell.value === undefined ? '' : number(row, cell.value, units);
  if (star === ' ') return `${value} ${sign}`;
  return sign === ' ' ? `${value} *` : `${value}${sign}*`;
}

function number(row: GridRow, value: number, units: UnitSystem): string {
  return formatNumberBeside(row.unit as KindName, value, largestIn(row), units);
}

function unitOf(row: GridRow, units: UnitSystem): string {
  return row.unit === 'duration' ? 'h:min' : shownUnitName(row.unit as KindName, largestIn(row), units);
}

function largestIn({ cells }: GridRow): number {
  return Math.max(0, ...Object.values(cells).map(({ value = 0 }) => Math.abs(value)));
}
