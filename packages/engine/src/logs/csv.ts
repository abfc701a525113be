// Text with values between separators (RFC 4180 and what is met in its place): comma, semicolon, tab or bar, quotation marks with
// anything inside, a byte order mark, lines that say something else before the header.

export interface CsvRow {
  /** Line of the file, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface Csv {
  readonly separator: string;
  readonly header: CsvRow | undefined;
  readonly rows: readonly CsvRow[];
  /** Lines before the header, and those that begin with `#`. */
  readonly skipped: number;
}

const SEPARATORS = [';', '\t', ',', '|'];

export function readCsv(text: string): Csv {
  const clean = text.startsWith('\uFEFF') ? text.slice(1) : text;
  const separator = separatorOf(clean);
  const all = rowsOf(clean, separator);
  const lines = all.filter(({ cells }) => cells.some((cell) => cell !== '') && !cells[0]!.startsWith('#'));
  const width = commonWidth(lines);
  const first = lines.findIndex(({ cells }) => cells.length === width);
  const header = lines[first];
  const headed = header !== undefined && !header.cells.every((cell) => cell === '' || /^[-+\d.,:/TZ\s]+$/.test(cell));
  return {
    separator,
    header: headed ? header : undefined,
    rows: lines.slice(headed ? first + 1 : Math.max(first, 0)),
    skipped: Math.max(first, 0) + all.filter(({ cells }) => cells[0]!.startsWith('#')).length,
  };
}

/** The one that cuts most of the first lines into the same number of pieces, more than one. */
function separatorOf(text: string): string {
  const lines = text
    .split(/\r\n?|\n/, 60)
    .filter((line) => line.trim() !== '' && !line.startsWith('#'))
    .map((line) => line.replaceAll(/"(?:[^"]|"")*"/g, ''));
  const worth = (separator: string): number => {
    const counts = lines.map((line) => line.split(separator).length);
    const common = mode(counts);
    return common < 2 ? 0 : counts.filter((count) => count === common).length / counts.length;
  };
  return SEPARATORS.reduce((best, each) => (worth(each) > worth(best) + 1e-9 ? each : best));
}

function mode(counts: readonly number[]): number {
  const often = new Map<number, number>();
  for (const count of counts) often.set(count, (often.get(count) ?? 0) + 1);
  return [...often].sort((a, b) => b[1] - a[1] || b[0] - a[0])[0]?.[0] ?? 0;
}

function commonWidth(rows: readonly CsvRow[]): number {
  return mode(rows.slice(0, 200).map(({ cells }) => cells.length));
}

function rowsOf(text: string, separator: string): CsvRow[] {
  const rows: CsvRow[] = [];
  let cells: string[] = [];
  let cell = '';
  let quoted = false;
  let line = 1;
  let began = 1;
  const endCell = (): void => {
    cells.push(cell.trim());
    cell = '';
  };
  const endRow = (): void => {
    endCell();
    rows.push({ line: began, cells });
    cells = [];
    began = line;
  };
  for (let at = 0; at < text.length; at += 1) {
    const sign = text[at]!;
    const isEnd = sign === '\n' || sign === '\r';
    if (isEnd && !(sign === '\r' && text[at + 1] === '\n')) line += 1;
    if (quoted) {
      if (sign === '"' && text[at + 1] === '"') {
        cell += '"';
        at += 1;
      } else if (sign === '"') quoted = false;
      else cell += sign;
    } else if (sign === '"' && cell.trim() === '') {
      cell = '';
      quoted = true;
    } else if (sign === separator) endCell();
    else if (sign === '\r' && text[at + 1] === '\n') continue;
    else if (isEnd) endRow();
    else cell += sign;
  }
  if (cell !== '' || cells.length > 0) endRow();
  return rows;
}

/** Whether numbers of these cells have a comma before their decimals. */
export function hasDecimalComma(cells: readonly string[]): boolean {
  const comma = cells.filter((cell) => /^[-+]?\d+,\d+$/.test(cell)).length;
  const point = cells.filter((cell) => /^[-+]?\d*\.\d+$/.test(cell)).length;
  return comma > point;
}

/** A number as a logger writes it; undefined for a text that is none. */
export function numberOf(cell: string, decimalComma: boolean): number | undefined {
  const plain = decimalComma ? cell.replaceAll(/\.(?=\d{3}(?:\D|$))/g, '').replace(',', '.') : cell;
  return /^[-+−]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?$/.test(plain) ? Number(plain.replace('−', '-')) : undefined;
}
