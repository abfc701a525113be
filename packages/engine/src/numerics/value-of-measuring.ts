// What measuring one input is worth: how much of a result's variance it would take away, and how much seldomer one would then be wrong
// about which side of a limit the result lies on. From the samples that are there, by regression on that input alone (M. Strong,
// J. E. Oakley, A. Brennan, Med. Decis. Making 34 (2014) 311-326; the value of a sample rather than of certainty: H. Raiffa,
// R. Schlaifer, Applied Statistical Decision Theory, 1961).

import { type AdditiveExpansion, type AdditivePart, partAt, varianceOf } from './additive-expansion.ts';
import { normalQuantile } from './normal.ts';

/**
 * Correlation of an input's scores with those of a reading of it, whose error has `error` times the input's own standard deviation:
 * 1/√(1 + error²).
 */
export function readingCorrelation(error: number): number {
  return 1 / Math.sqrt(1 + error * error);
}

/** Expected share of the result's variance that a reading of the input takes away: 1 − E[Var(Y | reading)] / Var(Y). */
export function varianceTakenAway(
  { variance, excess }: AdditiveExpansion,
  { coefficients }: AdditivePart,
  correlation: number,
): number {
  return variance > 0 ? varianceOf(coefficients, excess, correlation) / variance : 0;
}

export interface WrongCalls {
  /** Chance of being wrong about the side of the limit by the better guess, now and after the reading. */
  readonly before: number;
  readonly after: number;
}

/** Equally likely scores of the reading, and of what it leaves open. */
const READINGS: readonly number[] = middles(48);
const ERRORS: readonly number[] = middles(16);

function middles(count: number): number[] {
  return Array.from({ length: count }, (_, at) => normalQuantile((at + 0.5) / count));
}

/**
 * How often the call "below the limit" or "above it" is wrong, now and with a reading of one input at hand. The result, on the scale of
 * its scores, is taken as a function of this input plus a rest that does not depend on it, whose distribution is that of the samples.
 *
 * @param scores - The result as normal scores, one a sample.
 * @param inputScores - The input's, likewise.
 * @param part - What the input does to the scores, from an additive expansion.
 * @param limit - On the scale of the scores.
 * @param correlation - Of the input's scores with those of the reading; 1 for an exact one.
 */
export function wrongCalls(
  scores: readonly number[],
  inputScores: readonly number[],
  { coefficients }: AdditivePart,
  limit: number,
  correlation: number,
): WrongCalls {
  const rest = Float64Array.from(scores, (score, at) => score - partAt(coefficients, inputScores[at]!)).sort();
  const open = Math.sqrt(Math.max(1 - correlation * correlation, 0));
  const errors = open < 1e-6 ? [0] : ERRORS;
  let [inside, wrong] = [0, 0];
  for (const reading of READINGS) {
    let here = 0;
    for (const error of errors)
      here += shareBelow(rest, limit - partAt(coefficients, correlation * reading + open * error)) / errors.length;
    inside += here / READINGS.length;
    wrong += Math.min(here, 1 - here) / READINGS.length;
  }
  return { before: Math.max(Math.min(inside, 1 - inside), 0), after: wrong };
}

/** Share of sorted values up to a bound. */
function shareBelow(sorted: Float64Array, bound: number): number {
  let [low, high] = [0, sorted.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (sorted[middle]! <= bound) low = middle + 1;
    else high = middle;
  }
  return low / sorted.length;
}
