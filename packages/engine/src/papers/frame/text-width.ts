// How wide a text is in the type of the papers, and where it is broken into lines.

import { boldWidths, regularWidths, type WidthRange } from './text-widths.data.ts';

/** Of its size, for signs that the table does not list: about the widest letters. */
const UNKNOWN = 0.84;
const EM = 2048;

const tableOf = (ranges: readonly WidthRange[]): ReadonlyMap<number, number> =>
  new Map(
    ranges.flatMap(({ from, widths }) =>
      widths.split(' ').flatMap((width, at) => {
        const units = Number.parseInt(width, 36);
        return units > 0 ? [[from + at, units / EM] as const] : [];
      }),
    ),
  );

const regular = tableOf(regularWidths);
const bold = tableOf(boldWidths);

/**
 * Width of a line of text, mm, without kerning.
 *
 * @example Four capitals at 10 mm
 * ```ts
 * textWidth('KERF', 10); // => 25.58
 * textWidth('', 10); // => 0
 * ```
 */
export function textWidth(text: string, size: number, isBold = false): number {
  const widths = isBold ? bold : regular;
  let sum = 0;
  for (const sign of text) sum += widths.get(sign.codePointAt(0)!) ?? UNKNOWN;
  return sum * size;
}

/** Lines of a text that are at most `width` wide, broken at blanks, and inside a word only where it alone is too wide. */
export function brokenLines(text: string, width: number, size: number, isBold = false): readonly string[] {
  const lines: string[] = [];
  for (const paragraph of text.split('\n')) {
    let line = '';
    for (const word of paragraph.split(/[ \t]+/).flatMap((each) => pieces(each, width, size, isBold))) {
      const longer = line === '' ? word : `${line} ${word}`;
      if (line === '' || textWidth(longer, size, isBold) <= width) line = longer;
      else {
        lines.push(line);
        line = word;
      }
    }
    lines.push(line);
  }
  return lines;
}

/** A word in pieces that each go into the width; broken after a stroke or point where there is one. */
function pieces(word: string, width: number, size: number, isBold: boolean): string[] {
  if (textWidth(word, size, isBold) <= width) return [word];
  const parts: string[] = [];
  let part = '';
  for (const sign of word) {
    if (part !== '' && textWidth(part + sign, size, isBold) > width) {
      const cut = Math.max(part.lastIndexOf('/'), part.lastIndexOf('.'), part.lastIndexOf('-')) + 1;
      const head = cut > part.length / 2 ? part.slice(0, cut) : part;
      parts.push(head);
      part = part.slice(head.length);
    }
    part += sign;
  }
  return [...parts, part];
}
