// Where each temperature lives. The solver keeps all temperatures of a day in one array:
//   unknowns in elimination order (free zones, solids, wall nodes, mean radiant nodes) | fixed zones | sensors.
// The record keeps them in the order in which the network names them.

import type { Network, Wall } from '../network/network.ts';
import { entryAt, type Pattern, patternOf } from './sparse-lu.ts';
import { indexOfName } from './when.ts';

export interface Layout {
  /** Zones, nodes, wall nodes, sensors. */
  readonly names: readonly string[];
  /** Number of names before the sensors. */
  readonly points: number;
  readonly unknowns: number;
  readonly slots: number;
  readonly firstFixed: number;
  readonly firstSensor: number;
  /** Slot by column of the record; then those of the stars. */
  readonly slotOf: Int32Array;
  readonly pattern: Pattern;
  /** Value positions of the heat matrix: pattern, then pairs (unknown, fixed zone), then one for what nobody needs. */
  readonly valueCount: number;
  /** Pairs of an unknown with a fixed zone: row, slot of the zone, position. */
  readonly boundary: readonly { readonly row: number; readonly slot: number; readonly position: number }[];
  /** Position of the matrix value (row, column) by slots. */
  readonly position: (row: number, column: number) => number;
  readonly pointOf: Points['pointOf'];
}

/** Names of a wall's nodes, from side a. */
export function wallNodeNames(wall: Wall): string[] {
  const slices = wall.layers.reduce((sum, { nodes }) => sum + nodes, 0);
  const count = wall.grid === 'middles' ? slices : slices + 1;
  return Array.from({ length: count }, (_, i) => `${wall.name}.${i + 1}`);
}

/** Zones, nodes and wall nodes, in the order of the record. */
export interface Points {
  readonly names: readonly string[];
  /** Position of a zone, node or wall node among the names. */
  readonly pointOf: (name: string) => number;
}

export function pointsOf(network: Network): Points {
  const names = [
    ...network.zones.map(({ name }) => name),
    ...network.nodes.map(({ name }) => name),
    ...network.walls.flatMap(wallNodeNames),
  ];
  const known = new Map<string, number>();
  // Of equal names the first counts.
  for (let i = names.length - 1; i >= 0; i -= 1) known.set(names[i]!, i);
  return { names, pointOf: (name) => known.get(name) ?? indexOfName(names, name, 'zone or node') };
}

/** `pairs` name the points (by position among the names; stars follow the points) that some link couples. */
export function layOut(
  network: Network,
  { names, pointOf }: Points,
  pairs: readonly (readonly [number, number])[],
): Layout {
  const points = names.length;
  const stars = network.stars.length;
  const isFixed = (point: number): boolean => network.zones[point]?.temperature.kind === 'fixed';
  const unknownOf = new Int32Array(points + stars);
  let unknowns = 0;
  let fixed = 0;
  for (let i = 0; i < points + stars; i += 1) unknownOf[i] = isFixed(i) ? -1 - fixed++ : unknowns++;
  const pattern = patternOf(
    unknowns,
    pairs.map(([a, b]) => [unknownOf[a]!, unknownOf[b]!] as const).filter(([a, b]) => a >= 0 && b >= 0),
  );
  const firstSensor = unknowns + fixed;
  const columns = points + network.sensors.length;
  const slotOf = new Int32Array(columns + stars);
  for (let i = 0; i < points + stars; i += 1) {
    const unknown = unknownOf[i]!;
    const slot = unknown >= 0 ? pattern.rowOf[unknown]! : unknowns - 1 - unknown;
    slotOf[i < points ? i : i + network.sensors.length] = slot;
  }
  network.sensors.forEach((_, i) => {
    slotOf[points + i] = firstSensor + i;
  });
  const boundary: { row: number; slot: number; position: number }[] = [];
  const boundaryAt = new Map<number, number>();
  for (const [a, b] of pairs) {
    for (const [row, column] of [
      [a, b],
      [b, a],
    ] as const) {
      if (isFixed(row) || !isFixed(column)) continue;
      const at = { row: slotOf[row]!, slot: slotOf[column]!, position: pattern.length + boundary.length };
      const key = at.row * firstSensor + at.slot;
      if (boundaryAt.has(key)) continue;
      boundaryAt.set(key, at.position);
      boundary.push(at);
    }
  }
  const unused = pattern.length + boundary.length;
  return {
    names: [...names, ...network.sensors.map(({ name }) => name)],
    points,
    unknowns,
    slots: firstSensor + network.sensors.length,
    firstFixed: unknowns,
    firstSensor,
    slotOf,
    pattern,
    valueCount: unused + 1,
    boundary,
    position: (row, column) => {
      if (row >= unknowns) return unused;
      if (column < unknowns) return entryAt(pattern, row, column);
      return boundaryAt.get(row * firstSensor + column) ?? unused;
    },
    pointOf,
  };
}
