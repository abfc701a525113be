import { loadingFactor, panelResistance, penetrationAtSpeed, resistancePressure } from './filter.ts';
import { seatBypass, seatedEfficiency } from './filter-bypass.ts';
import type { OutsideCheck } from './outside-check.ts';

/** Gap mm, bypass percent, H13 becomes percent, pressure left Pa, and half of the last digit of each. */
const seats = [
  [0.1, 0.164, 99.79, 149.8, 0.0005, 0.005, 0.05],
  [0.2, 1.29, 98.66, 148.1, 0.005, 0.005, 0.05],
  [0.5, 13.7, 86.2, 129.4, 0.05, 0.05, 0.05],
  [1, 38.4, 61.6, 92.4, 0.05, 0.05, 0.05],
  [2, 66.3, 33.7, 50.5, 0.05, 0.05, 0.05],
] as const;

const seat = (millimetres: number) =>
  seatBypass(
    { linear: 150 / (60 / 3600), quadratic: 0 },
    { length: 0.8, width: millimetres / 1000, depth: 0.02, bends: 0 },
    60 / 3600,
    1.2,
    1.823e-5, // air near 22 °C
  );
const seatSource =
  'filter of 150 Pa at 60 m³/h beside a gap after Baker, Sharples & Ward 1987, by an independent script';

/** Medium, R_m, pleating, m³/h, Pa. */
const panels = [
  ['H13', 6000, 15, 15, 41.7],
  ['H13', 6000, 15, 60, 167.2],
  ['H13', 6000, 15, 120, 335.4],
  ['E11', 3000, 15, 30, 41.8],
  ['E11', 3000, 15, 120, 168.8],
  ['F7', 900, 12, 15, 7.8],
  ['F7', 900, 12, 120, 64.6],
] as const;

export const checks: readonly OutsideCheck[] = [
  ...panels.map(
    ([medium, mediaResistance, pleating, flow, expected]): OutsideCheck => ({
      what: `${medium} panel of 0.2 x 0.2 m, pleating ${pleating}, at ${flow} m³/h`,
      formula: 'panelResistance',
      source: 'two-term filter law, evaluated by an independent script',
      known: 'independent',
      expected,
      unit: 'Pa',
      tolerance: 0.06,
      got: () =>
        resistancePressure(
          panelResistance({ mediaResistance, pleating, frameLoss: 5, faceArea: 0.04 }, 1.2),
          flow / 3600,
        ),
    }),
  ),
  {
    what: 'H13 medium at half its rated velocity',
    formula: 'penetrationAtSpeed',
    source: 'diffusion law ln P ~ v^(-2/3), evaluated by an independent script',
    known: 'independent',
    expected: 5.75e-6,
    unit: '-',
    tolerance: 0.005e-6,
    got: () => penetrationAtSpeed(5e-4, 0.5),
  },
  {
    what: 'half loaded, end at twice the clean pressure',
    formula: 'loadingFactor',
    source: 'documentation of the air filter of the IBPSA project 1 models, after Li et al. 2022',
    known: 'read',
    expected: Math.SQRT2,
    unit: '-',
    tolerance: 1e-12,
    got: () => loadingFactor(2, 0.5),
  },
  ...seats.flatMap(([millimetres, bypass, becomes, pressure, ...rounding]): OutsideCheck[] => [
    {
      what: `bypass through a gap of ${millimetres} mm`,
      formula: 'seatBypass',
      source: seatSource,
      known: 'independent',
      expected: bypass,
      unit: '%',
      tolerance: rounding[0] + 0.004 * bypass,
      got: () => 100 * seat(millimetres).share,
    },
    {
      what: `pressure left beside a gap of ${millimetres} mm`,
      formula: 'seatBypass',
      source: seatSource,
      known: 'independent',
      expected: pressure,
      unit: 'Pa',
      tolerance: rounding[2] + 0.002 * pressure,
      got: () => seat(millimetres).pressure,
    },
    {
      what: `H13 beside a gap of ${millimetres} mm becomes`,
      formula: 'seatedEfficiency',
      source: seatSource,
      known: 'independent',
      expected: becomes,
      unit: '%',
      tolerance: rounding[1] + 0.002 * becomes,
      got: () => 100 * seatedEfficiency(0.9995, seat(millimetres).share),
    },
  ]),
];
