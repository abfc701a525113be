import type { OutsideCheck } from './outside-check.ts';
import { sandedTolerance, sheetMovement } from './sheet-tolerance.ts';

const mills = 'size tables of two plywood mills (sanded, EN 315), cut off after the first decimal';

/** Thickness, what the tables print above and below, mm. */
const rows = [
  [12, 0.5, 0.7],
  [15, 0.6, 0.8],
  [18, 0.7, 0.9],
  [21, 0.8, 1],
  [24, 0.9, 1.1],
] as const;

const cutOff = (metres: number): number => Math.floor(10 * (1000 * metres + 1e-9)) / 10;

export const checks: readonly OutsideCheck[] = [
  ...rows.flatMap(([thickness, above, below]): OutsideCheck[] => [
    {
      what: `${thickness} mm, above`,
      formula: 'sandedTolerance',
      source: mills,
      known: 'read',
      expected: above,
      unit: 'mm',
      tolerance: 1e-9,
      got: () => cutOff(sandedTolerance(thickness / 1000).above),
    },
    {
      what: `${thickness} mm, below`,
      formula: 'sandedTolerance',
      source: mills,
      known: 'read',
      expected: below,
      unit: 'mm',
      tolerance: 1e-9,
      got: () => cutOff(sandedTolerance(thickness / 1000).below),
    },
  ]),
  {
    what: 'a sheet 1 m long for each 10 % of relative humidity',
    formula: 'sheetMovement',
    source: 'plywood makers’ association: about 0.0002 in each inch for 10 % relative humidity',
    known: 'second-hand',
    expected: 0.2,
    unit: 'mm',
    tolerance: 0.005,
    got: () => 1000 * sheetMovement(1, 0.1),
  },
];
