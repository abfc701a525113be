// A wall of few nodes against an independent script's: 18 mm of plywood whose inside air steps up by 1 K.

import { ICE_POINT, type OutsideCheck } from '@stillair/physics';
import { heldZone, networkOf } from './network-of.ts';
import { temperatureSeries, valueAt } from './series.ts';
import { simulateDay } from './simulate-day.ts';

const FILM = 1 / 0.13;
const CONDUCTIVITY = 0.13;
const THICKNESS = 0.018;

/**
 * The script steps through time by a method of first order: at 60 s and 5 nodes it reads 0.0021 W/m² above a fourth-order
 * Runge-Kutta solution of the same wall (6.24222), with which the solver agrees to the last digit given. Hence the band.
 */
const BAND = 0.0025;

/** Time s; then heat in and out, W/m², with 1, 2, 3 and 5 nodes, as the script printed them. */
const printed = [
  [60, 4.9165, 0.1028, 5.7918, 0.0168, 6.0792, 0.005, 6.2443, 0.0011],
  [300, 4.5458, 0.4735, 4.9914, 0.2746, 5.0612, 0.2192, 5.0883, 0.1859],
  [600, 4.1617, 0.8576, 4.3697, 0.7073, 4.3925, 0.6718, 4.4024, 0.6534],
  [1200, 3.5972, 1.4221, 3.6153, 1.4072, 3.6104, 1.4102, 3.6072, 1.4129],
  [1800, 3.2255, 1.7938, 3.1753, 1.8441, 3.1602, 1.8591, 3.1518, 1.8675],
  [3600, 2.7139, 2.3054, 2.6555, 2.3638, 2.6442, 2.3751, 2.6384, 2.3809],
  [7200, 2.5263, 2.493, 2.5167, 2.5026, 2.5154, 2.5039, 2.5148, 2.5045],
] as const;

export const checks: readonly OutsideCheck[] = [1, 2, 3, 5].flatMap((nodes, column) =>
  printed.flatMap(([time, ...values]) =>
    (['in', 'out'] as const).map((way, at) => ({
      what: `heat ${way} of 18 mm plywood of ${nodes} node${nodes === 1 ? '' : 's'}, ${time} s after its inside air rose by 1 K`,
      formula: 'gridWall',
      source: 'independent script, resistances and capacities of the same slices by another integrator (2026)',
      known: 'independent' as const,
      expected: values[2 * column + at]!,
      unit: 'W/m2',
      tolerance: BAND,
      got: () => heatThrough(nodes, time, way),
    })),
  ),
);

function heatThrough(nodes: number, time: number, way: 'in' | 'out'): number {
  const record = simulateDay(
    networkOf({
      duration: time,
      zones: [heldZone('inside', 1), heldZone('outside', 0)],
      walls: [
        {
          name: 'board',
          a: 'inside',
          b: 'outside',
          area: 1,
          filmA: FILM,
          filmB: FILM,
          grid: 'middles',
          initial: ICE_POINT,
          layers: [{ thickness: THICKNESS, conductivity: CONDUCTIVITY, density: 500, heatCapacity: 1600, nodes }],
        },
      ],
    }),
    { tolerance: 1e-6 },
  );
  const at = (node: number): number => valueAt(temperatureSeries(record, `board.${node}`), time) - ICE_POINT;
  const conductance = 1 / (1 / FILM + THICKNESS / nodes / 2 / CONDUCTIVITY);
  return conductance * (way === 'in' ? 1 - at(1) : at(nodes));
}
