// The boards of a construction by what they are sawn from: one list for the bill and for the bench.

import { type SheetCount, type SheetPart, sheetsFor } from '@stillair/physics';
import type { Cabinet } from '../cabinet/cabinet.ts';
import { restingOnParts } from '../cabinet/resting-on-parts.ts';
import type { BoardPart } from './board-part.ts';
import type { Unmarked } from './carcass-boards.ts';
import { constructionOf, unpiercedBoards } from './construction.ts';

export interface CutPart<Part = BoardPart> extends SheetPart {
  /** `faces.back`, `doors.front`, `partitions.0`. */
  readonly of: string;
  readonly part: Part;
}

/** All parts of one board in one thickness, as it is written. */
export interface BoardLot<Part = BoardPart> {
  readonly board: string;
  readonly thickness: number;
  readonly parts: readonly CutPart<Part>[];
  /** m² */
  readonly area: number;
}

/** With the sheets that it takes; undefined for what is cut to size. */
export interface CountedLot extends BoardLot<Unmarked> {
  readonly count: SheetCount | undefined;
}

export interface CutList<Lot = BoardLot> {
  readonly lots: readonly Lot[];
  /** Metres of joint of boards that come in sheets. */
  readonly joints: number;
  readonly doors: number;
  readonly shelves: number;
}

export function cutListOf(cabinet: Cabinet): CutList {
  return listOf(cabinet, constructionOf(cabinet).boards);
}

/** The same before any hole for air, which moves no size: what the bill asks for of every variant and sample. */
export const countedList: (cabinet: Cabinet) => CutList<CountedLot> = restingOnParts((cabinet) => {
  const list = listOf(cabinet, unpiercedBoards(cabinet));
  return { ...list, lots: list.lots.map((lot) => ({ ...lot, count: sheetsOf(cabinet, lot) })) };
});

function listOf<Part extends Unmarked>(cabinet: Cabinet, boards: readonly Part[]): CutList<BoardLot<Part>> {
  const lots = new Map<string, { board: string; thickness: number; parts: CutPart<Part>[] }>();
  for (const part of boards) {
    const key = `${part.board} ${part.nominal}`;
    const lot = lots.get(key) ?? { board: part.board, thickness: part.nominal, parts: [] };
    lot.parts.push({ of: part.of, part, ...alongGrain(part) });
    lots.set(key, lot);
  }
  return {
    lots: [...lots.values()].map((lot) => ({
      ...lot,
      area: lot.parts.reduce((sum, { length, width }) => sum + length * width, 0),
    })),
    joints: jointsOf(cabinet, boards),
    doors: Object.keys(cabinet.doors).length,
    shelves: cabinet.partitions.length,
  };
}

/** A part's length lies along its grain; of those without one the longer way is its length. */
function alongGrain({ u, v, grain }: Unmarked): SheetPart {
  const upright = grain === 'v' || (grain === 'none' && v > u);
  const size = upright ? { length: v, width: u } : { length: u, width: v };
  return grain === 'none' ? { ...size, turned: true } : size;
}

/** The rim of each back, four edges from front to back for each skin, and three edges of each board between bays. */
function jointsOf({ costs, inside }: Cabinet, boards: readonly Unmarked[]): number {
  return boards.reduce((sum, { of, board, u, v, kind, axes }) => {
    if (costs.sheets[board] === undefined) return sum;
    if (of === 'faces.back') return sum + 2 * (u + v);
    if (of === 'faces.left' || of === 'faces.right') return sum + 2 * u;
    return kind === 'partition' ? sum + (axes.t === 'z' ? u : v) + 2 * inside.depth : sum;
  }, 0);
}

/**
 * Sheets of a lot by the quick plan that every sample can afford; undefined for what is cut to size. The bench searches further
 * (`lotPlans`) and never takes more of them.
 */
export function sheetsOf({ costs }: Cabinet, { board, parts }: BoardLot<Unmarked>): SheetCount | undefined {
  const sheet = costs.sheets[board];
  if (sheet === undefined) return undefined;
  const [length, width] = sheet;
  return sheetsFor(parts, { length, width, trim: costs.trim, kerf: costs.kerf, turned: costs.turned });
}
