import { ATMOSPHERE, GAS_CONSTANT_AIR, GRAVITY, ICE_POINT } from './constants.ts';
import { orificeFlow } from './orifice.ts';
import type { OutsideCheck } from './outside-check.ts';
import { FLOODING_SHAPE, floodingPressure, holeExchangeByShape, shelfHoleExchange } from './shelf-hole.ts';
import { doorSwingVolume, doorwayExchange, tallOpeningFlow } from './tall-opening.ts';

// Three rooms: west 25 °C, east 20 °C, top 20 °C, outdoors 10 °C. Holes of 100 cm² (Cd 0.65) at the heights 0 and 3 m,
// a door of 1 x 2.2 m (Cd 0.78) between west and east. The loop west - top - east closes in itself.
const density = (celsius: number) => ATMOSPHERE / (GAS_CONSTANT_AIR * (celsius + ICE_POINT));
const [west, east, outdoors] = [density(25), density(20), density(10)];
const hole = (dp: number, rho: number) => orificeFlow(dp, rho, 0.0065, 1e-9);
const door = { width: 1, bottom: 0, top: 2.2, discharge: 0.78 };

function bisect(balance: (x: number) => number, low: number, high: number): number {
  const falling = balance(low) > 0;
  for (let step = 0; step < 200; step++) {
    const middle = 0.5 * (low + high);
    if (balance(middle) > 0 === falling) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}

/** West's pressure above east's at the floor, so that the door's net flow is what returns through the top room. */
function threeRooms() {
  const overTop = (dp: number) => {
    const across = dp - (west - east) * GRAVITY * 3; // two holes in series at 3 m, west to top to east
    const half = bisect(
      (first) => hole(first, west) - hole(across - first, east),
      Math.min(0, across),
      Math.max(0, across),
    );
    return hole(half, west);
  };
  const net = (dp: number) => {
    const { forward, backward } = tallOpeningFlow(door, dp, west, east);
    return forward - backward + overTop(dp);
  };
  const dp = bisect(net, -1, 1);
  return { ...tallOpeningFlow(door, dp, west, east), overTop: overTop(dp) };
}

const threeRoomsTable = 'M. Wetter, Multizone airflow model (Modelica conference 2006), table 2: three rooms';
const ownNewton = 'three rooms of Wetter 2006, solved by an independent Newton script';

const doors = [
  ['0.5 x 0.5 m, 5 K', 0.5, 0.5, 297.15, 292.15, 56.2, 0.1],
  ['0.5 x 0.5 m, 20 K', 0.5, 0.5, 313.15, 293.15, 110.9, 0.5],
  ['0.6 x 1.0 m, 20 K', 0.6, 1, 313.15, 293.15, 376.5, 2],
  ['room door 0.9 x 2.1 m, 2 K', 0.9, 2.1, 294.15, 292.15, 551.7, 1.5],
] as const;

const holes = [
  [0.05, 5, 0.0598671, 0.0445337, 0.00434535],
  [0.08, 5, 0.19386, 0.144208, 0.00695257],
  [0.1, 10, 0.478937, 0.356269, 0.0173814],
] as const;

export const checks: readonly OutsideCheck[] = [
  ...(
    [
      ['west to east through the door', threeRoomsTable, 'read', 0.4103, 0.001, () => threeRooms().forward],
      ['east to west through the door', threeRoomsTable, 'read', 0.4146, 0.001, () => threeRooms().backward],
      ['west to top through the hole', threeRoomsTable, 'read', 0.0044, 0.00005, () => threeRooms().overTop],
      ['west to east through the door', ownNewton, 'independent', 0.41075, 0.0005, () => threeRooms().forward],
      ['east to west through the door', ownNewton, 'independent', 0.41511, 0.0005, () => threeRooms().backward],
    ] as const
  ).map(
    ([what, source, known, expected, tolerance, got]): OutsideCheck => ({
      what,
      formula: 'tallOpeningFlow',
      source,
      known,
      expected,
      unit: 'kg/s',
      tolerance,
      got,
    }),
  ),
  {
    what: 'outdoors into east through the lower hole of the three rooms (stack over 3 m)',
    formula: 'orificeFlow',
    source: threeRoomsTable,
    known: 'read',
    expected: 0.008,
    unit: 'kg/s',
    tolerance: 0.0001,
    got: () => {
      const lower = bisect(
        (dp) => hole(dp, outdoors) - hole((outdoors - east) * GRAVITY * 3 - dp, east),
        0,
        (outdoors - east) * GRAVITY * 3,
      );
      return hole(lower, outdoors);
    },
  },
  {
    what: 'door 0.9 x 2.1 m, Cd 0.65, 20 and 0 °C, densities referred to 20 °C: mean speed each way',
    formula: 'doorwayExchange',
    source:
      'reference result of the open-door temperature example, public library of building models by IBPSA project 1',
    known: 'read',
    expected: 0.25682196,
    unit: 'm/s',
    tolerance: 2e-6,
    got: () => doorwayExchange(0.65, 0.9, 2.1, 293.15, 273.15, 293.15) / (0.9 * 2.1),
  },
  ...doors.map(
    ([what, width, height, oneK, otherK, expected, tolerance]): OutsideCheck => ({
      what,
      formula: 'doorwayExchange',
      source: 'Brown & Solvason 1962, evaluated by an independent script',
      known: 'independent',
      expected,
      unit: 'm³/h',
      tolerance,
      got: () => doorwayExchange(0.65, width, height, oneK, otherK) * 3600,
    }),
  ),
  {
    what: 'opening 0.3 x 0.4 m, Cd 0.6, 10 K at a mean of 303 K',
    formula: 'doorwayExchange',
    source: 'closed form Cd W/3 sqrt(g H³ dT/T) as in NIST SP 1026, evaluated by an independent script',
    known: 'independent',
    expected: 0.00863683,
    unit: 'm³/s',
    tolerance: 0.005 * 0.00863683,
    got: () => doorwayExchange(0.6, 0.3, 0.4, 308, 298),
  },
  {
    what: 'leaf of 0.6 x 1.0 m',
    formula: 'doorSwingVolume',
    source: 'quarter cylinder, evaluated by an independent script',
    known: 'independent',
    expected: 0.283,
    unit: 'm³',
    tolerance: 0.0005,
    got: () => doorSwingVolume(0.6, 1),
  },
  ...holes.flatMap(([diameter, difference, cooper, thin, flooding]): OutsideCheck[] => {
    const area = (Math.PI / 4) * diameter ** 2;
    const what = `level hole of ${diameter * 1000} mm, ${difference} K at 303 K`;
    return [
      {
        what,
        formula: 'shelfHoleExchange',
        source: 'Cooper 1989 in NIST SP 1026, evaluated by an independent script',
        known: 'independent',
        expected: cooper,
        unit: 'm³/h',
        tolerance: 0.001 * cooper,
        got: () => shelfHoleExchange(area, difference / 303) * 3600,
      },
      {
        what,
        formula: 'holeExchangeByShape',
        source:
          'thin-plate coefficient 0.055 of an engineering reference of the US Department of Energy, by an independent script',
        known: 'independent',
        expected: thin,
        unit: 'm³/h',
        tolerance: 0.001 * thin,
        got: () => holeExchangeByShape(diameter, 0, difference / 303) * 3600,
      },
      {
        what,
        formula: 'floodingPressure',
        source: 'Cooper 1989 in NIST SP 1026 (g 9.81), evaluated by an independent script',
        known: 'independent',
        expected: flooding,
        unit: 'Pa',
        tolerance: 0.001 * flooding,
        got: () => floodingPressure(area, (1.165 * difference) / 303, FLOODING_SHAPE.round),
      },
    ];
  }),
  {
    what: 'peak of the exchange coefficient near L/D = 0.6',
    formula: 'holeExchangeByShape',
    source: 'Epstein, J. Heat Transfer 110 (1988)',
    known: 'memory',
    expected: 0.095,
    unit: '-',
    tolerance: 0.0015,
    got: () => holeExchangeByShape(1, 0.6, 1 / GRAVITY),
  },
];
