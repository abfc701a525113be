// Driven air against textbook examples and against an independent evaluation for a bed and for a small part.

import { airConductivity, airKinematicViscosity, airPrandtl } from './air.ts';
import { mixedConvection, nusseltCylinder, nusseltPlateStream, streamFilm } from './forced-convection.ts';
import type { OutsideCheck } from './outside-check.ts';

const SCRIPT = {
  source: 'the correlation evaluated by an independent script',
  known: 'independent',
  unit: 'W/(m²·K)',
} as const;

/** m/s; W/(m²·K) of a bed of 235 mm at 60 °C in 25 °C: stream alone, mixed with 6.80 of natural convection. */
const bed = [
  [0.05, 1.81, 6.84],
  [0.1, 2.55, 6.92],
  [0.3, 4.42, 7.37],
  [0.5, 5.71, 7.94],
  [1, 8.07, 9.44],
] as const;

/** m/s; W/(m²·K) of a part of 40 mm at 70 °C in 35 °C: as a plate, as a cylinder, mixed with 7.54. */
const part = [
  [0.05, 4.37, 3.81, 8.0],
  [0.2, 8.74, 7.47, 10.31],
  [0.5, 13.82, 11.82, 14.53],
  [2, 27.64, 24.19, 27.83],
] as const;

const PART_FILM = 325.65;

export const checks: readonly OutsideCheck[] = [
  {
    what: 'Nusselt number of a plate of 0.5 m, 10 m/s at 6 kN/m², Re 9597, Pr 0.687',
    formula: 'nusseltPlateStream',
    source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 7.1',
    known: 'memory',
    expected: 57.4,
    unit: '-',
    tolerance: 0.051,
    got: () => nusseltPlateStream(9597, 0.687),
  },
  {
    what: 'mean film of a plate of 0.4 m, 2 m/s, nu 17.36e-6, k 0.02749, Pr 0.7',
    formula: 'nusseltPlateStream',
    source: 'Holman, Heat Transfer, example 5-4',
    known: 'memory',
    expected: 8.698,
    unit: 'W/(m²·K)',
    tolerance: 0.01,
    got: () => (nusseltPlateStream((2 * 0.4) / 17.36e-6, 0.7) * 0.02749) / 0.4,
  },
  {
    what: 'Nusselt number of a rod of 12.7 mm in 10 m/s, Re 6071, Pr 0.70',
    formula: 'nusseltCylinder',
    source: 'Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, example 7.4',
    known: 'memory',
    expected: 40.6,
    unit: '-',
    tolerance: 0.051,
    got: () => nusseltCylinder(6071, 0.7),
  },
  ...bed.flatMap(([speed, stream, mixed]): OutsideCheck[] => [
    {
      ...SCRIPT,
      what: `bed of 235 mm, ${speed} m/s`,
      formula: 'streamFilm',
      expected: stream,
      tolerance: 0.011,
      got: () => streamFilm(speed, 0.235, 315.65),
    },
    {
      ...SCRIPT,
      what: `bed of 235 mm, ${speed} m/s and 6.80 of natural convection`,
      formula: 'mixedConvection',
      expected: mixed,
      tolerance: 0.011,
      got: () => mixedConvection(streamFilm(speed, 0.235, 315.65), 6.8),
    },
  ]),
  ...part.flatMap(([speed, plate, cylinder, mixed]): OutsideCheck[] => [
    {
      ...SCRIPT,
      what: `part of 40 mm as a plate, ${speed} m/s`,
      formula: 'streamFilm',
      expected: plate,
      tolerance: 0.011,
      got: () => streamFilm(speed, 0.04, PART_FILM),
    },
    {
      ...SCRIPT,
      what: `part of 40 mm as a cylinder, ${speed} m/s`,
      formula: 'nusseltCylinder',
      expected: cylinder,
      tolerance: 0.011,
      got: () => {
        const reynolds = (speed * 0.04) / airKinematicViscosity(PART_FILM);
        return (nusseltCylinder(reynolds, airPrandtl(PART_FILM)) * airConductivity(PART_FILM)) / 0.04;
      },
    },
    {
      ...SCRIPT,
      what: `part of 40 mm, ${speed} m/s and 7.54 of natural convection`,
      formula: 'mixedConvection',
      expected: mixed,
      tolerance: 0.011,
      got: () => mixedConvection(streamFilm(speed, 0.04, PART_FILM), 7.54),
    },
  ]),
];
