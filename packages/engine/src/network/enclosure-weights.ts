// How strongly each surface of a bay or chamber is tied to its mean radiant node.

import { starWeights } from '@stillair/physics';

export interface Surface {
  readonly area: number;
  readonly emissivity: number;
}

/** Nothing radiates quite as a black body; keeps the surface resistance above 0. */
const BLACKEST = 0.98;

/**
 * Weights of a radiant star, m². Surfaces that see one another take the mean radiant network; where one surface wraps all the
 * others (a machine's chamber around its bed) they see only it: 1/((1 − ε)/(εA) + 1/A) for those inside, εA/(1 − ε) around.
 */
export function enclosureWeights(surfaces: readonly Surface[]): number[] {
  const areas = surfaces.map(({ area }) => area);
  const emissivities = surfaces.map(({ emissivity }) => Math.min(emissivity, BLACKEST));
  const largest = areas.indexOf(Math.max(...areas));
  const others = areas.reduce((sum, area, index) => (index === largest ? sum : sum + area), 0);
  if (areas[largest]! < 0.98 * others) return starWeights(areas, emissivities);
  return areas.map((area, index) => {
    const emissivity = emissivities[index]!;
    return index === largest ? (emissivity * area) / (1 - emissivity) : emissivity * area;
  });
}
