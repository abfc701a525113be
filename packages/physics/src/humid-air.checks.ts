// Moist air against the handbook's printed table and example, and against another program that evaluates the same chapter.

import { ICE_POINT } from './constants.ts';
import {
  dewPoint,
  humidityRatioAt,
  humidityRatioFromWetBulb,
  moistAirDensity,
  moistAirEnthalpy,
  moistAirVolume,
  relativeHumidity,
  saturationPressure,
} from './humid-air.ts';
import type { OutsideCheck } from './outside-check.ts';

const TABLE_3 = 'ASHRAE Fundamentals 2017 ch. 1 table 3, quoted in the tests of PsychroLib';
const TABLE_2 = 'ASHRAE Fundamentals 2017 ch. 1 table 2, dry air at 25 °C';
const EXAMPLE_1 =
  'ASHRAE Fundamentals 2017 ch. 1 example 1 (40 °C dry bulb, 20 °C wet bulb, 101325 Pa), quoted in the tests of PsychroLib';
const LIBRARY = 'ASHRAE Fundamentals 2017 ch. 1 as evaluated by PsychroLib, a general-purpose psychrometrics library';

/** °C and Pa; the table claims 300 ppm. */
const saturation = [
  [-20, 103.24],
  [5, 872.6],
  [25, 3169.7],
  [50, 12351.3],
  [100, 101418],
] as const;

/** °C, RH, W kg/kg, h J/kg, v m³/kg, rho kg/m³, dew point °C, as printed by the library at 101325 Pa. */
const states = [
  [15, 0.1, 0.001049, 17741.8, 0.81767, 1.22427, -14.661],
  [20, 0.4, 0.005796, 34831.0, 0.8382, 1.19995, 6.004],
  [20, 0.5, 0.007262, 38551.7, 0.84016, 1.1989, 9.272],
  [20, 0.6, 0.008734, 42289.9, 0.84212, 1.19785, 12.007],
  [25, 0.2, 0.003915, 35123.7, 0.84994, 1.18116, 0.501],
  [25, 0.6, 0.011895, 55452.6, 0.86078, 1.17556, 16.701],
  [30, 0.5, 0.01331, 64211.5, 0.87717, 1.15521, 18.447],
  [40, 0.1, 0.004565, 51997.5, 0.89363, 1.12414, 2.629],
  [40, 0.6, 0.028436, 113473.0, 0.92768, 1.10861, 30.741],
  [60, 0.6, 0.083286, 277953.6, 1.07016, 1.01227, 49.366],
] as const;

/** Room air warmed in a bay at constant W: room °C, room RH, bay °C, bay RH percent. */
const warmed = [
  [20, 0.4, 30, 22.03],
  [20, 0.5, 40, 15.84],
  [22, 0.5, 30, 31.14],
  [25, 0.6, 50, 15.4],
] as const;

export const checks: readonly OutsideCheck[] = [
  ...saturation.map(
    ([celsius, pascal]): OutsideCheck => ({
      what: `saturation pressure at ${celsius} °C (the table claims 300 ppm)`,
      formula: 'saturationPressure',
      source: TABLE_3,
      known: 'second-hand',
      expected: pascal,
      unit: 'Pa',
      tolerance: pascal * 300e-6,
      got: () => saturationPressure(celsius + ICE_POINT),
    }),
  ),
  ...example1(),
  {
    what: 'enthalpy of dry air at 25 °C',
    formula: 'moistAirEnthalpy',
    source: TABLE_2,
    known: 'second-hand',
    expected: 25148,
    unit: 'J/kg',
    tolerance: 7.5,
    got: () => moistAirEnthalpy(298.15, 0),
  },
  {
    what: 'volume of dry air at 25 °C',
    formula: 'moistAirVolume',
    source: TABLE_2,
    known: 'second-hand',
    expected: 0.8443,
    unit: 'm³/kg',
    tolerance: 0.0008,
    got: () => moistAirVolume(298.15, 0),
  },
  ...states.flatMap(atState),
  ...warmed.map(
    ([room, relative, bay, percent]): OutsideCheck => ({
      what: `relative humidity at ${bay} °C of air that was ${room} °C and RH ${relative}`,
      formula: 'relativeHumidity',
      source: LIBRARY,
      known: 'independent',
      expected: percent,
      unit: 'percent',
      tolerance: 0.006,
      got: () => 100 * relativeHumidity(bay + ICE_POINT, humidityRatioAt(room + ICE_POINT, relative)),
    }),
  ),
];

function example1(): OutsideCheck[] {
  const ratio = () => humidityRatioFromWetBulb(313.15, 293.15);
  const given = { source: EXAMPLE_1, known: 'second-hand' } as const;
  return [
    {
      ...given,
      what: 'humidity ratio',
      formula: 'humidityRatioFromWetBulb',
      expected: 0.0065,
      unit: 'kg/kg',
      tolerance: 1e-4,
      got: ratio,
    },
    {
      ...given,
      what: 'enthalpy',
      formula: 'moistAirEnthalpy',
      expected: 56700,
      unit: 'J/kg',
      tolerance: 100,
      got: () => moistAirEnthalpy(313.15, ratio()),
    },
    {
      ...given,
      what: 'relative humidity',
      formula: 'relativeHumidity',
      expected: 0.14,
      unit: '-',
      tolerance: 0.01,
      got: () => relativeHumidity(313.15, ratio()),
    },
    {
      ...given,
      what: 'volume',
      formula: 'moistAirVolume',
      expected: 0.896,
      unit: 'm³/kg',
      tolerance: 0.001,
      got: () => moistAirVolume(313.15, ratio()),
    },
  ];
}

function atState([celsius, relative, ratio, enthalpy, volume, density, dew]: (typeof states)[number]): OutsideCheck[] {
  const kelvin = celsius + ICE_POINT;
  const own = () => humidityRatioAt(kelvin, relative);
  const given = { source: LIBRARY, known: 'independent' } as const;
  const state = `at ${celsius} °C and RH ${relative}`;
  return [
    {
      ...given,
      what: `humidity ratio ${state}`,
      formula: 'humidityRatioAt',
      expected: ratio,
      unit: 'kg/kg',
      tolerance: 1e-6,
      got: own,
    },
    {
      ...given,
      what: `enthalpy ${state}`,
      formula: 'moistAirEnthalpy',
      expected: enthalpy,
      unit: 'J/kg',
      tolerance: 1,
      got: () => moistAirEnthalpy(kelvin, own()),
    },
    {
      ...given,
      what: `volume ${state}`,
      formula: 'moistAirVolume',
      expected: volume,
      unit: 'm³/kg',
      tolerance: 2e-5,
      got: () => moistAirVolume(kelvin, own()),
    },
    {
      ...given,
      what: `density ${state}`,
      formula: 'moistAirDensity',
      expected: density,
      unit: 'kg/m³',
      tolerance: 2e-5,
      got: () => moistAirDensity(kelvin, own()),
    },
    {
      ...given,
      what: `dew point ${state}`,
      formula: 'dewPoint',
      expected: dew,
      unit: '°C',
      tolerance: 0.002,
      got: () => dewPoint(relative * saturationPressure(kelvin)) - ICE_POINT,
    },
  ];
}
