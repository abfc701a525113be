// What may have drifted: each candidate alone is fitted to what came after the onset, and candidates are set side by side by how much
// of what is off they explain.

import { leastSquaresLater } from '../../numerics/least-squares.ts';
import { type Noise, type Channel as Rows, whitened } from '../../numerics/serial-noise.ts';
import type { Unknown } from '../calibrate/unknowns.ts';
import { valueAway } from '../calibrate/unknowns.ts';

export interface Explanation {
  readonly id: string;
  readonly label: string;
  readonly unit: string;
  readonly was: number;
  readonly value: number;
  /** Share of the squares of what is off since the onset that it takes away, 0 … 1. */
  readonly explains: number;
  /** How much likelier than that nothing changed: fall of the sum of squares. */
  readonly fall: number;
  readonly atBound: boolean;
}

/**
 * `residualsAt`: raw residuals at widths of one unknown. `rows`: where each channel's lie; `usual`: mean of each channel's residuals before the drift, which is no part of it.
 */
export async function explanation(
  unknown: Unknown,
  residualsAt: (points: readonly Float64Array[]) => Promise<readonly Float64Array[]>,
  rows: readonly Rows[],
  noises: readonly Noise[],
  usual: readonly number[],
  bounds: readonly [number, number],
): Promise<Explanation> {
  const centredOf = (raw: Float64Array): Float64Array => {
    const centred = raw.slice();
    for (const [at, { from, to }] of rows.entries())
      for (let row = from; row < to; row += 1) centred[row] = centred[row]! - usual[at]!;
    return centred;
  };
  let none = 0;
  let off: number | undefined;
  let least = Number.POSITIVE_INFINITY;
  let left = 0;
  const fit = await leastSquaresLater(
    async (points) => {
      const answers = (await residualsAt(points)).map(centredOf);
      const white = answers.map((each) => whitened(each, rows, noises));
      if (off === undefined) {
        off = squares(answers[0]!);
        none = squares(white[0]!);
      }
      for (const [at, each] of white.entries()) {
        if (!(squares(each) < least)) continue;
        least = squares(each);
        left = squares(answers[at]!);
      }
      return white;
    },
    [0],
    {
      bounds: [bounds],
      steps: [0.25],
      typical: [1],
      tolerance: 1e-4,
      stepTolerance: 0.03,
      damping: 1e-3,
      mostRounds: 8,
      probe: 0,
    },
  );
  const fall = Math.max(0, none - fit.sum);
  return {
    id: unknown.id,
    label: unknown.label,
    unit: unknown.unit,
    was: unknown.nominal,
    value: valueAway(unknown, fit.values[0]!),
    explains: off === undefined || off === 0 ? 0 : Math.max(0, 1 - left / off),
    fall,
    atBound: fit.atBound[0]!,
  };
}

const squares = (values: Float64Array): number => values.reduce((sum, each) => sum + each * each, 0);
