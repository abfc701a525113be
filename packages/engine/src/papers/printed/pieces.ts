// Where a part can be printed: on which machine's bed it lies, and in how many pieces where it is larger than all of them.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { BED_MARGIN, PIN_DEPTH, PIN_HOLE } from './practice.ts';
import type { PrintedPart } from './printed-part.ts';
import { bore, cut, placed, plate, prism, type Shape } from './shape.ts';

export interface Piece {
  /** Name of its file. */
  readonly id: string;
  readonly shape: Shape;
}

export interface Printing {
  /** Machines of the cabinet whose bed it fits on. */
  readonly on: readonly string[];
  readonly pieces: readonly Piece[];
  readonly says: string;
}

/** Larger than any part in any direction, mm. */
const FAR = 10_000;

export function printingOf(part: PrintedPart, { machines }: Pick<Cabinet, 'machines'>): Printing {
  const beds = Object.entries(machines).map(([id, { bed, style }]) => ({
    id,
    sides: [1000 * bed.width - 2 * BED_MARGIN, 1000 * bed.depth - 2 * BED_MARGIN] as const,
    round: style === 'delta',
  }));
  const [width, depth] = part.size;
  const fits = (x: number, y: number): string[] =>
    beds
      .filter(({ sides: [a, b], round }) => (round ? Math.hypot(x, y) <= a : (x <= a && y <= b) || (y <= a && x <= b)))
      .map(({ id }) => id);
  const whole = [{ id: part.id, shape: part.shape }];
  const on = fits(width, depth);
  if (on.length > 0) return { on, pieces: whole, says: `in one piece on ${on.join(', ')}` };
  const ways = [
    { x: 2, y: 1 },
    { x: 1, y: 2 },
    { x: 2, y: 2 },
  ] as const;
  const way = ways.find(({ x, y }) => fits(width / x, depth / y).length > 0);
  if (part.pins === undefined || way === undefined)
    return {
      on: [],
      pieces: whole,
      says: `${Math.ceil(width)} mm x ${Math.ceil(depth)} mm is larger than every bed of this cabinet: print it elsewhere, or make it of board`,
    };
  const pieces = piecesOf(part, way.x === 2, way.y === 2);
  return {
    on: fits(width / way.x, depth / way.y),
    pieces,
    says: `in ${pieces.length} pieces on ${fits(width / way.x, depth / way.y).join(', ')}: pins of 3 mm in the holes of the cuts, and glue`,
  };
}

/** Cut through the middle, with holes for pins across each cut. */
function piecesOf({ id, shape, pins }: PrintedPart, cutX: boolean, cutY: boolean): Piece[] {
  const hole = bore(PIN_HOLE / 2, [0, 0], 16);
  const along = prism(hole, -PIN_DEPTH, PIN_DEPTH);
  const drilled = cut(
    shape,
    ...(cutX ? pins!.acrossX.map(([y, z]) => placed(along, [0, y, z], [0, 90, 0])) : []),
    ...(cutY ? pins!.acrossY.map(([x, z]) => placed(along, [x, 0, z], [90, 0, 0])) : []),
  );
  const halves = (divided: boolean): readonly (-1 | 0 | 1)[] => (divided ? [-1, 1] : [0]);
  return halves(cutX).flatMap((x) =>
    halves(cutY).map((y, at): Piece => {
      const away = [
        ...(x === 0 ? [] : [prism(plate(FAR, 2 * FAR, [(-x * FAR) / 2, 0]), -FAR, FAR)]),
        ...(y === 0 ? [] : [prism(plate(2 * FAR, FAR, [0, (-y * FAR) / 2]), -FAR, FAR)]),
      ];
      const number = 1 + (x > 0 ? (cutY ? 2 : 1) : 0) + at;
      return { id: `${id}-piece-${number}`, shape: cut(drilled, ...away) };
    }),
  );
}
