import {
  type CoagulatingBox,
  coagulationCoefficient,
  meanParticleMass,
  numberAfter,
  settledNumber,
} from './aerosol.ts';
import { meanBurstFactor } from './emission.ts';
import type { OutsideCheck } from './outside-check.ts';

/** Diameter nm, K in 1e-10 cm³/s by an independent script, K12 of the textbook in the same unit where known. */
const sizes = [
  [10, 9.55, 19],
  [20, 11.7, 24],
  [50, 10, undefined],
  [100, 7.17, 14.5],
  [1000, 3.38, 6.9],
] as const;

const coefficient = (nanometres: number) => coagulationCoefficient(nanometres * 1e-9, 293.15, 1000) * 1e16;

/** Count median nm, geometric deviation, g per particle. */
const masses = [
  [50, 1, 6.545e-17],
  [50, 1.6, 1.769e-16],
  [50, 1.8, 3.098e-16],
  [100, 1.6, 1.415e-15],
] as const;

/** Losses an hour, factor by which coagulation lowers the number at 1e11 a minute in 0.5 m³. */
const factors = [
  [4.5, 2.04],
  [10, 1.33],
  [30, 1.05],
  [60, 1.01],
  [120, 1],
] as const;

const box = (perHour: number): CoagulatingBox => ({
  source: 1e11 / 60 / 0.5,
  loss: perHour / 3600,
  coagulation: coagulationCoefficient(50e-9, 293.15, 1000),
});

export const checks: readonly OutsideCheck[] = [
  ...sizes.flatMap(([nanometres, own, textbook]): OutsideCheck[] => [
    {
      what: `spheres of ${nanometres} nm, density 1000, 20 °C`,
      formula: 'coagulationCoefficient',
      source: 'Fuchs coagulation, evaluated by an independent script',
      known: 'independent',
      expected: own,
      unit: '1e-10 cm³/s',
      tolerance: 0.006 * own,
      got: () => coefficient(nanometres),
    },
    ...(textbook === undefined
      ? []
      : [
          {
            what: `spheres of ${nanometres} nm, density 1000: K12 = 2 K`,
            formula: 'coagulationCoefficient',
            source: 'Seinfeld & Pandis, Atmospheric Chemistry and Physics, table 13.3',
            known: 'memory',
            expected: textbook,
            unit: '1e-10 cm³/s',
            tolerance: 0.03 * textbook,
            got: () => 2 * coefficient(nanometres),
          } as const,
        ]),
  ]),
  ...masses.map(
    ([median, deviation, expected]): OutsideCheck => ({
      what: `count median ${median} nm, geometric deviation ${deviation}, density 1000`,
      formula: 'meanParticleMass',
      source: 'Hatch & Choate 1929, evaluated by an independent script',
      known: 'independent',
      expected,
      unit: 'g',
      tolerance: 0.0005 * expected,
      got: () => meanParticleMass(median * 1e-9, deviation, 1000) * 1000,
    }),
  ),
  ...factors.map(
    ([perHour, expected]): OutsideCheck => ({
      what: `number without over number with coagulation, ${perHour} losses an hour`,
      formula: 'settledNumber',
      source: 'number balance with coagulation, evaluated by an independent script',
      known: 'independent',
      expected,
      unit: '-',
      tolerance: 0.005 + 0.002 * expected, // two decimals, and the script's coefficient to three digits
      got: () => settledNumber({ ...box(perHour), coagulation: 0 }) / settledNumber(box(perHour)),
    }),
  ),
  {
    what: 'half-life of 1e5 per cm³ of 50 nm by coagulation alone',
    formula: 'numberAfter',
    source: 'closed form 1/(K N), evaluated by an independent script',
    known: 'independent',
    expected: 0.5,
    unit: '-',
    tolerance: 0.002,
    got: () => numberAfter({ ...box(0), source: 0 }, 1e11, 166 * 60) / 1e11,
  },
  ...(
    [
      [60, 1.533],
      [600, 1.053],
    ] as const
  ).map(
    ([minutes, expected]): OutsideCheck => ({
      what: `mean over a print of ${minutes} minutes, burst 5, 8 minutes`,
      formula: 'meanBurstFactor',
      source: 'integral of the burst law, by an independent script',
      known: 'independent',
      expected,
      unit: '-',
      tolerance: 0.0005,
      got: () => meanBurstFactor(minutes * 60, 5, 480),
    }),
  ),
];
