// Laying out text in columns of a terminal: how wide a text is there, and where to break it.

/** Letters and signs of European text that stand alone in one column each; measuring these needs no table of Unicode. */
const plainText = /^[ -~\u00A0-\u00AC\u00AE-\u02FF\u2010-\u2015\u2018-\u2027\u2070-\u209C\u2200-\u22FF\u2500-\u257F]*$/;

let segmenter: Intl.Segmenter | undefined;
/** Made when it is first needed: that takes longer than laying out a page. */
function graphemes(text: string): Iterable<{ readonly segment: string }> {
  segmenter ??= new Intl.Segmenter('en', { granularity: 'grapheme' });
  return segmenter.segment(text);
}

/** Scripts and signs that terminals draw over two columns (Unicode Standard Annex 11, "wide" and "fullwidth"; main ranges). */
const wide =
  /^[\u1100-\u115F\u2E80-\u303E\u3041-\u33FF\u3400-\u4DBF\u4E00-\u9FFF\uA000-\uA4CF\uAC00-\uD7A3\uF900-\uFAFF\uFE30-\uFE6F\uFF00-\uFF60\uFFE0-\uFFE6\u{1F300}-\u{1F64F}\u{1F680}-\u{1F6FF}\u{1F900}-\u{1F9FF}\u{20000}-\u{3FFFD}]|^\p{Emoji_Presentation}|\uFE0F/u;
const invisible = /^[\p{Mark}\p{Control}\p{Format}]+$/u;
const escapes = new RegExp(`${String.fromCharCode(27)}\\[[0-9;]*m`, 'g');

/** Columns that `text` takes on a terminal; colour escapes take none. */
export function textWidth(text: string): number {
  if (plainText.test(text)) return text.length;
  const plain = text.replaceAll(escapes, '');
  let width = 0;
  for (const { segment } of graphemes(plain)) {
    if (invisible.test(segment)) continue;
    width += wide.test(segment) ? 2 : 1;
  }
  return width;
}

/** Breaks a plain text (no colour escapes) into lines of at most `width` columns, at spaces where there are some. */
export function wrap(text: string, width: number): string[] {
  return text.split('\n').flatMap((paragraph) => wrapParagraph(paragraph, Math.max(2, width)));
}

/** Fills up with spaces to `width` columns. */
export function pad(text: string, width: number, align: 'left' | 'right' = 'left'): string {
  const gap = ' '.repeat(Math.max(0, width - textWidth(text)));
  return align === 'left' ? text + gap : gap + text;
}

const NO_BREAK = '\u00A0';

/** A piece of text that `hanging` keeps on one line, such as a number with its unit. */
export function whole(text: string): string {
  return text.replaceAll(' ', NO_BREAK);
}

/** A paragraph whose first line starts with `first` and whose other lines are indented as far. */
export function hanging(first: string, text: string, width: number): string {
  const indent = textWidth(first);
  const lines = wrap(text, width - indent);
  return lines.map((line, at) => (at === 0 ? first : ' '.repeat(indent)) + line.replaceAll(NO_BREAK, ' ')).join('\n');
}

function wrapParagraph(paragraph: string, width: number): string[] {
  const lines: string[] = [];
  let line = '';
  for (const word of paragraph.split(' ').flatMap((piece) => cut(piece, width))) {
    const longer = line === '' ? word : `${line} ${word}`;
    if (line !== '' && textWidth(longer) > width) {
      lines.push(line.trimEnd());
      line = word;
    } else {
      line = longer;
    }
  }
  lines.push(line.trimEnd());
  return lines;
}

/** A word that is wider than the line, in pieces that fit; it is broken after a joint (slash, dot, hyphen) if it has one. */
function cut(word: string, width: number): string[] {
  if (textWidth(word) <= width) return [word];
  const pieces: string[] = [];
  let piece = '';
  for (const { segment } of graphemes(word)) {
    if (piece !== '' && textWidth(piece + segment) > width) {
      const joint = /^(.+[/.,;_-])[^/.,;_-]*$/u.exec(piece)?.[1] ?? piece;
      pieces.push(joint);
      piece = piece.slice(joint.length);
    }
    piece += segment;
  }
  if (piece !== '') pieces.push(piece);
  return pieces;
}
