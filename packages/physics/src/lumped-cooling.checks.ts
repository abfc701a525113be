// One-temperature bodies against a worked example and against an independent integrator.

import { coolingTime, naturalCoolingShare } from './lumped-cooling.ts';
import type { OutsideCheck } from './outside-check.ts';

const ballArea = Math.PI * 0.05 ** 2;
const ballCapacity = (7800 * 460 * ballArea * 0.05) / 6;

export const checks: readonly OutsideCheck[] = [
  {
    what: 'steel ball of 50 mm, 10 W/(m²·K), from 450 °C to 150 °C in 100 °C',
    formula: 'coolingTime',
    source: 'Holman, Heat Transfer, example 4-1 (inputs second-hand, answer recomputed by an independent script)',
    known: 'second-hand',
    expected: 5818.27,
    unit: 's',
    tolerance: 11.6,
    got: () => coolingTime(50 / 350, ballCapacity, 10 * ballArea),
  },
  ...(
    [
      [0.25, 300, 0.7920936632],
      [0.25, 1200, 0.4229735978],
      [1 / 3, 1200, 0.4347886579],
    ] as const
  ).map(
    ([exponent, time, expected]): OutsideCheck => ({
      what: `share left after ${time} s of a body of 500 J/K with 0.4 W/K at first, film as difference^${exponent.toFixed(2)}`,
      formula: 'naturalCoolingShare',
      source: 'C dT/dt = -h(T) A T integrated by SciPy 1.17.1, solve_ivp at relative tolerance 1e-12',
      known: 'independent',
      expected,
      unit: '-',
      tolerance: 1e-9,
      got: () => naturalCoolingShare(time, 500, 0.4, exponent),
    }),
  ),
];
