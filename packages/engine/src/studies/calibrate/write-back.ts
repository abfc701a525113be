// What a log has put right, as edits of the cabinet file: each value with its spread, and a note of the log that gave it.

import type { Cabinet, Edit } from '../../cabinet/cabinet.ts';
import { normalQuantile } from '../../numerics/normal.ts';
import type { KindName } from '../../units/unit-table.ts';
import { editOf, type Unknown } from './unknowns.ts';

export interface Told {
  readonly unknown: Unknown;
  readonly value: number;
  /** 95 % interval, with what was not fitted. */
  readonly low: number;
  readonly high: number;
}

export interface CalibrationNote {
  readonly log: string;
  readonly day: string;
  readonly from?: string;
  readonly residuals: Readonly<Record<string, { readonly spread: number; readonly carry: number }>>;
}

/** Half of the 95 % interval over half of the one from the 10th to the 90th percentile. */
const NARROWER: number = normalQuantile(0.9) / normalQuantile(0.975);

export function writeBack(told: readonly Told[], cabinet: Cabinet, note: CalibrationNote): Edit[] {
  const kept = told.flatMap(({ unknown, value, low, high }) => {
    const inner = (end: number): number =>
      unknown.scale === 'factor' ? value * (end / value) ** NARROWER : value + (end - value) * NARROWER;
    return editOf(unknown, spreadText(unknown.unit, value, inner(low), inner(high)), cabinet) ?? [];
  });
  if (kept.length === 0) return [];
  const { log, day, from, residuals } = note;
  const values = [...new Set([...(cabinet.calibration?.values ?? []), ...kept.map(({ path }) => path)])];
  const calibration = {
    log,
    day,
    ...(from === undefined ? {} : { from }),
    values,
    ...(Object.keys(residuals).length === 0 ? {} : { residuals }),
  };
  return [
    ...together(
      kept.map(({ edit }) => edit),
      cabinet,
    ),
    { set: { calibration } },
  ];
}

const OVERRIDE = /^overrides\."(.+)"$/;

/** A file without overrides gets them all at once, so that they stand together. */
function together(edits: readonly Edit[], { overrides }: Cabinet): Edit[] {
  if (Object.keys(overrides).length > 0) return [...edits];
  const all = edits.flatMap(({ set = {} }) => Object.entries(set));
  const first = all.flatMap(([path, value]) => {
    const name = OVERRIDE.exec(path)?.[1];
    return name === undefined ? [] : [[name, value] as const];
  });
  const others = all.filter(([path]) => !OVERRIDE.test(path));
  return [
    ...(first.length === 0 ? [] : [{ set: { overrides: Object.fromEntries(first) } }]),
    ...others.map(([path, value]) => ({ set: { [path]: value } })),
  ];
}

const UNITS: Readonly<Partial<Record<KindName, readonly [string, number]>>> = {
  number: ['', 1],
  'temperature-difference': [' K', 1],
  duration: [' s', 1],
  power: [' W', 1],
  share: [' %', 100],
};

/** `1.34 (1.21 to 1.48)`, `0.4 (0.2 to 0.6) K`: to a hundredth of the spread. */
export function spreadText(unit: KindName, value: number, low: number, high: number): string {
  const [name, scale] = UNITS[unit] ?? ['', 1];
  const decimals = Math.min(8, Math.max(0, 1 - Math.floor(Math.log10(Math.max((high - low) * scale, 1e-9)))));
  const text = (each: number): string => {
    const written = (each * scale).toFixed(decimals);
    return decimals === 0 ? written : written.replace(/\.?0+$/, '').replace(/^-0$/, '0');
  };
  return `${text(value)} (${text(low)} to ${text(high)})${name}`;
}
