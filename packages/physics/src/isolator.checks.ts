import {
  forcedAmplitude,
  hystereticTransmissibility,
  naturalFrequency,
  padStiffness,
  transmissibility,
} from './isolator.ts';
import { check, type OutsideCheck } from './outside-check.ts';
import { twoMassFrequencies } from './two-masses.ts';

const page = 'a page on vibration isolation that cites ASHRAE Applications and ISO 2017-1: 25 mm, 25 Hz, ζ 0.05';
/** 100 kg on 700 kN/m, 350 N at 3000 rev/min, ζ 0.2. */
const thomson = 'W. T. Thomson, Theory of Vibration with Applications, example 3.7-1';
const denHartog = 'J. P. Den Hartog, Mechanical Vibrations, section 3.2: absorber of a fifth of the mass, tuned alike';
const gent = 'A. N. Gent, P. B. Lindley (1959), as quoted in J. Mech. Eng. 60 (2014) 506-511';

const ratio = (): number => 50 / naturalFrequency(700e3, 100);
const absorber = (): readonly [number, number] =>
  twoMassFrequencies({ mass: 0.2, stiffness: 0.2, loss: 0 }, { mass: 1, stiffness: 1, loss: 0 });

export const checks: readonly OutsideCheck[] = [
  check('share that gets through', 'transmissibility', page, 'read', 0.0206, '-', 0.00005, () =>
    transmissibility(7.93, 0.05),
  ),
  check('natural frequency', 'naturalFrequency', thomson, 'memory', 13.32, 'Hz', 0.005, () =>
    naturalFrequency(700e3, 100),
  ),
  check('share that gets through', 'transmissibility', thomson, 'memory', 0.137, '-', 0.0005, () =>
    transmissibility(ratio(), 0.2),
  ),
  check(
    'force that gets through',
    'transmissibility',
    thomson,
    'memory',
    47.89,
    'N',
    0.1,
    () => 350 * transmissibility(ratio(), 0.2),
  ),
  check(
    'amplitude',
    'forcedAmplitude',
    thomson,
    'memory',
    0.0379,
    'mm',
    0.00005,
    () => 1000 * forcedAmplitude(350, 700e3, ratio(), 0.2),
  ),
  check(
    'at √2 times the natural frequency all comes through, at any damping',
    'transmissibility',
    'J. P. Den Hartog, Mechanical Vibrations, figure 2.41',
    'memory',
    1,
    '-',
    1e-9,
    () => transmissibility(Math.SQRT2, 0.3),
  ),
  check(
    'at √2 times the natural frequency all comes through, at any loss',
    'hystereticTransmissibility',
    'any text on damped isolators, such as C. M. Harris, Shock and Vibration Handbook, chapter 30',
    'memory',
    1,
    '-',
    1e-9,
    () => hystereticTransmissibility(Math.SQRT2, 0.4),
  ),
  check(
    'lower natural frequency over that of each alone',
    'twoMassFrequencies',
    denHartog,
    'memory',
    0.8,
    '-',
    0.005,
    () => 2 * Math.PI * absorber()[0],
  ),
  check(
    'upper natural frequency over that of each alone',
    'twoMassFrequencies',
    denHartog,
    'memory',
    1.25,
    '-',
    0.005,
    () => 2 * Math.PI * absorber()[1],
  ),
  check('shape factor 1: Ea/E', 'padStiffness', gent, 'second-hand', 3, '-', 1e-12, () =>
    padStiffness(1, 0.04, 0.04, 0.01),
  ),
];
