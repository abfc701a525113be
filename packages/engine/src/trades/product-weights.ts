// The time integral of a flow times a level, for one flow and many levels: the flow's part is worked out once, as weights.

import { hermiteIntegral } from '../day/hermite.ts';
import type { Table } from '../day/record.ts';
import { columnIn } from './course.ts';
import { zeros } from './zeros.ts';

/** Weights w and v of a flow f with which ∫ f g dt = Σ w g + v g′ over the rows, for any level g with slopes g′. */
export interface ProductWeights {
  readonly ofValues: Float64Array;
  readonly ofSlopes: Float64Array;
}

/**
 * Simpson's rule between rows: f straight, g the cubic of its values and slopes, whose middle lies at
 * (g₀ + g₁)/2 + (g₀′ − g₁′) Δt/8. Undefined when the flow is nothing at all.
 */
export function productWeights(times: Float64Array, flow: Float64Array): ProductWeights | undefined {
  const ofValues = zeros(times.length);
  const ofSlopes = zeros(times.length);
  let flows = false;
  for (let row = 1; row < times.length; row += 1) {
    const before = flow[row - 1]!;
    const after = flow[row]!;
    const span = times[row]! - times[row - 1]!;
    if (!(span > 0) || (before === 0 && after === 0)) continue;
    flows = true;
    const middle = (before + after) / 2;
    ofValues[row - 1] = ofValues[row - 1]! + (span / 6) * (before + 2 * middle);
    ofValues[row] = ofValues[row]! + (span / 6) * (after + 2 * middle);
    const bend = (span * span * middle) / 12;
    ofSlopes[row - 1] = ofSlopes[row - 1]! + bend;
    ofSlopes[row] = ofSlopes[row]! - bend;
  }
  return flows ? { ofValues, ofSlopes } : undefined;
}

/** Weights of an integral over windows of time: of cubics, or of straight lines for levels without slopes. */
export function windowWeights(
  times: Float64Array,
  windows: readonly { readonly start: number; readonly end: number }[],
  straight: boolean,
): ProductWeights {
  const ofValues = zeros(times.length);
  const ofSlopes = zeros(times.length);
  for (const { start, end } of windows)
    for (let row = 1; row < times.length; row += 1) {
      if (times[row]! <= start || times[row - 1]! >= end) continue;
      const length = times[row]! - times[row - 1]!;
      const from = Math.max((start - times[row - 1]!) / length, 0);
      const to = Math.min((end - times[row - 1]!) / length, 1);
      if (!(to > from)) continue;
      const [early, late, earlySlope, lateSlope] = straight
        ? lineWeights(length, from, to)
        : cubicWeights(length, from, to);
      ofValues[row - 1]! += early;
      ofValues[row]! += late;
      ofSlopes[row - 1]! += earlySlope;
      ofSlopes[row]! += lateSlope;
    }
  return { ofValues, ofSlopes };
}

type EndWeights = readonly [early: number, late: number, earlySlope: number, lateSlope: number];

function lineWeights(length: number, from: number, to: number): EndWeights {
  const late = (length * (to * to - from * from)) / 2;
  return [length * (to - from) - late, late, 0, 0];
}

function cubicWeights(length: number, from: number, to: number): EndWeights {
  if (from === 0 && to === 1) return [length / 2, length / 2, (length * length) / 12, -(length * length) / 12];
  const part = (y0: number, s0: number, y1: number, s1: number): number =>
    hermiteIntegral(to, length, y0, s0, y1, s1) - hermiteIntegral(from, length, y0, s0, y1, s1);
  return [part(1, 0, 0, 0), part(0, 0, 1, 0), part(0, 1, 0, 0), part(0, 0, 0, 1)];
}

export function weighted({ ofValues, ofSlopes }: ProductWeights, values: Float64Array, slopes: Float64Array): number {
  let sum = 0;
  for (let row = 0; row < values.length; row += 1) sum += ofValues[row]! * values[row]! + ofSlopes[row]! * slopes[row]!;
  return sum;
}

/** The same for a column of a table, with its slopes where there are any. */
export function weightedColumn(
  { ofValues, ofSlopes }: ProductWeights,
  table: Table,
  slopes: Table | undefined,
  name: string,
): number {
  const width = table.names.length;
  let sum = 0;
  for (let row = 0, at = columnIn(table, name); row < ofValues.length; row += 1, at += width) {
    sum += ofValues[row]! * table.values[at]!;
    if (slopes !== undefined) sum += ofSlopes[row]! * slopes.values[at]!;
  }
  return sum;
}
