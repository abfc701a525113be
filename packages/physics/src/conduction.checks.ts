// Steady conduction against textbook examples and against an independent evaluation of ISO 6946 for cabinet panels.

import {
  boxShapeFactor,
  type HeatFlow,
  INDOOR_SURFACE_RESISTANCE,
  jointTemperatures,
  layerResistance,
  surfaceResistance,
  uValue,
} from './conduction.ts';
import type { OutsideCheck } from './outside-check.ts';

const HOLMAN_3_2 =
  'Holman, Heat Transfer, example 3-2 (inputs second-hand, answer recomputed by an independent script)';
const cengel = (example: string) =>
  `Çengel, Heat and Mass Transfer, example ${example} (inputs second-hand, answer recomputed by an independent script)`;
const PANELS = 'ISO 6946 method evaluated by an independent script, films on both faces';

/** Panel, mm, W/(m·K), U of wall, ceiling, floor in W/(m²·K) as printed by the script. */
const panels = [
  ['plywood', 9, 0.13, 3.04, 3.71, 2.44],
  ['plywood', 18, 0.13, 2.51, 2.95, 2.09],
  ['fibreboard', 18, 0.18, 2.78, 3.33, 2.27],
  ['glass', 4, 1, 3.79, 4.9, 2.91],
  ['acrylic', 3, 0.18, 3.61, 4.62, 2.8],
  ['steel', 1, 50, 3.85, 5, 2.94],
] as const;

/** Insulation on 18 mm of plywood, W/(m·K), mm, U of the wall. */
const insulated = [
  ['mineral wool', 0.036, 25, 0.91],
  ['polystyrene beads', 0.035, 40, 0.65],
  ['polyisocyanurate', 0.023, 50, 0.39],
  ['cork board', 0.045, 20, 1.19],
] as const;

const pane = layerResistance(0.008, 0.78);
const doublePane = 2 * layerResistance(0.004, 0.78) + layerResistance(0.01, 0.026);
const inner = 1 / 10;
const outer = 1 / 40;

export const checks: readonly OutsideCheck[] = [
  {
    what: 'shape factor of a furnace, 0.5 m inside, 0.1 m walls',
    formula: 'boxShapeFactor',
    source: HOLMAN_3_2,
    known: 'second-hand',
    expected: 18.36,
    unit: 'm',
    tolerance: 1e-9,
    got: () => boxShapeFactor(0.5, 0.5, 0.5, 0.1),
  },
  {
    what: 'heat through its walls of 1.04 W/(m·K), 500 °C to 50 °C',
    formula: 'boxShapeFactor',
    source: HOLMAN_3_2,
    known: 'second-hand',
    expected: 8592.48,
    unit: 'W',
    tolerance: 8.6,
    got: () => 1.04 * boxShapeFactor(0.5, 0.5, 0.5, 0.1) * 450,
  },
  ...glazing('3-2', 'single pane of 8 mm', pane, 266.161, -2.18009),
  ...glazing('3-3', 'two panes of 4 mm with 10 mm of still air', doublePane, 69.2478, 14.2293),
  ...panels.flatMap(([name, thickness, conductivity, wall, ceiling, floor]) =>
    (
      [
        ['horizontal', wall],
        ['up', ceiling],
        ['down', floor],
      ] as const
    ).map(([flow, expected]): OutsideCheck => panelCheck(name, thickness, conductivity, flow, expected)),
  ),
  ...insulated.map(
    ([name, conductivity, thickness, expected]): OutsideCheck => ({
      what: `U-value of 18 mm plywood with ${thickness} mm of ${name}`,
      formula: 'uValue',
      source: PANELS,
      known: 'independent',
      expected,
      unit: 'W/(m²·K)',
      tolerance: 0.0051,
      got: () => uValue([layerResistance(0.018, 0.13), layerResistance(thickness / 1000, conductivity)], 'horizontal'),
    }),
  ),
  ...(
    [
      ['horizontal', 2.5],
      ['up', 5],
      ['down', 0.7],
    ] as const
  ).map(
    ([flow, convection]): OutsideCheck => ({
      what: `indoor film, heat flowing ${flow}, from its convection and radiation at 20 °C (rounded in the table)`,
      formula: 'surfaceResistance',
      source: 'ISO 6946:2017, annex C against table 7',
      known: 'memory',
      expected: INDOOR_SURFACE_RESISTANCE[flow],
      unit: 'm²·K/W',
      tolerance: 0.005,
      got: () => surfaceResistance(convection, 0.9, 293.15),
    }),
  ),
];

function panelCheck(
  name: string,
  thickness: number,
  conductivity: number,
  flow: HeatFlow,
  expected: number,
): OutsideCheck {
  return {
    what: `U-value of ${thickness} mm ${name} (${conductivity} W/(m·K)), heat flowing ${flow}`,
    formula: 'uValue',
    source: PANELS,
    known: 'independent',
    expected,
    unit: 'W/(m²·K)',
    tolerance: 0.0051,
    got: () => uValue([layerResistance(thickness / 1000, conductivity)], flow),
  };
}

/** A window of 1.2 m² between 20 °C with 10 W/(m²·K) and -10 °C with 40 W/(m²·K). */
function glazing(example: string, what: string, glass: number, watts: number, face: number): OutsideCheck[] {
  return [
    {
      what: `heat through 1.2 m² of ${what}`,
      formula: 'layerResistance',
      source: cengel(example),
      known: 'second-hand',
      expected: watts,
      unit: 'W',
      tolerance: watts * 1e-3,
      got: () => (1.2 * 30) / (inner + glass + outer),
    },
    {
      what: `inner face of ${what}`,
      formula: 'jointTemperatures',
      source: cengel(example),
      known: 'second-hand',
      expected: face,
      unit: '°C',
      tolerance: 0.05,
      got: () => jointTemperatures(20, -10, [inner, glass, outer])[1]!,
    },
  ];
}
