import { sheetsFor } from '@stillair/physics';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastSheets } from './bound.ts';
import { bestPattern } from './pattern.ts';
import { type Piece, type Region, regionsOf, type Stock } from './piece.ts';
import { fewest, nest } from './plan.ts';
import { inStrips } from './strips.ts';

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

/** All ways to part a list in two, either of which may be empty. */
function partings(list: readonly number[]): readonly (readonly [readonly number[], readonly number[]])[] {
  return Array.from({ length: 2 ** list.length }, (_, mask) => {
    const one = list.filter((__, at) => (mask >> at) % 2 === 1);
    return [one, list.filter((each) => !one.includes(each))] as const;
  });
}

/**
 * The second way: from the sheet down, every place for the first cut and every parting of the pieces to its two sides. Cuts need to
 * be tried only where sums of sizes with their kerfs end. It knows no boxes and no fronts.
 */
function sawnFromAbove(pieces: readonly Piece[], kerf: number) {
  const known = new Map<string, boolean>();
  const sizes = (list: readonly number[], way: 'length' | 'width'): readonly number[] =>
    list.flatMap((at) => {
      const { length, width, turned } = pieces[at]!;
      return turned ? [length, width] : [way === 'length' ? length : width];
    });
  /** Where a first cut may lie: ends of some pieces in a row. */
  const ends = (list: readonly number[], way: 'length' | 'width', room: number): readonly number[] => {
    const sums = new Set<number>();
    for (const size of sizes(list, way)) for (const sum of [0, ...sums]) sums.add(sum + size + (sum === 0 ? 0 : kerf));
    return [...sums].filter((sum) => sum < room);
  };
  const canBe = (list: readonly number[], length: number, width: number): boolean => {
    if (list.length === 0) return true;
    const area = list.reduce((sum, at) => sum + pieces[at]!.length * pieces[at]!.width, 0);
    if (length <= 0 || width <= 0 || area > length * width) return false;
    if (list.length === 1) {
      const { length: l, width: w, turned } = pieces[list[0]!]!;
      return (l <= length && w <= width) || (turned && w <= length && l <= width);
    }
    const key = `${list.join(' ')}, ${length} ${width}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const found = partings(list)
      .filter(([one, other]) => one.length > 0 && other.length > 0)
      .some(
        ([one, other]) =>
          ends(one, 'length', length).some((at) => canBe(one, at, width) && canBe(other, length - at - kerf, width)) ||
          ends(one, 'width', width).some((at) => canBe(one, length, at) && canBe(other, length, width - at - kerf)),
      );
    known.set(key, found);
    return found;
  };
  return canBe;
}

function fewestFromAbove(pieces: readonly Piece[], { length, width, kerf }: Stock): number {
  const canBe = sawnFromAbove(pieces, kerf);
  const least = (list: readonly number[]): number => {
    const [first, ...rest] = list;
    if (first === undefined) return 0;
    return partings(rest).reduce(
      (best, [beside, others]) => (canBe([first, ...beside], length, width) ? Math.min(best, 1 + least(others)) : best),
      Infinity,
    );
  };
  return least(pieces.map((_, at) => at));
}

describe('sheets of short lists', () => {
  const small: Stock = { length: 20, width: 13, kerf: 1 };
  const side = (most: number) => fc.integer({ min: 2, max: most });
  const short = fc.record({ length: side(14), width: side(12), turned: fc.boolean() });

  it('cross: plan and exact search take as few sheets as every cut tried from the sheet down', () => {
    const counts = new Set<number>();
    fc.assert(
      fc.property(fc.array(short, { minLength: 1, maxLength: 5 }), (pieces) => {
        const least = fewestFromAbove(pieces, small);
        const plan = nest(pieces, small);
        expect(plan.sheets.length).toBe(least);
        expect(plan.atLeast).toBe(least);
        expect(fewest(pieces, small).length).toBe(least);
        expect(leastSheets(pieces, small)).toBeLessThanOrEqual(least);
        counts.add(least);
      }),
      { numRuns: 60, seed: 7 },
    );
    expect(counts).toEqual(new Set([1, 2, 3]));
  });

  it('exact: a sheet cut at random into up to eleven, the kerf between, is put together again', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(fc.nat(99), fc.boolean(), fc.nat(99)), { maxLength: 10 }),
        fc.boolean(),
        (cuts, turned) => {
          const pieces = [{ length: 240, width: 160 }];
          for (const [which, across, share] of cuts) {
            const at = which % pieces.length;
            const { length, width } = pieces[at]!;
            const room = (across ? length : width) - 3 - 2 * 10;
            if (room < 0) continue;
            const size = 10 + Math.floor((room * share) / 99);
            const parts = across
              ? [
                  { length: size, width },
                  { length: length - size - 3, width },
                ]
              : [
                  { length, width: size },
                  { length, width: width - size - 3 },
                ];
            pieces.splice(at, 1, ...parts);
          }
          const plan = nest(
            pieces.map((each) => ({ ...each, turned })),
            { length: 240, width: 160, kerf: 3 },
          );
          expect([plan.sheets.length, plan.atLeast]).toEqual([1, 1]);
        },
      ),
      { numRuns: 40, seed: 7 },
    );
  });
});

describe('the bound', () => {
  const large: Stock = { length: 100, width: 100, kerf: 0 };
  const many = (count: number, length: number, width: number) =>
    Array<Piece>(count).fill({ length, width, turned: true });

  it('exact: boards of more than half a sheet each way need a sheet each, thirds in nines one for nine', () => {
    expect(leastSheets(many(7, 51, 51), large)).toBe(7);
    expect(leastSheets(many(10, 33, 33), large)).toBe(2);
    expect(leastSheets(many(9, 33, 33), large)).toBe(1);
    expect(leastSheets([], large)).toBe(0);
  });

  it('exact: the kerf counts: four of half a sheet lie on one only without it', () => {
    expect(leastSheets(many(4, 50, 50), large)).toBe(1);
    expect(leastSheets(many(4, 50, 50), { ...large, kerf: 1 })).toBe(4);
  });
});

describe('the quick plan of the bill', () => {
  it('property: it can be sawn, and takes as many sheets as it says', () => {
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 20 }), (wished) => {
        const pieces = wished.filter(({ length, width }) => length <= stock.length && width <= stock.width);
        const sheets = inStrips(pieces, stock);
        mustBeSawn(sheets, pieces, [], stock);
        expect(sheets.length).toBe(sheetsFor(pieces, { ...stock, trim: 0, turned: false }).planned);
      }),
      { numRuns: 20 },
    );
  });

  it('property: for lists as long as those of cabinets it counts as many sheets as the bench saws, or one more', () => {
    let more = 0;
    fc.assert(
      fc.property(fc.array(piece, { minLength: 1, maxLength: 24 }), (wished) => {
        const pieces = wished.map((each) => ({ ...each, length: Math.min(each.length, 2100) }));
        const over =
          sheetsFor(pieces, { ...stock, trim: 0, turned: false }).planned - nest(pieces, stock).sheets.length;
        expect([0, 1]).toContain(over);
        more += over;
      }),
      { numRuns: 20, seed: 7 },
    );
    // Else the bill need not say that it is an estimate.
    expect(more).toBeGreaterThan(0);
  });
});
