// Thin metal on both faces of a light core, as of a cold-room panel, needs no nodes of its own: it has the temperature of the
// core's face. Only equal skins fold without error, since a slice shares its heat capacity between its two faces.

import type { WallLayer } from './network.ts';

/** A layer below this has one temperature through and through, m²K/W; films are 0.1 to 0.2. */
const SKIN = 1e-4;

/** The layers of a sandwich as its core alone, which has the skins' heat capacity and resistance; any other layers as they are. */
export function foldSkins(layers: readonly WallLayer[]): readonly WallLayer[] {
  const [outer, core, inner, ...rest] = layers;
  if (outer === undefined || core === undefined || inner === undefined || rest.length > 0) return layers;
  const [one, other] = [capacityOf(outer), capacityOf(inner)];
  const skins = resistanceOf(outer) < SKIN && resistanceOf(inner) < SKIN && Math.abs(one - other) <= 0.01 * one;
  if (!skins || core.nodes !== 1 || resistanceOf(core) < SKIN) return layers;
  const resistance = resistanceOf(outer) + resistanceOf(core) + resistanceOf(inner);
  const capacity = one + capacityOf(core) + other;
  const { thickness, density } = core;
  return [{ ...core, conductivity: thickness / resistance, heatCapacity: capacity / (thickness * density) }];
}

/** m²K/W */
function resistanceOf({ thickness, conductivity }: WallLayer): number {
  return thickness / conductivity;
}

/** J/(m²K) */
function capacityOf({ thickness, density, heatCapacity }: WallLayer): number {
  return thickness * density * heatCapacity;
}
