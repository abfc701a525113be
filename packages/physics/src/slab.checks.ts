// The board of 18 mm plywood (0.13 W/(m·K), 500 kg/m³, 1600 J/(kg·K)) between films of 1/0.13 W/(m²·K).

import type { OutsideCheck } from './outside-check.ts';
import { type SlabShares, slabCooling, wallStepResponse } from './slab.ts';

const FILM = 1 / 0.13;
const HALF = 0.009;
const DIFFUSIVITY = 0.13 / (500 * 1600);

/** s; shares left at centre, surface, on average. */
const cooling = [
  [60, 0.99264, 0.82143, 0.94382],
  [300, 0.8189, 0.64163, 0.75896],
  [900, 0.47642, 0.37315, 0.44147],
  [1800, 0.21136, 0.16555, 0.19585],
  [3600, 0.0416, 0.03258, 0.03855],
] as const;

/** s; W/m² into and out of the wall for each kelvin. */
const response = [
  [60, 6.3154, 0.0001],
  [300, 5.0994, 0.1657],
  [600, 4.4065, 0.6442],
  [1800, 3.1463, 1.873],
  [3600, 2.635, 2.3843],
  [7200, 2.5145, 2.5048],
] as const;

export const checks: readonly OutsideCheck[] = [
  ...cooling.flatMap(([time, centre, surface, mean]) =>
    Object.entries({ centre, surface, mean }).map(
      ([place, expected]): OutsideCheck => ({
        what: `share left at the ${place} of 18 mm plywood after ${time} s`,
        formula: 'slabCooling',
        source: 'series solution evaluated by an independent script',
        known: 'independent',
        expected,
        unit: '-',
        tolerance: 0.6e-5,
        got: () => slabCooling((FILM * HALF) / 0.13, (DIFFUSIVITY * time) / HALF ** 2)[place as keyof SlabShares],
      }),
    ),
  ),
  ...response.flatMap(([time, inflow, outflow]) =>
    Object.entries({ inflow, outflow }).map(
      ([face, expected]): OutsideCheck => ({
        what: `${face} of 18 mm plywood ${time} s after its air has warmed by 1 K`,
        formula: 'wallStepResponse',
        source: 'finite differences on 200 cells by an independent script',
        known: 'independent',
        expected,
        unit: 'W/m²',
        tolerance: 0.004, // that program's own step error: at 60 s it is 0.003 off the series of a thick body
        got: () => wallStepResponse(0.018, 0.13, 8e5, FILM, time)[face as 'inflow' | 'outflow'],
      }),
    ),
  ),
];
