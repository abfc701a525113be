// Closed air layers against textbook examples with the books' own air, and against the table of ISO 6946.

import {
  airLayerConductance,
  airLayerResistance,
  nusseltLevelGap,
  nusseltTallGap,
  nusseltUprightGap,
} from './air-gap.ts';
import { INDOOR_SURFACE_RESISTANCE, layerResistance } from './conduction.ts';
import { rayleighNumber } from './natural-convection.ts';
import type { OutsideCheck } from './outside-check.ts';

const book = (text: string) => ({
  source: `${text} (inputs second-hand, answer recomputed by an independent script)`,
  known: 'second-hand' as const,
});
/** Air at 70 °C as Holman takes it: 1.0295 kg/m³, 2.043e-5 Pa·s, 0.0295 W/(m·K), Pr 0.7 (memory). */
const HOLMAN_NU = 2.043e-5 / 1.0295;
const upright = rayleighNumber(0.015, 60, HOLMAN_NU, 0.7, 1 / 343);
const level = rayleighNumber(0.01, 60, HOLMAN_NU, 0.7, 1 / 343);
const cengel = rayleighNumber(0.02, 10, 1.4e-5, 0.7344, 1 / 280);

export const checks: readonly OutsideCheck[] = [
  {
    ...book('Holman, Heat Transfer, example 7-8'),
    what: 'convection across an upright gap of 15 mm, 0.5 m square, 100 °C to 40 °C',
    formula: 'nusseltUprightGap',
    expected: 39.635,
    unit: 'W',
    tolerance: 0.2,
    got: () => ((nusseltUprightGap(upright, 0.5 / 0.015) * 0.0295) / 0.015) * 0.25 * 60,
  },
  {
    ...book('Holman, Heat Transfer, example 7-9'),
    what: 'heat across a level gap of 10 mm, 0.2 m square, 100 °C below, 40 °C above',
    formula: 'nusseltLevelGap',
    expected: 10.3365,
    unit: 'W',
    tolerance: 0.052,
    got: () => ((nusseltLevelGap(level) * 0.0295) / 0.01) * 0.04 * 60,
  },
  {
    ...book('Çengel, Heat and Mass Transfer, example 9-4'),
    what: 'Nusselt number of a double window, 0.8 m tall, 20 mm of air, 12 °C to 2 °C',
    formula: 'nusseltTallGap',
    expected: 1.40069,
    unit: '-',
    tolerance: 0.007,
    got: () => nusseltTallGap(cengel, 40, 0.7344),
  },
  {
    ...book('Çengel, Heat and Mass Transfer, example 9-4'),
    what: 'its heat, 2 m wide',
    formula: 'nusseltTallGap',
    expected: 27.0725,
    unit: 'W',
    tolerance: 0.14,
    got: () => ((nusseltTallGap(cengel, 40, 0.7344) * 0.02416) / 0.02) * 1.6 * 10,
  },
  ...(
    [
      [0.005, 0.11],
      [0.007, 0.13],
      [0.01, 0.15],
    ] as const
  ).map(
    ([thickness, expected]): OutsideCheck => ({
      what: `still air of ${thickness * 1000} mm from conduction and radiation at 10 °C (the table is printed to 0.01)`,
      formula: 'airLayerConductance',
      source: 'ISO 6946:2007, table 2 against its annex B',
      known: 'memory',
      expected,
      unit: 'm²·K/W',
      tolerance: 0.0051,
      got: () => 1 / airLayerConductance(thickness, 1, 0.025, [0.9, 0.9], 283.15),
    }),
  ),
  {
    what: 'U-value of an upright twin pane, 4 mm glass, 15 mm of air, indoor films',
    formula: 'airLayerResistance',
    source: 'ISO 6946 method evaluated by an independent script, films on both faces',
    known: 'independent',
    expected: 2.28,
    unit: 'W/(m²·K)',
    tolerance: 0.0051,
    got: () =>
      1 /
      (2 * INDOOR_SURFACE_RESISTANCE.horizontal +
        airLayerResistance(0.015, 'horizontal') +
        2 * layerResistance(0.004, 1)),
  },
];
