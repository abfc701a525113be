// What is wrong with a file that a person wrote, and how it is laid out for them.

/** A stretch of one line of a file. Lines and columns count from 1; columns count UTF-16 units, as editors do. */
export interface Span {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly length: number;
  /** The whole line without its end. */
  readonly lineText: string;
}

/** What is wrong with an input, in the four parts every message here has. */
export interface Complaint {
  /** Stable name, kebab-case: people search for it and tests assert on it. */
  readonly code: string;
  /** What was wrong, with the value that was given. */
  readonly what: string;
  readonly where: Span;
  /** What would be right, with bounds and units. */
  readonly allowed: string;
  /** One thing to do now. */
  readonly mend: string;
}

/** Widest piece of the faulty line that is printed. */
const LINE_WIDTH = 100;

/** Lays a complaint out for a terminal: place, the line itself, what is wrong with it, what is allowed, how to mend it. */
export function formatComplaint({ code, what, where, allowed, mend }: Complaint): string {
  const gutter = `${where.line}`.padStart(4);
  const margin = ' '.repeat(gutter.length);
  const { text, column, length } = aroundColumn(where);
  return [
    `${harmless(where.file)}:${where.line}:${where.column}  error  ${code}`,
    `${gutter} | ${text}`,
    `${margin} | ${' '.repeat(column - 1)}${'^'.repeat(length)} ${harmless(what)}`,
    `  allowed: ${harmless(allowed)}`,
    `  to mend: ${harmless(mend)}`,
  ].join('\n');
}

/** A person's own words between quotation marks, cut so that a message stays one line. */
export function quoted(text: string): string {
  return text.length > 60 ? `"${text.slice(0, 57)}…"` : `"${text}"`;
}

/** Puts complaints into the order of the file. */
export function inFileOrder(complaints: readonly Complaint[]): readonly Complaint[] {
  return [...complaints].sort((a, b) => a.where.line - b.where.line || a.where.column - b.where.column);
}

/** The piece of the line around the column, one character for each of its units, so that the caret stands right. */
function aroundColumn({ lineText, column, length }: Span): { text: string; column: number; length: number } {
  const at = Math.min(column, lineText.length + 1);
  const start = at - 1 <= LINE_WIDTH * 0.6 ? 0 : at - 1 - Math.round(LINE_WIDTH * 0.4);
  const end = Math.min(lineText.length, start + LINE_WIDTH);
  const text = `${start > 0 ? '…' : ''}${harmless(lineText.slice(start, end))}${end < lineText.length ? '…' : ''}`;
  const caret = at - start + (start > 0 ? 1 : 0);
  return { text, column: caret, length: Math.max(1, Math.min(length, end - at + 1)) };
}

/**
 * Replaces what would move the cursor, colour the terminal, or turn the reading direction, one character for one:
 * tabs by a space, control characters by their pictures, the rest by the replacement character.
 */
function harmless(text: string): string {
  let shown = '';
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    if (unit === 9) shown += ' ';
    else if (unit < 32) shown += String.fromCharCode(0x2400 + unit);
    else if (unit === 127) shown += '\u2421';
    else if (unit < 160 && unit > 127) shown += '\uFFFD';
    else if (isInvisible(unit)) shown += '\uFFFD';
    else shown += text[i];
  }
  return shown;
}

/** Zero-width characters, line separators, direction marks and the byte order mark. */
function isInvisible(unit: number): boolean {
  return (
    (unit >= 0x200b && unit <= 0x200f) ||
    (unit >= 0x2028 && unit <= 0x202e) ||
    (unit >= 0x2060 && unit <= 0x206f) ||
    unit === 0xfeff
  );
}
