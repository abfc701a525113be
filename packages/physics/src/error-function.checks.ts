// The error functions against a general-purpose mathematics library, on both sides of the handover at 2.

import { erf, erfc, scaledErfc } from './error-function.ts';
import type { OutsideCheck } from './outside-check.ts';

const LIBRARY = 'SciPy 1.17.1, scipy.special';

/** x, erf, erfc, erfcx. */
const rows = [
  [0.1, 0.1124629160182849, 0.8875370839817152, 0.8964569799691268],
  [0.5, 0.5204998778130465, 0.4795001221869535, 0.6156903441929258],
  [1.5, 0.9661051464753108, 0.03389485352468927, 0.3215854164543176],
  [1.99, 0.995111413199617, 0.004888586800383002, 0.25646783671952994],
  [2.01, 0.9955248493552482, 0.004475150644751764, 0.25433187656081824],
  [5, 0.9999999999984626, 1.5374597944280347e-12, 0.11070463773306861],
  [10, 1, 2.0884875837625446e-45, 0.05614099274382259],
] as const;

export const checks: readonly OutsideCheck[] = rows.flatMap(([x, error, complement, scaled]): OutsideCheck[] => {
  const given = { source: LIBRARY, known: 'independent', unit: '-' } as const;
  const what = `at ${x}`;
  return [
    { ...given, what, formula: 'erf', expected: error, tolerance: 1e-14, got: () => erf(x) },
    { ...given, what, formula: 'erfc', expected: complement, tolerance: complement * 1e-12, got: () => erfc(x) },
    { ...given, what, formula: 'scaledErfc', expected: scaled, tolerance: scaled * 1e-12, got: () => scaledErfc(x) },
  ];
});
