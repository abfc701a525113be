// A board as flat shapes for a cutter, as it lies with the drawn side up: closed outlines in millimetres, a layer for each purpose
// and depth.

import type { BoardPart, Cut } from '../../joinery/board-part.ts';
import type { FlatFile, FlatShape } from '../paper.ts';
import { mm } from './words.ts';

/** A ten-thousandth of a millimetre is finer than any cutter. */
const tidy = (length: number): number => Math.round(length * 1e7) / 1e4;

export function flatBoard(board: BoardPart): FlatFile {
  const u = (at: number): number => tidy(board.mirrored ? board.u - at : at);
  const name = `board-${board.mark}-${board.name.replaceAll(/[^A-Za-z0-9]+/g, '-').toLowerCase()}`;
  const [width, height] = [tidy(board.u), tidy(board.v)];
  return {
    name,
    shapes: [
      {
        kind: 'outline',
        layer: 'outline',
        points: [
          [0, 0],
          [width, 0],
          [width, height],
          [0, height],
        ],
      },
      ...board.cuts.map((cut) => flatCut(cut, u)),
      { kind: 'text', layer: 'text', at: [10, 10], text: `${board.mark} ${board.name}`, height: 12 },
    ],
  };
}

function flatCut({ shape, purpose, depth, side }: Cut, u: (at: number) => number): FlatShape {
  const deep = depth === 'through' ? '' : `_${mm(depth).replace('.', '_')}mm_deep`;
  const layer = `${purpose}${deep}${side === 'far' && depth !== 'through' ? '_far_side' : ''}`;
  if (shape.kind === 'round')
    return { kind: 'circle', layer, at: [u(shape.at[0]), tidy(shape.at[1])], diameter: tidy(shape.diameter) };
  const [a, b] = [u(shape.from[0]), u(shape.to[0])];
  const [left, right] = [Math.min(a, b), Math.max(a, b)];
  const [low, high] = [tidy(shape.from[1]), tidy(shape.to[1])];
  return {
    kind: 'outline',
    layer,
    points: [
      [left, low],
      [right, low],
      [right, high],
      [left, high],
    ],
  };
}
