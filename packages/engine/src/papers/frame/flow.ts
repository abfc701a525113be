// Lays blocks out one below another, and onto further sheets where one is full. Nothing is ever cut off: a text is broken into
// lines, a row of a table goes to the next sheet whole, its head is said again there.

import type { Block } from './block.ts';
import { layTable } from './flow-table.ts';
import { type Mark, moved, text } from './mark.ts';
import type { Area, Item } from './page.ts';
import { brokenLines, textWidth } from './text-width.ts';

/** Type sizes, mm. */
const BODY = 3.1;
const SMALL = 2.5;
export const HEADING = 4;
/** Distance of lines, of their size. */
const LEADING = 1.38;
/** A list of so many points at most is kept together. */
const SHORT = 6;

/** Something that stays together on a sheet: an item with its height, drawn from y = 0. */
export interface Piece {
  readonly height: number;
  /** Air before it, unless it is the first of its sheet. */
  readonly before: number;
  /** It must not be the last of a sheet. */
  readonly withNext?: true;
  readonly item: (x: number, y: number) => Item;
}

/** Items of each sheet. */
export function flow(blocks: readonly Block[], area: Area): readonly (readonly Item[])[] {
  const sheets: Item[][] = [[]];
  let y = 0;
  const turn = (): void => {
    if (sheets.at(-1)!.length > 0) sheets.push([]);
    y = 0;
  };
  for (const [at, block] of blocks.entries()) {
    if (block.kind === 'new sheet') {
      turn();
      continue;
    }
    if (block.kind === 'table') {
      y = layTable(block, area, y, sheets);
      continue;
    }
    const next = blocks[at + 1];
    const pieces = piecesOf(block, area);
    for (const [index, piece] of pieces.entries()) {
      const gap = y === 0 ? 0 : piece.before;
      // What belongs together is not parted: a heading and what follows, and the points of a short list.
      const own = block.kind === 'list' && index === 0 && isShort(pieces, area) ? heightOf(pieces.slice(1)) : 0;
      const kept = piece.withNext && next !== undefined ? firstHeight(next, area) : own;
      if (y + gap + piece.height + kept > area.height && y > 0) turn();
      const top = y === 0 ? 0 : y + piece.before;
      sheets.at(-1)!.push(piece.item(area.x, area.y + top));
      y = top + piece.height;
    }
  }
  return sheets.filter((items, at) => at === 0 || items.length > 0);
}

/** What a heading wants to have below it on its sheet. */
function firstHeight(block: Block, area: Area): number {
  if (block.kind === 'picture') return Math.min(block.height + 4, area.height / 2);
  if (block.kind === 'list') {
    const pieces = piecesOf(block, area);
    return heightOf(isShort(pieces, area) ? pieces : pieces.slice(0, 1));
  }
  return block.kind === 'table' ? 18 : 3 * BODY * LEADING;
}

/** A list that is not parted between sheets. */
const isShort = (pieces: readonly Piece[], area: Area): boolean =>
  pieces.length <= SHORT && heightOf(pieces) <= area.height / 3;

const heightOf = (pieces: readonly Piece[]): number =>
  pieces.reduce((sum, { height, before }) => sum + before + height, 0);

function piecesOf(block: Exclude<Block, { kind: 'new sheet' | 'table' }>, area: Area): readonly Piece[] {
  switch (block.kind) {
    case 'heading':
      return [
        {
          ...linesPiece(brokenLines(block.text, area.width, HEADING, true), HEADING, 6, 'heading'),
          withNext: true,
        },
      ];
    case 'text': {
      const size = block.small ? SMALL : BODY;
      return inPieces(brokenLines(block.text, area.width, size, block.bold), size, block.small ? 1.6 : 2.2, block.bold);
    }
    case 'list':
      return block.items.map((words, at) => listPiece(words, at, block.sign ?? 'dash', area.width));
    case 'picture':
      return [
        {
          height: block.height,
          before: 3,
          item: (x, y) => ({ role: 'figure', says: block.says, marks: moved(block.marks, x, y) }),
        },
      ];
  }
}

/** Long texts may be parted between sheets, six lines at a time. */
function inPieces(lines: readonly string[], size: number, before: number, bold?: true): readonly Piece[] {
  const most = 6;
  return Array.from({ length: Math.ceil(lines.length / most) }, (_, at) =>
    linesPiece(lines.slice(at * most, (at + 1) * most), size, at === 0 ? before : 0, 'text', bold),
  );
}

function linesPiece(
  lines: readonly string[],
  size: number,
  before: number,
  role: 'heading' | 'text',
  bold?: true,
): Piece {
  const look = bold || role === 'heading' ? ({ bold: true } as const) : {};
  return {
    height: lines.length * size * LEADING,
    before,
    item: (x, y) => ({
      role,
      marks: lines.map((words, at) => text([x, y + (at * LEADING + 1) * size], words, size, look)),
    }),
  };
}

function listPiece(words: string, at: number, sign: 'dash' | 'number' | 'box', width: number): Piece {
  const lead = sign === 'number' ? `${at + 1}.` : sign === 'box' ? '☐' : '–';
  const indent = sign === 'dash' ? 4 : Math.max(6, textWidth(lead, BODY) + 1.5);
  const lines = brokenLines(words, width - indent, BODY);
  return {
    height: lines.length * BODY * LEADING,
    before: sign === 'box' ? 1.6 : 0.8,
    item: (x, y) => ({
      role: 'text',
      marks: [
        text([x, y + BODY], lead, BODY),
        ...lines.map((each, row): Mark => text([x + indent, y + (row * LEADING + 1) * BODY], each, BODY)),
      ],
    }),
  };
}
