// Radiation against worked examples of Holman and Çengel.

import type { OutsideCheck } from './outside-check.ts';
import { blackEmission, parallelExchange, radiationFilm, radiationToRoom } from './radiation.ts';
import { type RadiatingFace, radiosity } from './radiosity.ts';
import { cornerViewFactor, parallelViewFactor } from './view-factors.ts';

const book = (text: string) => ({
  source: `${text} (inputs second-hand, answer recomputed by an independent script)`,
  known: 'second-hand' as const,
});

/** Two plates of 1 m by 0.5 m, 0.5 m apart, F 0.285, in a wide room. */
const plates: readonly RadiatingFace[] = [
  { area: 0.5, emissivity: 0.2, kelvin: 1273 },
  { area: 0.5, emissivity: 0.5, kelvin: 773 },
  { area: 1000, emissivity: 1, kelvin: 300 },
];
const toRoom = (0.715 * 0.5) / 1000;
const plateFactors = [
  [0, 0.285, 0.715],
  [0.285, 0, 0.715],
  [toRoom, toRoom, 1 - 2 * toRoom],
];

/** Two squares of 0.5 m on one edge, F 0.2, one insulated, in a wide room. */
const corner: readonly RadiatingFace[] = [
  { area: 0.25, emissivity: 0.6, kelvin: 1000 },
  { area: 0.25, emissivity: 0.9 },
  { area: 1000, emissivity: 1, kelvin: 300 },
];
const away = (0.8 * 0.25) / 1000;
const cornerFactors = [
  [0, 0.2, 0.8],
  [0.2, 0, 0.8],
  [away, away, 1 - 2 * away],
];

export const checks: readonly OutsideCheck[] = [
  {
    ...book('Çengel, Heat and Mass Transfer, example 9-2'),
    what: 'black plate of 0.36 m² at 90 °C in 30 °C',
    formula: 'radiationToRoom',
    expected: 182.364,
    unit: 'W',
    tolerance: 1,
    got: () => radiationToRoom(1, 0.36, 363, 303),
  },
  {
    ...book('Holman, Heat Transfer, example 7-8'),
    what: 'faces of a gap, 0.25 m², emissivity 0.2, 100 °C and 40 °C',
    formula: 'parallelExchange',
    expected: 15.3676,
    unit: 'W',
    tolerance: 0.046,
    got: () => 0.25 * parallelExchange(0.2, 373, 0.2, 313),
  },
  ...(
    [
      [10, 5.1],
      [20, 5.7],
    ] as const
  ).map(
    ([celsius, film]): OutsideCheck => ({
      what: `film of a black face at ${celsius} °C`,
      formula: 'radiationFilm',
      source: 'ISO 6946:2007, annex A, table A.1',
      known: 'memory',
      expected: film,
      unit: 'W/(m²·K)',
      tolerance: 0.051,
      got: () => radiationFilm(1, celsius + 273.15, celsius + 273.15),
    }),
  ),
  {
    what: 'emission of a black face at 1000 K (printed 56.7 kW/m²)',
    formula: 'blackEmission',
    source: 'Holman, Heat Transfer, example 8-7',
    known: 'memory',
    expected: 56.7,
    unit: 'kW/m²',
    tolerance: 0.05,
    got: () => blackEmission(1000) / 1000,
  },
  ...(
    [
      ['hot plate', 14425.6, 0.003],
      ['cooler plate', 2593.36, 0.005],
      ['room', -17018.9, 0.003],
    ] as const
  ).map(
    ([name, heat, share], face): OutsideCheck => ({
      ...book('Holman, Heat Transfer, example 8-6'),
      what: `net heat leaving the ${name}`,
      formula: 'radiosity',
      expected: heat,
      unit: 'W',
      tolerance: Math.abs(heat) * share,
      got: () => radiosity(plates, plateFactors)[face]!.heat,
    }),
  ),
  {
    ...book('Holman, Heat Transfer, example 8-7'),
    what: 'heat of a square at 1000 K beside an insulated one',
    formula: 'radiosity',
    expected: 8228.9,
    unit: 'W',
    tolerance: 25,
    got: () => radiosity(corner, cornerFactors)[0]!.heat,
  },
  {
    ...book('Holman, Heat Transfer, example 8-7'),
    what: 'temperature of the insulated square',
    formula: 'radiosity',
    expected: 599.378,
    unit: 'K',
    tolerance: 0.5,
    got: () => radiosity(corner, cornerFactors)[1]!.kelvin,
  },
  {
    source: 'Holman, Heat Transfer, example 8-2 (0.285, read off a chart)',
    known: 'second-hand',
    what: 'plates of 1 m by 0.5 m, 0.5 m apart',
    formula: 'parallelViewFactor',
    expected: 0.285,
    unit: '-',
    tolerance: 0.001,
    got: () => parallelViewFactor(1, 0.5, 0.5),
  },
  {
    source: 'Holman, Heat Transfer, example 8-7 (0.2, read off a chart)',
    known: 'second-hand',
    what: 'two squares on one edge',
    formula: 'cornerViewFactor',
    expected: 0.2,
    unit: '-',
    tolerance: 0.001,
    got: () => cornerViewFactor(1, 1, 1),
  },
];
