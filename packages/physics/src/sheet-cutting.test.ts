import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { partsInLength, type Sheet, type SheetPart, sheetsFor } from './sheet-cutting.ts';

const sheet = (length: number, width: number, turned = true): Sheet => ({ length, width, trim: 0, kerf: 0, turned });

describe('parts in a length', () => {
  it.each([
    [2.44, 0.61, 0.0032, 3],
    [2.5, 0.61, 0.0032, 4],
    [1.22, 0.61, 0.0032, 1],
    [2.42, 0.6, 0.0032, 4],
    [2.44, 0.8, 0.0032, 3],
    [2.44, 0.61, 0, 4],
  ])('exact: out of %d m come parts of %d m, cuts of %d m between them: %d', (length, part, kerf, expected) => {
    expect(partsInLength(length, part, kerf)).toBe(expected);
  });

  it('exact: they fit with their cuts, and one more would not', () => {
    const size = fc.integer({ min: 1, max: 4000 });
    fc.assert(
      fc.property(size, size, fc.integer({ min: 0, max: 8 }), (length, part, kerf) => {
        const count = partsInLength(length, part, kerf);
        if (count > 0) expect(count * part + (count - 1) * kerf).toBeLessThanOrEqual(length);
        expect((count + 1) * part + count * kerf).toBeGreaterThan(length);
      }),
    );
  });
});

describe('sheets', () => {
  it('exact: the pinwheel of four 2 × 1 round a 1 × 1 fills a 3 × 3 sheet, but with none turned no saw can cut it: two sheets', () => {
    const parts: SheetPart[] = [
      { length: 2, width: 1 },
      { length: 2, width: 1 },
      { length: 1, width: 2 },
      { length: 1, width: 2 },
      { length: 1, width: 1 },
    ];
    expect(sheetsFor(parts, sheet(3, 3, false))).toMatchObject({ atLeast: 1, planned: 2, tooLarge: [] });
  });

  it('exact: the kerf costs the fourth of four parts, and with it a sheet', () => {
    const four = Array<SheetPart>(4).fill({ length: 0.61, width: 1.2 });
    const cut = (kerf: number): number => sheetsFor(four, { ...sheet(2.44, 1.22, false), kerf }).planned;
    expect(cut(0)).toBe(1);
    expect(cut(0.0032)).toBe(2);
  });

  it('exact: the double-skinned box of 4.5284 m² takes two sheets of 2.9768 m² or more', () => {
    const parts: SheetPart[] = [
      ...Array<SheetPart>(2).fill({ length: 0.624, width: 0.6 }),
      ...Array<SheetPart>(2).fill({ length: 0.7, width: 0.6 }),
      { length: 0.724, width: 0.624 },
      ...Array<SheetPart>(2).fill({ length: 0.708, width: 0.642 }),
      ...Array<SheetPart>(2).fill({ length: 0.784, width: 0.642 }),
      { length: 0.808, width: 0.708 },
    ];
    const { atLeast, planned, yield: used } = sheetsFor(parts, { ...sheet(2.44, 1.22), kerf: 0.0032 });
    expect(atLeast).toBe(2);
    expect(planned).toBeGreaterThanOrEqual(2);
    expect(used).toBeCloseTo(4.5284 / (planned * 2.9768), 4);
  });

  it('exact: parts with grain are not turned, and those that fit no sheet are named', () => {
    const part = { length: 1, width: 2 };
    expect(sheetsFor([part], sheet(2, 1, false))).toMatchObject({ planned: 0, tooLarge: [0] });
    expect(sheetsFor([part], sheet(2, 1, true))).toMatchObject({ planned: 1, tooLarge: [] });
  });

  it('property: never fewer than the area needs, at most one for each part, whole parts within whole sheets', () => {
    const part = fc.record({
      length: fc.double({ min: 0.05, max: 2.4, noNaN: true }),
      width: fc.double({ min: 0.05, max: 1.2, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 30 }), fc.boolean(), (parts, turned) => {
        const {
          atLeast,
          planned,
          tooLarge,
          yield: used,
        } = sheetsFor(parts, {
          length: 2.44,
          width: 1.22,
          trim: 0.005,
          kerf: 0.003,
          turned,
        });
        expect(planned).toBeGreaterThanOrEqual(atLeast);
        expect(planned).toBeLessThanOrEqual(parts.length - tooLarge.length);
        expect(used).toBeLessThanOrEqual(1);
      }),
    );
  });

  it.each([
    [{ trim: -0.001 }, 'sheetsFor: sheet.trim is -0.001'],
    [{ kerf: -0.003 }, 'sheetsFor: sheet.kerf is -0.003'],
    [{ length: 0.01, trim: 0.005 }, 'sheetsFor: sheet.length is 0'],
  ])('exact: refuses a sheet that is none (%#)', (wrong, message) => {
    const sheet = { length: 2.5, width: 1.25, trim: 0, kerf: 0, turned: false, ...wrong };
    expect(() => sheetsFor([], sheet)).toThrow(message);
  });
});
