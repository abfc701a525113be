// From a solid as plain data to triangles, through a library for solids that keeps every surface closed. Loaded only when it is asked for.

import { createRequire } from 'node:module';
import type { Shape } from '@stillair/engine';
import type { Manifold, ManifoldToplevel } from 'manifold-3d/manifold';
import type { Mesh } from './mesh.ts';

/** Turns solids into triangles. */
export type Builder = (shape: Shape) => Mesh;

let opened: Promise<Builder> | undefined;

export function openBuilder(): Promise<Builder> {
  opened ??= load();
  return opened;
}

async function load(): Promise<Builder> {
  const { default: open } = await import('manifold-3d/manifold');
  // Bundled, the library no longer finds the file beside itself.
  const wasm = createRequire(import.meta.url).resolve('manifold-3d/manifold.wasm');
  const library = await open({ locateFile: () => wasm });
  library.setup();
  return (shape) => built(library, shape);
}

function built({ Manifold: Solid }: ManifoldToplevel, shape: Shape): Mesh {
  // What the library makes must be given back by hand.
  const made: Manifold[] = [];
  const keep = (solid: Manifold): Manifold => {
    made.push(solid);
    return solid;
  };
  const make = (one: Shape): Manifold => {
    switch (one.kind) {
      case 'prism': {
        const upright = keep(Solid.extrude([one.outline.map(([x, y]) => [x, y])], one.to - one.from));
        return keep(upright.translate([0, 0, one.from]));
      }
      case 'hull':
        return keep(Solid.hull(one.points.map(([x, y, z]) => [x, y, z])));
      case 'turned':
        return keep(Solid.revolve([one.outline.map(([x, y]) => [x, y])], one.steps, one.degrees));
      case 'joined':
        return keep(Solid.union(one.of.map(make)));
      case 'cut':
        return keep(Solid.difference([make(one.from), ...one.by.map(make)]));
      case 'placed': {
        const turned = keep(make(one.shape).rotate([...one.turn]));
        return keep(turned.translate([...one.at]));
      }
    }
  };
  try {
    const solid = make(shape);
    if (solid.status() !== 'NoError' || solid.isEmpty())
      throw new Error(`a printed part is no solid: ${solid.status()}`);
    const { vertProperties, triVerts, numProp, mergeFromVert, mergeToVert } = solid.getMesh();
    return welded(vertProperties, numProp, triVerts, mergeFromVert ?? [], mergeToVert ?? []);
  } finally {
    for (const solid of made) solid.delete();
  }
}

/** One corner for each place: the library doubles some for the sake of pictures and says which. */
function welded(
  properties: Float32Array,
  each: number,
  triangles: Uint32Array,
  from: ArrayLike<number>,
  to: ArrayLike<number>,
): Mesh {
  const count = properties.length / each;
  const stands = Array.from({ length: count }, (_, at) => at);
  for (let at = 0; at < from.length; at += 1) stands[from[at]!] = to[at]!;
  const places = Array.from({ length: count }, (_, at) =>
    [0, 1, 2].map((axis) => rounded(properties[each * at + axis]!)),
  );
  return numbered(
    places,
    withoutShort(
      places,
      Array.from(triangles, (corner) => stands[corner]!),
    ),
  );
}

/** Edges that rounding has left without a length are drawn together, and with each the two triangles that it parted. */
function withoutShort(places: readonly (readonly number[])[], corners: readonly number[]): readonly number[] {
  const stands = places.map((_, at) => at);
  const first = (at: number): number => (stands[at] === at ? at : first(stands[at]!));
  const alike = (one: number, other: number): boolean =>
    places[one]!.every((value, axis) => value === places[other]![axis]);
  const edges = (at: number): readonly (readonly [number, number])[] => {
    const [a, b, c] = [corners[at]!, corners[at + 1]!, corners[at + 2]!];
    return [
      [a, b],
      [b, c],
      [c, a],
    ];
  };
  for (let at = 0; at < corners.length; at += 3)
    for (const [one, other] of edges(at)) if (alike(one, other)) stands[first(one)] = first(other);
  const kept: number[] = [];
  for (let at = 0; at < corners.length; at += 3) {
    const three = edges(at).map(([one]) => first(one));
    if (new Set(three).size === 3) kept.push(...three);
  }
  return kept;
}

/** Corners in the order in which triangles name them, and no others. */
function numbered(places: readonly (readonly number[])[], corners: readonly number[]): Mesh {
  const number = new Map<number, number>();
  for (const corner of corners) if (!number.has(corner)) number.set(corner, number.size);
  return {
    vertices: Float64Array.from([...number.keys()].flatMap((corner) => places[corner]!)),
    triangles: Uint32Array.from(corners, (corner) => number.get(corner)!),
  };
}

/** To a tenth of a micrometre: what a file says, and the same on every machine. */
function rounded(value: number): number {
  const short = Math.round(value * 1e4) / 1e4;
  return short === 0 ? 0 : short;
}
