import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { bestPattern } from './pattern.ts';
import { type Piece, type Region, regionsOf, type Stock } from './piece.ts';
import { fewest, nest } from './plan.ts';

const stock: Stock = { length: 2436, width: 1236, kerf: 3 };
const piece = fc.record({
  length: fc.integer({ min: 80, max: 2400 }),
  width: fc.integer({ min: 60, max: 1200 }),
  turned: fc.boolean(),
});

/** What a plan must be, whatever made it. */
function mustBeSawn(
  sheets: readonly Region[],
  pieces: readonly Piece[],
  left: readonly number[],
  { length, width, kerf }: Stock,
): void {
  const made: number[] = [];
  for (const sheet of sheets) {
    expect([sheet.x, sheet.y, sheet.length, sheet.width]).toEqual([0, 0, length, width]);
    for (const region of regionsOf(sheet)) {
      if (region.is === 'piece') {
        const { length: l, width: w, turned } = pieces[region.piece]!;
        made.push(region.piece);
        expect([region.length, region.width]).toEqual(region.turned ? [w, l] : [l, w]);
        if (region.turned) expect(turned).toBe(true);
      }
      if (region.is !== 'cut') continue;
      // A cut runs from edge to edge: its two parts have the whole of the other way, and lie a kerf apart.
      const [one, other] = region.parts;
      if (region.way === 'across') {
        expect([one.x, one.y, one.length, one.width]).toEqual([region.x, region.y, region.at, region.width]);
        expect([other.y, other.width, other.x]).toEqual([region.y, region.width, region.x + region.at + kerf]);
        expect(other.length).toBe(Math.max(0, region.length - region.at - kerf));
      } else {
        expect([one.x, one.y, one.width, one.length]).toEqual([region.x, region.y, region.at, region.length]);
        expect([other.x, other.length, other.y]).toEqual([region.x, region.length, region.y + region.at + kerf]);
        expect(other.width).toBe(Math.max(0, region.width - region.at - kerf));
      }
    }
  }
  expect([...made, ...left].sort((a, b) => a - b)).toEqual(pieces.map((_, at) => at));
}

describe('plans of sheets', () => {
  it('property: every piece lies on one sheet, by cuts from edge to edge with the kerf between', () => {
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 24 }), (pieces) => {
        const { sheets, tooLarge, atLeast } = nest(pieces, stock);
        mustBeSawn(sheets, pieces, tooLarge, stock);
        expect(sheets.length).toBeGreaterThanOrEqual(atLeast);
      }),
      { numRuns: 12 },
    );
  });

  it('property: the exact search is a plan too, and none that was tried does with fewer sheets', () => {
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 6 }), (wished) => {
        const pieces = wished.map((each) => ({ ...each, length: Math.min(each.length, 1200) }));
        const sheets = fewest(pieces, stock);
        mustBeSawn(sheets, pieces, [], stock);
        const plan = nest(pieces, stock);
        expect(plan.sheets.length).toBe(sheets.length);
        expect(plan.atLeast).toBeLessThanOrEqual(sheets.length);
      }),
      { numRuns: 12 },
    );
  });

  it('exact: four pieces of 610 seem to fit 2440, but the kerf leaves three; in 2500 there are four', () => {
    const four = Array<Piece>(4).fill({ length: 610, width: 1220, turned: false });
    const sheets = (length: number, kerf: number): number => nest(four, { length, width: 1220, kerf }).sheets.length;
    expect([sheets(2440, 0), sheets(2440, 3.2), sheets(2500, 3.2)]).toEqual([1, 2, 1]);
  });

  it('exact: a piece that fits no sheet is named, and the others are cut', () => {
    const pieces = [
      { length: 3000, width: 100, turned: true },
      { length: 100, width: 100, turned: false },
    ];
    expect(nest(pieces, stock)).toMatchObject({ tooLarge: [0], atLeast: 1, sheets: [{}] });
  });

  it('exact: the same list gives the same plan', () => {
    const pieces = Array.from({ length: 20 }, (_, at) => ({
      length: 200 + 37 * at,
      width: 150 + 23 * at,
      turned: at % 2 === 0,
    }));
    expect(nest(pieces, stock)).toEqual(nest(pieces, stock));
  });
});

describe('the best pattern of one sheet', () => {
  it('cross: no less than what any plan of copies fills, and no more than the sheet', () => {
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 4 }), (wished) => {
        const pieces = wished.map((each) => ({ ...each, length: 300 + (each.length % 900), turned: false }));
        const kinds = pieces.map(({ length, width }) => ({ length, width, value: length * width }));
        const best = bestPattern(kinds, stock, false);
        expect(best).toBeLessThanOrEqual(stock.length * stock.width);
        const { sheets } = nest([...pieces, ...pieces, ...pieces], stock);
        for (const sheet of sheets) {
          const filled = regionsOf(sheet).reduce(
            (sum, each) => (each.is === 'piece' ? sum + each.length * each.width : sum),
            0,
          );
          expect(filled).toBeLessThanOrEqual(best);
        }
      }),
      { numRuns: 20 },
    );
  });
});
