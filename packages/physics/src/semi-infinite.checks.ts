// Thick bodies against Holman's worked examples of chapter 4.

import type { OutsideCheck } from './outside-check.ts';
import { airStepShare, planeSourceRise, surfaceFluxRise, surfaceStepHeat, surfaceStepShare } from './semi-infinite.ts';

const holman = (example: string) =>
  `Holman, Heat Transfer, example ${example} (inputs second-hand, answer recomputed by an independent script)`;
const steel = { conductivity: 45, diffusivity: 1.4e-5 };
const aluminium = { conductivity: 215, diffusivity: 8.4e-5 };

export const checks: readonly OutsideCheck[] = [
  {
    what: 'steel from 35 °C, face at 250 °C, 25 mm deep, 30 s',
    formula: 'surfaceStepShare',
    source: holman('4-2'),
    known: 'second-hand',
    expected: 118.499,
    unit: '°C',
    tolerance: 0.1,
    got: () => 35 + 215 * surfaceStepShare(0.025, steel.diffusivity, 30),
  },
  {
    what: 'steel from 35 °C under 3.2e5 W/m², 25 mm deep, 30 s',
    formula: 'surfaceFluxRise',
    source: holman('4-2'),
    known: 'second-hand',
    expected: 79.3142,
    unit: '°C',
    tolerance: 0.1,
    got: () => 35 + surfaceFluxRise(3.2e5, steel, 0.025, 30),
  },
  {
    what: 'the same at the face',
    formula: 'surfaceFluxRise',
    source: holman('4-2'),
    known: 'second-hand',
    expected: 199.444,
    unit: '°C',
    tolerance: 0.1,
    got: () => 35 + surfaceFluxRise(3.2e5, steel, 0, 30),
  },
  {
    what: 'surface of steel after a pulse of 1e7 J/m², 2 s, from 40 °C',
    formula: 'planeSourceRise',
    source: holman('4-3'),
    known: 'second-hand',
    expected: 570.068,
    unit: '°C',
    tolerance: 1.1,
    got: () => 40 + planeSourceRise(1e7, 7800 * 460, 0.44e-5, 0, 2),
  },
  {
    what: 'time for aluminium at 200 °C, face dropped to 70 °C, to reach 120 °C at 40 mm',
    formula: 'surfaceStepShare',
    source: holman('4-4'),
    known: 'second-hand',
    expected: 37.7318,
    unit: 's',
    tolerance: 0.075,
    got: () => timeUntil(80 / 130, (time) => surfaceStepShare(0.04, aluminium.diffusivity, time)),
  },
  {
    what: 'heat taken out by then',
    formula: 'surfaceStepHeat',
    source: holman('4-4'),
    known: 'second-hand',
    expected: 2.11374e7,
    unit: 'J/m²',
    tolerance: 4.2e4,
    got: () => 130 * surfaceStepHeat(aluminium, 37.7318),
  },
  {
    what: 'the same slab in air of 70 °C with 525 W/(m²·K): time to 120 °C at 40 mm (the book reads about 3000 s off a chart)',
    formula: 'airStepShare',
    source: 'Holman, Heat Transfer, example 4-5 (inputs second-hand), solved with SciPy 1.17.1 (erfc, erfcx, brentq)',
    known: 'independent',
    expected: 3561.13,
    unit: 's',
    tolerance: 0.1,
    got: () => timeUntil(80 / 130, (time) => airStepShare(525, aluminium, 0.04, time)),
  },
];

/** When a share that only grows reaches a value: bisection between a millisecond and a day. */
function timeUntil(share: number, law: (time: number) => number): number {
  let low = 1e-3;
  let high = 86_400;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (law(middle) < share) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
