import { type CabinetAndRoom, settledTogether, togetherAfter } from './cabinet-and-room.ts';
import {
  areaServed,
  carbonDioxideRise,
  cleanAirDelivery,
  concentrationAfter,
  lossRate,
  type MixedZone,
  nearAndFar,
  purgeTime,
  settledConcentration,
} from './dilution.ts';
import { check, type OutsideCheck } from './outside-check.ts';

const hour = 3600;
const empty: MixedZone = { volume: 1, source: 0, supply: 0, supplied: 0, cleaning: 0, deposition: 0 };

/** Air changes an hour; minutes to remove 90, 99 and 99.9 percent. */
const purge = [
  [1, 138, 276, 414],
  [2, 69, 138, 207],
  [4, 35, 69, 104],
  [6, 23, 46, 69],
  [8, 17, 35, 52],
  [10, 14, 28, 41],
  [12, 12, 23, 35],
  [15, 9, 18, 28],
  [20, 7, 14, 21],
  [50, 3, 6, 8],
] as const;
const cdc = 'CDC, MMWR 43 (RR-13), 28 Oct 1994, table S3-1 (2003 guideline table B.1), printed to the minute';

const park = (airChanges: number): MixedZone => ({
  ...empty,
  volume: 5400,
  source: 0.0024,
  supply: (airChanges * 5400) / hour,
});
const douglas = (part: string) => `Douglas, Fluid Mechanics, example 25.11 (${part})`;

const office: MixedZone = { ...empty, volume: 45, supply: 45 / hour };
const azimi = 'Azimi et al., Environ. Sci. Technol. 50 (2016) 1260-1268 (rates read; room and result from memory)';

const bare: CabinetAndRoom = {
  cabinetVolume: 0.5,
  roomVolume: 40,
  source: 1e11 / 60,
  exhaust: 0,
  exhaustEfficiency: 0,
  leakage: 2 / hour,
  recirculation: 0,
  recirculationEfficiency: 0,
  cabinetDeposition: 0.5 / hour,
  roomDeposition: 1 / hour,
  outdoorAir: 20 / hour,
  outdoorConcentration: 0,
  roomCleaning: 0,
};
const recirculating = (efficiency: number): CabinetAndRoom => ({
  ...bare,
  recirculation: 60 / hour,
  recirculationEfficiency: efficiency,
});
const exhausting = (leakage: number): CabinetAndRoom => ({
  ...bare,
  exhaust: 15 / hour,
  exhaustEfficiency: 0.9995,
  leakage: leakage / hour,
});
const styrene: CabinetAndRoom = { ...bare, source: 1, cabinetDeposition: 0, roomDeposition: 0 };
const carbon = (efficiency: number): CabinetAndRoom => ({
  ...styrene,
  recirculation: 60 / hour,
  recirculationEfficiency: efficiency,
});
const balances = 'two-zone mass balance, evaluated by an independent script';
const exponential = 'two-zone mass balance by a matrix exponential of an independent script';

/** Case, zones, cabinet, room, unit, factor from the unit to amounts per m³, share allowed (half of the last digit). */
const steady = [
  ['closed, no filter', bare, 2.745e6, 8.856e4, '1/cm³', 1e6, 2e-4],
  ['recirculation 60 m³/h at 0.9995', recirculating(0.9995), 9.653e4, 3.114e3, '1/cm³', 1e6, 2e-4],
  ['recirculation 60 m³/h at 0.959', recirculating(0.959), 1.0046e5, 3.2406e3, '1/cm³', 1e6, 5e-5],
  ['exhaust 15 m³/h at 0.9995, leak 0.2 m³/h', exhausting(0.2), 3.894e5, 1.0745e3, '1/cm³', 1e6, 2e-4],
  ['exhaust 15 m³/h at 0.9995, no leak', exhausting(0), 3.935e5, 39.3, '1/cm³', 1e6, 2e-3],
  ['styrene, no filter', styrene, 1980, 180, 'µg/m³', 1, 1e-9],
  ['styrene, carbon at 0.8', carbon(0.8), 72.26, 6.569, 'µg/m³', 1, 1e-4],
  ['styrene, carbon at 0.2', carbon(0.2), 260.5, 23.68, 'µg/m³', 1, 3e-4],
] as const;

/** Case, zones, minutes, cabinet, room, unit, factor. */
const transient = [
  ['recirculation at 0.959', recirculating(0.959), 0.5, 6.3305e4, 15.27, '1/cm³', 1e6],
  ['recirculation at 0.959', recirculating(0.959), 1, 8.6676e4, 46.92, '1/cm³', 1e6],
  ['recirculation at 0.959', recirculating(0.959), 5, 1.00357e5, 354.9, '1/cm³', 1e6],
  ['recirculation at 0.959', recirculating(0.959), 60, 1.00436e5, 2542.6, '1/cm³', 1e6],
  ['recirculation at 0.959', recirculating(0.959), 240, 1.00459e5, 3233.9, '1/cm³', 1e6],
  ['styrene, no filter', styrene, 30, 1567.66, 23.139, 'µg/m³', 1],
  ['styrene, no filter', styrene, 60, 1807.04, 55.278, 'µg/m³', 1],
  ['styrene, no filter', styrene, 480, 1975.47, 176.03, 'µg/m³', 1],
] as const;

