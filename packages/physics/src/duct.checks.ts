import {
  colebrookFriction,
  ductFriction,
  ductPressure,
  dynamicLoss,
  haalandFriction,
  hydraulicDiameter,
  laminarFriction,
} from './duct.ts';
import {
  bendLoss,
  contractionLoss,
  entranceLoss,
  expansionLoss,
  mitreLoss,
  perforatedPlateLoss,
  wireScreenLoss,
} from './fittings.ts';
import type { OutsideCheck } from './outside-check.ts';

const library = 'a general-purpose fluids library, version 1.0.22';

/** Reynolds number, relative roughness, exact Colebrook, Haaland. */
const frictions = [
  [4000, 0, 0.039907, 0.040423],
  [4000, 0.02, 0.056959, 0.057265],
  [10_000, 0, 0.030883, 0.030886],
  [10_000, 0.005, 0.03763, 0.037423],
  [20_000, 0.001, 0.027946, 0.027626],
  [50_000, 0, 0.020891, 0.020713],
  [100_000, 0, 0.01799, 0.017825],
  [100_000, 0.02, 0.049027, 0.049114],
] as const;

const bends = [
  [0.5, 1.193],
  [0.75, 0.615],
  [1, 0.42],
  [1.5, 0.293],
  [2, 0.262],
  [3, 0.266],
] as const;

/** Formula, what, value of the library, what this program gives. */
const fittings = [
  ...bends.map(
    ([r, k]) => ['bendLoss', `right-angled bend, r/D ${r}, Re 2e4`, k, () => bendLoss(r, 0.025883)] as const,
  ),
  ...(
    [
      [30, 0.153],
      [45, 0.304],
      [60, 0.53],
      [90, 1.202],
    ] as const
  ).map(
    ([degrees, k]) =>
      ['mitreLoss', `mitre of ${degrees} degrees`, k, () => mitreLoss((degrees * Math.PI) / 180)] as const,
  ),
  ...(
    [
      [0, 0.57],
      [0.02, 0.396],
      [0.05, 0.297],
      [0.1, 0.203],
      [0.2, 0.115],
    ] as const
  ).map(([x, k]) => ['entranceLoss', `entrance, edge radius ${x} D`, k, () => entranceLoss(x)] as const),
  ...(
    [
      [0.1, 0.81],
      [0.3, 0.49],
      [0.7, 0.09],
    ] as const
  ).map(([a, k]) => ['expansionLoss', `sudden expansion, A1/A2 ${a}`, k, () => expansionLoss(a)] as const),
  ...(
    [
      [0.1, 0.548],
      [0.3, 0.472],
      [0.5, 0.343],
      [0.7, 0.18],
    ] as const
  ).map(([a, k]) => ['contractionLoss', `sudden contraction, A2/A1 ${a}`, k, () => contractionLoss(a)] as const),
] as const;

const screens = [
  [0.2, 1000, 12.48],
  [0.3, 1000, 5.26],
  [0.7, 1000, 0.54],
  [0.8, 1000, 0.29],
  [0.5, 20, 3.9],
  [0.5, 100, 2.1],
] as const;

const plates = [
  [0.2, 52],
  [0.3, 17],
  [0.4, 7.7],
  [0.5, 3.8],
  [0.6, 2],
  [0.7, 1.1],
] as const;

/** Diameter mm, flow m³/h, pressure Pa: 2 m of smooth duct, two bends K 0.42, entrance 0.5, exit 1. */
const runs = [
  [80, 20, 2.36],
  [80, 50, 13.96],
  [100, 20, 0.92],
  [100, 30, 2.03],
  [100, 80, 13.74],
  [125, 50, 2.17],
] as const;

const run = (millimetres: number, cubicMetres: number) => {
  const diameter = millimetres / 1000;
  const area = (Math.PI / 4) * diameter ** 2;
  const duct = { length: 2, area, diameter, roughness: 0, frictionMultiplier: 1, loss: 2 * 0.42 + 0.5 + 1 };
  return ductPressure(duct, cubicMetres / 3600, 1.184, 1.8372e-5);
};

const textbook = (
  what: string,
  formula: string,
  source: string,
  expected: number,
  share: number,
  got: () => number,
): OutsideCheck => ({
  what,
  formula,
  source,
  known: 'second-hand',
  expected,
  unit: 'Pa',
  tolerance: share * expected,
  got,
});

const darcy = 4 * 0.008; // the book gives Fanning's factor
const inDuct = 0.8 / ((Math.PI / 4) * 0.3 ** 2);

