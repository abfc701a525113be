// Large symmetric systems whose entries lie near the diagonal, as conduction on a grid gives them.

/**
 * A symmetric positive definite matrix by its lower band: entry (row, row - distance) lies at row · (width + 1) + distance.
 */
export interface BandedMatrix {
  readonly size: number;
  /** Largest distance of an entry from the diagonal. */
  readonly width: number;
  /** size · (width + 1) numbers; `solveBand` overwrites them with the factor. */
  readonly values: Float64Array;
}

/**
 * Solves A x = b for a banded matrix.
 *
 * @param band - A; overwritten.
 * @param right - b; overwritten with x.
 * @throws RangeError when A is not positive definite.
 *
 * @remarks
 * Valid: symmetric positive definite A. The work grows with size · width².
 * Source: Cholesky factorisation within the band.
 * Checked: exact.
 *
 * @example Two unknowns
 * ```ts
 * const right = Float64Array.of(3, 5);
 * solveBand({ size: 2, width: 1, values: Float64Array.of(2, 0, 3, 1) }, right);
 * right[0]; // => 0.8
 * ```
 */
export function solveBand({ size, width, values }: BandedMatrix, right: Float64Array): void {
  const stride = width + 1;
  for (let row = 0; row < size; row++) {
    for (let distance = Math.min(row, width); distance >= 0; distance--) {
      const column = row - distance;
      let rest = values[row * stride + distance]!;
      const first = Math.max(0, row - width, column - width);
      for (let k = first; k < column; k++)
        rest -= values[row * stride + row - k]! * values[column * stride + column - k]!;
      if (distance > 0) {
        values[row * stride + distance] = rest / values[column * stride]!;
        continue;
      }
      if (!(rest > 0)) throw new RangeError(`solveBand: matrix is not positive definite; row ${row} leaves ${rest}`);
      values[row * stride] = Math.sqrt(rest);
    }
  }
  for (let row = 0; row < size; row++) {
    let rest = right[row]!;
    for (let k = Math.max(0, row - width); k < row; k++) rest -= values[row * stride + row - k]! * right[k]!;
    right[row] = rest / values[row * stride]!;
  }
  for (let row = size - 1; row >= 0; row--) {
    const solved = right[row]! / values[row * stride]!;
    right[row] = solved;
    for (let k = Math.max(0, row - width); k < row; k++) right[k]! -= values[row * stride + row - k]! * solved;
  }
}
