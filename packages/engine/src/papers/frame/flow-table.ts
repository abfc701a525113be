// Tables of written sheets: columns as wide as their words ask for, words broken where all of them are too wide.

import type { Block, Column } from './block.ts';
import { line, type Mark, text } from './mark.ts';
import type { Area, Cells, Item } from './page.ts';
import { brokenLines, textWidth } from './text-width.ts';

type TableBlock = Extract<Block, { kind: 'table' }>;

const CELL = 2.7;
const ROW = CELL * 1.36;
/** Air between columns, and above and below a row. */
const GUTTER = 3;
const PAD = 0.9;

/** Lays a table from `y` on, and gives where it ends. */
export function layTable(block: TableBlock, area: Area, y: number, sheets: Item[][]): number {
  const widths = columnWidths(block, area.width);
  const head = rowLines(
    block.columns.map(({ head: words }) => words),
    widths,
    true,
  );
  const rows = block.rows.map((row) => rowLines(row, widths, false));
  const least = block.rowHeight ?? 0;
  let top = y === 0 ? 0 : y + 2.5;
  let placed: { cells: Cells; rules: Mark[] }[] = [];
  let headCells: Cells = [];
  const begin = (): void => {
    headCells = cellsOf(head, block.columns, widths, area.x, area.y + top, true);
    top += heightOf(head, 0);
  };
  const end = (): void => {
    if (placed.length === 0) return;
    sheets.at(-1)!.push({
      role: 'table',
      head: headCells,
      rows: placed.map(({ cells }) => cells),
      rules: placed.flatMap(({ rules }) => rules),
    });
    placed = [];
  };
  const first = rows[0] === undefined ? 0 : heightOf(rows[0], least);
  if (top > 0 && top + heightOf(head, 0) + first > area.height) {
    sheets.push([]);
    top = 0;
  }
  begin();
  for (const row of rows) {
    const height = heightOf(row, least);
    if (top + height > area.height && placed.length > 0) {
      end();
      sheets.push([]);
      top = 0;
      begin();
    }
    const rule = line('thin', [area.x, area.y + top], [area.x + area.width, area.y + top]);
    const cells = cellsOf(row, block.columns, widths, area.x, area.y + top, false);
    top += height;
    const last = line('thin', [area.x, area.y + top], [area.x + area.width, area.y + top]);
    placed.push({ cells, rules: [rule, ...(row === rows.at(-1) ? [last] : [])] });
  }
  end();
  return top;
}

type RowLines = readonly (readonly string[])[];

function rowLines(row: readonly string[], widths: readonly number[], bold: boolean): RowLines {
  return row.map((words, at) => brokenLines(words, widths[at]!, CELL, bold));
}

function heightOf(lines: RowLines, least: number): number {
  return Math.max(least, Math.max(1, ...lines.map((each) => each.length)) * ROW + 2 * PAD);
}

function cellsOf(
  lines: RowLines,
  columns: readonly Column[],
  widths: readonly number[],
  x: number,
  y: number,
  bold: boolean,
): Cells {
  let left = x;
  return lines.map((cell, at) => {
    const right = columns[at]!.align === 'right';
    const from = right ? left + widths[at]! : left;
    left += widths[at]! + GUTTER;
    return cell.map((words, row) =>
      text([from, y + PAD + row * ROW + CELL], words, CELL, {
        ...(right ? { align: 'right' as const } : {}),
        ...(bold ? { bold: true as const } : {}),
      }),
    );
  });
}

/** Widths of the text in each column; together with the air between them they fill the whole width. */
function columnWidths({ columns, rows }: TableBlock, width: number): readonly number[] {
  const free = width - GUTTER * (columns.length - 1);
  const shared = columns.reduce((sum, { share = 0 }) => sum + share, 0);
  const asked = columns.map(({ head, share }, at) =>
    share === undefined
      ? Math.max(
          ...head.split('\n').map((words) => textWidth(words, CELL, true)),
          ...rows.map((row) => Math.max(...row[at]!.split('\n').map((words) => textWidth(words, CELL)))),
        ) + 0.01
      : share * free,
  );
  const left = free * (1 - shared);
  const sum = columns.reduce((total, { share }, at) => (share === undefined ? total + asked[at]! : total), 0);
  if (sum <= left) {
    // What is over goes to the last column that is not set to the right.
    const last = columns.findLastIndex(({ align, share }) => align !== 'right' && share === undefined);
    return asked.map((each, at) => (at === last ? each + left - sum : each));
  }
  return fitted(asked, columns, left);
}

/** Wide columns give way first: all above a common width are cut down to it. */
function fitted(asked: readonly number[], columns: readonly Column[], left: number): readonly number[] {
  const open = asked.filter((_, at) => columns[at]!.share === undefined).sort((a, b) => a - b);
  let rest = left;
  let cap = left;
  for (const [at, each] of open.entries()) {
    cap = rest / (open.length - at);
    if (each > cap) break;
    rest -= each;
  }
  return asked.map((each, at) => (columns[at]!.share === undefined ? Math.min(each, cap) : each));
}
