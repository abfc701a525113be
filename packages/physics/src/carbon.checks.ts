import { breakthroughTime, carbonRate, freshPenetration } from './carbon-bed.ts';
import { carbonCapacity } from './carbon-capacity.ts';
import { massConcentration } from './concentration.ts';
import { ICE_POINT } from './constants.ts';
import { resistancePressure } from './filter.ts';
import type { OutsideCheck } from './outside-check.ts';
import { packedBedResistance } from './packed-bed.ts';
import { molarPolarisation, type SolventName, solventSaturation, solvents } from './solvent.ts';

/** Minutes to 10 percent breakthrough at 50, 100, 200, 500 and 1000 ppm. */
const published: readonly (readonly [SolventName, readonly number[]])[] = [
  ['toluene', [1018, 562, 307, 135, 72]],
  ['ethylbenzene', [1133, 604, 319, 135, 70]],
  ['m-xylene', [1143, 608, 321, 136, 70]],
  ['cumene', [1122, 586, 304, 126, 64]],
  ['mesitylene', [1159, 603, 311, 128, 65]],
  ['p-cymene', [1104, 566, 289, 117, 59]],
];
const levels = [50, 100, 200, 500, 1000] as const;

/** Minutes to 1 percent breakthrough at 1000 ppm. */
const atOnePercent: readonly (readonly [SolventName, number])[] = [
  ['toluene', 61],
  ['ethylbenzene', 60],
  ['m-xylene', 60],
  ['cumene', 56],
  ['mesitylene', 57],
  ['p-cymene', 52],
];

const table =
  'OSHA respirator e-tool: table computed with the Wood model (two cartridges of 26 g, 53.3 l/min, 22 °C, dry)';

/** Transfer units are not printed with the table: two numbers were fitted to its thirty cells at 10 percent. */
const units = (name: SolventName) => 11.94 * (molarPolarisation(solvents[name]) / 31.09) ** 0.735;

function minutes(name: SolventName, ppm: number, transferUnits: number, share: number): number {
  const entering = massConcentration(ppm, solvents[name].molarMass, ICE_POINT + 22);
  const capacity = carbonCapacity(solvents[name], entering, ICE_POINT + 22);
  return breakthroughTime(capacity, 0.052, entering, 53.3e-3 / 60, transferUnits, share) / 60;
}

/** Vapour, °C, µg/m³, g/g. */
const roomLevels = [
  ['styrene', 22, 10, 0.06],
  ['styrene', 22, 100, 0.104],
  ['styrene', 22, 1000, 0.164],
  ['styrene', 40, 10, 0.036],
  ['styrene', 40, 1000, 0.12],
  ['styrene', 50, 100, 0.054],
  ['toluene', 22, 10, 0.019],
  ['toluene', 22, 1000, 0.082],
  ['toluene', 50, 100, 0.016],
] as const;

/** cm/s, grain mm, depth mm, k_v per minute, transfer units, penetration. */
const beds = [
  [10, 3, 25, 1373, 5.72, 0.0033],
  [20, 3, 25, 2309, 4.81, 0.0081],
  [40, 3, 25, 3884, 4.05, 0.0172],
  [40, 3, 10, 3884, 1.62, 0.166],
  [40, 1.5, 10, 10_984, 4.58, 0.0102],
] as const;

/** Grain mm, voids, depth mm, m/s, Pa. */
const library = 'a general-purpose fluids library, version 1.0.22: Ergun';
const script = 'Ergun, evaluated by an independent script';
const ergun = [
  [3.5, 0.42, 20, 0.1, 2.97, library],
  [3.5, 0.42, 20, 0.3, 14.45, library],
  [3.5, 0.42, 20, 0.5, 33.32, library],
  [1.5, 0.42, 20, 0.1, 13.29, library],
  [1.5, 0.42, 20, 0.5, 109.58, library],
  [3, 0.4, 25, 0.1, 5.9, script],
  [3, 0.4, 25, 0.4, 43.3, script],
  [1.5, 0.4, 25, 0.2, 47.2, script],
] as const;

