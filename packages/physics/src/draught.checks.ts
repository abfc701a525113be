import { airDensity } from './air.ts';
import { ROUND_JET_DECAY, roundJetCore, roundJetVelocity, slotJetVelocity } from './jet.ts';
import { check, type OutsideCheck } from './outside-check.ts';
import { draughtThreshold, partFilm, richardsonNumber } from './part-cooling.ts';
import { firePlume, roomPlume, virtualOrigin } from './plume.ts';
import { captureVelocity, sinkVelocity } from './sink.ts';

const roomK = 298.15;
const heskestad = 'Heskestad plume as in NIST SP 1026, evaluated by an independent script';
const rehva = 'point-source constants of displacement ventilation (REHVA), evaluated by an independent script';

/** Q in W, z in m; u, dT, m in g/s after Heskestad; u, dT, V in m³/h with the room constants. */
const plumes = [
  [10, 0.2, 0.379, 17.15, 1.03, 0.472, 22.33, 2.7],
  [10, 1, 0.221, 1.17, 15.11, 0.276, 1.53, 38.8],
  [20, 0.5, 0.351, 5.91, 6, 0.438, 7.7, 15.4],
  [35, 0.3, 0.502, 20.11, 3.08, 0.625, 26.18, 7.9],
  [100, 0.2, 0.816, 79.59, 2.23, 1.016, 103.63, 5.7],
  [100, 1, 0.477, 5.44, 32.55, 0.594, 7.09, 83.5],
] as const;

/** Bed of 235 mm: heat to the air W, height above the bed m, u, dT, m³/h. */
const beds = [
  [9, 0.2, 0.277, 4.02, 12.1],
  [13, 0.5, 0.265, 2.23, 31.4],
  [28, 0.2, 0.407, 8.81, 17.1],
  [34, 0.1, 0.473, 15.36, 11.9],
] as const;

const bedDiameter = Math.sqrt(4 / Math.PI) * 0.235;
const overBed = (heat: number, height: number) =>
  firePlume(heat, height - virtualOrigin(heat, bedDiameter, roomK), roomK);

/** Diameter m, distance m, share of the outlet velocity. */
const jets = [
  [0.04, 0.2, 1],
  [0.04, 0.4, 0.62],
  [0.06, 0.5, 0.744],
  [0.092, 0.6, 0.951],
] as const;
const slots = [
  [0.005, 0.1, 0.552],
  [0.01, 0.4, 0.391],
  [0.02, 0.1, 1],
  [0.02, 0.6, 0.451],
] as const;

/** Distance m; half space, plain, flanged: 30 m³/h at a circle of 92 mm. */
const sinks = [
  [0.05, 0.531, 0.263, 0.351],
  [0.1, 0.133, 0.078, 0.104],
  [0.3, 0.015, 0.009, 0.012],
] as const;
const nozzle = (Math.PI / 4) * 0.092 ** 2;

/** Part of 40 mm, 70 °C in 35 °C: speed, Ri, film. */
const parts = [
  [0.05, 16.86, 8],
  [0.1, 4.22, 8.72],
  [0.2, 1.05, 10.31],
  [0.5, 0.17, 14.53],
  [1, 0.04, 19.91],
  [2, 0.01, 27.83],
] as const;

/** Length mm; speed at Ri = 1 for dT 20, 35 and 65 K in 35 °C air. */
const thresholds = [
  [10, 0.08, 0.1, 0.14],
  [20, 0.11, 0.15, 0.19],
  [40, 0.16, 0.21, 0.27],
  [80, 0.22, 0.29, 0.39],
  [150, 0.3, 0.4, 0.53],
] as const;

const jetScript = 'decay law of the axis, evaluated by an independent script';
const sinkScript = 'sink laws, evaluated by an independent script';
const partScript = 'Churchill & Chu laminar fit, laminar plate and cubic blend, by an independent script';