export const checks: readonly OutsideCheck[] = [
  ...frictions.flatMap(([reynolds, roughness, exact, explicit]): OutsideCheck[] => [
    {
      what: `Re ${reynolds}, relative roughness ${roughness}`,
      formula: 'colebrookFriction',
      source: `${library}: Colebrook in closed form`,
      known: 'independent',
      expected: exact,
      unit: '-',
      tolerance: 1e-6,
      got: () => colebrookFriction(reynolds, roughness),
    },
    {
      what: `Re ${reynolds}, relative roughness ${roughness}`,
      formula: 'haalandFriction',
      source: `${library}: Haaland`,
      known: 'independent',
      expected: explicit,
      unit: '-',
      tolerance: 1e-6,
      got: () => haalandFriction(reynolds, roughness),
    },
  ]),
  ...(
    [
      [500, 0.128],
      [1000, 0.064],
      [2000, 0.032],
    ] as const
  ).map(
    ([reynolds, expected]): OutsideCheck => ({
      what: `laminar flow at Re ${reynolds}`,
      formula: 'ductFriction',
      source: library,
      known: 'independent',
      expected,
      unit: '-',
      tolerance: 1e-9,
      got: () => ductFriction(reynolds, 0.005),
    }),
  ),
  ...fittings.map(
    ([formula, what, expected, got]): OutsideCheck => ({
      what,
      formula,
      source: `${library}: Rennels & Hudson`,
      known: 'independent',
      expected,
      unit: '-',
      tolerance: 0.0011,
      got,
    }),
  ),
  ...screens.map(
    ([freeArea, reynolds, expected]): OutsideCheck => ({
      what: `round wire, free area ${freeArea}, Re on the wire ${reynolds}`,
      formula: 'wireScreenLoss',
      source: `${library}: round-wire screens`,
      known: 'independent',
      expected,
      unit: '-',
      tolerance: 0.005,
      got: () => wireScreenLoss(freeArea, reynolds),
    }),
  ),
  ...plates.map(
    ([freeArea, expected]): OutsideCheck => ({
      what: `square-edged screen, free area ${freeArea}: another author's table, within 15 percent`,
      formula: 'perforatedPlateLoss',
      source: `${library}: square-edged perforated screens`,
      known: 'independent',
      expected,
      unit: '-',
      tolerance: 0.15 * expected,
      got: () => perforatedPlateLoss(freeArea),
    }),
  ),
  ...runs.map(
    ([diameter, flow, expected]): OutsideCheck => ({
      what: `2 m of smooth duct of ${diameter} mm with two bends at ${flow} m³/h`,
      formula: 'ductPressure',
      source: 'Darcy-Weisbach with Colebrook friction, evaluated by an independent script (air near 25 °C)',
      known: 'independent',
      expected,
      unit: 'Pa',
      tolerance: 0.025 * expected, // Haaland against Colebrook, and the script's air
      got: () => run(diameter, flow),
    }),
  ),
  textbook(
    'tube of 4 mm at 50 m/s, 0.1 m long, if laminar',
    'laminarFriction',
    'Munson, Fundamentals of Fluid Mechanics, example 8.5',
    179,
    0.005,
    () => dynamicLoss((laminarFriction((1.23 * 50 * 0.004) / 1.79e-5) * 0.1) / 0.004, 1.23, 50),
  ),
  textbook(
    'tube of 4 mm at 50 m/s, 0.1 m long, f 0.028',
    'dynamicLoss',
    'Munson, Fundamentals of Fluid Mechanics, example 8.5',
    1076.25,
    0.005,
    () => dynamicLoss((0.028 * 0.1) / 0.004, 1.23, 50),
  ),
  textbook(
    'fan with entry of 10 m round and exit of 30 m rectangular duct',
    'hydraulicDiameter',
    'Douglas, Fluid Mechanics, example 14.5',
    1254.58,
    0.005,
    () => {
      const entry = dynamicLoss((darcy * 10) / 0.3 + 4 + darcy * 20, 1.2, inDuct);
      return entry + dynamicLoss((darcy * 30) / hydraulicDiameter(0.4, 0.2) + 10, 1.2, 0.8 / (0.4 * 0.2));
    },
  ),
  textbook(
    'four inlets of 10 m into one main of 20 m with a transition of 20 diameters',
    'dynamicLoss',
    'Douglas, Fluid Mechanics, example 14.6',
    684.513,
    0.005,
    () => {
      const inlet = dynamicLoss((darcy * 10) / 0.15 + 4, 1.2, 0.2 / ((Math.PI / 4) * 0.15 ** 2));
      return inlet + dynamicLoss((darcy * (20 + 20 * 0.3)) / 0.3, 1.2, inDuct);
    },
  ),
];
