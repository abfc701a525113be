// Full-size drilling templates: holes of a board that lie together, on as many sheets as they need, with marks by which sheets are
// laid to one another and a square that shows whether the printer kept the size.

import type { BoardPart, Cut } from '../../joinery/board-part.ts';
import { constructionOf } from '../../joinery/construction.ts';
import { clippedCircle, clippedPath, type Window } from '../drawing/clip.ts';
import { box, type Mark, type Point, text } from '../frame/mark.ts';
import { type Area, drawingArea } from '../frame/page.ts';
import { brokenLines, textWidth } from '../frame/text-width.ts';
import type { Paper, Part } from '../paper.ts';
import { letterOf } from './board-picture.ts';
import { cutSize, JOINERS_CAUTIONS, mm } from './words.ts';

/** mm of the board on one sheet, and how much of it the next sheet shows again. */
const TILE = { width: 150, height: 148, overlap: 10 } as const;
/** Holes nearer than this share a template, m; a larger opening is marked with rule and square. */
const TOGETHER = 0.12;
const LARGEST = 0.4;
/** Board that is shown round the holes (a hole of 125 mm just goes on one sheet); an edge that is nearer than `EDGE` is shown too, m. */
const ROUND = 0.011;
const EDGE = 0.06;
const SQUARE = 50;
/** Type beside holes, mm. */
const LETTERS = 2.6;

export const templates: Paper = {
  id: 'templates',
  title: 'Drilling templates',
  what: 'Full size: print at 100 % without fitting to the page, and measure the square of 50 mm before you trust a sheet. Cut along the dashed frame, lay crosses on crosses, tape to the board, and prick the middles.',
  cautions: JOINERS_CAUTIONS,
  make({ source: { cabinet }, format }) {
    const { boards, problems, assumes } = constructionOf(cabinet);
    return {
      parts: boards.flatMap((board) => templatesOf(board, drawingArea(format))),
      missing: problems,
      assumes,
      rests: ['fit.tolerance'],
    };
  },
};

interface Lettered {
  readonly cut: Cut;
  readonly letter: string;
}

/** Where a template lies on its board, m: along and up from the datum. */
interface Patch {
  readonly cuts: readonly Lettered[];
  readonly u: readonly [number, number];
  readonly v: readonly [number, number];
}

export function patchesOf(board: BoardPart): readonly Patch[] {
  const open: Lettered[] = board.cuts.flatMap((cut, at) => (isDrilled(cut) ? [{ cut, letter: letterOf(at) }] : []));
  const groups: Lettered[][] = [];
  for (const each of open) {
    const near = groups.filter((group) => group.some((other) => gapOf(each.cut, other.cut) < TOGETHER));
    for (const group of near) groups.splice(groups.indexOf(group), 1);
    groups.push([...near.flat(), each]);
  }
  return groups.map((cuts) => {
    const spans = cuts.map(({ cut }) => reachOf(cut));
    const way = (axis: 0 | 1, size: number): readonly [number, number] => {
      const from = Math.min(...spans.map((each) => each[axis][0]));
      const to = Math.max(...spans.map((each) => each[axis][1]));
      return [from < EDGE ? -ROUND / 2 : from - ROUND, size - to < EDGE ? size + ROUND / 2 : to + ROUND];
    };
    return { cuts, u: way(0, board.u), v: way(1, board.v) };
  });
}

function isDrilled(cut: Cut): boolean {
  if (cut.purpose === 'housing' || cut.purpose === 'rebate') return false;
  const [u, v] = reachOf(cut);
  return Math.max(u[1] - u[0], v[1] - v[0]) <= LARGEST;
}

function reachOf({ shape }: Cut): readonly [readonly [number, number], readonly [number, number]] {
  if (shape.kind === 'rectangle')
    return [
      [shape.from[0], shape.to[0]],
      [shape.from[1], shape.to[1]],
    ];
  const half = shape.diameter / 2;
  const [u, v] = shape.at;
  return [
    [u - half, u + half],
    [v - half, v + half],
  ];
}

function gapOf(one: Cut, other: Cut): number {
  const [a, b] = [reachOf(one), reachOf(other)];
  const beside = (axis: 0 | 1): number => Math.max(0, a[axis][0] - b[axis][1], b[axis][0] - a[axis][1]);
  return Math.hypot(beside(0), beside(1));
}

function templatesOf(board: BoardPart, area: Area): readonly Part[] {
  return patchesOf(board).flatMap((patch) => {
    const step = { width: TILE.width - TILE.overlap, height: TILE.height - TILE.overlap };
    const [wide, high] = [(patch.u[1] - patch.u[0]) * 1000, (patch.v[1] - patch.v[0]) * 1000];
    const columns = Math.max(1, Math.ceil((wide - TILE.overlap) / step.width));
    const rows = Math.max(1, Math.ceil((high - TILE.overlap) / step.height));
    return Array.from({ length: rows * columns }, (_, at): Part => {
      const [row, column] = [Math.floor(at / columns), at % columns];
      return tile(board, patch, area, row, column, rows, columns);
    });
  });
}

