import { armFrequency, armStiffness } from './camera-arm.ts';
import type { OutsideCheck } from './outside-check.ts';

export const checks: readonly OutsideCheck[] = [
  {
    what: 'deflection of a cantilever under an end load: P L³/(3 E I)',
    formula: 'armStiffness',
    source: 'Roark’s Formulas for Stress and Strain, table 8.1, case 1a',
    known: 'memory',
    expected: (10 * 0.3 ** 3) / (3 * 1e9 * ((0.03 * 0.01 ** 3) / 12)),
    unit: 'm',
    tolerance: 1e-12,
    got: () => 10 / armStiffness(1e9, 0.03, 0.01, 0.3),
  },
  {
    what: 'first frequency of a cantilever that carries nothing, E I/(m L³) = 1: (1.8751)²/(2 pi)',
    formula: 'armFrequency',
    source:
      'R. D. Blevins, Formulas for Natural Frequency and Mode Shape, table 8-1; 33/140 of its mass is known to read 1.5 % high',
    known: 'memory',
    expected: 1.87510407 ** 2 / (2 * Math.PI),
    unit: '1/s',
    tolerance: 0.0085,
    got: () => armFrequency(3, 0, 1),
  },
];
