import { pointSag, simpleBeam, spreadSag } from './beam.ts';
import { beamFrequency, sagFrequency } from './beam-frequency.ts';
import { finalSag } from './creep.ts';
import { plywoodStiffness } from './cross-ply.ts';
import { check, type OutsideCheck } from './outside-check.ts';
import { bendingSection } from './section.ts';
import { plywoodEmbedment } from './shelf-pin.ts';

const roark = 'Roark’s Formulas for Stress and Strain, table 8.1';
const handbook = 'Handbook of Finnish Plywood, mean bending stiffness by EN 789 and EN 1058';
const blevins = 'R. D. Blevins, Formulas for Natural Frequency and Mode Shape (1979), table 8-1';
const glass =
  'a glass merchant’s shelf recommendation after the Glass & Glazing Federation 1978/92: annealed, 6 mm, 1000 mm between supports';

/** Thickness called, along and across, N/mm². */
const boards = [
  [4, 16_471, 1029],
  [6.5, 12_737, 4763],
  [9, 11_395, 6105],
  [12, 10_719, 6781],
  [15, 10_316, 7184],
  [18, 10_048, 7452],
  [21, 9858, 7642],
] as const;

/** Frequency parameter λ² of uniform beams. */
const roots = [
  ['simple', 9.8696],
  ['fixed', 22.3733],
  ['propped', 15.4182],
  ['cantilever', 3.516],
] as const;

export const checks: readonly OutsideCheck[] = [
  ...boards.flatMap(([called, along, across]) => [
    check(
      `birch plywood called ${called} mm, along`,
      'plywoodStiffness',
      handbook,
      'memory',
      along,
      'N/mm²',
      1,
      () => plywoodStiffness(called / 1000, 0.0014, 17.5e9).along / 1e6,
    ),
    check(
      `birch plywood called ${called} mm, across`,
      'plywoodStiffness',
      handbook,
      'memory',
      across,
      'N/mm²',
      1,
      () => plywoodStiffness(called / 1000, 0.0014, 17.5e9).across / 1e6,
    ),
  ]),
  check(
    'evenly spread load, E I v/(W L³)',
    'simpleBeam',
    roark,
    'memory',
    5 / 384,
    '-',
    1e-9,
    () => simpleBeam(1, 1, [{ force: 1, from: 0, to: 1 }]).sag,
  ),
  check(
    'force in the middle, E I v/(P L³)',
    'simpleBeam',
    roark,
    'memory',
    1 / 48,
    '-',
    1e-9,
    () => simpleBeam(1, 1, [{ force: 1, at: 0.5 }]).sag,
  ),
  check(
    'force a quarter along, E I v/(P L³): a (L² - a²)^1.5/(9√3 L⁴)',
    'simpleBeam',
    roark,
    'memory',
    (0.25 * (1 - 0.0625) ** 1.5) / (9 * Math.sqrt(3)),
    '-',
    1e-9,
    () => simpleBeam(1, 1, [{ force: 1, at: 0.75 }]).sag,
  ),
  check(
    'two forces a third from the ends, E I v/(P L³): a (3 L² - 4 a²)/(24 L³)',
    'simpleBeam',
    roark,
    'memory',
    ((1 / 3) * (3 - 4 / 9)) / 24,
    '-',
    1e-9,
    () =>
      simpleBeam(1, 1, [
        { force: 1, at: 1 / 3 },
        { force: 1, at: 2 / 3 },
      ]).sag,
  ),
  check(
    'evenly spread load, M/(W L)',
    'simpleBeam',
    roark,
    'memory',
    1 / 8,
    '-',
    1e-9,
    () => simpleBeam(1, 1, [{ force: 1, from: 0, to: 1 }]).moment,
  ),
  check(
    'force a quarter along, M/(P L) = a b/L²',
    'simpleBeam',
    roark,
    'memory',
    3 / 16,
    '-',
    1e-9,
    () => simpleBeam(1, 1, [{ force: 1, at: 0.25 }]).moment,
  ),
  check('evenly spread load, one end fixed: L/185', 'spreadSag', roark, 'memory', 1 / 185, '-', 2e-5, () =>
    spreadSag('propped', 1, 1, 1),
  ),
  check('force in the middle, one end fixed: 0.009317', 'pointSag', roark, 'memory', 0.009317, '-', 5e-7, () =>
    pointSag('propped', 1, 1, 1),
  ),
  check('force at the free end of a cantilever: 1/3', 'pointSag', roark, 'memory', 1 / 3, '-', 1e-12, () =>
    pointSag('cantilever', 1, 1, 1),
  ),
  check(
    'printed load of the pane, which is about that of a sag of 1/300 (the printed table does not name its limit)',
    'spreadSag',
    glass,
    'read',
    32,
    'kg/m²',
    1.5,
    () => 1 / 300 / spreadSag('simple', 9.80665, 1, (70e9 * 0.006 ** 3) / 12),
  ),
  ...roots.map(([ends, root]) =>
    check(
      `λ² of a uniform beam, ${ends}`,
      'beamFrequency',
      blevins,
      'memory',
      root,
      '-',
      1e-3,
      () => 2 * Math.PI * beamFrequency(ends, 1, 1, 1),
    ),
  ),
  check(
    'deflection of 25 mm',
    'sagFrequency',
    'a page on vibration isolation that cites ASHRAE Applications and ISO 2017-1',
    'read',
    3.15,
    'Hz',
    0.005,
    () => sagFrequency(0.025),
  ),
  check(
    'deflection of 1.401 mm',
    'sagFrequency',
    'W. T. Thomson, Theory of Vibration with Applications, example 3.7-1',
    'memory',
    13.32,
    'Hz',
    0.005,
    () => sagFrequency(0.001401),
  ),
  check(
    'timber that sags 10 mm, in service class 2: k_def 0.8',
    'finalSag',
    'EN 1995-1-1:2004, table 3.2 and 2.2.3',
    'second-hand',
    18,
    'mm',
    1e-9,
    () => finalSag(10, 0.8),
  ),
  check(
    '5 mm pin in plywood of 600 kg/m³: 0.11 (1 - 0.05) 600',
    'plywoodEmbedment',
    'EN 1995-1-1:2004, equation (8.36)',
    'memory',
    62.7,
    'N/mm²',
    0.05,
    () => plywoodEmbedment(0.005, 600) / 1e6,
  ),
  check(
    'square tube as outer less inner: I = (b⁴ - c⁴)/12',
    'bendingSection',
    'Roark’s Formulas for Stress and Strain, table A.1',
    'memory',
    (0.04 ** 4 - 0.036 ** 4) / 12,
    'm⁴',
    1e-15,
    () =>
      bendingSection([
        { breadth: 0.04, bottom: 0, top: 0.002, stiffness: 1 },
        { breadth: 0.004, bottom: 0.002, top: 0.038, stiffness: 1 },
        { breadth: 0.04, bottom: 0.038, top: 0.04, stiffness: 1 },
      ]).stiffness,
  ),
];
