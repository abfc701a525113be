import { airDensity } from './air.ts';
import { airHeat, type Molecule, netFromGross, netHeatByOxygen, OXYGEN_BY_MASS } from './combustion.ts';
import { ICE_POINT } from './constants.ts';
import { statesThatStayOn } from './cut-off-chain.ts';
import { hotBoxAir, openingAir } from './fire-air.ts';
import { fireGrowth, growingFire, timeToPower } from './fire-growth.ts';
import { glassFallsOut } from './glass-in-fire.ts';
import { type HeatDetectorClass, heatDetectorFor, heatDetectors } from './heat-detector.ts';
import { check, type OutsideCheck } from './outside-check.ts';

const WALTERS =
  'Walters, Hackett, Lyon, Fire Mater. 24 (2000) 245, table 3, measured, made net by 21.82 MJ/kg of hydrogen';
const DRYSDALE = 'Drysdale, An Introduction to Fire Dynamics, table of heats of combustion';

/** Molecule, share of hydrogen by mass, gross heat as measured, MJ/kg. */
const polymers: readonly (readonly [string, Molecule, number, number])[] = [
  ['polycarbonate', { carbon: 16, hydrogen: 14, oxygen: 3 }, 0.0555, 31.3],
  ['PET', { carbon: 10, hydrogen: 8, oxygen: 4 }, 0.042, 24.1],
  ['PA 66', { carbon: 12, hydrogen: 22, oxygen: 2, nitrogen: 2 }, 0.098, 30.9],
  ['PMMA', { carbon: 5, hydrogen: 8, oxygen: 2 }, 0.0805, 26.8],
  ['polystyrene', { carbon: 8, hydrogen: 8 }, 0.0774, 43.7],
  ['polyethylene', { carbon: 2, hydrogen: 4 }, 0.1437, 47.7],
  ['polypropylene', { carbon: 3, hydrogen: 6 }, 0.1437, 45.8],
];

/** Net heats of combustion, MJ/kg. */
const substances: readonly (readonly [string, Molecule, number])[] = [
  ['methane', { carbon: 1, hydrogen: 4 }, 50.0],
  ['cellulose', { carbon: 6, hydrogen: 10, oxygen: 5 }, 16.09],
  ['PMMA', { carbon: 5, hydrogen: 8, oxygen: 2 }, 24.89],
  ['polycarbonate', { carbon: 16, hydrogen: 14, oxygen: 3 }, 29.72],
  ['nylon 6,6', { carbon: 12, hydrogen: 22, oxygen: 2, nitrogen: 2 }, 29.58],
];

const EN54 = 'EN 54-5, table of classes of point heat detectors';
const classes: readonly (readonly [HeatDetectorClass, number, number, number, number])[] = [
  ['A1', 25, 50, 54, 65],
  ['A2', 25, 50, 54, 70],
  ['B', 40, 65, 69, 85],
  ['C', 55, 80, 84, 100],
  ['D', 70, 95, 99, 115],
  ['E', 85, 110, 114, 130],
  ['F', 100, 125, 129, 145],
  ['G', 115, 140, 144, 160],
];

const NFPA = 'NFPA 204, classes of growth: 1055 kW after 600, 300, 150 and 75 s';
const KAWAGOE = 'Kawagoe 1958, as in Fire Technology 2022, doi:10.1007/s10694-022-01218-1, and lecture texts';

