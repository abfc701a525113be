import { orificeFlow, plateDischarge } from './orifice.ts';
import type { OutsideCheck } from './outside-check.ts';

const library = 'a general-purpose fluids library, version 1.0.22: ISO 5167 discharge coefficient, corner taps';

const plates = [
  [0.2, 1e4, 0.6017],
  [0.2, 1e5, 0.5981],
  [0.3, 1e4, 0.6054],
  [0.3, 1e5, 0.6001],
  [0.5, 1e4, 0.6186],
  [0.5, 1e5, 0.6069],
  [0.6, 1e4, 0.6282],
  [0.6, 1e5, 0.6103],
] as const;

export const checks: readonly OutsideCheck[] = [
  ...plates.map(
    ([ratio, reynolds, expected]): OutsideCheck => ({
      what: `orifice plate, diameter ratio ${ratio}, pipe 0.2 m, Re ${reynolds}`,
      formula: 'plateDischarge',
      source: library,
      known: 'independent',
      expected,
      unit: '-',
      tolerance: 0.00006,
      got: () => plateDischarge(ratio, reynolds, 0.2),
    }),
  ),
  {
    what: '400 holes of 5 mm, Cd 0.62, pass 30 m³/h at 1.7 Pa (density 1.2)',
    formula: 'orificeFlow',
    source: 'perforated inlet evaluated by an independent script',
    known: 'independent',
    expected: 30,
    unit: 'm³/h',
    tolerance: 0.5,
    got: () => (orificeFlow(1.7, 1.2, 400 * 0.62 * (Math.PI / 4) * 0.005 ** 2, 1e-5) / 1.2) * 3600,
  },
];
