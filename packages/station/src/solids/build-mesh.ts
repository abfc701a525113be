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
  const number = new Map<number, number>();
  const places: number[] = [];
  const indices = Uint32Array.from(triangles, (corner) => {
    const at = stands[corner]!;
    const known = number.get(at);
    if (known !== undefined) return known;
    number.set(at, number.size);
    places.push(...[0, 1, 2].map((axis) => rounded(properties[each * at + axis]!)));
    return number.size - 1;
  });
  return { vertices: Float64Array.from(places), triangles: indices };
}

/** To a tenth of a micrometre: what a file says, and the same on every machine. */
function rounded(value: number): number {
  const short = Math.round(value * 1e4) / 1e4;
  return short === 0 ? 0 : short;
}
