// A small picture of a printed part: its edges, seen from above when it is flat, else from above at a corner (isometric, ISO 5456-3).

import type { Mark, Point } from '../frame/mark.ts';
import type { Shape, Spot } from './shape.ts';

type Edge = readonly Spot[];

/** Flatter than this, seen from above, mm. */
const FLAT = 9;
/** Corners turned by less are those of a curve: no edge runs up from them. */
const CURVE = Math.PI / 9;

export function partPicture(shape: Shape, [width, depth, height]: Spot, room: number): readonly Mark[] {
  const flat = height <= FLAT && Math.max(width, depth) > 2 * height;
  const see = ([x, y, z]: Spot): Point =>
    flat ? [x, -y] : [(x - y) * Math.cos(Math.PI / 6), -(x + y) * Math.sin(Math.PI / 6) - z];
  const lines = edgesOf(shape).map((edge) => edge.map(see));
  const points = lines.flat();
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs), Math.min(...ys)];
  const scale = Math.min(room / (Math.max(...xs) - left), room / (Math.max(...ys) - top));
  const seen = new Set<string>();
  return lines.flatMap((each): Mark[] => {
    const shown = each.map(([x, y]): Point => [(x - left) * scale, (y - top) * scale]);
    // Seen from above, upper and lower edges fall on one another.
    const key = shown.map(([x, y]) => `${x.toFixed(2)} ${y.toFixed(2)}`).join(',');
    const length = shown
      .slice(1)
      .reduce((sum, [x, y], at) => sum + Math.hypot(x - shown[at]![0], y - shown[at]![1]), 0);
    if (seen.has(key) || length < 0.05) return [];
    seen.add(key);
    return [{ kind: 'line', points: shown, line: 'thin' }];
  });
}

function edgesOf(shape: Shape): Edge[] {
  switch (shape.kind) {
    case 'prism': {
      const { outline, from, to } = shape;
      const ring = (z: number): Edge => [...outline, outline[0]!].map(([x, y]) => [x, y, z] as const);
      return [
        ring(from),
        ring(to),
        ...corners(outline).map(
          ([x, y]): Edge => [
            [x, y, from],
            [x, y, to],
          ],
        ),
      ];
    }
    case 'hull': {
      const heights = shape.points.map(([, , z]) => z);
      return [Math.min(...heights), Math.max(...heights)].map((level) => {
        const ring = shape.points.filter(([, , z]) => z === level);
        return [...ring, ring[0]!];
      });
    }
    case 'turned': {
      const angles = Array.from({ length: 13 }, (_, at) => (at * shape.degrees * Math.PI) / 180 / 12);
      const at = ([r, z]: readonly [number, number], angle: number): Spot => [
        r * Math.cos(angle),
        r * Math.sin(angle),
        z,
      ];
      const ends = [0, angles.at(-1)!].map((angle) =>
        [...shape.outline, shape.outline[0]!].map((one) => at(one, angle)),
      );
      const sharp = corners(shape.outline);
      const round = sharp.length > 0 ? sharp : extremes(shape.outline);
      return [...ends, ...round.map((one) => angles.map((angle) => at(one, angle)))];
    }
    case 'joined':
      return shape.of.flatMap(edgesOf);
    case 'cut':
      return [shape.from, ...shape.by].flatMap(edgesOf);
    case 'placed':
      return edgesOf(shape.shape).map((edge) => edge.map((spot) => movedSpot(spot, shape.turn, shape.at)));
  }
}

type Flat = readonly [number, number];

function corners(outline: readonly Flat[]): Flat[] {
  return outline.filter(([x, y], at) => {
    const [px, py] = outline.at(at - 1)!;
    const [nx, ny] = outline[(at + 1) % outline.length]!;
    const turn = Math.atan2(ny - y, nx - x) - Math.atan2(y - py, x - px);
    return Math.abs(Math.atan2(Math.sin(turn), Math.cos(turn))) > CURVE;
  });
}

function extremes(outline: readonly Flat[]): Flat[] {
  const by = (pick: (one: Flat) => number): Flat =>
    outline.reduce((best, one) => (pick(one) > pick(best) ? one : best));
  return [by(([r]) => r), by(([r]) => -r), by(([, z]) => z), by(([, z]) => -z)];
}

/** Turned about x, then y, then z, then moved. */
function movedSpot([x, y, z]: Spot, [a, b, c]: Spot, [dx, dy, dz]: Spot): Spot {
  const turned = (p: number, q: number, degrees: number): Flat => {
    const angle = (degrees * Math.PI) / 180;
    return [p * Math.cos(angle) - q * Math.sin(angle), p * Math.sin(angle) + q * Math.cos(angle)];
  };
  const [y1, z1] = turned(y, z, a);
  const [z2, x2] = turned(z1, x, b);
  const [x3, y3] = turned(x2, y1, c);
  return [x3 + dx, y3 + dy, z2 + dz];
}
