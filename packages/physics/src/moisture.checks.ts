// Water in air and in strands against printed tables.

import { ICE_POINT } from './constants.ts';
import { strandUptake, vapourDensity } from './moisture.ts';
import type { OutsideCheck } from './outside-check.ts';

const DENSITIES = 'saturated vapour density, as meteorological tables print it';
const CRANK = 'J. Crank, The Mathematics of Diffusion, 2nd ed. 1975, figure 5.7: uptake of a cylinder';
const PRACTICE = 'rule of thumb: nine tenths of a cylinder after 0.33 r²/D';

/** °C and g/m³. */
const saturated = [
  [0, 4.85],
  [10, 9.4],
  [20, 17.3],
  [30, 30.4],
  [40, 51.1],
] as const;

export const checks: readonly OutsideCheck[] = [
  ...saturated.map(
    ([celsius, grams]): OutsideCheck => ({
      what: `air saturated at ${celsius} °C`,
      formula: 'vapourDensity',
      source: DENSITIES,
      known: 'memory',
      expected: grams,
      unit: 'g/m³',
      tolerance: 0.1,
      got: () => 1000 * vapourDensity(celsius + ICE_POINT, 1),
    }),
  ),
  {
    what: 'half of the change at D t/r² of about 0.063',
    formula: 'strandUptake',
    source: CRANK,
    known: 'memory',
    expected: 0.5,
    unit: '-',
    tolerance: 0.01,
    got: () => strandUptake(0.063),
  },
  {
    what: 'nine tenths of the change',
    formula: 'strandUptake',
    source: PRACTICE,
    known: 'memory',
    expected: 0.9,
    unit: '-',
    tolerance: 0.005,
    got: () => strandUptake(0.33),
  },
];
