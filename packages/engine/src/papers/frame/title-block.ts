// Frame and title block of a sheet: ISO 5457 for the frame, ISO 7200 for what is said in the block, ISO 5456-2 for the sign of the
// projection.

import type { Angle } from '../paper.ts';
import { box, circle, line, type Mark, outline, type Point, text } from './mark.ts';
import { type FormatName, FRAME_WIDTH, formats, MARGIN, TITLE_HEIGHT } from './page.ts';
import { brokenLines, textWidth } from './text-width.ts';

export interface TitleBlock {
  readonly cabinet: string;
  readonly paper: string;
  readonly file: string;
  readonly version: string;
  readonly caution: string;
  readonly sheet: number;
  readonly sheets: number;
  readonly scale?: string;
  /** Only of drawings. */
  readonly angle?: Angle;
  readonly date?: string;
}

const LABEL = 1.9;
const WORDS = 2.7;
const ROWS = [9, 8, 13] as const;

export function titleBlock(format: FormatName, block: TitleBlock): readonly Mark[] {
  const { height } = formats[format];
  const left = MARGIN.left;
  const right = left + FRAME_WIDTH;
  const top = height - MARGIN.bottom - TITLE_HEIGHT;
  const [one, two] = [top + ROWS[0], top + ROWS[0] + ROWS[1]];
  const bottom = height - MARGIN.bottom;
  const field = (x: number, y: number, width: number, label: string, words: string, size = WORDS): readonly Mark[] => [
    text([x + 1.5, y + 2.6], label, LABEL, { grey: true }),
    text([x + 1.5, y + 6.6], shortened(words, width - 3, size), size),
  ];
  return [
    box(left, MARGIN.top, FRAME_WIDTH, height - MARGIN.top - MARGIN.bottom, 'frame'),
    ...centring(format),
    line('outline', [left, top], [right, top]),
    line('thin', [left, one], [right, one]),
    line('thin', [left, two], [right, two]),
    ...field(left, top, 100, 'cabinet', block.cabinet, 3.4),
    line('thin', [left + 100, top], [left + 100, one]),
    ...field(left + 100, top, 80, 'sheet', block.paper, 3.4),
    ...field(left, one, 84, 'computed from', block.file),
    line('thin', [left + 84, one], [left + 84, two]),
    ...field(left + 84, one, 30, 'by', `stillair ${block.version}`),
    line('thin', [left + 114, one], [left + 114, two]),
    ...field(left + 114, one, 24, 'lengths in', 'mm'),
    line('thin', [left + 138, one], [left + 138, two]),
    ...field(left + 138, one, 20, 'scale', block.scale ?? '–'),
    line('thin', [left + 158, one], [left + 158, two]),
    ...field(left + 158, one, 22, 'number', `${block.sheet} / ${block.sheets}`),
    ...brokenLines(block.caution, 126, 2.3)
      .slice(0, 4)
      .map((words, at): Mark => text([left + 1.5, two + 3.2 + at * 2.9], words, 2.3)),
    line('thin', [left + 130, two], [left + 130, bottom]),
    ...(block.date === undefined ? [] : field(left + 130, two, 25, 'date', block.date)),
    ...(block.angle === undefined ? [] : projection(left + 168, two + 6.5, block.angle)),
  ];
}

/** Marks in the middle of each side, by which a copy is set straight. */
function centring(format: FormatName): readonly Mark[] {
  const { width, height } = formats[format];
  const x = MARGIN.left + FRAME_WIDTH / 2;
  const right = MARGIN.left + FRAME_WIDTH;
  return [
    line('frame', [x, 5], [x, MARGIN.top + 3]),
    line('frame', [x, height - 5], [x, height - MARGIN.bottom]),
    line('frame', [MARGIN.left - 5, height / 2], [MARGIN.left + 3, height / 2]),
    line('frame', [right - 3, height / 2], [Math.min(right + 5, width - 4), height / 2]),
  ];
}

/** A blunt cone and its end: the end stands at the right of the cone in first angle, at its left in third. */
function projection(x: number, y: number, angle: Angle): readonly Mark[] {
  const [cone, end] = angle === 'first' ? [-5, 5] : [5, -5];
  const corners: readonly Point[] = [
    [x + cone - 3, y - 1.5],
    [x + cone + 3, y - 3],
    [x + cone + 3, y + 3],
    [x + cone - 3, y + 1.5],
  ];
  return [
    outline(corners),
    circle([x + end, y], 1.5),
    circle([x + end, y], 3),
    line('centre', [x + cone - 4, y], [x + cone + 4, y]),
    line('centre', [x + end - 4, y], [x + end + 4, y]),
    line('centre', [x + end, y - 4], [x + end, y + 4]),
  ];
}

/** A name too long for its field ends in dots. */
function shortened(words: string, width: number, size: number): string {
  const plain = words.replaceAll(/\s+/g, ' ');
  if (textWidth(plain, size) <= width) return plain;
  const signs = Array.from(plain);
  while (signs.length > 0 && textWidth(`${signs.join('')}…`, size) > width) signs.pop();
  return `${signs.join('').trimEnd()}…`;
}