export const checks: readonly OutsideCheck[] = [
  ...published.flatMap(([name, row]) =>
    row.map(
      (expected, i): OutsideCheck => ({
        what: `${name} at ${levels[i]} ppm to 10 percent breakthrough`,
        formula: 'breakthroughTime',
        source: table,
        known: 'read',
        expected,
        unit: 'min',
        tolerance: 0.014 * expected + 0.5,
        got: () => minutes(name, levels[i]!, units(name), 0.1),
      }),
    ),
  ),
  ...atOnePercent.map(
    ([name, expected]): OutsideCheck => ({
      what: `${name} at 1000 ppm to 1 percent breakthrough (25 percent more transfer units, one number fitted to six cells)`,
      formula: 'breakthroughTime',
      source: table,
      known: 'read',
      expected,
      unit: 'min',
      tolerance: 0.02 * expected + 0.5,
      got: () => minutes(name, 1000, 1.25 * units(name), 0.01),
    }),
  ),
  {
    what: 'toluene: life at 100 ppm over life at 1000 ppm',
    formula: 'carbonCapacity',
    source: table,
    known: 'read',
    expected: 562 / 72,
    unit: '-',
    tolerance: 0.08,
    got: () => minutes('toluene', 100, units('toluene'), 0.1) / minutes('toluene', 1000, units('toluene'), 0.1),
  },
  ...roomLevels.map(
    ([name, celsius, micrograms, expected]): OutsideCheck => ({
      what: `${name} at ${micrograms} µg/m³ and ${celsius} °C`,
      formula: 'carbonCapacity',
      source: 'Dubinin-Radushkevich isotherm in the form of Wood, evaluated by an independent script',
      known: 'independent',
      expected,
      unit: 'g/g',
      tolerance: 0.0006,
      got: () => carbonCapacity(solvents[name], micrograms * 1e-9, ICE_POINT + celsius),
    }),
  ),
  {
    what: '500 g against styrene at 1000 µg/m³, 60 m³/h, 22 °C, until full',
    formula: 'breakthroughTime',
    source: 'mass balance with the isotherm of Wood, evaluated by an independent script',
    known: 'independent',
    expected: 1366,
    unit: 'h',
    tolerance: 7,
    got: () =>
      breakthroughTime(carbonCapacity(solvents.styrene, 1e-6, ICE_POINT + 22), 0.5, 1e-6, 60 / 3600, Infinity, 0.1) /
      3600,
  },
  ...beds.flatMap(([speed, grain, depth, rate, transferUnits, penetration]): OutsideCheck[] => {
    const what = `toluene, ${grain} mm grains, ${depth} mm deep, ${speed} cm/s`;
    const perSecond = () => carbonRate(0.2, solvents.toluene.molarMass, speed / 100, grain / 1000, 1.25);
    return [
      {
        what,
        formula: 'carbonRate',
        source: 'Wood & Lodewyckx 2003, evaluated by an independent script',
        known: 'independent',
        expected: rate,
        unit: '1/min',
        tolerance: 0.001 * rate,
        got: () => 60 * perSecond(),
      },
      {
        what,
        formula: 'freshPenetration',
        source: 'Wheeler and Jonas at t = 0, evaluated by an independent script',
        known: 'independent',
        expected: penetration,
        unit: '-',
        tolerance: 0.005 * penetration + 0.00005,
        got: () => freshPenetration(perSecond() * (depth / 10 / speed)),
      },
      {
        what: `${what}: transfer units`,
        formula: 'carbonRate',
        source: 'Wood & Lodewyckx 2003, evaluated by an independent script',
        known: 'independent',
        expected: transferUnits,
        unit: '-',
        tolerance: 0.006,
        got: () => perSecond() * (depth / 10 / speed),
      },
    ];
  }),
  ...(
    [
      ['toluene', 110.6],
      ['ethylbenzene', 136.2],
      ['m-xylene', 139.1],
      ['styrene', 145.2],
      ['cumene', 152.4],
      ['mesitylene', 164.7],
      ['p-cymene', 177.1],
    ] as const
  ).map(
    ([name, boils]): OutsideCheck => ({
      what: `${name} boils at ${boils} °C under one atmosphere`,
      formula: 'solventSaturation',
      source: 'CRC Handbook of Chemistry and Physics: normal boiling points',
      known: 'memory',
      expected: 101_325,
      unit: 'Pa',
      tolerance: 1013, // one percent: 0.4 K
      got: () => solventSaturation(solvents[name], ICE_POINT + boils),
    }),
  ),
  ...ergun.map(
    ([grain, voids, depth, speed, expected, source]): OutsideCheck => ({
      what: `${depth} mm of ${grain} mm grains, voids ${voids}, ${speed} m/s`,
      formula: 'packedBedResistance',
      source,
      known: 'independent',
      expected,
      unit: 'Pa',
      tolerance: 0.012 * expected + 0.005, // the script's air is known to one percent
      got: () =>
        resistancePressure(
          packedBedResistance({ depth: depth / 1000, grain: grain / 1000, voids, faceArea: 1 }, 1.19, 1.83e-5),
          speed,
        ),
    }),
  ),
  {
    what: 'one ppm of styrene at 25 °C',
    formula: 'massConcentration',
    source: 'NIOSH Pocket Guide to Chemical Hazards: styrene',
    known: 'read',
    expected: 4.26,
    unit: 'mg/m³',
    tolerance: 0.005,
    got: () => massConcentration(1, 0.10415) * 1e6,
  },
  {
    what: 'one ppm of caprolactam at 25 °C',
    formula: 'massConcentration',
    source: 'NIOSH Pocket Guide to Chemical Hazards: caprolactam',
    known: 'read',
    expected: 4.63,
    unit: 'mg/m³',
    tolerance: 0.005,
    got: () => massConcentration(1, 0.11316) * 1e6,
  },
];
