// Sound against printed values: tables, worked examples and the texts that quote them.

import { check, type OutsideCheck } from './outside-check.ts';
import { boxInsertionLoss, buildUp } from './sound-enclosure.ts';
import { fanOctaves } from './sound-fan.ts';
import { aLevel, exactOctaveBands } from './sound-level.ts';
import { endReflection, expansionBoxLoss, linedDuctLoss, plenumLoss } from './sound-muffler.ts';
import { compositeLoss, criticalFrequency, doubleLeafResonance, panelOctaves } from './sound-panel.ts';
import { noiseRating, ratingCurve } from './sound-rating.ts';
import { eyringTime, powerFromPressure, reverberationTime, roomConstant, roomTransfer } from './sound-room.ts';
import { slitTransmission } from './sound-slit.ts';

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

const bies = 'Bies, Hansen & Howard, Engineering Noise Control, 5th ed. 2017';
const script = 'second calculation of the same formulas, by an independent script';

/** A case of steel sheet, 63 Hz to 4 kHz: 24 m² outside, 30 m² inside, a = 0.3. */
const steel = [18, 22, 28, 33, 38, 42, 45];
const door = { area: 1.28, loss: 15 };
const gap = { area: 0.24, loss: 0 };
const caseLoss = (more: readonly { area: number; loss: number }[]): number =>
  mean(
    steel.map((loss) => compositeLoss([{ area: 24 - more.reduce((sum, { area }) => sum + area, 0), loss }, ...more])),
  ) - buildUp(24, 30, 0.3);
const steelCase =
  'worked enclosure of steel sheet in the guide of a general-purpose acoustics library, after ISO 11546 and Bies';

const perimeter = 4 * 0.61;

/** Measured octave rows, 125 Hz to 4 kHz, with the thickness, m, surface mass, kg/m², critical frequency times thickness, m/s. */
const rows = [
  ['plywood 12 mm on a frame', 0.012, 7, 20, [10, 15, 17, 19, 20, 26]],
  ['chipboard 19 mm on a frame', 0.019, 11, 23, [17, 18, 25, 30, 26, 32]],
  ['glass 4 mm', 0.004, 10, 12.7, [20, 22, 28, 34, 29, 28]],
  ['glass 6 mm', 0.006, 15, 12.7, [11, 24, 28, 32, 27, 35]],
  ['glass 8 mm', 0.008, 20, 12.7, [18, 25, 31, 32, 28, 36]],
] as const;