function tile(
  board: BoardPart,
  patch: Patch,
  area: Area,
  row: number,
  column: number,
  rows: number,
  columns: number,
): Part {
  const head = 18;
  const left = area.x + (area.width - TILE.width) / 2;
  const top = area.y + head;
  const bottom = top + TILE.height;
  const step = { width: TILE.width - TILE.overlap, height: TILE.height - TILE.overlap };
  // Rows are counted from below, columns from the left of what is seen.
  const seenLeft = board.mirrored ? patch.u[1] : patch.u[0];
  const x = (u: number): number =>
    left +
    Math.abs(u - seenLeft) * 1000 * ((board.mirrored ? u <= seenLeft : u >= seenLeft) ? 1 : -1) -
    column * step.width;
  const y = (v: number): number => bottom - (v - patch.v[0]) * 1000 + row * step.height;
  const window: Window = {
    left,
    top: Math.max(top, bottom - ((patch.v[1] - patch.v[0]) * 1000 - row * step.height)),
    right: Math.min(left + TILE.width, left + (patch.u[1] - patch.u[0]) * 1000 - column * step.width),
    bottom,
  };
  const cross = (cx: number, cy: number): readonly Mark[] => [
    ...clippedPath(
      [
        [cx - 4, cy],
        [cx + 4, cy],
      ],
      'thin',
      window,
    ),
    ...clippedPath(
      [
        [cx, cy - 4],
        [cx, cy + 4],
      ],
      'thin',
      window,
    ),
  ];
  const half = TILE.overlap / 2;
  const crosses = [0, 1].flatMap((right) =>
    [0, 1].flatMap((up) => cross(left + half + right * step.width, bottom - half - up * step.height)),
  );
  const edges: readonly (readonly Point[])[] = [
    [
      [x(0), y(0)],
      [x(board.u), y(0)],
      [x(board.u), y(board.v)],
      [x(0), y(board.v)],
      [x(0), y(0)],
    ],
  ];
  const which = patch.cuts.map(({ letter }) => letter).join(', ');
  const tiles = rows * columns;
  const name = `Template ${board.mark}: ${which}`;
  const corner = `lower left corner of the dashed frame: ${mm((board.mirrored ? patch.u[1] : patch.u[0]) + ((board.mirrored ? -1 : 1) * column * step.width) / 1000)} across, ${mm(patch.v[0] + (row * step.height) / 1000)} up from the datum`;
  // All of it goes on Letter, whose sheets are lower.
  const foot = bottom + 5;
  const marks: Mark[] = [
    text([area.x, area.y + 4], `${board.mark} ${board.name}: ${which}`, 4, { bold: true }),
    text(
      [area.x, area.y + 9.5],
      `${board.seen}; ${tiles === 1 ? 'one sheet' : `row ${row + 1} of ${rows} from below, column ${column + 1} of ${columns}`}`,
      2.8,
    ),
    text([area.x, area.y + 13.5], corner, 2.8),
    box(window.left, window.top, window.right - window.left, window.bottom - window.top, 'hidden'),
    ...(tiles === 1 ? [] : crosses),
    ...edges.flatMap((points) => clippedPath(points, 'outline', window)),
    ...patch.cuts.flatMap(({ cut, letter }) => fullSize(cut, letter, x, y, window, area.x + area.width)),
    box(area.x, foot, SQUARE, SQUARE, 'outline'),
    text([area.x + SQUARE / 2, foot + SQUARE / 2 - 1], '50 mm', 3, { align: 'middle' }),
    text([area.x + SQUARE / 2, foot + SQUARE / 2 + 4], 'each way', 3, { align: 'middle' }),
    ...brokenLines(
      'Measure this square on the print. If it is not 50 mm each way, the sheet is not full size: print again at 100 %, or mark with rule and square from the drawing of the board.',
      area.width - SQUARE - 8,
      3,
    ).map((words, at): Mark => text([area.x + SQUARE + 6, foot + 6 + at * 4.2], words, 3)),
  ];
  return {
    kind: 'drawn',
    title: name,
    scale: '1:1',
    says: `Full-size template for ${which} of ${board.name}, sheet ${row * columns + column + 1} of ${tiles}`,
    marks,
  };
}

/** Above the middle line of a hole; where the frame ends too soon, beside the frame, as long as the paper has room there. */
function besideHole([x, y]: Point, wide: number, window: Window, limit: number): Point {
  const isShort = x + 2.5 + wide > window.right - 1 && window.right + 1.5 + wide <= limit;
  return isShort ? [window.right + 1.5, y + 0.9] : [x + 2.5, y - 2.5];
}

function fullSize(
  cut: Cut,
  letter: string,
  x: (u: number) => number,
  y: (v: number) => number,
  window: Window,
  limit: number,
): readonly Mark[] {
  const { shape } = cut;
  const kind = cut.side === 'far' && cut.depth !== 'through' ? 'hidden' : 'outline';
  const words = `${letter}  ${cutSize(cut)}`;
  const inside = ([px, py]: Point): boolean =>
    px > window.left + 2 && px < window.right - 1 && py > window.top + 3 && py < window.bottom - 2;
  if (shape.kind === 'round') {
    const at: Point = [x(shape.at[0]), y(shape.at[1])];
    const radius = shape.diameter * 500;
    const reach = radius + 4;
    const label = besideHole(at, textWidth(words, LETTERS), window, limit);
    return [
      ...clippedCircle(at, radius, kind, window),
      ...clippedPath(
        [
          [at[0] - reach, at[1]],
          [at[0] + reach, at[1]],
        ],
        'centre',
        window,
      ),
      ...clippedPath(
        [
          [at[0], at[1] - reach],
          [at[0], at[1] + reach],
        ],
        'centre',
        window,
      ),
      ...(inside([at[0] + 2.5, at[1] - 2.5]) ? [text(label, words, LETTERS)] : []),
    ];
  }
  const [a, b] = [x(shape.from[0]), x(shape.to[0])];
  const [low, high] = [y(shape.from[1]), y(shape.to[1])];
  const corners: readonly Point[] = [
    [a, low],
    [b, low],
    [b, high],
    [a, high],
    [a, low],
  ];
  const label: Point = [Math.max(Math.min(a, b), window.left) + 3, (low + high) / 2 + 1];
  return [...clippedPath(corners, kind, window), ...(inside(label) ? [text(label, words, LETTERS)] : [])];
}
