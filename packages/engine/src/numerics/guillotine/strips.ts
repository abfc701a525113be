// The quick plan of the bill, drawn: strips from edge to edge of the sheet, and crosscuts of each.

import { type LaidPart, sheetsFor } from '@stillair/physics';
import { type Area, cutAt, HAIR, type Piece, placed, type Region, type Stock, waste } from './piece.ts';

export function inStrips(pieces: readonly Piece[], stock: Stock): readonly Region[] {
  const { sheets, strips: way } = sheetsFor(pieces, { ...stock, trim: 0, turned: false });
  const along = way === 'along';
  const piece = ({ at, length, width }: LaidPart, place: Area): Region => {
    const [l, w] = along ? [length, width] : [width, length];
    return placed(at, [l, w, Math.abs(l - pieces[at]!.length) > HAIR], place, stock.kerf);
  };
  /** The parts of a strip one after another. */
  const row = (parts: readonly LaidPart[], place: Area): Region => {
    const [first, ...rest] = parts;
    if (first === undefined) return waste(place);
    if ((along ? place.length : place.width) <= first.length + HAIR) return piece(first, place);
    return cutAt(
      along ? 'across' : 'along',
      first.length,
      place,
      stock.kerf,
      (part) => piece(first, part),
      (part) => row(rest, part),
    );
  };
  const stack = (strips: readonly (readonly LaidPart[])[], place: Area): Region => {
    const [first, ...rest] = strips;
    if (first === undefined) return waste(place);
    // The first part of a strip is its widest.
    const width = first[0]!.width;
    if ((along ? place.width : place.length) <= width + HAIR) return row(first, place);
    return cutAt(
      way,
      width,
      place,
      stock.kerf,
      (part) => row(first, part),
      (part) => stack(rest, part),
    );
  };
  return sheets.map((strips) => stack(strips, { x: 0, y: 0, length: stock.length, width: stock.width }));
}
