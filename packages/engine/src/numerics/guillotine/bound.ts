// How many sheets no plan can do without, however clever: sizes are rounded in ways that a full sheet survives.

import { HAIR, type Piece, type Stock, ways } from './piece.ts';

/** Takes a size as a share of the sheet's; whatever sums to 1 or less before does so after it. */
type Rounded = (share: number) => number;

/**
 * Least number of sheets: the greatest sum of rounded areas, each side rounded by a function that keeps sums within the sheet.
 *
 *     B = max over f, g of ⌈ Σ min over ways f(l) g(w) ⌉
 *
 * f and g are the identity (then B is the bound by area), u_k(x) = x where (k+1) x is whole, else ⌊(k+1) x⌋/k, and U_ε(x) = 1 above
 * 1 − ε, 0 below ε, else x. Of many boards of more than half a sheet each way it tells that each needs a sheet of its own.
 *
 * @param pieces - Sizes above 0, each fitting the sheet.
 * @param stock - The sheet; a kerf is given to each piece and to the sheet.
 * @returns A whole number, 0 for no pieces.
 *
 * @remarks
 * Valid: any cuts, whether a saw can make them or not. Source: dual feasible functions (S. P. Fekete, J. Schepers, Math. Program. 91
 * (2001) 11, and Math. Methods Oper. Res. 60 (2004) 311; from memory). Checked: never above the exact search; exact cases.
 *
 * @example Three boards of 60 by 60 in sheets of 100 by 100: by area two sheets, but no two lie on one
 * ```ts
 * leastSheets(Array(3).fill({ length: 60, width: 60, turned: true }), { length: 100, width: 100, kerf: 0 }); // => 3
 * ```
 */
export function leastSheets(pieces: readonly Piece[], stock: Stock): number {
  const { kerf } = stock;
  const shares = pieces.map((piece) =>
    ways(piece).map(
      ([length, width]) => [(length + kerf) / (stock.length + kerf), (width + kerf) / (stock.width + kerf)] as const,
    ),
  );
  const roundings = (axis: 0 | 1): readonly Rounded[] => [
    (share) => share,
    ...[1, 2, 3, 4].map(inSteps),
    ...[...new Set(shares.flat().map((way) => way[axis]))].filter((share) => share <= 0.5).map(withoutSmall),
  ];
  let most = 0;
  for (const f of roundings(0))
    for (const g of roundings(1))
      most = Math.max(
        most,
        shares.reduce((sum, each) => sum + Math.min(...each.map(([length, width]) => f(length) * g(width))), 0),
      );
  return Math.max(0, Math.ceil(most - HAIR));
}

function inSteps(k: number): Rounded {
  return (share) => {
    const steps = (k + 1) * share;
    return Math.abs(steps - Math.round(steps)) < HAIR ? share : Math.floor(steps) / k;
  };
}

function withoutSmall(least: number): Rounded {
  return (share) => (share > 1 - least + HAIR ? 1 : share < least - HAIR ? 0 : share);
}
