// Sparse LU without pivoting on a pattern that never changes. The pattern is symmetric, the elimination order is by minimum
// degree, and every index of the elimination is worked out once, so that factoring runs straight through typed arrays.
// Without pivoting it needs matrices that are diagonally dominant enough: the heat balances are (capacities and losses), and so are
// the slopes of flows.

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

/** Structures already analysed, by topology: variants of one cabinet share them. A memo, bounded; it changes no result. */
const analysed = new Map<string, Pattern>();
const MOST_ANALYSED = 64;

/** `analysePattern`, once for each topology. */
export function patternOf(size: number, pairs: readonly (readonly [number, number])[]): Pattern {
  const key = `${size}:${pairs.join(';')}`;
  const known = analysed.get(key);
  if (known !== undefined) return known;
  const pattern = analysePattern(size, pairs);
  if (analysed.size >= MOST_ANALYSED) analysed.clear();
  analysed.set(key, pattern);
  return pattern;
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

/** Replaces the matrix by its factors L D U, the diagonal by its reciprocals; L and U have ones on theirs. */
export function factor(pattern: Pattern, values: Float64Array): void {
  const { size, start, column, target } = pattern;
  const upper = size;
  const lower = upper + column.length;
  let t = 0;
  for (let k = 0; k < size; k += 1) {
    const reciprocal = 1 / values[k]!;
    values[k] = reciprocal;
    const first = start[k]!;
    const end = start[k + 1]!;
    for (let e = first; e < end; e += 1) {
      const share = values[lower + e]! * reciprocal;
      values[lower + e] = share;
      for (let f = first; f < end; f += 1) {
        const at = target[t]!;
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
export function solve(pattern: Pattern, values: Float64Array, x: Float64Array, from: number): void {
  const { size, row, column } = pattern;
  const upper = size;
  const count = column.length;
  const lower = upper + count;
  for (let e = 0; e < count; e += 1) {
    const at = from + column[e]!;
    x[at] = x[at]! - values[lower + e]! * x[from + row[e]!]!;
  }
  for (let k = 0; k < size; k += 1) x[from + k] = x[from + k]! * values[k]!;
  for (let e = count - 1; e >= 0; e -= 1) {
    const at = from + row[e]!;
    x[at] = x[at]! - values[upper + e]! * x[from + column[e]!]!;
  }
}

/** `factor` for `many` matrices of one pattern that lie interleaved: value `at` of matrix i in at·many + i. */
export function factorMany(pattern: Pattern, values: Float64Array, many: number): void {
  const { size, start, column, target } = pattern;
  const upper = size * many;
  const lower = upper + column.length * many;
  let t = 0;
  for (let k = 0; k < size; k += 1) {
    const pivot = k * many;
    for (let i = pivot; i < pivot + many; i += 1) values[i] = 1 / values[i]!;
    const first = start[k]!;
    const end = start[k + 1]!;
    for (let e = first; e < end; e += 1) {
      const below = lower + e * many;
      for (let i = 0; i < many; i += 1) values[below + i] = values[below + i]! * values[pivot + i]!;
      for (let f = first; f < end; f += 1) {
        const at = target[t]! * many;
        const right = upper + f * many;
        t += 1;
        for (let i = 0; i < many; i += 1) values[at + i] = values[at + i]! - values[below + i]! * values[right + i]!;
      }
    }
    for (let e = first; e < end; e += 1) {
      const right = upper + e * many;
      for (let i = 0; i < many; i += 1) values[right + i] = values[right + i]! * values[pivot + i]!;
    }
  }
}

/** `solve` with interleaved matrices, for right sides that lie interleaved too. */
export function solveMany(pattern: Pattern, values: Float64Array, x: Float64Array, from: number, many: number): void {
  const { size, row, column } = pattern;
  const upper = size * many;
  const count = column.length;
  const lower = upper + count * many;
  for (let e = 0; e < count; e += 1) {
    const at = from + column[e]! * many;
    const above = from + row[e]! * many;
    const factors = lower + e * many;
    for (let i = 0; i < many; i += 1) x[at + i] = x[at + i]! - values[factors + i]! * x[above + i]!;
  }
  for (let i = 0; i < upper; i += 1) x[from + i] = x[from + i]! * values[i]!;
  for (let e = count - 1; e >= 0; e -= 1) {
    const at = from + row[e]! * many;
    const below = from + column[e]! * many;
    const factors = upper + e * many;
    for (let i = 0; i < many; i += 1) x[at + i] = x[at + i]! - values[factors + i]! * x[below + i]!;
  }
}
