// The two-dimensional validation cases of ISO 10211, annex C, and edges of cabinets.

import { gradedLines, type Section, type SectionResult, solveSection } from './conduction-2d.ts';
import { edgeTransmittance } from './edge-loss.ts';
import type { OutsideCheck } from './outside-check.ts';

const CASE_1 = 'ISO 10211 annex C case 1 (half square column, 20 °C above, 0 °C around)';
const CASE_2 = 'ISO 10211 annex C case 2 (concrete, wood, insulation, aluminium)';

/** Seven rows of four points, a quarter of the half width apart, °C, printed to 0.1. */
const column = [
  [9.7, 13.4, 14.7, 15.1],
  [5.3, 8.6, 10.3, 10.8],
  [3.2, 5.6, 7.0, 7.5],
  [2.0, 3.6, 4.7, 5.0],
  [1.3, 2.3, 3.0, 3.2],
  [0.7, 1.4, 1.8, 1.9],
  [0.3, 0.6, 0.8, 0.9],
];

/** Cells to a quarter of the column's half width. */
const QUARTER = 10;

const halfColumn = once(() => {
  const lines = (count: number) => Array.from({ length: count + 1 }, (_, at) => at / (4 * QUARTER));
  return solveSection({
    across: lines(8 * QUARTER),
    down: lines(4 * QUARTER),
    conductivity: () => 1,
    // Laid on its side: its warm end at the left, its symmetry below.
    surface: (x, y) => (y === 1 ? undefined : { film: Infinity, temperature: x === 0 ? 20 : 0 }),
  });
});

/** Points of case 2: x and y in mm from the outer face above the bridge, °C, printed to 0.1. */
const points = [
  ['A', 0, 0, 7.1],
  ['B', 500, 0, 0.8],
  ['C', 0, 6, 7.9],
  ['D', 15, 6, 6.3],
  ['E', 500, 6, 0.8],
  ['F', 0, 11, 16.4],
  ['G', 15, 11, 16.3],
  ['H', 0, 47.5, 16.8],
  ['I', 500, 47.5, 18.3],
] as const;

const bridge: Section = {
  across: gradedLines([0, 1.5, 15, 500], 0.25, 1.3).map((millimetres) => millimetres / 1000),
  down: gradedLines([0, 6, 11, 12.5, 46, 47.5], 0.25, 1.3).map((millimetres) => millimetres / 1000),
  conductivity: (x, y) => bridgeMaterial(x * 1000, y * 1000),
  surface: (x, y) => {
    if (y === 0) return { film: 1 / 0.06, temperature: 0 };
    return y > 0.047 && x > 0 && x < 0.5 ? { film: 1 / 0.11, temperature: 20 } : undefined;
  },
};

const bridged = once(() => solveSection(bridge));

export const checks: readonly OutsideCheck[] = [
  ...column.flatMap((row, down) =>
    row.map(
      (expected, across): OutsideCheck => ({
        what: `row ${down + 1}, point ${across + 1}`,
        formula: 'solveSection',
        source: CASE_1,
        known: 'read',
        expected,
        unit: '°C',
        tolerance: 0.1,
        got: () => halfColumn().temperatures[(across + 1) * QUARTER]![(down + 1) * QUARTER]!,
      }),
    ),
  ),
  ...points.map(
    ([name, x, y, expected]): OutsideCheck => ({
      what: `point ${name}`,
      formula: 'solveSection',
      source: CASE_2,
      known: 'read',
      expected,
      unit: '°C',
      tolerance: 0.1,
      got: () => bridged().temperatures[line(bridge.down, y)]![line(bridge.across, x)]!,
    }),
  ),
  {
    what: 'heat flow',
    formula: 'solveSection',
    source: CASE_2,
    known: 'read',
    expected: 9.5,
    unit: 'W/m',
    tolerance: 0.1,
    got: () => bridged().heat,
  },
  ...(
    [
      ['12 mm plywood', 0.012, 0.13, 0.02035],
      ['18 mm plywood', 0.018, 0.13, 0.02555],
      ['18 mm fibreboard', 0.018, 0.14, 0.02644],
      ['4 mm glass', 0.004, 1, 0.01332],
      ['40 mm polystyrene', 0.04, 0.035, 0.01501],
    ] as const
  ).map(
    ([name, thickness, conductivity, expected]): OutsideCheck => ({
      what: `edge of ${name}, 0.13 m²·K/W on both faces`,
      formula: 'edgeTransmittance',
      source: 'cell-centred finite volumes on an even grid, solved with SciPy 1.17.1 (spsolve), finest of three grids',
      known: 'independent',
      expected,
      unit: 'W/(m·K)',
      tolerance: 0.0001,
      got: () => edgeTransmittance(thickness, conductivity, 1 / 0.13, 1 / 0.13),
    }),
  ),
  {
    what: 'shape factor of a square edge with isothermal faces',
    formula: 'edgeTransmittance',
    source: 'exact value by conformal mapping, 1 - (2/pi) ln 2 = 0.5587',
    known: 'memory',
    expected: 0.5587,
    unit: '-',
    tolerance: 0.003, // half a percent, since the flux at the inner corner has no bound
    got: () => edgeTransmittance(1, 1, Infinity, Infinity),
  },
];

/** Millimetres; the aluminium runs under the wood, down along the line of symmetry and along the inner face. */
function bridgeMaterial(x: number, y: number): number {
  const [concrete, wood, insulation, aluminium] = [1.15, 0.12, 0.029, 230];
  if (y < 6) return concrete;
  if (y > 46) return aluminium;
  if (x < 15 && y < 11) return wood;
  if (x < 15 && y < 12.5) return aluminium;
  return x < 1.5 ? aluminium : insulation;
}

function line(lines: readonly number[], millimetres: number): number {
  return lines.findIndex((position) => Math.abs(position * 1000 - millimetres) < 1e-9);
}

/** Solves a case on the first question only. */
function once(solve: () => SectionResult): () => SectionResult {
  let result: SectionResult | undefined;
  return () => {
    result ??= solve();
    return result;
  };
}
