import { ICE_POINT } from './constants.ts';
import type { OutsideCheck } from './outside-check.ts';
import { creepLimit, type PrintedName, printedMaterials } from './printed-part.ts';

const practice = 'printed parts under load: PLA fails at 50 to 55, PETG at 65 to 70, ABS at 85 to 90 °C';

const fails = (name: PrintedName, expected: number): OutsideCheck => ({
  what: `${name} under load`,
  formula: 'creepLimit',
  source: `${practice}; ${name}`,
  known: 'common practice, no source',
  expected,
  unit: '°C',
  tolerance: 2.5,
  got: () => creepLimit(printedMaterials[name].glassTransition) - ICE_POINT,
});

/** Published range of the glass transition, °C. */
const transitions = [
  ['PLA', 55, 65, 'pages of polymer data: 55 to 60 and 60 to 65 °C'],
  ['PETG', 70, 80, 'pages of polymer data: PET 70, PETG 75 to 80 °C'],
  ['ABS', 90, 105, 'pages of polymer data: 90 to 102 and 105 °C'],
  ['ASA', 100, 105, 'pages of polymer data: 100 to 105 °C'],
  ['PA', 50, 60, 'pages of polymer data: PA 6 55 °C'],
  ['PC', 145, 150, 'pages of polymer data: 145 to 150 °C'],
] as const;

export const checks: readonly OutsideCheck[] = [
  fails('PLA', 52.5),
  fails('PETG', 67.5),
  fails('ABS', 87.5),
  ...transitions.map(
    ([name, low, high, source]): OutsideCheck => ({
      what: `glass transition of ${name}`,
      formula: 'printedMaterials',
      source,
      known: 'read',
      expected: (low + high) / 2,
      unit: '°C',
      tolerance: (high - low) / 2 + 1e-9,
      got: () => printedMaterials[name].glassTransition - ICE_POINT,
    }),
  ),
];
