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
  /** May be turned by a quarter whatever the others may: it has no grain. */
  readonly turned?: boolean;
}

export interface Sheet {
  readonly length: number;
  readonly width: number;
  /** Cut off each edge before the first part, m. */
  readonly trim: number;
  readonly kerf: number;
  /** Parts may be turned by a quarter. */
  readonly turned: boolean;
}

export interface SheetCount {
  /** Sheets that no plan can do without: the parts' area by the sheet's usable area, rounded up. */
  readonly atLeast: number;
  /** Sheets of the plan: strips from edge to edge, then crosscuts. */
  readonly planned: number;
  /** Parts that fit no sheet, by their place in the list. */
  readonly tooLarge: readonly number[];
  /** Area of the parts that fit, by that of the planned sheets. */
  readonly yield: number;
  /** Cuts of the plan. */
  readonly cuts: number;
  /** Way of its strips. */
  readonly strips: 'along' | 'across';
  /** Sheet by sheet its strips, each with its parts in turn. */
  readonly sheets: readonly (readonly (readonly LaidPart[])[])[];
}

/** A part of the list as it lies in its strip: `length` along the strip. */
export interface LaidPart {
  readonly at: number;
  readonly length: number;
  readonly width: number;
}

interface Strip {
  /** Across the strip, m. */
  readonly width: number;
  readonly parts: LaidPart[];
  left: number;
}

interface Cutting {
  readonly strips: Strip[];
  /** Of the sheet's size across its strips, what none has taken, m. */
  left: number;
}

/**
 * Sheets that a list of parts takes, by strips from edge to edge and crosscuts of each strip (two-stage guillotine, widest first):
 * every cut runs from edge to edge, as a panel saw needs. Strips along the sheet and across it are tried, parts that may be turned
 * lying as narrow and as wide as they can; the fewest sheets count. Whole sheets: no waste is to be added to them.
 *
 * @param parts - Lengths and widths, m, above 0. Unless turned, a part's length lies along the sheet's length (grain).
 * @param sheet - Its size, m, and how it is cut.
 * @returns The bound and the plan; the plan need not be the best one.
 * @throws RangeError when a size is not above 0, or trim or kerf below 0.
 *
 * @remarks
 * Valid: straight cuts; typical yields are 75 to 90 %. Source: best fit by decreasing width (after Coffman, Garey, Johnson, Tarjan
 * 1980); bound by area. Checked: exact, published instances; at most one sheet above an exact search in every list tried.
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
  for (const part of parts) {
    mustBePositive('sheetsFor', 'length', part.length);
    mustBePositive('sheetsFor', 'width', part.width);
  }
  const mayTurn = parts.some((part) => part.turned ?? sheet.turned);
  const plans = (['along', 'across'] as const).flatMap((strips) =>
    (mayTurn ? (['narrow', 'wide'] as const) : (['narrow'] as const)).map((lie) =>
      planOf(parts, { length, width, sheet, strips, lie }),
    ),
  );
  const plan = plans.reduce((best, next) => (next.sheets.length < best.sheets.length ? next : best));
  const fitting = parts.filter((_, at) => !plan.tooLarge.includes(at));
  const area = fitting.reduce((sum, part) => sum + part.length * part.width, 0);
  const strips = plan.sheets.reduce((sum, cutting) => sum + cutting.strips.length, 0);
  return {
    atLeast: Math.ceil(area / (length * width) - HAIR),
    planned: plan.sheets.length,
    tooLarge: plan.tooLarge,
    yield: plan.sheets.length === 0 ? 1 : area / (plan.sheets.length * sheet.length * sheet.width),
    cuts: strips + fitting.length,
    strips: plan.strips,
    sheets: plan.sheets.map((cutting) => cutting.strips.map((strip) => strip.parts)),
  };
}

interface Way {
  readonly length: number;
  readonly width: number;
  readonly sheet: Sheet;
  readonly strips: 'along' | 'across';
  readonly lie: 'narrow' | 'wide';
}

function planOf(
  parts: readonly SheetPart[],
  way: Way,
): { readonly sheets: readonly Cutting[]; readonly tooLarge: readonly number[]; readonly strips: Way['strips'] } {
  const { sheet, strips } = way;
  const [along, across] = strips === 'along' ? [way.length, way.width] : [way.width, way.length];
  const tooLarge: number[] = [];
  const fitting = parts.flatMap((part, at) => {
    const lying = laid(part, along, across, way);
    if (lying === undefined) tooLarge.push(at);
    return lying === undefined ? [] : [{ at, ...lying }];
  });
  fitting.sort((a, b) => b.width - a.width || b.length - a.length);
  const sheets: Cutting[] = [];
  for (const part of fitting) place(part, sheets, along, across, sheet);
  return { sheets, tooLarge, strips };
}

/** A part as it lies in a strip: as given, or turned where only that fits or its strip is then as it is wished. */
function laid(
  part: SheetPart,
  along: number,
  across: number,
  { sheet, strips, lie }: Way,
): Omit<LaidPart, 'at'> | undefined {
  const given = { length: part.length, width: part.width };
  const other = { length: part.width, width: part.length };
  const [first, turned] = strips === 'along' ? [given, other] : [other, given];
  const ways = ((part.turned ?? sheet.turned) ? [first, turned] : [first]).filter(
    (each) => each.length <= along + HAIR && each.width <= across + HAIR,
  );
  return ways.sort((a, b) => (lie === 'narrow' ? a.width - b.width : b.width - a.width))[0];
}

/** Into the strip that it fills best across, else into a new strip of the fullest sheet with room, else onto a new sheet. */
function place(part: LaidPart, sheets: Cutting[], along: number, across: number, { kerf }: Sheet): void {
  let best: Strip | undefined;
  for (const { strips } of sheets)
    for (const strip of strips)
      if (part.width <= strip.width + HAIR && part.length <= strip.left + HAIR)
        if (best === undefined || strip.width < best.width - HAIR) best = strip;
  if (best !== undefined) {
    best.parts.push(part);
    best.left -= part.length + kerf;
    return;
  }
  const strip: Strip = { width: part.width, parts: [part], left: along - part.length - kerf };
  let open: Cutting | undefined;
  for (const cutting of sheets)
    if (part.width <= cutting.left + HAIR && (open === undefined || cutting.left < open.left)) open = cutting;
  if (open !== undefined) {
    open.strips.push(strip);
    open.left -= part.width + kerf;
  } else sheets.push({ strips: [strip], left: across - part.width - kerf });
}
