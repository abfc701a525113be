// One board as a drawing: its outline, everything that is cut into it, and where all of that is from its one datum.

import type { BoardPart, Cut } from '../../joinery/board-part.ts';
import { distinct, level, upright } from '../drawing/dimension.ts';
import { type DrawingScale, drawingScale } from '../drawing/scale.ts';
import { box, circle, type LineKind, line, type Mark, type Point, text } from '../frame/mark.ts';
import { textWidth } from '../frame/text-width.ts';
import { mm } from './words.ts';

export interface BoardPicture {
  readonly width: number;
  readonly height: number;
  readonly scale: DrawingScale;
  readonly marks: readonly Mark[];
}

/** Room for dimensions and their values beside the board, mm. */
const BESIDE = 24;
const BELOW = 22;
const AROUND = 6;

/** `a`, `b` … `z`, `aa` … */
export function letterOf(at: number): string {
  const letter = String.fromCharCode(97 + (at % 26));
  return at < 26 ? letter : `${letterOf(Math.floor(at / 26) - 1)}${letter}`;
}

export function boardPicture(board: BoardPart, width: number, most: number): BoardPicture {
  const scale = drawingScale([board.u, board.v], [width - BESIDE - AROUND, most - BELOW - AROUND]);
  const [w, h] = [board.u * scale.factor, board.v * scale.factor];
  const left = board.mirrored ? AROUND + (width - BESIDE - AROUND - w) / 2 : BESIDE + (width - BESIDE - AROUND - w) / 2;
  const top = AROUND;
  const x = (u: number): number => left + (board.mirrored ? w - u * scale.factor : u * scale.factor);
  const y = (v: number): number => top + h - v * scale.factor;
  const stops = (way: 0 | 1, end: number): readonly number[] =>
    distinct([...board.cuts.flatMap((cut) => places(cut, way)), end]).filter((at) => at > 5e-5);
  const [us, vs] = [stops(0, board.u), stops(1, board.v)];
  const across = top + h + 9;
  const beside = board.mirrored ? left + w + 9 : left - 9;
  const sign = board.mirrored ? 1 : -1;
  const bottom = top + h;
  return {
    width,
    height: h + BELOW + AROUND,
    scale,
    marks: [
      box(left, top, w, h),
      ...grain(board, left, top, w, h),
      ...lettered(
        board.cuts.map((cut, at) => drawnCut(cut, letterOf(at), x, y, scale.factor)),
        [left, left + w],
      ),
      ...level({
        origin: x(0),
        across,
        from: bottom,
        stops: us.map((u) => ({ at: x(u), words: mm(u) })),
        beyond: 2,
        low: 2,
        high: width - 2,
      }),
      ...upright({
        origin: y(0),
        across: beside,
        from: board.mirrored ? left + w : left,
        stops: vs.map((v) => ({ at: y(v), words: mm(v) })),
        beyond: sign * 2,
        low: 2,
        high: bottom + 2,
      }),
      text([x(0) + (board.mirrored ? 1.5 : -1.5), bottom + 3.4], 'datum', 2.2, {
        align: board.mirrored ? 'left' : 'right',
      }),
    ],
  };
}

/** Where a cut is dimensioned: the middle of a hole, both edges of anything else. */
function places({ shape }: Cut, way: 0 | 1): readonly number[] {
  return shape.kind === 'round' ? [shape.at[way]] : [shape.from[way], shape.to[way]];
}

function drawnCut(
  { shape, depth, side, purpose }: Cut,
  letter: string,
  x: (u: number) => number,
  y: (v: number) => number,
  factor: number,
): readonly Mark[] {
  const kind: LineKind = side === 'far' && depth !== 'through' ? 'hidden' : 'outline';
  if (shape.kind === 'round') {
    const at: Point = [x(shape.at[0]), y(shape.at[1])];
    const radius = (shape.diameter * factor) / 2;
    const reach = radius + 1.5;
    return [
      circle(at, Math.max(radius, 0.25), kind),
      line('centre', [at[0] - reach, at[1]], [at[0] + reach, at[1]]),
      line('centre', [at[0], at[1] - reach], [at[0], at[1] + reach]),
      text([at[0] + radius * 0.75 + 0.7, at[1] - radius * 0.75 - 0.7], letter, 3, { bold: true }),
    ];
  }
  const [a, b] = [x(shape.from[0]), x(shape.to[0])];
  const [left, right] = [Math.min(a, b), Math.max(a, b)];
  const [top, bottom] = [y(shape.to[1]), y(shape.from[1])];
  const filled = purpose === 'housing' || purpose === 'rebate';
  const wide = right - left > 8 || bottom - top > 6;
  const at: Point = wide
    ? [(left + right) / 2 - textWidth(letter, 3) / 2, (top + bottom) / 2 + (bottom - top > 4 ? 1 : -2.5)]
    : [right + 0.8, top - 0.6];
  return [
    box(left, top, right - left, bottom - top, kind, filled && side === 'seen' ? 'shade' : undefined),
    text(at, letter, 3, { bold: true }),
  ];
}

/** Letters that would lie on one another or on an edge of the board go to another side of their cut. */
function lettered(cuts: readonly (readonly Mark[])[], edges: readonly number[]): readonly Mark[] {
  const taken: Point[] = [];
  const isClear = (at: Point): boolean =>
    taken.every((other) => Math.hypot(other[0] - at[0], other[1] - at[1]) > 2.6) &&
    edges.every((edge) => at[0] > edge + 0.3 || at[0] + 2.2 < edge);
  return cuts.flatMap((marks) =>
    marks.map((mark): Mark => {
      if (mark.kind !== 'text') return mark;
      const sides: readonly Point[] = [
        [0, 0],
        [-4.6, 0],
        [-4.6, 4.2],
        [0, 4.2],
        [3, 0],
        [3, 4.2],
      ];
      const free = sides.map(([dx, dy]): Point => [mark.at[0] + dx, mark.at[1] + dy]).find(isClear);
      const at = free ?? mark.at;
      taken.push(at);
      return { ...mark, at };
    }),
  );
}

/** A double arrow along the grain. */
function grain({ grain: way }: BoardPart, left: number, top: number, w: number, h: number): readonly Mark[] {
  if (way === 'none') return [];
  const upwards = way === 'v';
  const length = Math.min(16, (upwards ? h : w) * 0.5);
  const [cx, cy] = [left + w * 0.5, top + h * 0.5];
  const point = (along: number, across: number): Point =>
    upwards ? [cx + across, cy + along] : [cx + along, cy + across];
  const half = length / 2;
  return [
    line('thin', point(-half, 0), point(half, 0)),
    line('thin', point(-half + 1.6, -0.8), point(-half, 0), point(-half + 1.6, 0.8)),
    line('thin', point(half - 1.6, -0.8), point(half, 0), point(half - 1.6, 0.8)),
    text(upwards ? [cx - 1, cy + 3] : [cx - 3.5, cy - 1], 'grain', 2.2, {
      grey: true,
      ...(upwards ? { turn: -90 } : {}),
    }),
  ];
}
