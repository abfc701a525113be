// Walls as chains of nodes. 'middles': a node in the middle of every slice, film and half slice in series to the air.
// 'faces': nodes on both surfaces and between slices, half a slice's capacity at the ends, so that films act on surfaces.

import type { Wall } from '../network/network.ts';
import { wallNodeNames } from './layout.ts';

export interface WallGrid {
  /** J/K by node. */
  readonly capacities: readonly number[];
  /** W/K between neighbours, and to the air of a and b where a film is given. */
  readonly links: readonly { readonly a: string; readonly b: string; readonly conductance: number }[];
}

export function gridWall(wall: Wall): WallGrid {
  const names = wallNodeNames(wall);
  const slices = wall.layers.flatMap((layer) => {
    const thickness = layer.thickness / layer.nodes;
    const capacity = layer.density * layer.heatCapacity * thickness * wall.area;
    const resistance = thickness / (layer.conductivity * wall.area);
    return Array.from({ length: layer.nodes }, () => ({ capacity, resistance }));
  });
  if (wall.grid === 'faces') {
    const capacities = names.map((_, i) => 0.5 * ((slices[i - 1]?.capacity ?? 0) + (slices[i]?.capacity ?? 0)));
    const links = slices.map(({ resistance }, i) => ({ a: names[i]!, b: names[i + 1]!, conductance: 1 / resistance }));
    return { capacities, links };
  }
  const links = names.slice(1).map((name, i) => ({
    a: names[i]!,
    b: name,
    conductance: 2 / (slices[i]!.resistance + slices[i + 1]!.resistance),
  }));
  const toAir = (film: number | undefined, half: number): number =>
    1 / (half + (film === undefined ? 0 : 1 / (film * wall.area)));
  const first = slices[0]!;
  const last = slices.at(-1)!;
  return {
    capacities: slices.map(({ capacity }) => capacity),
    links: [
      { a: wall.a, b: names[0]!, conductance: toAir(wall.filmA, 0.5 * first.resistance) },
      ...links,
      { a: names.at(-1)!, b: wall.b, conductance: toAir(wall.filmB, 0.5 * last.resistance) },
    ],
  };
}
