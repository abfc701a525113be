// The shape of a check against the outside: one formula, one published value, how the value was known.

/** How the expected value was known when it was typed in. */
export type Knowledge =
  /** Read in the source itself. */
  | 'read'
  /** Read in a text or program that quotes the source. */
  | 'second-hand'
  /** From memory, not looked up. */
  | 'memory'
  /** Computed by an independent general-purpose program or by exact analysis, named in `source`. */
  | 'independent'
  /** A fact of the trade with no printed source. */
  | 'common practice, no source';

/**
 * One comparison with the outside world. A value that only this program computed is a regression value and never stands here.
 * Files that hold checks are named `*.checks.ts`, lie beside the code they check and export `checks`.
 */
export interface OutsideCheck {
  /** What is computed, in words, with the inputs that matter. */
  readonly what: string;
  /** The exported function or law under test; with `source` it makes the formula-source pair. */
  readonly formula: string;
  /** Author or standard, clause, table or example, year. */
  readonly source: string;
  readonly known: Knowledge;
  readonly expected: number;
  readonly unit: string;
  /** Largest allowed |got - expected| in `unit`: the printed digits or the source's own claim. */
  readonly tolerance: number;
  /** Computes the value with this program. */
  readonly got: () => number;
}

/** One such comparison written as a row. */
export const check = (
  what: string,
  formula: string,
  source: string,
  known: Knowledge,
  expected: number,
  unit: string,
  tolerance: number,
  got: () => number,
): OutsideCheck => ({ what, formula, source, known, expected, unit, tolerance, got });
