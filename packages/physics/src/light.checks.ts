import {
  factorToDisk,
  factorToParallelCorner,
  factorToPolygon,
  factorToUprightCorner,
} from './configuration-factor.ts';
import { exposureTime, exposureValue, illuminanceAtValue, luminanceAtValue, motionBlur } from './exposure.ts';
import { flickerBound, flickerIndex, percentFlicker, pulseBanding, rippleBanding } from './flicker.ts';
import { areaIlluminance, lambertianIlluminance, pointIlluminance, stripIlluminance } from './illuminance.ts';
import { cavityMultiplier, fluxForIlluminance, interreflect } from './interreflection.ts';
import { lampHeat } from './lamp-heat.ts';
import { check, type OutsideCheck } from './outside-check.ts';
import { cornerViewFactor, parallelViewFactor } from './view-factors.ts';

const INTEGRAL = 'numerical integral over the face (SciPy 1.17.1), by an independent script';
const MULTIPLIER = 'second calculation of the multiplier of the integrating sphere, by an independent script';
const METERS =
  'ISO 2720:1974 (C = 250 lx s, K = 12.5 cd s/m²): E = 2.5 · 2^EV, L = 2^(EV - 3), as an encyclopaedia prints them';
const METERS_AGAIN =
  'second calculation with the formulas of ISO 2720:1974 (C = 250 lx s, K = 12.5 cd s/m²), by an independent script';
const IEEE = 'IEEE Std 1789-2015, 8.1.1';
const IEEE_AGAIN = 'second calculation with the lines of IEEE Std 1789-2015, 8.1.1';
const HAND = 'worked by hand';
const WAVES = '200 001 samples of a period, by an independent script';

const wave = (shape: (phase: number) => number): number[] =>
  Array.from({ length: 20_000 }, (_, i) => shape((i + 0.5) / 20_000));

/** Ceiling that sends out 1000 lm evenly, over the faces of a unit cube: floor, one wall, ceiling. */
function cube(ceiling: number, wall: number, floor: number): readonly [number, number, number] {
  const [facing, beside] = [parallelViewFactor(1, 1, 1), cornerViewFactor(1, 1, 1)];
  const factors = [
    [0, 4 * beside, facing],
    [beside, 2 * beside + facing, beside],
    [facing, 4 * beside, 0],
  ];
  const lit = interreflect([1000 * facing, 1000 * beside, 0], [floor, wall, ceiling], factors);
  return [lit[0]!, lit[1]!, lit[2]!];
}

const cubes: readonly (readonly [number, number, number, number, number, number])[] = [
  [0, 0, 0, 199.82, 200.04, 0],
  [0.05, 0.05, 0.05, 208.27, 208.48, 10.42],
  [0.2, 0.2, 0.2, 240.22, 240.43, 48.08],
  [0.5, 0.5, 0.5, 363.49, 363.67, 181.82],
  [0.8, 0.8, 0.8, 861.94, 862.1, 689.66],
  [0.8, 0.8, 0.05, 568.1, 494.78, 322.41],
  [0.7, 0.5, 0.2, 354.93, 335.75, 148.51],
];

