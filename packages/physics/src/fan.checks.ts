import { type CurvePoint, curveAt, curveSlope, monotoneCurve, straightCurve } from './curve.ts';
import { affinity, fanNoise, genericFanPoints } from './fan.ts';
import { curvePathFlow, quadraticPathFlow } from './fan-path.ts';
import { operatingPoints } from './operating-point.ts';
import { check, type OutsideCheck } from './outside-check.ts';

const pchip = 'PCHIP of a general-purpose numerical library (SciPy 1.17.1)';

/** Shape, place, value of the library. */
const shapes = [
  ['axial', 0.03, 0.965935],
  ['axial', 0.35, 0.6510695187165776],
  ['axial', 0.97, 0.04906016129032264],
  ['axial-with-dip', 0.44, 0.61056],
  ['axial-with-dip', 0.55, 0.61359375],
  ['blower', 0.03, 0.997],
  ['blower', 0.55, 0.8441558441558441],
] as const;

const dip: readonly CurvePoint[] = [
  [0, 60],
  [0.002, 46],
  [0.003, 30],
  [0.004, 36],
  [0.005, 42],
  [0.006, 39],
  [0.008, 24],
  [0.0105, 0],
];

const stalled = () =>
  operatingPoints(
    (flow) => curveAt(straightCurve(dip), flow),
    (flow) => 25 + 2500 * flow + 100_000 * flow ** 2,
    0,
    0.0105,
  );
const crossings =
  'fan with a stall dip against 25 Pa, 2500 Q + 1e5 Q²: closed form for each straight piece, by an independent script';

/** Fan 72 - 1400 Q - 175000 Q², filter, 240 Q, K 3.2 + 2.4 on 0.00502655 m² at 1.2 kg/m³. */
const linear = 1500 + 240;
const quadratic = 50_000 + ((3.2 + 2.4) * 1.2) / (2 * 0.00502655 ** 2);
const filterPoint = 'fan, filter, duct and silencer in series: closed form, by an independent script';
const flow = () => quadraticPathFlow(72, 1400 + linear, 175_000 + quadratic);

export const checks: readonly OutsideCheck[] = [
  ...shapes.map(([shape, at, expected]) =>
    check(`${shape} shape at ${at} of the free flow`, 'monotoneCurve', pchip, 'independent', expected, '-', 1e-12, () =>
      curveAt(monotoneCurve(genericFanPoints(shape, 1, 1)), at),
    ),
  ),
  check(
    'uneven points with a dip at 0.0027 m³/s',
    'monotoneCurve',
    pchip,
    'independent',
    32.81454545454545,
    'Pa',
    1e-10,
    () => curveAt(monotoneCurve(dip), 0.0027),
  ),
  check(
    'slope through uneven points at 0.01 m³/s',
    'curveSlope',
    pchip,
    'independent',
    -10314.114704614058,
    'Pa·s/m³',
    1e-7,
    () => curveSlope(monotoneCurve(dip), 0.01),
  ),
  check('number of crossings', 'operatingPoints', crossings, 'independent', 3, '-', 0, () => stalled().length),
  ...[10.15856393, 15.20669503, 19.10249786].map((expected, i) =>
    check(
      `crossing ${i + 1}`,
      'operatingPoints',
      crossings,
      'independent',
      expected,
      'm³/h',
      1e-7,
      () => stalled()[i]!.flow * 3600,
    ),
  ),
  check(
    'flow of the path',
    'quadraticPathFlow',
    filterPoint,
    'independent',
    37.65193621,
    'm³/h',
    1e-7,
    () => flow() * 3600,
  ),
  check(
    'pressure on the filter',
    'quadraticPathFlow',
    filterPoint,
    'independent',
    21.15770606,
    'Pa',
    1e-7,
    () => 1500 * flow() + 50_000 * flow() ** 2,
  ),
  check(
    'flow of the path, the fan as a curve of 401 points',
    'curvePathFlow',
    filterPoint,
    'independent',
    37.65193621,
    'm³/h',
    1e-4,
    () => {
      const points = Array.from({ length: 401 }, (_, i): CurvePoint => {
        const q = (i * 0.017) / 400;
        return [q, 72 - 1400 * q - 175_000 * q ** 2];
      });
      return curvePathFlow(0, monotoneCurve(points), 1, linear, quadratic, 0) * 3600;
    },
  ),
  check(
    '200 Pa at 1400 rev/min and 0.92 kg/m³, run at 990.77 rev/min in 1.3 kg/m³',
    'affinity',
    'Douglas, Fluid Mechanics, example 9.6',
    'second-hand',
    141.538,
    'Pa',
    0.283,
    () => 200 * affinity({ speed: 0.92 / 1.3, density: 1.3 / 0.92 }).pressure,
  ),
  check(
    'flow at which 98.9 Q² takes 202.55 Pa',
    'quadraticPathFlow',
    'Douglas, Fluid Mechanics, example 25.4',
    'second-hand',
    1.4311,
    'm³/s',
    0.0002,
    () => quadraticPathFlow(202.55187, 0, 98.9),
  ),
  check(
    'doubling the speed',
    'fanNoise',
    'rule of thumb: +15 dB for twice the speed',
    'common practice, no source',
    15,
    'dB',
    0.1,
    () => fanNoise(0, { speed: 2 }),
  ),
];
