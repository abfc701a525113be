// Nonlinear fits and their standard deviations against the certified values of NIST's reference data, from both published starts.

import type { OutsideCheck } from '@stillair/physics';
import { doubtOf } from './fit-doubt.ts';
import { leastSquares } from './least-squares.ts';
import { type ReferenceFit, referenceFits } from './reference-fits.data.ts';

const SOURCE = 'NIST Statistical Reference Datasets, nonlinear regression';

function rowsOf({ name, difficulty, known, model, x, y, starts, certified, deviations }: ReferenceFit): OutsideCheck[] {
  const fitFrom = (start: readonly number[]) =>
    leastSquares((b) => x.map((each, at) => model([...b], each) - y[at]!), start);
  const values = starts.flatMap((start, from) =>
    certified.map(
      (expected, at): OutsideCheck => ({
        what: `${name} (${difficulty} difficulty), b${at + 1} from start ${from + 1}`,
        formula: 'leastSquares',
        source: `${SOURCE}, ${name}`,
        known,
        expected,
        unit: '-',
        tolerance: Math.abs(expected) * 1e-6,
        got: () => fitFrom(start).values[at]!,
      }),
    ),
  );
  const doubts = deviations.map(
    (expected, at): OutsideCheck => ({
      what: `${name}, standard deviation of b${at + 1}`,
      formula: 'doubtOf',
      source: `${SOURCE}, ${name}`,
      known,
      expected,
      unit: '-',
      tolerance: expected * 1e-5,
      got: () => {
        const fit = fitFrom(starts[1]);
        return doubtOf(fit.jacobian, fit.sum).deviations[at]!;
      },
    }),
  );
  return [...values, ...doubts];
}

export const checks: readonly OutsideCheck[] = referenceFits.flatMap(rowsOf);
