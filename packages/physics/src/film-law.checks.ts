// The solver's film law against an independent evaluation of the correlations it joins: air at 35 °C, walls 0.8 m tall,
// ceiling and floor of 0.8 m by 0.6 m. The ceiling is checked where McAdams' first piece alone rules.

import { filmLaw, naturalFilm } from './film-law.ts';
import type { OutsideCheck } from './outside-check.ts';

const AIR = 308.15;
const AREA_PER_PERIMETER = (0.8 * 0.6) / 2.8;

/** K; W/(m²·K) of wall, ceiling under warmer air, floor under warmer air. */
const rows = [
  [2, 1.95, 2.56, 1.28],
  [5, 2.57, 3.22, 1.61],
  [10, 3.17, undefined, 1.92],
  [20, 3.92, undefined, 2.28],
] as const;

/** °C of bed and air, W/(m²·K) of its top. */
const beds = [
  [60, 25, 6.8],
  [60, 35, 6.22],
  [100, 25, 8.08],
  [110, 45, 7.7],
] as const;

const MCADAMS = {
  source: 'McAdams correlation evaluated by an independent script',
  known: 'independent',
  unit: 'W/(m²·K)',
} as const;
const CHURCHILL = { ...MCADAMS, source: 'Churchill and Chu correlation evaluated by an independent script' } as const;

export const checks: readonly OutsideCheck[] = [
  ...rows.flatMap(([kelvin, wall, ceiling, floor]): OutsideCheck[] => [
    {
      ...CHURCHILL,
      what: `wall of 0.8 m, ${kelvin} K from its air`,
      formula: 'filmLaw',
      expected: wall,
      tolerance: 0.006,
      got: () => filmLaw('vertical', 0.8, AIR)(-kelvin),
    },
    {
      ...MCADAMS,
      what: `floor, ${kelvin} K colder than its air`,
      formula: 'filmLaw',
      expected: floor,
      tolerance: 0.012,
      got: () => filmLaw('faces-up', AREA_PER_PERIMETER, AIR)(-kelvin),
    },
    ...(ceiling === undefined
      ? []
      : [
          {
            ...MCADAMS,
            what: `ceiling, ${kelvin} K colder than its air`,
            formula: 'filmLaw',
            expected: ceiling,
            tolerance: 0.02,
            got: () => filmLaw('faces-down', AREA_PER_PERIMETER, AIR)(-kelvin),
          },
        ]),
  ]),
  ...beds.map(
    ([bed, air, film]): OutsideCheck => ({
      ...MCADAMS,
      what: `top of a bed of 235 mm at ${bed} °C in ${air} °C`,
      formula: 'naturalFilm',
      expected: film,
      tolerance: 0.02,
      got: () => naturalFilm('faces-up', 0.235 / 4, bed + 273.15, air + 273.15),
    }),
  ),
];