export const checks: readonly OutsideCheck[] = [
  ...polymers.map(([name, molecule, hydrogen, gross]) =>
    check(
      `net heat of ${name} by its oxygen against a calorimeter, 7 %`,
      'netHeatByOxygen',
      WALTERS,
      'read',
      gross - 21.82 * hydrogen,
      'MJ/kg',
      0.07 * (gross - 21.82 * hydrogen),
      () => netHeatByOxygen(molecule) / 1e6,
    ),
  ),
  ...substances.map(([name, molecule, net]) =>
    check(
      `net heat of ${name} by its oxygen, 7 %`,
      'netHeatByOxygen',
      DRYSDALE,
      'memory',
      net,
      'MJ/kg',
      0.07 * net,
      () => netHeatByOxygen(molecule) / 1e6,
    ),
  ),
  check(
    'net heat of methane from its gross',
    'netFromGross',
    'textbook heats of methane, 55.50 and 50.01 MJ/kg',
    'memory',
    50.01,
    'MJ/kg',
    0.03,
    () => netFromGross(55.5e6, 0.25132) / 1e6,
  ),
  check(
    'net heat of polyethylene from its gross',
    'netFromGross',
    DRYSDALE,
    'memory',
    43.28,
    'MJ/kg',
    0.3,
    () => netFromGross(46.4e6, 0.1437) / 1e6,
  ),
  check(
    'oxygen of dry air by mass',
    'OXYGEN_BY_MASS',
    'ASHRAE and textbook composition of air, 23.14 % by mass',
    'memory',
    0.2314,
    'kg/kg',
    0.0001,
    () => OXYGEN_BY_MASS,
  ),
  check(
    'heat for each kilogram of air',
    'airHeat',
    'Huggett, Fire and Materials 4 (1980) 61: 3.0 MJ/kg of air',
    'memory',
    3.0,
    'MJ/kg',
    0.05,
    () => airHeat() / 1e6,
  ),
  check(
    'heat for each cubic metre of air',
    'airHeat',
    'second calculation: 13.1 MJ for each kilogram of oxygen (Huggett 1980), air of 1.2 kg/m³ with 0.2314 of oxygen',
    'independent',
    3.64,
    'MJ/m³',
    0.03,
    () => (airHeat() * airDensity(293.15)) / 1e6,
  ),
  ...(
    [
      [600, 'slow'],
      [300, 'medium'],
      [150, 'fast'],
      [75, 'ultra-fast'],
    ] as const
  ).map(([time, name]) =>
    check(
      `a ${name} fire after ${time} s`,
      'growingFire',
      NFPA,
      'read',
      1055,
      'kW',
      3,
      () => growingFire(fireGrowth[name], time) / 1000,
    ),
  ),
  check('time of a fast fire to 1055 kW', 'timeToPower', NFPA, 'read', 150, 's', 0.5, () =>
    timeToPower(fireGrowth.fast, 1055e3),
  ),
  check(
    'heat through an opening of A √H = 1 m^2.5',
    'openingAir',
    KAWAGOE,
    'second-hand',
    1.5,
    'MW',
    0.03,
    () => (openingAir(1, 1) * airHeat()) / 1e6,
  ),
  check('air through an opening of A √H = 1 m^2.5', 'openingAir', KAWAGOE, 'second-hand', 0.5, 'kg/s', 0.005, () =>
    openingAir(1, 1),
  ),
  check(
    'one opening of a box full of hot gas, against 0.21 · 2/3 Cd A √H ρ √(2 g), Cd 0.7',
    'hotBoxAir',
    'Rockett 1976, as in Karlsson and Quintiere, Enclosure Fire Dynamics: the density factor is 0.21 between ratios of 1.8 and 5',
    'memory',
    0.21 * (2 / 3) * 0.7 * 1.2 * Math.sqrt(2 * 9.81),
    'kg/s',
    0.03,
    () => hotBoxAir([{ area: 1, from: 0, to: 1 }]),
  ),
  ...classes.flatMap(([name, typical, highest, from, to]) =>
    (
      [
        ['typical', typical],
        ['highest', highest],
        ['answersFrom', from],
        ['answersTo', to],
      ] as const
    ).map(([key, value]) =>
      check(
        `class ${name}: ${key}`,
        'heatDetectors',
        EN54,
        'second-hand',
        value,
        '°C',
        0,
        () => heatDetectors[name][key],
      ),
    ),
  ),
  check(
    'a bay held at 60 °C takes class D',
    'heatDetectorFor',
    EN54,
    'second-hand',
    70,
    '°C',
    0,
    () => heatDetectors[heatDetectorFor(60)!].typical,
  ),
  check(
    'a bay held at 55 °C takes class C',
    'heatDetectorFor',
    EN54,
    'second-hand',
    55,
    '°C',
    0,
    () => heatDetectors[heatDetectorFor(55)!].typical,
  ),
  check(
    'a bay at 35 °C takes class A2',
    'heatDetectorFor',
    'practice of hanging class A in warm rooms',
    'common practice, no source',
    50,
    '°C',
    0,
    () => heatDetectors[heatDetectorFor(35)!].highest,
  ),
  check(
    'a pane of 3 mm falls out',
    'glassFallsOut',
    'Babrauskas, Glass breakage in fires, 1997',
    'read',
    360,
    '°C',
    0.001,
    () => glassFallsOut(0.003, 1) - ICE_POINT,
  ),
  check(
    'a pane of 5 mm falls out',
    'glassFallsOut',
    'Babrauskas, Glass breakage in fires, 1997',
    'read',
    450,
    '°C',
    0.001,
    () => glassFallsOut(0.005, 1) - ICE_POINT,
  ),
  check(
    'double panes of 6 mm fall out',
    'glassFallsOut',
    'Babrauskas, Glass breakage in fires, 1997',
    'read',
    600,
    '°C',
    0.001,
    () => glassFallsOut(0.006, 2) - ICE_POINT,
  ),
  check(
    'states of five opening members in which the load stays on',
    'statesThatStayOn',
    'counted by hand: a contact that opens drops the coil, so that only the state with all five well is left',
    'independent',
    1,
    '-',
    0,
    () => statesThatStayOn(['opens', 'opens', 'opens', 'opens', 'opens']),
  ),
];
