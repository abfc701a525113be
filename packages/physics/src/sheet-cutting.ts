// How many sheets a list of parts takes: a bound that no sawyer beats, and a plan that every panel saw can follow.

import { mustBePositive, mustNotBeNegative } from './argument.ts';

/** A hair that lengths may lack, m: sums of decimals. */
const HAIR = 1e-9;

/**
 * Parts of one length out of a board: n = ⌊(L + k)/(p + k)⌋. The cut is lost between parts, not after the last.
 *
 * @param length - L, m, 0 or more.
 * @param part - p, m, above 0.
 * @param kerf - k, width of the cut, m, 0 or more.
 * @returns A whole number.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: straight cuts. Source: arithmetic. Checked: exact.
 *
 * @example Four parts of 610 mm seem to fit 2440 mm: the saw leaves three
 * ```ts
 * partsInLength(2.44, 0.61, 0.0032); // => 3
 * partsInLength(2.5, 0.61, 0.0032); // => 4
 * ```
 */
export function partsInLength(length: number, part: number, kerf: number): number {
  mustNotBeNegative('partsInLength', 'length', length);
  mustBePositive('partsInLength', 'part', part);
  mustNotBeNegative('partsInLength', 'kerf', kerf);
  return Math.floor((length + kerf + HAIR) / (part + kerf));
}

export interface SheetPart {
  readonly length: number;
  readonly width: number;
}

export interface Sheet extends SheetPart {
  /** Cut off each edge before the first part, m. */
  readonly trim: number;
  readonly kerf: number;
  /** Parts may be turned by a quarter. */
  readonly turned: boolean;
}

export interface SheetCount {
  /** Sheets that no plan can do without: the parts' area by the sheet's usable area, rounded up. */
  readonly atLeast: number;
  /** Sheets of the plan: rips from end to end, then crosscuts. */
  readonly planned: number;
  /** Parts that fit no sheet, by their place in the list. */
  readonly tooLarge: readonly number[];
  /** Area of the parts that fit, by that of the planned sheets. */
  readonly yield: number;
  /** Cuts of the plan. */
  readonly cuts: number;
}

interface Strip {
  /** Along the sheet's width, m. */
  readonly width: number;
  left: number;
}

interface Cutting {
  readonly strips: Strip[];
  /** Width of the sheet that no strip has taken, m. */
  left: number;
}

/**
 * Sheets that a list of parts takes, by rips along the sheet and crosscuts of each strip (two-stage guillotine, widest first):
 * every cut runs from edge to edge, as a panel saw needs. Whole sheets: no waste is to be added to them.
 *
 * @param parts - Lengths and widths, m, above 0. Unless turned, a part's length lies along the sheet's length (grain).
 * @param sheet - Its size, m, and how it is cut.
 * @returns The bound and the plan; the plan need not be the best one.
 * @throws RangeError when a size is not above 0, or trim or kerf below 0.
 *
 * @remarks
 * Valid: straight cuts; typical yields are 75 to 90 %. Source: first fit by decreasing width (Coffman, Garey, Johnson, Tarjan 1980);
 * bound by area. Checked: exact, published instances.
 *
 * @example Ten shelves of 600 by 400 mm out of 2500 by 1250 mm
 * ```ts
 * const shelf = { length: 0.6, width: 0.4 };
 * sheetsFor(Array(10).fill(shelf), { length: 2.5, width: 1.25, trim: 0.005, kerf: 0.003, turned: false }).planned; // => 1
 * ```
 */
export function sheetsFor(parts: readonly SheetPart[], sheet: Sheet): SheetCount {
  mustNotBeNegative('sheetsFor', 'sheet.trim', sheet.trim);
  mustNotBeNegative('sheetsFor', 'sheet.kerf', sheet.kerf);
  const length = sheet.length - 2 * sheet.trim;
  const width = sheet.width - 2 * sheet.trim;
  mustBePositive('sheetsFor', 'sheet.length', length);
  mustBePositive('sheetsFor', 'sheet.width', width);
  const tooLarge: number[] = [];
  const fitting = parts.flatMap((part, at) => {
    mustBePositive('sheetsFor', 'length', part.length);
    mustBePositive('sheetsFor', 'width', part.width);
    const placed = laid(part, length, width, sheet.turned);
    if (placed === undefined) tooLarge.push(at);
    return placed ?? [];
  });
  fitting.sort((a, b) => b.width - a.width || b.length - a.length);
  const sheets: Cutting[] = [];
  for (const part of fitting) place(part, sheets, length, width, sheet);
  const area = fitting.reduce((sum, part) => sum + part.length * part.width, 0);
  const strips = sheets.reduce((sum, cutting) => sum + cutting.strips.length, 0);
  return {
    atLeast: Math.ceil(area / (length * width) - HAIR),
    planned: sheets.length,
    tooLarge,
    yield: sheets.length === 0 ? 1 : area / (sheets.length * sheet.length * sheet.width),
    cuts: strips + fitting.length,
  };
}

/** A part as it lies on the sheet: as given, or turned where only that fits or its strip is then narrower. */
function laid(part: SheetPart, length: number, width: number, turned: boolean): SheetPart | undefined {
  const fits = (way: SheetPart): boolean => way.length <= length + HAIR && way.width <= width + HAIR;
  const other = { length: part.width, width: part.length };
  const ways = (turned ? [part, other] : [part]).filter(fits);
  return ways.sort((a, b) => a.width - b.width)[0];
}

/** Into the first strip that takes it, else into a new strip of the first sheet with room, else onto a new sheet. */
function place(part: SheetPart, sheets: Cutting[], length: number, width: number, { kerf }: Sheet): void {
  for (const { strips } of sheets)
    for (const strip of strips)
      if (part.width <= strip.width + HAIR && part.length <= strip.left + HAIR) {
        strip.left -= part.length + kerf;
        return;
      }
  const strip: Strip = { width: part.width, left: length - part.length - kerf };
  const open = sheets.find(({ left }) => part.width <= left + HAIR);
  if (open !== undefined) {
    open.strips.push(strip);
    open.left -= part.width + kerf;
  } else sheets.push({ strips: [strip], left: width - part.width - kerf });
}
