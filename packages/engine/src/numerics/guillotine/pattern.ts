// The best filling of one sheet by as many copies of each piece as one likes: the exact optimum, by dynamic programming.

import { HAIR, type Stock } from './piece.ts';

export interface Kind {
  readonly length: number;
  readonly width: number;
  readonly value: number;
}

/**
 * Greatest value of pieces that come out of one sheet by guillotine cuts, copies without limit.
 *
 *     F(x, y) = max( values of pieces that fit; F(u, y) + F(x − u, y); F(x, v) + F(x, y − v) )
 *
 * over normal positions u, v: sums of lengths, of widths. A kerf is given to each piece and to the sheet.
 *
 * @param kinds - Sizes above 0 and values; with `turned` each may lie both ways.
 * @param stock - The sheet.
 * @returns The optimum; 0 when nothing fits.
 *
 * @remarks
 * Valid: any number of stages; time grows with the cube of the number of normal positions. Source: Beasley, J. Opl Res. Soc. 36
 * (1985) 297. Checked: published optima.
 *
 * @example Two of 5 by 4 in 10 by 5, valued by area
 * ```ts
 * bestPattern([{ length: 5, width: 4, value: 20 }], { length: 10, width: 5, kerf: 0 }, false); // => 40
 * bestPattern([{ length: 5, width: 4, value: 20 }], { length: 10, width: 5, kerf: 1 }, false); // => 20
 * ```
 */
export function bestPattern(kinds: readonly Kind[], stock: Stock, turned: boolean): number {
  const { kerf } = stock;
  const grown = kinds.flatMap(({ length, width, value }) => {
    const one = { length: length + kerf, width: width + kerf, value };
    return turned ? [one, { length: one.width, width: one.length, value }] : [one];
  });
  const xs = normalPositions(
    grown.map(({ length }) => length),
    stock.length + kerf,
  );
  const ys = normalPositions(
    grown.map(({ width }) => width),
    stock.width + kerf,
  );
  const [right, up] = [withLeftOver(xs), withLeftOver(ys)];
  const best = xs.map((x) => ys.map((y) => mostValuable(grown, x, y)));
  for (let i = 0; i < xs.length; i++)
    for (let j = 0; j < ys.length; j++) {
      let value = best[i]![j]!;
      if (i > 0) value = Math.max(value, best[i - 1]![j]!);
      if (j > 0) value = Math.max(value, best[i]![j - 1]!);
      for (let cut = 0; cut < i && 2 * xs[cut]! <= xs[i]! + HAIR; cut++)
        value = Math.max(value, best[cut]![j]! + (best[right(i, cut)]?.[j] ?? 0));
      for (let cut = 0; cut < j && 2 * ys[cut]! <= ys[j]! + HAIR; cut++)
        value = Math.max(value, best[i]![cut]! + (best[i]![up(j, cut)] ?? 0));
      best[i]![j] = value;
    }
  return best.at(-1)?.at(-1) ?? 0;
}

function mostValuable(kinds: readonly Kind[], x: number, y: number): number {
  return kinds.reduce(
    (most, { length, width, value }) => (length <= x + HAIR && width <= y + HAIR ? Math.max(most, value) : most),
    0,
  );
}

/** Sums of sizes, with repetition, up to `limit`; its last is the greatest that is of use. */
function normalPositions(sizes: readonly number[], limit: number): readonly number[] {
  const found = new Set<number>();
  const open = [0];
  for (const at of open)
    for (const size of sizes) {
      const next = Math.round((at + size) * 1e9) / 1e9;
      if (next > limit + HAIR || found.has(next)) continue;
      found.add(next);
      open.push(next);
    }
  return [...found].sort((a, b) => a - b);
}

/** The greatest position that is left beside a cut; -1 when none is. */
function withLeftOver(positions: readonly number[]): (whole: number, cut: number) => number {
  return (whole, cut) => {
    const left = positions[whole]! - positions[cut]! + HAIR;
    let [low, high] = [-1, positions.length - 1];
    while (low < high) {
      const middle = Math.ceil((low + high) / 2);
      if (positions[middle]! <= left) low = middle;
      else high = middle - 1;
    }
    return low;
  };
}