export const checks: readonly OutsideCheck[] = [
  check('glass of 6 mm', 'criticalFrequency', `example after ${bies}, section 7.2`, 'second-hand', 2107, 'Hz', 1, () =>
    criticalFrequency(62e9, 0.006, 2500, 0.24),
  ),
  check(
    'glass, times its thickness',
    'criticalFrequency',
    'Long, Architectural Acoustics, table 9.1',
    'read',
    12.7,
    'm/s',
    1.27,
    () => 0.006 * criticalFrequency(62e9, 0.006, 2500, 0.24),
  ),
  ...(
    [
      [12, 0.075, 89],
      [8.8, 0.1, 90],
    ] as const
  ).map(([mass, distance, expected]) =>
    check(
      `two leaves of ${mass} kg/m², ${1000 * distance} mm apart`,
      'doubleLeafResonance',
      `examples after ${bies} and Vigran, Building Acoustics`,
      'second-hand',
      expected,
      'Hz',
      0.6,
      () => doubleLeafResonance(mass, mass, distance),
    ),
  ),
  ...rows.map(([what, thickness, surfaceMass, coincidence, octaves]) =>
    check(
      `mean loss from 125 Hz to 4 kHz, ${what}`,
      'panelOctaves',
      `${bies}, table 7.6, measured`,
      'second-hand',
      mean(octaves),
      'dB',
      5,
      () => mean(panelOctaves({ surfaceMass, criticalFrequency: coincidence / thickness, damping: 0.03 }).slice(1, 7)),
    ),
  ),
  check(
    'one hundredth of a wall of 50 dB open',
    'compositeLoss',
    'Hopkins, Sound Insulation (2007), eq. 4.92, as in the guide of a general-purpose acoustics library',
    'second-hand',
    20,
    'dB',
    0.1,
    () =>
      compositeLoss([
        { area: 0.99, loss: 50 },
        { area: 0.01, loss: 0 },
      ]),
  ),
  check(
    '25 mm wide, 100 mm deep, straight on, 686 Hz',
    'slitTransmission',
    'Hopkins, Sound Insulation (2007), figure to eq. 4.99, as in the guide of a general-purpose acoustics library',
    'second-hand',
    0.55,
    '-',
    0.005,
    () => slitTransmission(686, { width: 0.025, depth: 0.1, field: 'normal' }),
  ),
  check('24 m² outside, 30 m² inside, a = 0.3', 'buildUp', steelCase, 'second-hand', 3.4, 'dB', 0.05, () =>
    buildUp(24, 30, 0.3),
  ),
  check('mean of the closed case', 'compositeLoss', steelCase, 'second-hand', 28.9, 'dB', 0.05, () => caseLoss([])),
  check('with a door of 15 dB', 'compositeLoss', steelCase, 'second-hand', 21.4, 'dB', 0.05, () => caseLoss([door])),
  check('with door and gap', 'compositeLoss', steelCase, 'second-hand', 15.1, 'dB', 0.1, () => caseLoss([door, gap])),
  check(
    'single number of an enclosure, 125 Hz to 4 kHz',
    'aLevel',
    'ISO 11546-1:1995, example in the guide of a general-purpose acoustics library',
    'second-hand',
    19.3,
    'dB',
    0.05,
    () => {
      const octaves = (levels: readonly number[]): number =>
        aLevel([Number.NEGATIVE_INFINITY, ...levels, Number.NEGATIVE_INFINITY]);
      return octaves([96, 98, 99, 97, 94, 89]) - octaves([88, 86, 81, 74, 68, 63]);
    },
  ),
  ...(
    [
      [0.05, 12.26],
      [0.3, 19.82],
      [0.5, 22.02],
    ] as const
  ).map(([absorption, expected]) =>
    check(`boards of 25 dB, a = ${absorption}`, 'boxInsertionLoss', script, 'independent', expected, 'dB', 0.01, () =>
      boxInsertionLoss(absorption, 10 ** -2.5),
    ),
  ),
  check(
    '610 mm square, half swallowed, 1 m at 250 Hz',
    'linedDuctLoss',
    'table of lined ducts of a general engineering handbook: about 2.5 dB/m',
    'read',
    2.5,
    'dB',
    0.15,
    () => linedDuctLoss(0.5, perimeter, 0.61 ** 2, 1, 250),
  ),
  ...(
    [
      [250, 0.2, 1.32],
      [500, 0.45, 4.12],
      [1000, 0.7, 7.65],
      [2000, 0.8, 9.22],
    ] as const
  ).map(([frequency, absorption, expected]) =>
    check(
      `100 mm square, 300 mm long, ${frequency} Hz`,
      'linedDuctLoss',
      script,
      'independent',
      expected,
      'dB',
      0.05,
      () => linedDuctLoss(absorption, 0.4, 0.01, 0.3, frequency),
    ),
  ),
  check(
    'S_o 0.3 m², r 2 m, S 16 m², a 0.65, 45°, with 2 pi r²',
    'plenumLoss',
    'worked plenum of a general engineering handbook (printed with the outlet 0.25 m², reckoned with 0.3)',
    'read',
    17.3,
    'dB',
    0.05,
    () => plenumLoss({ outlet: 0.3, distance: 2, angle: Math.PI / 4, surface: 16, absorption: 0.65 }, 2),
  ),
  check(
    'S_o 0.36 m², r 2.4 m, S 74 m², a 0.5',
    'plenumLoss',
    `${bies}, plenum in the guide of a general-purpose acoustics library`,
    'second-hand',
    16.1,
    'dB',
    0.05,
    () => plenumLoss({ outlet: 0.36, distance: 2.4, angle: 0, surface: 74, absorption: 0.5 }),
  ),
  ...(
    [
      [2, 1.94],
      [4, 6.55],
      [8, 12.18],
      [16, 18.1],
    ] as const
  ).map(([ratio, expected]) =>
    check(
      `peak of ${ratio} times the section`,
      'expansionBoxLoss',
      'Munjal, Acoustics of Ducts and Mufflers, as in the guide of a general-purpose acoustics library',
      'second-hand',
      expected,
      'dB',
      0.005,
      () => expansionBoxLoss(ratio, 0.25, 343),
    ),
  ),
  ...(
    [
      [63, 12.7],
      [125, 7.7],
      [250, 3.7],
      [500, 1.3],
      [1000, 0.4],
      [2000, 0.1],
    ] as const
  ).map(([frequency, expected]) =>
    check(
      `300 mm flush, ${frequency} Hz`,
      'endReflection',
      'Long, Architectural Acoustics (2014), after ASHRAE',
      'second-hand',
      expected,
      'dB',
      0.05,
      () => endReflection(0.3, frequency),
    ),
  ),
  check(
    'r 1.5 m, Q 2, A 20 m²',
    'roomTransfer',
    'VDI 2081-2 sheet, room 102, as in the guide of a general-purpose acoustics library',
    'second-hand',
    -5.7,
    'dB',
    0.05,
    () => roomTransfer(1.5, 2, 20),
  ),
  check('r 3.5 m, Q 2, A 100 m²', 'roomTransfer', 'manual of a fan maker', 'read', -12.8, 'dB', 0.05, () =>
    roomTransfer(3.5, 2, 100),
  ),
  ...(
    [
      [0.3, 1, -4.6],
      [0.45, 2, -4.5],
      [0.6, 3, -3.3],
      [1, 1, -0.2],
    ] as const
  ).map(([time, distance, expected]) =>
    check(
      `bedroom 4 m x 3 m x 2.4 m of ${time} s, at ${distance} m`,
      'roomTransfer',
      script,
      'independent',
      expected,
      'dB',
      0.06,
      () => roomTransfer(distance, 2, roomConstant(reverberationTime(28.8, time), 57.6)),
    ),
  ),
  check(
    '3000 m³, 240, 600, 500 m² of 0.1, 0.25, 0.45',
    'reverberationTime',
    'test of an open acoustics library',
    'read',
    1.211382149,
    's',
    1e-6,
    () => reverberationTime(3000, 399),
  ),
  check(
    '3000 m³, 240, 600, 500 m² of 0.1, 0.25, 0.45',
    'eyringTime',
    'test of an open acoustics library',
    'read',
    1.020427763,
    's',
    1e-6,
    () => eyringTime(3000, 1340, 399 / 1340),
  ),
  check('22 dB(A) at 1 m, hung free', 'powerFromPressure', 'definition, as in ISO 3745', 'memory', 33, 'dB', 0.05, () =>
    powerFromPressure(22, 1, 1),
  ),
  ...[-5, -5.5, -6.8, -9.1, -12.3, -16.3, -21.3, -27.2].map((expected, band) =>
    check(
      `axial fan, 1500 /min, ${Math.round(exactOctaveBands[band]!)} Hz`,
      'fanOctaves',
      'second calculation of VDI 2081-1:2019, eq. 20-21 as coded in an open program, by an independent script',
      'independent',
      expected,
      'dB',
      0.06,
      () => fanOctaves('axial', 1500)[band]!,
    ),
  ),
  ...[59.1, 48.1, 39.9, 34, 30, 26.9, 24.6, 22.9].map((expected, band) =>
    check(
      `curve 30, octave ${band + 1}`,
      'ratingCurve',
      'second calculation with the constants of ISO/R 1996, by an independent script',
      'independent',
      expected,
      'dB',
      0.06,
      () => ratingCurve(30)[band]!,
    ),
  ),
  check('bare box of plywood', 'noiseRating', script, 'independent', 25.7, '-', 0.1, () => {
    const source = [40, 43, 45, 46, 44, 40, 34, 27];
    const loss = [4.1, 7.8, 11.4, 14.9, 15.9, 13, 14.9, 17.9];
    return noiseRating(source.map((level, band) => level - loss[band]! - 4.44));
  }),
];
