// Cutting rectangles out of rectangles by cuts from edge to edge of whatever they divide: all that a panel saw can do.

/** What is wanted; its length lies along the sheet's length unless it may be turned by a quarter. */
export interface Piece {
  readonly length: number;
  readonly width: number;
  readonly turned: boolean;
}

/** What can be cut of, its edges trimmed; the kerf is lost between pieces, not after the last. */
export interface Stock {
  readonly length: number;
  readonly width: number;
  readonly kerf: number;
}

/** One rectangle of a sheet: a piece, waste, or cut in two. `x` along the length, `y` along the width, from the sheet's corner. */
export type Region = {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
} & (
  | { readonly is: 'piece'; readonly piece: number; readonly turned: boolean }
  | { readonly is: 'waste' }
  /** `across` parts the length at `at` from its beginning, `along` the width; the kerf lies behind that. */
  | {
      readonly is: 'cut';
      readonly way: 'across' | 'along';
      readonly at: number;
      readonly parts: readonly [Region, Region];
    }
);

/** Sizes that differ by less are the same. */
export const HAIR = 1e-9;

export function fits(
  length: number,
  width: number,
  stock: { readonly length: number; readonly width: number },
): boolean {
  return length <= stock.length + HAIR && width <= stock.width + HAIR;
}

/** Ways in which a piece can lie. */
export function ways({
  length,
  width,
  turned,
}: Piece): readonly (readonly [length: number, width: number, turned: boolean])[] {
  return turned && Math.abs(length - width) > HAIR
    ? [
        [length, width, false],
        [width, length, true],
      ]
    : [[length, width, false]];
}

export function regionsOf(root: Region): readonly Region[] {
  return root.is === 'cut' ? [root, ...root.parts.flatMap(regionsOf)] : [root];
}

/** A piece in the corner of a place that is larger: cut off across, then along. */
export function placed(
  piece: number,
  [length, width, turned]: readonly [number, number, boolean],
  place: Pick<Region, 'x' | 'y' | 'length' | 'width'>,
  kerf: number,
): Region {
  const { x, y } = place;
  if (place.length > length + HAIR)
    return cutAt('across', length, place, kerf, (part) => placed(piece, [length, width, turned], part, kerf), waste);
  if (place.width > width + HAIR)
    return cutAt('along', width, place, kerf, (part) => placed(piece, [length, width, turned], part, kerf), waste);
  return { x, y, length: place.length, width: place.width, is: 'piece', piece, turned };
}

export type Area = Pick<Region, 'x' | 'y' | 'length' | 'width'>;

export function waste({ x, y, length, width }: Area): Region {
  return { x, y, length, width, is: 'waste' };
}

/** Parts a place in two, and lets each part become what it is to be. */
export function cutAt(
  way: 'across' | 'along',
  at: number,
  { x, y, length, width }: Area,
  kerf: number,
  first: (part: Area) => Region,
  second: (part: Area) => Region,
): Region {
  const left = Math.max(0, (way === 'across' ? length : width) - at - kerf);
  const parts: readonly [Region, Region] =
    way === 'across'
      ? [first({ x, y, length: at, width }), second({ x: x + at + kerf, y, length: left, width })]
      : [first({ x, y, length, width: at }), second({ x, y: y + at + kerf, length, width: left })];
  return { x, y, length, width, is: 'cut', way, at, parts };
}

/** Cuts of a sheet in the order in which they are made: each runs from edge to edge of the piece that it divides. */
export function cutsOf(root: Region): readonly Extract<Region, { is: 'cut' }>[] {
  return regionsOf(root).filter((region) => region.is === 'cut');
}
