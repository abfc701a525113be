import { check, type OutsideCheck } from './outside-check.ts';
import { gradualContractionLoss, gradualExpansionLoss } from './transition.ts';

const source = 'Crane Technical Paper 410 (1976), A-26';

export const checks: readonly OutsideCheck[] = [
  // A simple rule of every handbook of pipe flow: 0.5 (1 - A2/A1).
  check('sudden narrowing from 77.9 to 52.5 mm', 'gradualContractionLoss', source, 'memory', 0.273, '-', 0.0005, () =>
    gradualContractionLoss((52.5 / 77.9) ** 2, Math.PI),
  ),
  check('sharp entrance from a room', 'gradualContractionLoss', source, 'memory', 0.5, '-', 1e-12, () =>
    gradualContractionLoss(0, Math.PI),
  ),
  check('exit into a room', 'gradualExpansionLoss', source, 'memory', 1, '-', 1e-12, () =>
    gradualExpansionLoss(0, Math.PI),
  ),
];
