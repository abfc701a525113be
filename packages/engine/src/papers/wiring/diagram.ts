// The single-line diagram: a tree that grows from the wall at the left, one row for each thing at its end, over as many sheets as it needs.

import type { Cabinet } from '../../cabinet/cabinet.ts';
import { line, type Mark, text } from '../frame/mark.ts';
import type { Area } from '../frame/page.ts';
import { brokenLines } from '../frame/text-width.ts';
import type { Part } from '../paper.ts';
import { breaker, contactor, earth, HALF, residual, symbolMarks } from './symbols.ts';
import { type TreeNode, wiringTree } from './tree.ts';

const ROW = 11;
const LABEL = 2.5;
const SMALL_LABEL = 2.1;
/** Left edge of the first column: strips. */
const FIRST = 12;
/** From one column to the next at most, and left for the labels of the last one. */
const WIDEST = 39;
const LAST = 30;
/** Upright that everything hangs on. */
const BUS = 5;
/** From one column's symbol to the next column's line. */
const LABEL_GAP = 1.4;

interface Placed {
  readonly node: TreeNode;
  readonly depth: number;
  readonly row: number;
  readonly parent: number | undefined;
}

export function diagram(cabinet: Cabinet, area: Area): readonly Part[] {
  const rows: Placed[] = [];
  let row = 0;
  const place = (node: TreeNode, depth: number, parent: number | undefined): void => {
    const at = rows.length;
    rows.push({ node, depth, row, parent });
    if (node.children.length === 0) row += 1;
    for (const child of node.children) place(child, depth + 1, at);
  };
  for (const node of wiringTree(cabinet)) place(node, 0, undefined);
  if (rows.length === 0) return [];
  const top = area.y + 27;
  const each = Math.floor((area.height - 32) / ROW);
  const step = Math.min(WIDEST, (area.width - FIRST - LAST) / Math.max(1, ...rows.map(({ depth }) => depth)));
  const sheets = Math.ceil(row / each);
  return Array.from({ length: sheets }, (_, sheet): Part => {
    const first = sheet * each;
    const shown = rows.filter((one) => one.row >= first && one.row < first + each);
    const y = (one: Placed): number => top + (one.row - first) * ROW;
    const x = ({ depth }: Placed): number => area.x + FIRST + depth * step;
    return {
      kind: 'drawn',
      title: 'single-line diagram',
      says: `From the wall to each load: ${shown.map(({ node }) => node.label).join('; ')}`,
      marks: [
        ...(sheet === 0 ? feeder(cabinet, area.x, top) : [text([area.x, top - 6], 'continued', LABEL, { grey: true })]),
        // The bus that strips and plugs hang on.
        line(
          'outline',
          [area.x + BUS, top],
          [
            area.x + BUS,
            rows.some((one) => one.depth === 0 && one.row >= first + each)
              ? area.y + area.height - 4
              : Math.max(top, ...shown.filter(({ depth }) => depth === 0).map(y)),
          ],
        ),
        ...shown.flatMap((one) => rowMarks(one, x(one), y(one), step, area)),
        ...shown.flatMap((one) => linesTo(one, rows, x, y, area, first)),
        ...shown.flatMap((one) => goesOn(one, rows, first + each, x, y, area)),
        ...(first === 0 ? [] : comesFrom(shown, rows, first, x, top)),
      ],
    };
  });
}

function rowMarks({ node }: Placed, x: number, y: number, step: number, area: Area): readonly Mark[] {
  const at = x + 2 * HALF + LABEL_GAP + (node.symbol === 'strip' ? 1.6 : 0);
  // What leads on has its label above its line, up to the next column; what ends has the rest of the sheet.
  const room = node.children.length === 0 ? area.x + area.width - at : x + step - 5 - at;
  const lines = brokenLines(node.label, room, LABEL).slice(0, 3);
  const below = node.line === '' ? [] : brokenLines(node.line, room, SMALL_LABEL).slice(0, 2);
  return [
    ...symbolMarks(node.symbol, x, y),
    ...lines.map((words, row): Mark => text([at, y - 1 - (lines.length - 1 - row) * LABEL * 1.2], words, LABEL)),
    ...below.map((words, row): Mark => text([at, y + 2.9 + row * 2.4], words, SMALL_LABEL, { grey: true })),
  ];
}

