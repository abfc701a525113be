// Closed solids as plain data: what a printed part is made of, for whoever turns it into triangles. Lengths are millimetres, as on
// a drawing; z is up, and a part stands on z = 0 as it is printed.

export type Flat = readonly [x: number, y: number];
export type Spot = readonly [x: number, y: number, z: number];

export type Shape =
  /** An outline, counter-clockwise, drawn up from one height to another. */
  | { readonly kind: 'prism'; readonly outline: readonly Flat[]; readonly from: number; readonly to: number }
  /** The smallest convex solid that holds all points. */
  | { readonly kind: 'hull'; readonly points: readonly Spot[] }
  /** An outline of radius and height turned about the upright axis, from x towards y, in equal steps. */
  | {
      readonly kind: 'turned';
      readonly outline: readonly Flat[];
      readonly degrees: number;
      readonly steps: number;
    }
  | { readonly kind: 'joined'; readonly of: readonly Shape[] }
  | { readonly kind: 'cut'; readonly from: Shape; readonly by: readonly Shape[] }
  /** Turned about x, then y, then z by these degrees, then moved. */
  | { readonly kind: 'placed'; readonly shape: Shape; readonly turn: Spot; readonly at: Spot };

/** Corners of what stands for a circle; a multiple of four, so that its extreme points lie on the axes. */
const CORNERS = 96;

/** A circle with its corners on the radius. */
export function disc(radius: number, [x, y]: Flat = [0, 0], corners: number = CORNERS): Flat[] {
  return Array.from({ length: corners }, (_, at) => {
    const angle = (2 * Math.PI * at) / corners;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)] as const;
  });
}

/** A circle with its sides on the radius: a hole that is nowhere narrower than asked for. */
export function bore(radius: number, at: Flat = [0, 0], corners: number = CORNERS): Flat[] {
  return disc(radius / Math.cos(Math.PI / corners), at, corners);
}

/** A rectangle about a middle. */
export function plate(width: number, depth: number, [x, y]: Flat = [0, 0]): Flat[] {
  const [a, b] = [width / 2, depth / 2];
  return [
    [x - a, y - b],
    [x + a, y - b],
    [x + a, y + b],
    [x - a, y + b],
  ];
}

export const prism = (outline: readonly Flat[], from: number, to: number): Shape => ({
  kind: 'prism',
  outline,
  from,
  to,
});

export const joined = (...of: readonly Shape[]): Shape => ({ kind: 'joined', of });

export const cut = (from: Shape, ...by: readonly Shape[]): Shape => ({ kind: 'cut', from, by });

export const placed = (shape: Shape, at: Spot, turn: Spot = [0, 0, 0]): Shape => ({ kind: 'placed', shape, turn, at });

/** Between an outline at one height and another at a second: straight lines, as a sheet of metal would be folded. */
export function between(low: readonly Flat[], from: number, high: readonly Flat[], to: number): Shape {
  return {
    kind: 'hull',
    points: [...low.map(([x, y]) => [x, y, from] as const), ...high.map(([x, y]) => [x, y, to] as const)],
  };
}

/** Area of an outline, mm²; counter-clockwise counts above 0. */
export function outlineArea(outline: readonly Flat[]): number {
  return (
    outline.reduce((sum, [x, y], at) => {
      const [nextX, nextY] = outline[(at + 1) % outline.length]!;
      return sum + x * nextY - nextX * y;
    }, 0) / 2
  );
}

/** Distance of an outline's centre of area from the axis, mm: its first moment over its area. */
export function outlineRadius(outline: readonly Flat[]): number {
  const moment = outline.reduce((sum, [x, y], at) => {
    const [nextX, nextY] = outline[(at + 1) % outline.length]!;
    return sum + (x + nextX) * (x * nextY - nextX * y);
  }, 0);
  return moment / 6 / outlineArea(outline);
}

/**
 * Volume of an outline turned about the axis in straight steps: V = A R n sin(a/n), which for many steps is Pappus' A R a.
 * Within a step the section at angle p from its middle is scaled by cos(d/2)/cos(p) along the radius, so that each step holds
 * A R cos²(d/2) ∫ dp/cos² p = A R sin d.
 */
export function turnedVolume(outline: readonly Flat[], degrees: number, steps: number): number {
  const step = (degrees * Math.PI) / 180 / steps;
  return outlineArea(outline) * outlineRadius(outline) * steps * Math.sin(step);
}

/**
 * Volume between two convex outlines, by Simpson's rule, which is exact here: sections change with the square of height.
 * The section half-way is half the sum of both (Minkowski), whose area needs the outlines' edges merged by direction.
 */
export function betweenVolume(low: readonly Flat[], high: readonly Flat[], height: number): number {
  const middle = minkowskiHalf(low, high);
  return (height / 6) * (outlineArea(low) + 4 * outlineArea(middle) + outlineArea(high));
}

/** Half the Minkowski sum of two convex outlines: edges of both in the order of their directions. */
function minkowskiHalf(one: readonly Flat[], other: readonly Flat[]): Flat[] {
  const edges = [...edgesOf(one), ...edgesOf(other)].sort((a, b) => a.angle - b.angle);
  const walk: Flat[] = [];
  let [x, y] = [0, 0];
  for (const { along } of edges) {
    walk.push([x, y]);
    [x, y] = [x + along[0] / 2, y + along[1] / 2];
  }
  return walk;
}

function edgesOf(outline: readonly Flat[]): { readonly along: Flat; readonly angle: number }[] {
  return outline.map(([x, y], at) => {
    const [nextX, nextY] = outline[(at + 1) % outline.length]!;
    const along = [nextX - x, nextY - y] as const;
    return { along, angle: Math.atan2(along[1], along[0]) };
  });
}
