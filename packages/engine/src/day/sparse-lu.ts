// Sparse LU without pivoting on a pattern that never changes. The pattern is symmetric, the elimination order is by minimum
// degree, and every index of the elimination is worked out once, so that factoring runs straight through typed arrays.
// Without pivoting it needs matrices that are diagonally dominant enough: the heat balances are (capacities and losses).

/** A pattern with its elimination programme; shared by all days of one topology. */
export interface Pattern {
  readonly size: number;
  /** Row (= column) of each unknown in elimination order. */
  readonly rowOf: Int32Array;
  /** Entries right of the diagonal of row k: start[k] … start[k + 1] - 1; `column` says which. */
  readonly start: Int32Array;
  readonly column: Int32Array;
  /** Row of each of these entries. */
  readonly row: Int32Array;
  /** Where each update of the elimination lands, in the order of the loops in `factor`. */
  readonly target: Int32Array;
  /** Number of values: the diagonal, then the upper entries, then the mirrored lower entries. */
  readonly length: number;
}

/** Analyses the pattern of the given pairs (both orders meant) among `size` unknowns. */
export function analysePattern(size: number, pairs: readonly (readonly [number, number])[]): Pattern {
  const neighbours = Array.from({ length: size }, () => new Set<number>());
  for (const [a, b] of pairs) {
    if (a === b) continue;
    neighbours[a]!.add(b);
    neighbours[b]!.add(a);
  }
  const rowOf = new Int32Array(size).fill(-1);
  const later: number[][] = [];
  for (let row = 0; row < size; row += 1) {
    let best = -1;
    for (let i = 0; i < size; i += 1) {
      if (rowOf[i] === -1 && (best < 0 || neighbours[i]!.size < neighbours[best]!.size)) best = i;
    }
    rowOf[best] = row;
    const rest = [...neighbours[best]!];
    later.push(rest);
    // Eliminating an unknown ties all its remaining neighbours to one another.
    for (const i of rest) {
      neighbours[i]!.delete(best);
      for (const j of rest) if (i !== j) neighbours[i]!.add(j);
    }
  }
  const start = new Int32Array(size + 1);
  const columns: number[] = [];
  for (let row = 0; row < size; row += 1) {
    columns.push(...later[row]!.map((i) => rowOf[i]!).sort((a, b) => a - b));
    start[row + 1] = columns.length;
  }
  const pattern: Pattern = {
    size,
    rowOf,
    start,
    column: Int32Array.from(columns),
    row: Int32Array.from(later.flatMap((rest, row) => rest.map(() => row))),
    target: new Int32Array(0),
    length: size + 2 * columns.length,
  };
  return { ...pattern, target: eliminationTargets(pattern) };
}

function eliminationTargets(pattern: Pattern): Int32Array {
  const { size, start, column } = pattern;
  const targets: number[] = [];
  for (let k = 0; k < size; k += 1) {
    for (let e = start[k]!; e < start[k + 1]!; e += 1) {
      for (let f = start[k]!; f < start[k + 1]!; f += 1) targets.push(entryAt(pattern, column[e]!, column[f]!));
    }
  }
  return Int32Array.from(targets);
}

/** Position of the value (row, column), both in elimination order. */
export function entryAt({ size, start, column }: Pattern, row: number, col: number): number {
  if (row === col) return row;
  const low = Math.min(row, col);
  const high = Math.max(row, col);
  for (let e = start[low]!; e < start[low + 1]!; e += 1) {
    if (column[e] === high) return size + e + (row > col ? column.length : 0);
  }
  throw new Error(`The pattern has no entry (${row}, ${col})`);
}

/**
 * Replaces the matrix by its factors L D U, the diagonal by its reciprocals; L and U have ones on theirs. `offset` lets several
 * matrices share one array.
 */
export function factor(pattern: Pattern, values: Float64Array, offset: number): void {
  const { size, start, column, target } = pattern;
  const upper = offset + size;
  const lower = upper + column.length;
  let t = 0;
  for (let k = 0; k < size; k += 1) {
    const reciprocal = 1 / values[offset + k]!;
    values[offset + k] = reciprocal;
    const first = start[k]!;
    const end = start[k + 1]!;
    for (let e = first; e < end; e += 1) {
      const share = values[lower + e]! * reciprocal;
      values[lower + e] = share;
      for (let f = first; f < end; f += 1) {
        const at = offset + target[t]!;
        values[at] = values[at]! - share * values[upper + f]!;
        t += 1;
      }
    }
    for (let e = first; e < end; e += 1) values[upper + e] = values[upper + e]! * reciprocal;
  }
}

/**
 * Solves in place with the factors: `x` holds the right side from `from` on, in elimination order. The entries of L and U are
 * run through in one line, which is quicker than row by row when rows are short.
 */
export function solve(pattern: Pattern, values: Float64Array, offset: number, x: Float64Array, from: number): void {
  const { size, row, column } = pattern;
  const upper = offset + size;
  const count = column.length;
  const lower = upper + count;
  for (let e = 0; e < count; e += 1) {
    const at = from + column[e]!;
    x[at] = x[at]! - values[lower + e]! * x[from + row[e]!]!;
  }
  for (let k = 0; k < size; k += 1) x[from + k] = x[from + k]! * values[offset + k]!;
  for (let e = count - 1; e >= 0; e -= 1) {
    const at = from + row[e]!;
    x[at] = x[at]! - values[upper + e]! * x[from + column[e]!]!;
  }
}
