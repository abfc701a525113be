// Small full systems of linear equations. Large ones of the flow network and of conduction have solvers of their own.

/**
 * Solves A x = b by elimination with row exchange.
 *
 * @param matrix - Rows of A, square; left as it was.
 * @param right - b, as long as A has rows; left as it was.
 * @returns x.
 * @throws RangeError when the shapes do not fit or A has no inverse.
 *
 * @remarks
 * Valid: a few dozen unknowns; the work grows with their cube.
 * Source: Gauss elimination with partial pivoting.
 * Checked: exact.
 *
 * @example Two equations
 * ```ts
 * solveLinear([[2, 1], [1, 3]], [3, 5]).join(); // => 0.8,1.4
 * ```
 */
export function solveLinear(matrix: readonly (readonly number[])[], right: readonly number[]): number[] {
  const size = right.length;
  if (matrix.length !== size || matrix.some((row) => row.length !== size)) {
    throw new RangeError(`solveLinear: matrix is not ${size} by ${size}; it must fit the right side`);
  }
  const rows = matrix.map((row, at) => [...row, right[at]!]);
  for (let pivot = 0; pivot < size; pivot++) {
    exchange(rows, pivot);
    const row = rows[pivot]!;
    if (row[pivot] === 0)
      throw new RangeError(`solveLinear: matrix has no inverse; unknown ${pivot} is not determined`);
    for (let below = pivot + 1; below < size; below++) {
      const factor = rows[below]![pivot]! / row[pivot]!;
      if (factor !== 0) for (let at = pivot; at <= size; at++) rows[below]![at]! -= factor * row[at]!;
    }
  }
  const solution = new Array<number>(size).fill(0);
  for (let at = size - 1; at >= 0; at--) {
    const row = rows[at]!;
    let rest = row[size]!;
    for (let later = at + 1; later < size; later++) rest -= row[later]! * solution[later]!;
    solution[at] = rest / row[at]!;
  }
  return solution;
}

function exchange(rows: number[][], pivot: number): void {
  let largest = pivot;
  for (let at = pivot + 1; at < rows.length; at++) {
    if (Math.abs(rows[at]![pivot]!) > Math.abs(rows[largest]![pivot]!)) largest = at;
  }
  [rows[pivot], rows[largest]] = [rows[largest]!, rows[pivot]!];
}
