// Small dense matrices, row by row: what fits of a few unknowns need. Nothing here is meant for hundreds of unknowns.

/** `values[row · columns + column]`. */
export interface Matrix {
  readonly rows: number;
  readonly columns: number;
  readonly values: Float64Array;
}

export function matrix(rows: number, columns: number): Matrix {
  return { rows, columns, values: new Float64Array(rows * columns) };
}

/** Columns set side by side. */
export function ofColumns(columns: readonly ArrayLike<number>[]): Matrix {
  const rows = columns[0]?.length ?? 0;
  const made = matrix(rows, columns.length);
  for (let row = 0; row < rows; row += 1)
    for (let at = 0; at < columns.length; at += 1) made.values[row * columns.length + at] = columns[at]![row]!;
  return made;
}

/**
 * The x that makes |A x − b| least, by Householder reflections: as exact as the condition of A allows, where Aᵀ A would square it.
 * A column that the ones before it span (to rounding) gets 0.
 */
export function leastNorm(a: Matrix, b: ArrayLike<number>): Float64Array {
  const { rows, columns } = a;
  const r = a.values.slice();
  const y = Float64Array.from(b);
  const solution = new Float64Array(columns);
  const kept: boolean[] = [];
  let pivot = 0;
  const rowOf: number[] = [];
  for (let column = 0; column < columns; column += 1) {
    let below = 0;
    let whole = 0;
    for (let row = 0; row < rows; row += 1) {
      const square = r[row * columns + column]! ** 2;
      whole += square;
      if (row >= pivot) below += square;
    }
    const fresh = pivot < rows && below > whole * 1e-26 && below > 0;
    kept.push(fresh);
    rowOf.push(pivot);
    if (!fresh) continue;
    reflect(r, y, rows, columns, pivot, column, Math.sqrt(below));
    pivot += 1;
  }
  for (let column = columns - 1; column >= 0; column -= 1) {
    if (!kept[column]) continue;
    const row = rowOf[column]!;
    let sum = y[row]!;
    for (let later = column + 1; later < columns; later += 1) sum -= r[row * columns + later]! * solution[later]!;
    solution[column] = sum / r[row * columns + column]!;
  }
  return solution;
}

/** Mirrors the rows from `pivot` on so that the column has one entry left there. */
function reflect(
  r: Float64Array,
  y: Float64Array,
  rows: number,
  columns: number,
  pivot: number,
  column: number,
  norm: number,
): void {
  const head = r[pivot * columns + column]!;
  const end = head > 0 ? -norm : norm;
  const v = new Float64Array(rows - pivot);
  for (let row = pivot; row < rows; row += 1) v[row - pivot] = r[row * columns + column]!;
  v[0] = head - end;
  let square = 0;
  for (const each of v) square += each * each;
  if (square === 0) return;
  for (let other = column; other < columns; other += 1) {
    let dot = 0;
    for (let row = pivot; row < rows; row += 1) dot += v[row - pivot]! * r[row * columns + other]!;
    const share = (2 * dot) / square;
    for (let row = pivot; row < rows; row += 1)
      r[row * columns + other] = r[row * columns + other]! - share * v[row - pivot]!;
  }
  let dot = 0;
  for (let row = pivot; row < rows; row += 1) dot += v[row - pivot]! * y[row]!;
  const share = (2 * dot) / square;
  for (let row = pivot; row < rows; row += 1) y[row] = y[row]! - share * v[row - pivot]!;
  r[pivot * columns + column] = end;
  for (let row = pivot + 1; row < rows; row += 1) r[row * columns + column] = 0;
}

/** Singular values of A, falling, and the directions (right singular vectors) that belong to them. */
export interface Directions {
  readonly sizes: Float64Array;
  /** One unit vector a singular value. */
  readonly vectors: readonly Float64Array[];
}

/** One-sided Jacobi rotations: exact to rounding for small ones too (Demmel & Veselić 1992, from memory). */
export function singularDirections({ rows, columns, values }: Matrix): Directions {
  const a = Array.from({ length: columns }, (_, column) =>
    Float64Array.from({ length: rows }, (_unused, row) => values[row * columns + column]!),
  );
  const v = Array.from({ length: columns }, (_, column) => {
    const unit = new Float64Array(columns);
    unit[column] = 1;
    return unit;
  });
  for (let sweep = 0; sweep < 60; sweep += 1) {
    let turned = false;
    for (let p = 0; p < columns; p += 1)
      for (let q = p + 1; q < columns; q += 1) turned = rotate(a[p]!, a[q]!, v[p]!, v[q]!) || turned;
    if (!turned) break;
  }
  const sizes = a.map((column) => Math.sqrt(column.reduce((sum, each) => sum + each * each, 0)));
  const order = sizes.map((_, at) => at).sort((x, y) => sizes[y]! - sizes[x]!);
  return { sizes: Float64Array.from(order, (at) => sizes[at]!), vectors: order.map((at) => v[at]!) };
}

/** Makes two columns stand at right angles; false when they do already. */
function rotate(a: Float64Array, b: Float64Array, v: Float64Array, w: Float64Array): boolean {
  let [aa, bb, ab] = [0, 0, 0];
  for (let row = 0; row < a.length; row += 1) {
    aa += a[row]! ** 2;
    bb += b[row]! ** 2;
    ab += a[row]! * b[row]!;
  }
  if (ab === 0 || Math.abs(ab) <= 1e-15 * Math.sqrt(aa * bb)) return false;
  const zeta = (bb - aa) / (2 * ab);
  const t = Math.sign(zeta || 1) / (Math.abs(zeta) + Math.sqrt(1 + zeta * zeta));
  const c = 1 / Math.sqrt(1 + t * t);
  turn(a, b, c, c * t);
  turn(v, w, c, c * t);
  return true;
}

function turn(a: Float64Array, b: Float64Array, c: number, s: number): void {
  for (let row = 0; row < a.length; row += 1) {
    const [x, y] = [a[row]!, b[row]!];
    a[row] = c * x - s * y;
    b[row] = s * x + c * y;
  }
}

/** (Aᵀ A)⁻¹ by the singular directions; directions below `least` of the largest are left out, as if nothing varied along them. */
export function inverseGram(a: Matrix, least = 1e-13): Matrix {
  const { sizes, vectors } = singularDirections(a);
  const made = matrix(a.columns, a.columns);
  for (const [at, size] of sizes.entries()) {
    if (!(size > least * sizes[0]!)) continue;
    const vector = vectors[at]!;
    for (let i = 0; i < a.columns; i += 1)
      for (let j = 0; j < a.columns; j += 1)
        made.values[i * a.columns + j] = made.values[i * a.columns + j]! + (vector[i]! * vector[j]!) / size ** 2;
  }
  return made;
}
