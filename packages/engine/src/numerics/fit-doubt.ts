// How surely a fit tells its unknowns: standard deviations, correlations, intervals, and directions along which the data say little.

import { inverseGram, type Matrix, matrix, singularDirections } from './dense.ts';

export interface Doubt {
  readonly covariance: Matrix;
  readonly deviations: Float64Array;
  readonly freedom: number;
}

/**
 * Covariance s² (JᵀJ)⁻¹ of a fit, with s² = sum / (n − p); or with s² = 1 where residuals carry their known scale.
 *
 * @throws RangeError when the scale is asked of data no more than the unknowns.
 */
export function doubtOf(jacobian: Matrix, sum: number, scale: 'from residuals' | 'known' = 'from residuals'): Doubt {
  const freedom = jacobian.rows - jacobian.columns;
  if (scale === 'from residuals' && freedom < 1)
    throw new RangeError(`doubtOf: rows is ${jacobian.rows} with ${jacobian.columns} unknowns; it must be more`);
  const variance = scale === 'known' ? 1 : sum / freedom;
  const { rows, columns, values } = scaledInverse(jacobian);
  const covariance = { rows, columns, values: values.map((each) => each * variance) };
  return { covariance, deviations: deviationsOf(covariance), freedom };
}

/** (JᵀJ)⁻¹ of columns brought to one length: unknowns of very different size lose no digits. */
function scaledInverse(jacobian: Matrix): Matrix {
  const { rows, columns, values } = jacobian;
  const lengths = Float64Array.from({ length: columns }, (_, at) => {
    let square = 0;
    for (let row = 0; row < rows; row += 1) square += values[row * columns + at]! ** 2;
    return Math.sqrt(square) || 1;
  });
  const even = { rows, columns, values: values.map((each, at) => each / lengths[at % columns]!) };
  const inverse = inverseGram(even, 1e-14);
  return {
    ...inverse,
    values: inverse.values.map((each, at) => each / (lengths[Math.floor(at / columns)]! * lengths[at % columns]!)),
  };
}

function deviationsOf({ columns, values }: Matrix): Float64Array {
  return Float64Array.from({ length: columns }, (_, at) => Math.sqrt(Math.max(0, values[at * columns + at]!)));
}

/** Correlations of the unknowns: 1 on the diagonal. */
export function correlationsOf(covariance: Matrix): Matrix {
  const deviations = deviationsOf(covariance);
  const made = matrix(covariance.rows, covariance.columns);
  for (let i = 0; i < made.rows; i += 1)
    for (let j = 0; j < made.columns; j += 1) {
      const size = deviations[i]! * deviations[j]!;
      made.values[i * made.columns + j] = i === j ? 1 : size > 0 ? covariance.values[i * made.columns + j]! / size : 0;
    }
  return made;
}

/** Unknowns that only move together, or one that does not show at all. */
export interface Blind {
  /** Standard deviation along this direction, as a share of what was known before. 1: nothing was learnt. */
  readonly left: number;
  /** Unknowns with a part in it, largest first, and that part (of a unit vector of unknowns in `widths`). */
  readonly members: readonly { readonly at: number; readonly part: number }[];
}

/**
 * Directions of the unknowns along which the data leave more than a share `most` of what was unknown before. `widths` are standard
 * deviations of what is known without the data; residuals carry their scale (one standard deviation is 1).
 */
export function blindDirections(jacobian: Matrix, widths: ArrayLike<number>, most = 0.5): Blind[] {
  const { rows, columns, values } = jacobian;
  const scaled = { rows, columns, values: values.map((each, at) => each * widths[at % columns]!) };
  const { sizes, vectors } = singularDirections(scaled);
  return [...sizes].flatMap((size, at) => {
    const left = 1 / Math.sqrt(1 + size * size);
    if (left <= most) return [];
    const members = [...vectors[at]!]
      .map((part, index) => ({ at: index, part }))
      .filter(({ part }) => Math.abs(part) >= 0.3)
      .sort((a, b) => Math.abs(b.part) - Math.abs(a.part));
    return [{ left, members }];
  });
}
