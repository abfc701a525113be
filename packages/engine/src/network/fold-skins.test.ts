import { describe, expect, it } from 'vitest';
import { heldZone, networkOf } from '../day/network-of.ts';
import { temperatureSeries, valueAt } from '../day/series.ts';
import { simulateDay } from '../day/simulate-day.ts';
import { foldSkins } from './fold-skins.ts';
import type { WallLayer } from './network.ts';

const steel: WallLayer = { thickness: 0.0006, conductivity: 50, density: 7800, heatCapacity: 450, nodes: 1 };
const foam: WallLayer = { thickness: 0.04, conductivity: 0.025, density: 40, heatCapacity: 1400, nodes: 1 };
const plywood: WallLayer = { thickness: 0.018, conductivity: 0.13, density: 500, heatCapacity: 1600, nodes: 2 };

/** Inner face of a panel that a lamp warms for an hour and a half, K. */
function course(layers: readonly WallLayer[]): (time: number) => number {
  const last = layers.reduce((sum, { nodes }) => sum + nodes, 1);
  const wall = { name: 'panel', a: 'in', b: 'out', area: 1, layers, grid: 'faces' as const, initial: 293.15 };
  const film = (surface: string, air: string) => ({
    surface,
    air,
    area: 1,
    faces: 'vertical' as const,
    length: 0.8,
    factor: 1,
    forced: [],
  });
  const network = networkOf({
    zones: [heldZone('in', 35), heldZone('out', 20)],
    walls: [wall],
    convections: [film('panel.1', 'in'), film(`panel.${last}`, 'out')],
    heatSources: [{ name: 'lamp', node: 'panel.1', watts: 60, active: { windows: [[600, 6000]] } }],
  });
  const series = temperatureSeries(simulateDay({ ...network, duration: 10800 }, { tolerance: 1e-4 }), 'panel.1');
  return (time) => valueAt(series, time);
}

describe('foldSkins', () => {
  it('cross: a folded panel warms and cools as the whole one does, within 0.01 K', () => {
    const panel = [steel, foam, steel];
    const folded = foldSkins(panel);
    expect(folded).toHaveLength(1);
    const [whole, one] = [course(panel), course(folded)];
    let most = 0;
    for (let time = 0; time <= 10800; time += 60) most = Math.max(most, Math.abs(whole(time) - one(time)));
    expect(most).toBeLessThan(0.01);
    expect(whole(6000) - whole(0)).toBeGreaterThan(5);
  });

  it('exact: resistance and heat capacity stay', () => {
    const [core] = foldSkins([steel, foam, steel]);
    expect(core!.thickness / core!.conductivity).toBeCloseTo(0.04 / 0.025 + (2 * 0.0006) / 50, 12);
    expect(core!.thickness * core!.density * core!.heatCapacity).toBeCloseTo(
      0.04 * 40 * 1400 + 2 * 0.0006 * 7800 * 450,
      9,
    );
  });

  it.each([
    ['one skin', [steel, foam]],
    ['skins of two thicknesses', [steel, foam, { ...steel, thickness: 0.001 }]],
    ['a core of two slices', [steel, plywood, steel]],
    ['no skins', [plywood, foam, plywood]],
  ] as const)('limit: %s stays as it is: folding would put heat where it is not', (_, layers) => {
    expect(foldSkins(layers)).toBe(layers);
  });
});