export const checks: readonly OutsideCheck[] = [
  ...plumes.flatMap(([heat, height, u, rise, grams, uRoom, riseRoom, cubicMetres]) => {
    const what = `${heat} W, ${height} m up`;
    return [
      check(
        `${what}: velocity`,
        'firePlume',
        heskestad,
        'independent',
        u,
        'm/s',
        0.0011,
        () => firePlume(heat, height, roomK).velocity,
      ),
      check(
        `${what}: rise`,
        'firePlume',
        heskestad,
        'independent',
        rise,
        'K',
        0.006 + 0.001 * rise,
        () => firePlume(heat, height, roomK).rise,
      ),
      check(
        `${what}: mass flow`,
        'firePlume',
        heskestad,
        'independent',
        grams,
        'g/s',
        0.006 + 0.001 * grams,
        () => firePlume(heat, height, roomK).massFlow * 1000,
      ),
      check(
        `${what}: velocity`,
        'roomPlume',
        rehva,
        'independent',
        uRoom,
        'm/s',
        0.0006,
        () => roomPlume(heat, height).velocity,
      ),
      check(
        `${what}: rise`,
        'roomPlume',
        rehva,
        'independent',
        riseRoom,
        'K',
        0.006,
        () => roomPlume(heat, height).rise,
      ),
      check(
        `${what}: volume flow`,
        'roomPlume',
        rehva,
        'independent',
        cubicMetres,
        'm³/h',
        0.06,
        () => roomPlume(heat, height).volumeFlow * 3600,
      ),
    ];
  }),
  ...beds.flatMap(([heat, height, u, rise, cubicMetres]) => {
    const what = `bed of 235 mm, ${heat} W, ${height} m above it`;
    return [
      check(
        `${what}: velocity`,
        'virtualOrigin',
        heskestad,
        'independent',
        u,
        'm/s',
        0.0015,
        () => overBed(heat, height).velocity,
      ),
      check(
        `${what}: rise`,
        'virtualOrigin',
        heskestad,
        'independent',
        rise,
        'K',
        0.006 + 0.003 * rise,
        () => overBed(heat, height).rise,
      ),
      check(
        `${what}: volume flow`,
        'virtualOrigin',
        heskestad,
        'independent',
        cubicMetres,
        'm³/h',
        0.06 + 0.003 * cubicMetres,
        () => (overBed(heat, height).massFlow / airDensity(roomK)) * 3600,
      ),
    ];
  }),
  ...jets.map(([diameter, distance, share]) =>
    check(
      `round opening of ${diameter} m, ${distance} m away`,
      'roundJetVelocity',
      jetScript,
      'independent',
      share,
      '-',
      0.0006,
      () => roundJetVelocity(1, diameter, distance),
    ),
  ),
  check('core of a 92 mm inlet', 'roundJetCore', jetScript, 'independent', 0.57, 'm', 0.005, () => roundJetCore(0.092)),
  check(
    'decay constant of a round jet at Re 19 400',
    'ROUND_JET_DECAY',
    'Abdel-Rahman, Al-Fahed & Chakroun 1996 (abstract)',
    'read',
    6.11,
    '-',
    0.2,
    () => ROUND_JET_DECAY.central,
  ),
  ...slots.map(([height, distance, share]) =>
    check(
      `slot of ${height} m, ${distance} m away`,
      'slotJetVelocity',
      jetScript,
      'independent',
      share,
      '-',
      0.0006,
      () => slotJetVelocity(1, height, distance),
    ),
  ),
  ...sinks.flatMap(([distance, half, plain, flanged]) => [
    check(`wall outlet at ${distance} m`, 'sinkVelocity', sinkScript, 'independent', half, 'm/s', 0.0006, () =>
      sinkVelocity(30 / 3600, distance),
    ),
    check(`plain nozzle at ${distance} m`, 'captureVelocity', sinkScript, 'independent', plain, 'm/s', 0.0006, () =>
      captureVelocity(30 / 3600, distance, nozzle),
    ),
    check(`flanged nozzle at ${distance} m`, 'captureVelocity', sinkScript, 'independent', flanged, 'm/s', 0.0006, () =>
      captureVelocity(30 / 3600, distance, nozzle, true),
    ),
  ]),
  ...parts.flatMap(([speed, ri, film]) => [
    check(`part of 40 mm, 35 K, ${speed} m/s`, 'richardsonNumber', partScript, 'independent', ri, '-', 0.0055, () =>
      richardsonNumber(0.04, 35, speed, 325.65),
    ),
    check(
      `part of 40 mm, 35 K, ${speed} m/s`,
      'partFilm',
      partScript,
      'independent',
      film,
      'W/(m²·K)',
      0.01 * film,
      () => partFilm(0.04, 35, speed, 325.65),
    ),
  ]),
  ...thresholds.flatMap(([millimetres, ...speeds]) =>
    speeds.map((expected, i) => {
      const difference = [20, 35, 65][i]!;
      return check(
        `part of ${millimetres} mm, ${difference} K`,
        'draughtThreshold',
        partScript,
        'independent',
        expected,
        'm/s',
        0.0055,
        () => draughtThreshold(millimetres / 1000, difference, 308.15 + difference / 2),
      );
    }),
  ),
];