export const checks: readonly OutsideCheck[] = [
  ...(
    [
      [0.1, 0.009901],
      [0.25, 0.058824],
      [0.5, 0.2],
      [1, 0.5],
      [2, 0.8],
      [5, 0.961538],
    ] as const
  ).map(([ratio, F]) =>
    check(`disk of ${ratio} of its distance`, 'factorToDisk', INTEGRAL, 'independent', F, '-', 5e-7, () =>
      factorToDisk(ratio, 1),
    ),
  ),
  check(
    'a disk as far away as its radius',
    'factorToDisk',
    'J. R. Howell, A Catalog of Radiation Heat Transfer Configuration Factors, plane element to a coaxial disk',
    'memory',
    0.5,
    '-',
    1e-12,
    () => factorToDisk(0.1, 0.1),
  ),
  ...(
    [
      [0.1, 0.1, 0.003141],
      [0.25, 0.5, 0.033091],
      [0.5, 0.5, 0.059864],
      [1, 1, 0.138532],
      [1, 2, 0.167375],
      [2, 2, 0.207757],
      [5, 5, 0.242085],
    ] as const
  ).map(([a, b, F]) =>
    check(`corner of ${a} by ${b} above it`, 'factorToParallelCorner', INTEGRAL, 'independent', F, '-', 5e-7, () =>
      factorToParallelCorner(a, b, 1),
    ),
  ),
  ...(
    [
      [1, 1, 1, 0.055734],
      [1, 1, 0.5, 0.124269],
      [0.5, 1, 1, 0.021121],
      [2, 1, 1, 0.095068],
      [1, 2, 0.25, 0.187944],
      [10, 10, 1, 0.221739],
    ] as const
  ).map(([a, b, c, F]) =>
    check(`wall ${a} high, ${b} wide, ${c} away`, 'factorToUprightCorner', INTEGRAL, 'independent', F, '-', 5e-7, () =>
      factorToUprightCorner(a, b, c),
    ),
  ),
  ...(
    [
      [0.3, 0.3, 0.5, 0.102372],
      [0.5, 0.05, 0.5, 0.027448],
      [0.6, 0.6, 0.6, 0.239456],
      [0.6, 0.6, 0.3, 0.554126],
    ] as const
  ).map(([a, b, h, F]) =>
    check(`middle of ${a} by ${b}, ${h} above`, 'factorToPolygon', INTEGRAL, 'independent', F, '-', 5e-7, () =>
      factorToPolygon(
        [0, 0, 0],
        [0, 0, 1],
        [
          [-a / 2, -b / 2, h],
          [a / 2, -b / 2, h],
          [a / 2, b / 2, h],
          [-a / 2, b / 2, h],
        ],
      ),
    ),
  ),
  check('faces of a cube, one to its neighbour', 'cornerViewFactor', INTEGRAL, 'independent', 0.200044, '-', 5e-7, () =>
    cornerViewFactor(1, 1, 1),
  ),
  check('faces of a cube, one to the other', 'parallelViewFactor', INTEGRAL, 'independent', 0.199825, '-', 5e-7, () =>
    parallelViewFactor(1, 1, 1),
  ),
  check('0.6 m squares, 0.7 m apart', 'parallelViewFactor', INTEGRAL, 'independent', 0.161761, '-', 5e-7, () =>
    parallelViewFactor(0.6, 0.6, 0.7),
  ),
  check('floor of 0.6 m to a wall 0.7 m high', 'cornerViewFactor', INTEGRAL, 'independent', 0.20956, '-', 5e-7, () =>
    cornerViewFactor(0.6, 0.6, 0.7),
  ),

  check('500 lm all round, 0.5 m away', 'pointIlluminance', HAND, 'independent', 159.15, 'lx', 0.005, () =>
    pointIlluminance(500 / (4 * Math.PI), 0.5),
  ),
  check('500 lm diffuse, 0.5 m below', 'lambertianIlluminance', HAND, 'independent', 636.62, 'lx', 0.005, () =>
    lambertianIlluminance(500, 0.5),
  ),
  check('the same, 30 degrees beside', 'lambertianIlluminance', HAND, 'independent', 358.1, 'lx', 0.05, () =>
    lambertianIlluminance(500, 0.5, Math.PI / 6),
  ),
  ...(
    [
      [0.5, 0.25, 549.82],
      [0.3, 0.25, 1258.96],
      [0.5, 0.5, 818.31],
    ] as const
  ).map(([h, half, E]) =>
    check(
      `strip of 1000 lm/m, ${2 * half} m long, ${h} m up`,
      'stripIlluminance',
      INTEGRAL,
      'independent',
      E,
      'lx',
      0.005,
      () => stripIlluminance(1000, h, half, half),
    ),
  ),
  check('panel of 0.3 m and 500 lm, 0.5 m up', 'areaIlluminance', INTEGRAL, 'independent', 568.73, 'lx', 0.005, () =>
    areaIlluminance(500, 0.09, 4 * factorToParallelCorner(0.15, 0.15, 0.5)),
  ),

  ...(
    [
      [0.05, 0, 0.0526],
      [0.2, 0, 0.25],
      [0.45, 0, 0.8182],
      [0.8, 0, 4],
      [0.9, 0, 9],
      [0.8, 0.05, 3.3333],
      [0.8, 0.1, 2.8571],
    ] as const
  ).map(([rho, open, M]) =>
    check(`reflectance ${rho}, ${open} open`, 'cavityMultiplier', MULTIPLIER, 'independent', M, '-', 5e-5, () =>
      cavityMultiplier(rho, open),
    ),
  ),
  ...cubes.flatMap(([ceiling, wall, floor, onFloor, onWall, onCeiling]) =>
    (
      [
        ['floor', onFloor, 0],
        ['wall', onWall, 1],
        ['ceiling', onCeiling, 2],
      ] as const
    ).map(([name, E, at]) =>
      check(
        `unit cube ${ceiling}/${wall}/${floor}, ceiling sends 1000 lm: ${name}`,
        'interreflect',
        'radiosity of six faces (NumPy), by an independent script',
        'independent',
        E,
        'lx',
        0.005,
        () => cube(ceiling, wall, floor)[at],
      ),
    ),
  ),
  check('500 lx on 0.36 m² at UF 0.154', 'fluxForIlluminance', HAND, 'independent', 1169, 'lm', 0.5, () =>
    fluxForIlluminance(500, 0.36, 0.154, 1),
  ),
  check('500 lx on 0.36 m² at UF 0.688', 'fluxForIlluminance', HAND, 'independent', 262, 'lm', 0.5, () =>
    fluxForIlluminance(500, 0.36, 0.688, 1),
  ),

  check('illuminance at EV 0', 'illuminanceAtValue', METERS, 'second-hand', 2.5, 'lx', 1e-9, () =>
    illuminanceAtValue(0),
  ),
  check('luminance at EV 3', 'luminanceAtValue', METERS, 'second-hand', 1, 'cd/m²', 1e-9, () => luminanceAtValue(3)),
  ...(
    [
      [1, 5],
      [3, 20],
      [5, 80],
      [7, 320],
      [10, 2560],
    ] as const
  ).map(([EV, E]) =>
    check(`illuminance at EV ${EV}`, 'illuminanceAtValue', METERS_AGAIN, 'independent', E, 'lx', 1e-9, () =>
      illuminanceAtValue(EV),
    ),
  ),
  ...(
    [
      [-2, 0.03125],
      [10, 128],
    ] as const
  ).map(([EV, L]) =>
    check(`luminance at EV ${EV}`, 'luminanceAtValue', METERS_AGAIN, 'independent', L, 'cd/m²', 1e-9, () =>
      luminanceAtValue(EV),
    ),
  ),
  check('f/1 and 1 s', 'exposureValue', METERS, 'second-hand', 0, 'EV', 1e-12, () => exposureValue(1, 1)),
  ...(
    [
      [200, 2, 100, 1 / 20],
      [200, 2, 400, 1 / 80],
      [500, 2, 100, 1 / 50],
      [50, 2, 400, 1 / 20],
      [20, 2, 800, 1 / 16],
      [1000, 2.8, 100, 1 / 51.02],
    ] as const
  ).map(([E, N, S, t]) =>
    check(`${E} lx, f/${N}, ISO ${S}`, 'exposureTime', METERS_AGAIN, 'independent', t, 's', 1e-5, () =>
      exposureTime(E, N, S),
    ),
  ),
  check('100 mm/s in 1/16 s', 'motionBlur', HAND, 'independent', 6.25e-3, 'm', 1e-12, () => motionBlur(0.1, 1 / 16)),

  ...(
    [
      [10, 0.25, 0.1, IEEE_AGAIN],
      [50, 1.25, 0.5, IEEE],
      [89, 2.23, 0.89, IEEE_AGAIN],
      [90, 7.2, 3, IEEE_AGAIN],
      [100, 8, 3.33, IEEE],
      [120, 9.6, 4, IEEE_AGAIN],
      [200, 16, 6.67, IEEE_AGAIN],
      [1000, 80, 33.3, IEEE_AGAIN],
      [1250, 100, 41.7, IEEE_AGAIN],
      [3000, 100, 100, IEEE_AGAIN],
    ] as const
  ).flatMap(([f, low, none, source]) => [
    check(
      `low risk at ${f} Hz`,
      'flickerBound',
      source,
      source === IEEE ? 'second-hand' : 'independent',
      low,
      '%',
      0.05,
      () => 100 * flickerBound(f, 'low risk'),
    ),
    check(
      `no effect at ${f} Hz`,
      'flickerBound',
      source,
      source === IEEE ? 'second-hand' : 'independent',
      none,
      '%',
      0.1,
      () => 100 * flickerBound(f, 'no effect'),
    ),
  ]),
  check('square wave of 60 and 100 %', 'percentFlicker', WAVES, 'independent', 0.25, '-', 1e-9, () =>
    percentFlicker(1, 0.6),
  ),
  ...(
    [
      ['sine, 100 %', 0.3183, (x: number) => 1 + Math.sin(2 * Math.PI * x)],
      ['sine, 30 %', 0.0955, (x: number) => 1 + 0.3 * Math.sin(2 * Math.PI * x)],
      ['rectified sine', 0.2105, (x: number) => Math.abs(Math.sin(2 * Math.PI * x))],
      ['triangle', 0.25, (x: number) => 1 - Math.abs(2 * x - 1)],
      ['square of 60 and 100 %', 0.125, (x: number) => (x < 0.5 ? 1 : 0.6)],
      ['pulses, 10 % on', 0.9, (x: number) => (x < 0.1 ? 1 : 0)],
    ] as const
  ).map(([name, FI, shape]) =>
    check(name, 'flickerIndex', WAVES, 'independent', FI, '-', 1e-4, () => flickerIndex(wave(shape))),
  ),
  check(
    'a dimmed lamp, on for 61 % of each period',
    'flickerIndex',
    'measurement of one lamp, published without a name',
    'read',
    0.388,
    '-',
    0.005,
    () => flickerIndex(wave((x) => (x < 0.61 ? 1 : 0))),
  ),
  ...(
    [
      [100, 0.5, 0.005, 2],
      [100, 0.5, 0.01, 0],
      [100, 0.5, 0.0105, 0.0952],
      [1000, 0.5, 0.01, 0],
      [1000, 0.5, 0.0105, 0.0952],
      [1000, 0.2, 0.0105, 0.0952],
      [20_000, 0.5, 0.010_025, 0.005],
    ] as const
  ).map(([f, D, T, banding]) =>
    check(
      `${f} Hz, ${D} on, rows of ${1000 * T} ms`,
      'pulseBanding',
      'rows of a rolling shutter simulated phase by phase, by an independent script',
      'independent',
      banding,
      '-',
      5e-5,
      () => pulseBanding(f, D, T),
    ),
  ),
  check(
    'mains of 50 Hz, 10 ms: hardly any bands',
    'rippleBanding',
    'users of small cameras: whole multiples of 10 ms show no bands, 5 ms does',
    'common practice, no source',
    0,
    '-',
    0.01,
    () => rippleBanding(100, 0.3, 0.01),
  ),

  check(
    'share of heat of white LEDs of 2007, at 60 lm/W: 75 to 85 %',
    'lampHeat',
    'US DOE, Thermal Management of White LEDs, February 2007',
    'read',
    0.8,
    '-',
    0.05,
    () => lampHeat(10, 600) / 10,
  ),
  check('1000 lm from 10 W', 'lampHeat', HAND, 'independent', 6.875, 'W', 1e-9, () => lampHeat(10, 1000)),
];
