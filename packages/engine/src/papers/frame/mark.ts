// What a sheet is drawn of: lines, circles, arcs and text in millimetres on the paper, from its upper left corner, y downwards.
// Plain data; how it becomes SVG or PDF is the business of those who write these.

/** mm to the right, mm down. */
export type Point = readonly [x: number, y: number];

/** Lines by what they are for, as ISO 128-2: two widths in the ratio 1:2, dashes in multiples of the width. */
export type LineKind =
  /** Visible edges: wide, continuous. */
  | 'outline'
  /** Frame of the sheet. */
  | 'frame'
  /** Dimensions, hatching, leaders, rules of tables. */
  | 'thin'
  /** Edges behind something. */
  | 'hidden'
  /** Axes of holes and symmetry. */
  | 'centre'
  /** What stands beside and is no part of it: machines, walls. */
  | 'beside'
  /** Where a saw parts a sheet. */
  | 'cut'
  /** What moves together, in symbols too small for the dashes of drawings. */
  | 'link';

export interface LineLook {
  readonly width: number;
  /** Dash and gap in turn; empty for a continuous line. */
  readonly dashes: readonly number[];
}

/** Widths and dashes of each kind, mm. */
export const lineLooks: Readonly<Record<LineKind, LineLook>> = {
  outline: { width: 0.35, dashes: [] },
  frame: { width: 0.7, dashes: [] },
  thin: { width: 0.18, dashes: [] },
  hidden: { width: 0.18, dashes: [2.16, 0.54] },
  centre: { width: 0.18, dashes: [4.32, 0.54, 0.09, 0.54] },
  beside: { width: 0.18, dashes: [4.32, 0.54, 0.09, 0.54, 0.09, 0.54] },
  cut: { width: 0.35, dashes: [8.4, 1.05, 0.18, 1.05] },
  link: { width: 0.18, dashes: [0.7, 0.35] },
};

/** `shade` is a light grey that still copies as white. */
export type Fill = 'ink' | 'paper' | 'shade';

export type Mark =
  | {
      readonly kind: 'line';
      readonly points: readonly Point[];
      /** Without one only the fill is seen. */
      readonly line?: LineKind;
      readonly closed?: true;
      readonly fill?: Fill;
    }
  | {
      readonly kind: 'circle';
      readonly at: Point;
      readonly radius: number;
      readonly line?: LineKind;
      readonly fill?: Fill;
    }
  /** From one angle to another, degrees clockwise from the right. */
  | {
      readonly kind: 'arc';
      readonly at: Point;
      readonly radius: number;
      readonly from: number;
      readonly to: number;
      readonly line: LineKind;
    }
  | TextMark;

export interface TextMark {
  readonly kind: 'text';
  /** Where its base line begins, is halved or ends. */
  readonly at: Point;
  readonly text: string;
  /** Size of the type, mm; capitals are 0.73 of it high. */
  readonly size: number;
  readonly align?: 'left' | 'middle' | 'right';
  /** Degrees clockwise about `at`. */
  readonly turn?: number;
  readonly bold?: true;
  readonly grey?: true;
}

/** An open line. */
export function line(kind: LineKind, ...points: readonly Point[]): Mark {
  return { kind: 'line', points, line: kind };
}

/** A closed outline. */
export function outline(points: readonly Point[], kind: LineKind = 'outline', fill?: Fill): Mark {
  return { kind: 'line', points, line: kind, closed: true, ...(fill === undefined ? {} : { fill }) };
}

/** A rectangle by its upper left corner. */
export function box(
  x: number,
  y: number,
  width: number,
  height: number,
  kind: LineKind = 'outline',
  fill?: Fill,
): Mark {
  return outline(
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    kind,
    fill,
  );
}

export function circle(at: Point, radius: number, kind: LineKind = 'outline', fill?: Fill): Mark {
  return { kind: 'circle', at, radius, line: kind, ...(fill === undefined ? {} : { fill }) };
}

/** What a text may be beside its place and size. */
export type TextLook = Pick<TextMark, 'align' | 'turn' | 'bold' | 'grey'>;

export function text(at: Point, words: string, size: number, look: TextLook = {}): TextMark {
  return { kind: 'text', at, text: words, size, ...look };
}

/** The same marks elsewhere on the paper. */
export function moved(marks: readonly Mark[], x: number, y: number): readonly Mark[] {
  const by = ([a, b]: Point): Point => [a + x, b + y];
  return marks.map((mark): Mark => {
    if (mark.kind === 'line') return { ...mark, points: mark.points.map(by) };
    return { ...mark, at: by(mark.at) };
  });
}
