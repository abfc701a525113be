// The reading that would tell most next: of all places and hours of the day, the one after which the unknowns are known best.

import type { LogKind } from '../../logs/log.ts';
import type { Place } from '../../logs/places.ts';
import { inverseGram, type Matrix, matrix } from '../../numerics/dense.ts';
import type { Grid } from './expected.ts';
import { READING_NOISE } from './fit-log.ts';

export interface NextReading {
  readonly place: Place;
  readonly kind: LogKind;
  /** s after midnight. */
  readonly time: number;
  /** Standard deviation that it was taken to have, in the kind's unit. */
  readonly noise: number;
  /** The unknown that it narrows most: standard deviation before and after, in widths. */
  readonly narrows: { readonly at: number; readonly before: number; readonly after: number };
}

/** What a reading must narrow the unknowns by to be worth the way, in logarithms. */
const LEAST = 0.003;

/**
 * `white`: slopes of the log for all unknowns, in white units a width, those not fitted included. `slopes`: of each place and time of the
 * grid, by unknown. `asked`: unknowns that are to be known.
 */
export function nextReading(
  white: Matrix,
  grid: Grid,
  slopes: readonly (readonly Float64Array[])[],
  asked: readonly number[],
): NextReading | undefined {
  const p = white.columns;
  // What the file says of each unknown counts as one observation: what nobody measured stays within its spread.
  const wide = matrix(white.rows + p, p);
  wide.values.set(white.values);
  for (let at = 0; at < p; at += 1) wide.values[(white.rows + at) * p + at] = 1;
  const covariance = inverseGram(wide);
  let best: (NextReading & { readonly worth: number }) | undefined;
  for (const [placeAt, { place, kind }] of grid.places.entries())
    for (const [timeAt, time] of grid.times.entries()) {
      const slope = slopes[placeAt]![timeAt]!;
      const noise = READING_NOISE[kind];
      const moved = times(covariance, slope);
      const variance = noise * noise + slope.reduce((sum, each, at) => sum + each * moved[at]!, 0);
      let worth = 0;
      let narrows = { at: asked[0]!, before: 1, after: 1 };
      for (const at of asked) {
        const before = Math.sqrt(covariance.values[at * p + at]!);
        const after = Math.sqrt(Math.max(0, covariance.values[at * p + at]! - moved[at]! ** 2 / variance));
        worth += Math.log(before / after);
        if (before / after > narrows.before / narrows.after) narrows = { at, before, after };
      }
      if (worth > (best?.worth ?? LEAST)) best = { place, kind, time, noise, narrows, worth };
    }
  if (best === undefined) return undefined;
  const { worth: _, ...reading } = best;
  return reading;
}

function times({ columns, values }: Matrix, vector: Float64Array): Float64Array {
  return Float64Array.from({ length: columns }, (_, row) => {
    let sum = 0;
    for (let column = 0; column < columns; column += 1) sum += values[row * columns + column]! * vector[column]!;
    return sum;
  });
}
