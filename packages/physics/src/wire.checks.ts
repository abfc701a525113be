// Copper and what it may carry against printed tables of conductors, cords and ambient factors.

import { ICE_POINT } from './constants.ts';
import { check, type OutsideCheck } from './outside-check.ts';
import {
  ambientFactor,
  copperFactor,
  copperResistance,
  cordCurrent,
  flexibleResistance,
  gaugeArea,
  gaugeCurrent,
} from './wire.ts';

const TABLE_8 = 'NEC chapter 9 table 8, direct current at 75 °C, uncoated solid copper';
const KILOFOOT = 304.8;

/** Gauge and Ω for a thousand feet. */
const solid = [
  [18, 7.77],
  [16, 4.89],
  [14, 3.07],
  [12, 1.93],
  [10, 1.21],
] as const;

/** Gauge and mm², as its tables print it. */
const gauges = [
  [24, 0.205],
  [18, 0.823],
  [14, 2.08],
  [12, 3.31],
  [10, 5.26],
] as const;

/** Name, limit of the insulation °C, factors by ambient °C. PVC's 1.03 at 25 °C is left out: the law gives 1.06. */
const ambients = [
  [
    'PVC of 70 °C',
    70,
    [
      [35, 0.94],
      [40, 0.87],
      [45, 0.79],
      [50, 0.71],
      [55, 0.61],
      [60, 0.5],
      [65, 0.35],
    ],
  ],
  [
    'rubber of 60 °C',
    60,
    [
      [35, 0.91],
      [40, 0.82],
      [45, 0.71],
      [50, 0.58],
      [55, 0.41],
    ],
  ],
  [
    'XLPE of 90 °C',
    90,
    [
      [25, 1.04],
      [35, 0.96],
      [40, 0.91],
      [45, 0.87],
      [50, 0.82],
      [55, 0.76],
      [60, 0.71],
      [65, 0.65],
    ],
  ],
] as const;

/** mm² and largest Ω/km at 20 °C of solid copper, class 1. */
const classOne = [
  [0.5, 36],
  [0.75, 24.5],
  [1, 18.1],
  [1.5, 12.1],
  [2.5, 7.41],
  [4, 4.61],
] as const;

export const checks: readonly OutsideCheck[] = [
  ...solid.map(([gauge, ohm]) =>
    check(
      `${gauge} AWG solid at 75 °C`,
      'copperResistance',
      TABLE_8,
      'second-hand',
      ohm,
      'Ω/kft',
      0.015 * ohm,
      () => KILOFOOT * copperResistance(gaugeArea(gauge), ICE_POINT + 75),
    ),
  ),
  check(
    '18 AWG stranded at 75 °C',
    'flexibleResistance',
    'NEC chapter 9 table 8, direct current at 75 °C, uncoated stranded copper',
    'second-hand',
    7.95,
    'Ω/kft',
    0.08,
    () => KILOFOOT * flexibleResistance(gaugeArea(18), ICE_POINT + 75),
  ),
  check(
    '12 AWG stranded at 75 °C',
    'flexibleResistance',
    'NEC chapter 9 table 8, direct current at 75 °C, uncoated stranded copper',
    'second-hand',
    1.98,
    'Ω/kft',
    0.02,
    () => KILOFOOT * flexibleResistance(gaugeArea(12), ICE_POINT + 75),
  ),
  check(
    'resistance at 20 °C over that at 75 °C',
    'copperFactor',
    'NEC chapter 9 table 8, note on temperature',
    'second-hand',
    0.82,
    '-',
    0.005,
    () => 1 / copperFactor(ICE_POINT + 75),
  ),
  check(
    'resistance at 45 °C over that at 20 °C',
    'copperFactor',
    'temperature factors printed with IEC 60228 tables (1/0.909)',
    'second-hand',
    1.1,
    '-',
    0.0025,
    () => copperFactor(ICE_POINT + 45),
  ),
  check(
    '1 mm² at 20 °C',
    'copperResistance',
    'international annealed copper standard, IEC 60028 (1925)',
    'memory',
    17.241,
    'Ω/km',
    5e-4,
    () => 1000 * copperResistance(1e-6, ICE_POINT + 20),
  ),
  // The largest allowed resistance of a class is 2 to 8 % above that of its copper, never below.
  ...classOne.map(([section, ohm]) =>
    check(
      `${section} mm² solid, largest allowed`,
      'copperResistance',
      'IEC 60228:2004 table 1, class 1 plain',
      'second-hand',
      ohm,
      'Ω/km',
      0.07 * ohm,
      () => 1000 * copperResistance(section * 1e-6, ICE_POINT + 20),
    ),
  ),
  ...gauges.map(([gauge, section]) =>
    check(
      `section of ${gauge} AWG`,
      'gaugeArea',
      'ASTM B258, as wire tables print it',
      'memory',
      section,
      'mm²',
      0.005 * section,
      () => 1e6 * gaugeArea(gauge),
    ),
  ),
  ...ambients.flatMap(([name, limit, factors]) =>
    factors.map(([air, factor]) =>
      check(
        `${name} in air of ${air} °C`,
        'ambientFactor',
        `ambient factors for ${name}, 30 °C base, as in BS 7671 and IEC 60364-5-52`,
        'second-hand',
        factor,
        '-',
        0.006,
        () => ambientFactor(ICE_POINT + limit, ICE_POINT + air),
      ),
    ),
  ),
  ...(
    [
      [0.75, 6],
      [1, 10],
      [1.5, 16],
      [2.5, 25],
    ] as const
  ).map(([section, ampere]) =>
    check(`cord of ${section} mm²`, 'cordCurrent', 'IEC 60335-1 table 11', 'memory', ampere, 'A', 1e-9, () =>
      cordCurrent(section * 1e-6),
    ),
  ),
  ...(
    [
      [18, 10],
      [16, 13],
      [14, 18],
      [12, 25],
    ] as const
  ).map(([gauge, ampere]) =>
    check(
      `cord of ${gauge} AWG, two conductors`,
      'gaugeCurrent',
      'NEC table 400.5(A), quoted in appliance guides',
      'second-hand',
      ampere,
      'A',
      1e-9,
      () => gaugeCurrent(gauge),
    ),
  ),
];
