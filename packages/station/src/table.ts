// Tables for a terminal: columns as wide as they need, the widest ones wrapped until all fit the line.

import { pad, textWidth, wrap } from './text.ts';

export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right';
  /** Never narrower than this, nor than the longest word of its head, if the line allows; numbers want to stay whole. */
  readonly least?: number;
}

const GAP = '  ';
/** No column gets narrower than a wide character. */
const NARROWEST = 2;

/**
 * Lays rows of plain text out under a head and a thin rule. Cells wrap inside their column, words whole where they fit.
 * `ink` may colour a finished cell: it gets the padded text, the row's number and the column's number.
 */
export function table(
  columns: readonly Column[],
  rows: readonly (readonly string[])[],
  width: number,
  ink: (text: string, row: number, column: number) => string = (text) => text,
): string {
  const widths = shareOut(columns, rows, width);
  const head = layOut(headLines(columns, widths), columns, widths);
  const rule = widths.map((columnWidth) => '─'.repeat(columnWidth)).join(GAP);
  const body = rows.flatMap((row, at) => layOut(row, columns, widths, (text, column) => ink(text, at, column)));
  return [...head, rule, ...body].map((line) => line.trimEnd()).join('\n');
}

/** Heads of several lines stand on the rule. */
function headLines(columns: readonly Column[], widths: readonly number[]): string[] {
  const heads = columns.map(({ head }, at) => wrap(head, widths[at]!));
  const height = Math.max(...heads.map((lines) => lines.length));
  return heads.map((lines) => '\n'.repeat(height - lines.length) + lines.join('\n'));
}

function layOut(
  cells: readonly string[],
  columns: readonly Column[],
  widths: readonly number[],
  ink: (text: string, column: number) => string = (text) => text,
): string[] {
  const wrapped = columns.map((_, at) => wrap(cells[at] ?? '', widths[at]!));
  const height = Math.max(...wrapped.map((lines) => lines.length));
  return Array.from({ length: height }, (_, line) =>
    wrapped.map((lines, at) => ink(pad(lines[line] ?? '', widths[at]!, columns[at]!.align), at)).join(GAP),
  );
}

/** Starts from the width each column would like; takes from the widest, one by one, until the line is not exceeded. */
function shareOut(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): number[] {
  const liked = columns.map(({ head }, at) => Math.max(1, ...[head, ...rows.map((row) => row[at] ?? '')].map(widest)));
  const room = width - GAP.length * (columns.length - 1);
  const widths = [...liked];
  const least = columns.map(({ head, least: asked = 6 }) => Math.max(asked, ...head.split(/\s/).map(textWidth)));
  const spare = (at: number) => widths[at]! - Math.min(liked[at]!, least[at]!);
  const sum = () => widths.reduce((total, each) => total + each, 0);
  while (sum() > room) {
    const givers = widths.map((_, at) => at).filter((at) => widths[at]! > NARROWEST);
    if (givers.length === 0) break; // the terminal is narrower than the table can be
    const giver = givers.reduce((best, at) => (spare(at) > spare(best) ? at : best));
    widths[giver]!--;
  }
  return widths;
}

function widest(cell: string): number {
  return Math.max(...cell.split('\n').map(textWidth));
}
