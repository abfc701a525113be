// Lines and circles cut off at the edge of a piece of paper.

import { circle, type LineKind, line, type Mark, type Point } from '../frame/mark.ts';

export interface Window {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** What of a straight line lies within; undefined when nothing does (Liang & Barsky 1984). */
function clippedLine(
  [x0, y0]: Point,
  [x1, y1]: Point,
  { left, top, right, bottom }: Window,
): readonly [Point, Point] | undefined {
  const [dx, dy] = [x1 - x0, y1 - y0];
  let [from, to] = [0, 1];
  for (const [p, q] of [
    [-dx, x0 - left],
    [dx, right - x0],
    [-dy, y0 - top],
    [dy, bottom - y0],
  ] as const) {
    if (p === 0) {
      if (q < 0) return undefined;
      continue;
    }
    if (p < 0) from = Math.max(from, q / p);
    else to = Math.min(to, q / p);
  }
  if (from >= to) return undefined;
  return [
    [x0 + from * dx, y0 + from * dy],
    [x0 + to * dx, y0 + to * dy],
  ];
}

export function clippedPath(points: readonly Point[], kind: LineKind, window: Window): readonly Mark[] {
  return points.slice(1).flatMap((point, at) => {
    const kept = clippedLine(points[at]!, point, window);
    return kept === undefined ? [] : [line(kind, ...kept)];
  });
}

/** Chords of a cut circle are shorter than any pencil is wide. */
const CHORDS = 180;

export function clippedCircle(at: Point, radius: number, kind: LineKind, window: Window): readonly Mark[] {
  const [x, y] = at;
  if (
    x - radius >= window.left &&
    x + radius <= window.right &&
    y - radius >= window.top &&
    y + radius <= window.bottom
  )
    return [circle(at, radius, kind)];
  const points = Array.from({ length: CHORDS + 1 }, (_, turn): Point => {
    const angle = (2 * Math.PI * turn) / CHORDS;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
  return clippedPath(points, kind, window);
}
