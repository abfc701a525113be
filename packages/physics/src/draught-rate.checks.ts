// Draught rate against a printed table of speeds and against the formula evaluated elsewhere.

import { ICE_POINT } from './constants.ts';
import { draughtRate, draughtSpeed } from './draught-rate.ts';
import type { OutsideCheck } from './outside-check.ts';

/** °C and m/s at 20 percent dissatisfied, turbulence 40 percent, printed to 0.01 m/s. */
const printed = [
  [18, 0.15],
  [19, 0.15],
  [20, 0.16],
  [21, 0.17],
  [22, 0.18],
  [23, 0.19],
  [24, 0.21],
  [25, 0.23],
  [26, 0.25],
  [27, 0.27],
  [28, 0.31],
] as const;

/** °C, m/s, turbulence percent, dissatisfied percent. */
const points = [
  [20, 0.1, 40, 10.096],
  [20, 0.15, 40, 18.001],
  [22, 0.2, 40, 22.578],
  [22, 0.25, 20, 22.076],
  [24, 0.3, 40, 32.092],
  [26, 0.2, 0, 7.748],
  [26, 0.4, 60, 50.155],
  [23, 0.05, 40, 0],
] as const;

/** Turbulence percent, dissatisfied percent, m/s at 22 °C. */
const speeds = [
  [20, 10, 0.127],
  [20, 30, 0.326],
  [40, 20, 0.182],
  [60, 30, 0.21],
] as const;

export const checks: readonly OutsideCheck[] = [
  ...printed.map(
    ([celsius, speed]): OutsideCheck => ({
      what: `speed that 20 percent mind at ${celsius} °C, turbulence 40 percent`,
      formula: 'draughtSpeed',
      source: 'ISO 7730:2005 as tabled in the Danish building regulation guide, ch. 1.3',
      known: 'second-hand',
      expected: speed,
      unit: 'm/s',
      tolerance: 0.005,
      got: () => draughtSpeed(20, celsius + ICE_POINT, 40),
    }),
  ),
  ...points.map(
    ([celsius, speed, turbulence, rate]): OutsideCheck => ({
      what: `dissatisfied at ${celsius} °C, ${speed} m/s, turbulence ${turbulence} percent`,
      formula: 'draughtRate',
      source: 'ISO 7730:2005 eq 6 evaluated by an independent script',
      known: 'independent',
      expected: rate,
      unit: 'percent',
      tolerance: 0.0006,
      got: () => draughtRate(celsius + ICE_POINT, speed, turbulence),
    }),
  ),
  ...speeds.map(
    ([turbulence, rate, speed]): OutsideCheck => ({
      what: `speed that ${rate} percent mind at 22 °C, turbulence ${turbulence} percent`,
      formula: 'draughtSpeed',
      source: 'ISO 7730:2005 eq 6 solved by an independent script',
      known: 'independent',
      expected: speed,
      unit: 'm/s',
      tolerance: 0.0006,
      got: () => draughtSpeed(rate, 22 + ICE_POINT, turbulence),
    }),
  ),
];