/** From the parent's symbol, down its own upright, to this one's. */
function linesTo(
  one: Placed,
  rows: readonly Placed[],
  x: (one: Placed) => number,
  y: (one: Placed) => number,
  area: Area,
  first: number,
): readonly Mark[] {
  const mine = y(one);
  if (one.parent === undefined) return [line('outline', [area.x + BUS, mine], [x(one), mine])];
  const upright = x(one) - 5;
  const parent = rows[one.parent]!;
  const here = parent.row >= first;
  const from = here ? y(parent) : y({ ...parent, row: first }) - 5;
  const eldest = rows.find(({ parent: of }) => of === one.parent) === one;
  return [
    line('outline', [upright, from], [upright, mine]),
    line('outline', [upright, mine], [x(one), mine]),
    ...(here && eldest ? [line('outline', [x(parent) + rightEnd(parent.node), from], [upright, from])] : []),
  ];
}

/** Down to the edge of the sheet, where more that hangs on it stands on the next one. */
function goesOn(
  one: Placed,
  rows: readonly Placed[],
  end: number,
  x: (one: Placed) => number,
  y: (one: Placed) => number,
  area: Area,
): readonly Mark[] {
  const at = rows.indexOf(one);
  const later = rows.find(({ parent, row }) => parent === at && row >= end);
  if (later === undefined) return [];
  const upright = x(later) - 5;
  return [line('outline', [upright, y(one)], [upright, area.y + area.height - 2])];
}

/** Names what the first uprights of a further sheet hang on. */
function comesFrom(
  shown: readonly Placed[],
  rows: readonly Placed[],
  first: number,
  x: (one: Placed) => number,
  top: number,
): readonly Mark[] {
  const parents = [
    ...new Set(shown.flatMap(({ parent }) => (parent === undefined || rows[parent]!.row >= first ? [] : [parent]))),
  ];
  return parents.map((parent): Mark => {
    const child = shown.find((one) => one.parent === parent)!;
    return text([x(child) - 6.5, top - 7.5], `on ${rows[parent]!.node.label}`, LABEL, { align: 'right', grey: true });
  });
}

/** Where a symbol ends, from its left. */
const rightEnd = ({ symbol }: TreeNode): number => 2 * HALF + (symbol === 'strip' ? -0.8 : 0);

/** Mains, breaker, device against earth faults, and the contactor of the cut-off chain where there is one. */
function feeder(cabinet: Cabinet, x: number, y: number): readonly Mark[] {
  const { circuit, breaker: curve, rcd, region, voltage } = cabinet.power;
  const chained = Object.keys(cabinet.protection.chain ?? {}).length > 0;
  const above = y - 14;
  return [
    text([x, above - 6], `mains ${voltage} V ~`, LABEL),
    line('outline', [x, above], [x + 2, above]),
    ...breaker(x + 7, above),
    text([x + 2, above + 4], region === 'US' ? `${circuit} A` : `${curve}${circuit}`, LABEL),
    ...(rcd > 0
      ? [
          ...residual(x + 20, above),
          line('outline', [x + 12, above], [x + 15, above]),
          line('outline', [x + 28, above], [x + 30, above]),
          text([x + 14, above + 4], `${Math.round(rcd * 1000)} mA`, LABEL),
        ]
      : [
          line('outline', [x + 12, above], [x + 30, above]),
          text([x + 13, above + 4], 'no residual current device', LABEL),
        ]),
    ...(chained
      ? [
          ...contactor(x + 35, above),
          text([x + 32, above + 4], 'K1, see cut-off chain', LABEL),
          line('outline', [x + 40, above], [x + 68, above]),
        ]
      : [line('outline', [x + 30, above], [x + 68, above])]),
    line('outline', [x + 68, above], [x + 68, above + 6], [x + BUS, above + 6], [x + BUS, y]),
    ...earth(x + 75, above - 3),
    text([x + 79, above + 0.5], 'earth to every metal part that mains could touch', LABEL),
  ];
}