export const checks: readonly OutsideCheck[] = [
  ...purge.flatMap(([airChanges, ...minutes]) =>
    minutes.map((expected, i) =>
      check(
        `${airChanges} air changes an hour, ${['90', '99', '99.9'][i]} percent`,
        'purgeTime',
        cdc,
        'read',
        expected,
        'min',
        0.51,
        () => purgeTime(10 ** (i + 1), airChanges / hour) / 60,
      ),
    ),
  ),
  check(
    '0.5 m³, 60 m³/h at 0.959, leak 2 m³/h, deposition 0.5 1/h: 99 percent',
    'lossRate',
    'balance evaluated by an independent script',
    'independent',
    2.31,
    'min',
    0.006,
    () =>
      purgeTime(
        100,
        lossRate({ ...empty, volume: 0.5, supply: 2 / hour, cleaning: (0.959 * 60) / hour, deposition: 0.5 / hour }),
      ) / 60,
  ),
  check(
    'air changes that hold 10 per 10 000',
    'settledConcentration',
    douglas('a'),
    'second-hand',
    10,
    '1e-4',
    0.02,
    () => settledConcentration(park(1.6)) * 1e4,
  ),
  check(
    'air changes that hold 10 per 10 000 for an hour',
    'concentrationAfter',
    douglas('b'),
    'second-hand',
    10,
    '1e-4',
    0.03,
    () => concentrationAfter(park(1.02717), 0, hour) * 1e4,
  ),
  check(
    'after 20 minutes at one air change',
    'concentrationAfter',
    douglas('c'),
    'second-hand',
    4.5355,
    '1e-4',
    0.0136,
    () => concentrationAfter(park(1), 0, 1200) * 1e4,
  ),
  check(
    'from 10 to 0.1 at one air change an hour',
    'purgeTime',
    douglas('d'),
    'second-hand',
    4.60517,
    'h',
    0.0092,
    () => purgeTime(100, 1 / hour) / hour,
  ),
  check(
    'office of 45 m³ at 1 1/h: styrene at 110 µg/min',
    'settledConcentration',
    azimi,
    'memory',
    150,
    'µg/m³',
    5,
    () => settledConcentration({ ...office, source: 110 / 60 }),
  ),
  check(
    'office of 45 m³ at 1 1/h: caprolactam at 183 µg/min',
    'settledConcentration',
    azimi,
    'memory',
    244,
    'µg/m³',
    1,
    () => settledConcentration({ ...office, source: 183 / 60 }),
  ),
  check(
    'shop of 540 m³ with 54 m³/min: air changes',
    'lossRate',
    'AIHA Synergist (Hewett 2017); answer by an independent script',
    'independent',
    6,
    '1/h',
    1e-9,
    () => lossRate({ ...empty, volume: 540, supply: 0.9 }) * hour,
  ),
  check(
    'open machine, 1e11 a minute, 20 m³/h of outdoor air and deposition 1 1/h in 40 m³',
    'settledConcentration',
    balances,
    'independent',
    1e5,
    '1/cm³',
    1,
    () =>
      settledConcentration({ ...empty, volume: 40, source: 1e11 / 60, supply: 20 / hour, deposition: 1 / hour }) / 1e6,
  ),
  check(
    '28.5 m³, decay 0.120 against 0.006 per minute',
    'cleanAirDelivery',
    'ANSI/AHAM AC-1 as quoted in public test guides',
    'second-hand',
    194.9,
    'm³/h',
    0.06,
    () => cleanAirDelivery(28.5, 0.12 / 60, 0.006 / 60) * hour,
  ),
  check(
    'room for 50 cfm',
    'areaServed',
    'ANSI/AHAM AC-1 room rule, 1.55 square feet per cfm',
    'second-hand',
    77.5,
    'ft²',
    0.5,
    () => areaServed((50 * 0.0283168466) / 60) / 0.09290304,
  ),
  check(
    '0.31 l/min a person, 7.5 l/s',
    'carbonDioxideRise',
    'ASHRAE 62.1 appendix: about 700 ppm above outdoors',
    'memory',
    700,
    'ppm',
    15,
    () => carbonDioxideRise(0.31e-3 / 60, 7.5e-3),
  ),
  check(
    '0.3 l/min a person, 8.33 l/s',
    'carbonDioxideRise',
    'course problem: 400 to 1000 ppm (problem read, answer by an independent script)',
    'independent',
    600,
    'ppm',
    0.5,
    () => carbonDioxideRise(0.3e-3 / 60, 8.3333e-3),
  ),
  check(
    'near field, 100 mg/min, 20 and 5 m³/min',
    'nearAndFar',
    'AIHA near-field far-field model (Nicas)',
    'read',
    25,
    'mg/m³',
    1e-9,
    () => nearAndFar(100, 20, 5).near,
  ),
  check(
    'far field, 100 mg/min, 20 and 5 m³/min',
    'nearAndFar',
    'AIHA near-field far-field model (Nicas)',
    'read',
    5,
    'mg/m³',
    1e-9,
    () => nearAndFar(100, 20, 5).far,
  ),
  ...steady.flatMap(([what, both, cabinet, room, unit, factor, share]) => [
    check(
      `${what}: cabinet`,
      'settledTogether',
      balances,
      'independent',
      cabinet,
      unit,
      share * cabinet,
      () => settledTogether(both).cabinet / factor,
    ),
    check(
      `${what}: room`,
      'settledTogether',
      balances,
      'independent',
      room,
      unit,
      share * room,
      () => settledTogether(both).room / factor,
    ),
  ]),
  ...transient.flatMap(([what, both, minutes, cabinet, room, unit, factor]) => [
    check(
      `${what}: cabinet after ${minutes} min`,
      'togetherAfter',
      exponential,
      'independent',
      cabinet,
      unit,
      1e-4 * cabinet,
      () => togetherAfter(both, { cabinet: 0, room: 0 }, minutes * 60).cabinet / factor,
    ),
    check(
      `${what}: room after ${minutes} min`,
      'togetherAfter',
      exponential,
      'independent',
      room,
      unit,
      3.5e-4 * room,
      () => togetherAfter(both, { cabinet: 0, room: 0 }, minutes * 60).room / factor,
    ),
  ]),
];
