import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Block } from './block.ts';
import { flow } from './flow.ts';
import { type Area, drawingArea, type Item, marksOf } from './page.ts';
import { brokenLines, textWidth } from './text-width.ts';

const area: Area = drawingArea('a4');

const wordsOf = (items: readonly Item[]): string[] =>
  marksOf({ width: 210, height: 297, items }).flatMap((mark) => (mark.kind === 'text' ? mark.text.split(' ') : []));

/** Every text of the items, with the place where it begins and ends. */
const lyingOutside = (items: readonly Item[]): string[] =>
  marksOf({ width: 210, height: 297, items }).flatMap((mark) => {
    if (mark.kind !== 'text') return [];
    const wide = textWidth(mark.text, mark.size, mark.bold);
    const left = mark.align === 'right' ? mark.at[0] - wide : mark.at[0];
    const inside =
      left > area.x - 0.01 &&
      left + wide < area.x + area.width + 0.01 &&
      mark.at[1] - mark.size * 0.73 > area.y - 0.01 &&
      mark.at[1] < area.y + area.height + 0.01;
    return inside ? [] : [mark.text];
  });

const word = fc.stringMatching(/^[A-Za-zäø]{1,40}$/);
const sentence = fc.array(word, { minLength: 1, maxLength: 60 }).map((words) => words.join(' '));
const block: fc.Arbitrary<Block> = fc.oneof(
  sentence.map((text): Block => ({ kind: 'text', text })),
  word.map((text): Block => ({ kind: 'heading', text })),
  fc.array(sentence, { minLength: 1, maxLength: 8 }).map((items): Block => ({ kind: 'list', items, sign: 'box' })),
  fc.integer({ min: 1, max: 6 }).chain((count) =>
    fc
      .array(
        fc.array(
          fc.array(word, { maxLength: 12 }).map((words) => words.join(' ')),
          { minLength: count, maxLength: count },
        ),
        {
          minLength: 1,
          maxLength: 60,
        },
      )
      .map((rows): Block => ({ kind: 'table', columns: rows[0]!.map((_, at) => ({ head: `h${at}` })), rows })),
  ),
);

describe('the flow of a written sheet', () => {
  it('property: every word is on some sheet, in its order, and none lies outside the frame', () => {
    fc.assert(
      fc.property(fc.array(block, { minLength: 1, maxLength: 12 }), (blocks) => {
        const sheets = flow(blocks, area);
        expect(sheets.flatMap(lyingOutside)).toEqual([]);
        const said = blocks.flatMap((each) => {
          if (each.kind === 'table') return each.rows.flat(2).flatMap((cell) => cell.split(' '));
          if (each.kind === 'list') return each.items.flatMap((item) => item.split(' '));
          return each.kind === 'text' || each.kind === 'heading' ? each.text.split(' ') : [];
        });
        const letters = (words: readonly string[]): string =>
          words
            .filter((each) => !/^(?:h\d|☐)$/.test(each))
            .join('')
            .split('')
            .sort((a, b) => (a < b ? -1 : 1))
            .join('');
        expect(letters(sheets.flatMap(wordsOf))).toBe(letters(said));
      }),
      { numRuns: 60 },
    );
  });

  it('exact: a long table says its head again on each sheet', () => {
    const rows = Array.from({ length: 120 }, (_, at) => [String(at), 'x']);
    const sheets = flow([{ kind: 'table', columns: [{ head: 'part' }, { head: 'note' }], rows }], area);
    expect(sheets.length).toBeGreaterThan(2);
    for (const items of sheets) expect(wordsOf(items).slice(0, 2)).toEqual(['part', 'note']);
  });

  it('exact: a heading is not left alone at the foot of a sheet', () => {
    const filler: Block = { kind: 'picture', width: 10, height: area.height - 14, says: 'a picture', marks: [] };
    const sheets = flow([filler, { kind: 'heading', text: 'Doors' }, { kind: 'text', text: 'open' }], area);
    expect(sheets.map((items) => wordsOf(items))).toEqual([[], ['Doors', 'open']]);
  });

  it('exact: a short list is not parted, so that no place to sign stands alone', () => {
    const filler: Block = { kind: 'picture', width: 10, height: area.height - 22, says: 'a picture', marks: [] };
    const items = ['earth', 'fuses', 'signature'];
    const sheets = flow([filler, { kind: 'heading', text: 'Checked' }, { kind: 'list', items, sign: 'box' }], area);
    const words = sheets.map((each) => wordsOf(each).filter((word) => word !== '☐'));
    expect(words).toEqual([[], ['Checked', ...items]]);
  });
});

describe('broken lines', () => {
  it('exact: at blanks, and inside a word only where it alone is too wide', () => {
    expect(brokenLines('saw the board', 16, 3)).toEqual(['saw the', 'board']);
    expect(brokenLines('paths.exhaust.parts', 20, 3)).toEqual(['paths.', 'exhaust.', 'parts']);
  });
});
