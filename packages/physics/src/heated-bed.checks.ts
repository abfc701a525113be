// Beds against an independent script: still beds, emissivity 0.9 on top, rim 6 mm, radiant temperature that of the air. The
// script does not print its rim's emissivity; 0.3 reproduces its rim to 0.06 W.

import { type Bed, bedChangeTime, bedLoss, type Sheet, sheetsCapacity } from './heated-bed.ts';
import type { OutsideCheck } from './outside-check.ts';

const MCADAMS = { source: 'McAdams correlation evaluated by an independent script', known: 'independent' } as const;

const still = { rim: 0.006, topEmissivity: 0.9, rimEmissivity: 0.3, stirring: 1 };
const overFoam = (side: number): Bed => ({
  ...still,
  width: side,
  depth: side,
  undersideEmissivity: 0.9,
  undersideResistance: 0.01 / 0.04,
});
const bare = (emissivity: number): Bed => ({
  ...overFoam(0.235),
  undersideEmissivity: emissivity,
  undersideResistance: 0,
});
const foam = overFoam(0.235);
const shiny = bare(0.2);
const dark = bare(0.9);

/** °C of bed and air; W over 10 mm of foam, with bare aluminium below, with a bare dark face below. */
const totals = [
  [60, 25, 34.1, 38.2, 47.9],
  [60, 35, 23.9, 26.5, 33.7],
  [60, 45, 13.9, 15.2, 19.7],
  [80, 25, 58.5, 66.4, 83.2],
  [80, 35, 47.6, 53.7, 68.0],
  [80, 45, 36.7, 41.0, 52.7],
  [100, 25, 85.6, 98.0, 123.2],
  [100, 35, 74.2, 84.6, 107.3],
  [100, 45, 62.7, 71.1, 91.1],
  [110, 25, 100.2, 115.1, 145.0],
  [110, 35, 88.6, 101.3, 128.8],
  [110, 45, 76.9, 87.5, 112.3],
] as const;

/** m; W over foam in air of 35 °C at 60, 80, 100, 110 °C, printed to 1 W. */
const sizes = [
  [0.12, 7, 14, 22, 27],
  [0.18, 15, 29, 46, 55],
  [0.256, 28, 56, 87, 103],
  [0.31, 40, 79, 123, 147],
  [0.35, 50, 98, 153, 183],
] as const;

const aluminium = (thickness: number): Sheet => ({ thickness, density: 2700, heatCapacity: 900 });
const steel: Sheet = { thickness: 0.0005, density: 7850, heatCapacity: 460 };
const glass: Sheet = { thickness: 0.004, density: 2500, heatCapacity: 750 };

/** Build; J/K; s from 100 °C to 80, 60, 50, 40 °C in 25 °C over foam, marched in steps of 5 s. */
const builds = [
  ['3 mm aluminium, 0.5 mm steel', [aluminium(0.003), steel], 502, 145, 365, 540, 830],
  ['3 mm aluminium, 4 mm glass', [aluminium(0.003), glass], 817, 230, 595, 885, 1350],
  ['8 mm aluminium, 0.5 mm steel', [aluminium(0.008), steel], 1173, 330, 850, 1270, 1940],
] as const;

export const checks: readonly OutsideCheck[] = [
  ...totals.flatMap(([hot, air, ...watts]) =>
    ([foam, shiny, dark] as const).map(
      (bed, at): OutsideCheck => ({
        ...MCADAMS,
        what: `235 mm at ${hot} °C in ${air} °C, ${['over 10 mm of foam', 'bare aluminium below', 'bare dark face below'][at]}`,
        formula: 'bedLoss',
        expected: watts[at]!,
        unit: 'W',
        tolerance: 0.15,
        got: () => bedLoss(bed, hot + 273.15, air + 273.15, air + 273.15).total,
      }),
    ),
  ),
  {
    ...MCADAMS,
    what: 'convection of the top, 235 mm at 100 °C in 35 °C',
    formula: 'bedLoss',
    expected: 27.9,
    unit: 'W',
    tolerance: 0.06,
    got: () => bedLoss(foam, 373.15, 308.15, 308.15).topConvection,
  },
  {
    ...MCADAMS,
    what: 'radiation of the top, 235 mm at 100 °C in 35 °C',
    formula: 'bedLoss',
    expected: 29.2,
    unit: 'W',
    tolerance: 0.06,
    got: () => bedLoss(foam, 373.15, 308.15, 308.15).topRadiation,
  },
  ...sizes.flatMap(([side, ...watts]) =>
    [60, 80, 100, 110].map(
      (hot, at): OutsideCheck => ({
        ...MCADAMS,
        what: `${side * 1000} mm at ${hot} °C in 35 °C over 10 mm of foam`,
        formula: 'bedLoss',
        expected: watts[at]!,
        unit: 'W',
        tolerance: 0.8,
        got: () => bedLoss(overFoam(side), hot + 273.15, 308.15, 308.15).total,
      }),
    ),
  ),
  ...builds.flatMap(([name, sheets, capacity, ...seconds]): OutsideCheck[] => [
    {
      what: `235 mm of ${name}`,
      formula: 'sheetsCapacity',
      source: 'densities and heat capacities summed by an independent script',
      known: 'independent',
      expected: capacity,
      unit: 'J/K',
      tolerance: 0.51,
      got: () => sheetsCapacity(0.235 ** 2, sheets),
    },
    ...[80, 60, 50, 40].map(
      (end, at): OutsideCheck => ({
        what: `${name}: 100 °C to ${end} °C in 25 °C over foam`,
        formula: 'bedChangeTime',
        source: 'McAdams correlation marched in steps of 5 s by an independent script',
        known: 'independent',
        expected: seconds[at]!,
        unit: 's',
        tolerance: 6,
        got: () => bedChangeTime(foam, sheetsCapacity(0.235 ** 2, sheets), 0, 373.15, end + 273.15, 298.15),
      }),
    ),
  ]),
  ...(
    [
      [60, 35, 60],
      [100, 90, 150],
    ] as const
  ).map(
    ([hot, least, most]): OutsideCheck => ({
      what: `235 mm held at ${hot} °C in open air, in use (1.25 times a still one), bare aluminium below: ${least} W to ${most} W`,
      formula: 'bedLoss',
      source: 'beds of 235 mm in open air draw 35 W to 60 W at 60 °C and 90 W to 150 W at 100 °C',
      known: 'common practice, no source',
      expected: (least + most) / 2,
      unit: 'W',
      tolerance: (most - least) / 2,
      got: () => bedLoss({ ...shiny, stirring: 1.25 }, hot + 273.15, 295.15, 295.15).total,
    }),
  ),
];
