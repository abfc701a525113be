// Work against precision: errors of a run, and the time a curve needs at a given error.

/** Largest difference of two runs over all temperatures and sample times, K. */
export function largestDifference(one, other) {
  if (one.length !== other.length) throw new Error(`${one.length} samples against ${other.length}`);
  let largest = 0;
  for (let i = 0; i < one.length; i += 1) largest = Math.max(largest, Math.abs(one[i] - other[i]));
  return largest;
}

/**
 * CPU time at an error, from points {error, cpuMs}: straight between neighbours when both are logarithms, the lowest envelope
 * of the curve. Undefined outside the curve: nothing is extrapolated, except that a solver which cannot be made as bad as
 * asked counts with its quickest run.
 */
export function timeAt(points, error) {
  const envelope = points
    .filter((point) => !points.some((other) => other.error <= point.error && other.cpuMs < point.cpuMs))
    .sort((a, b) => a.error - b.error);
  if (envelope.length === 0 || error < envelope[0].error) return undefined;
  for (let i = 1; i < envelope.length; i += 1) {
    const [low, high] = [envelope[i - 1], envelope[i]];
    if (error > high.error) continue;
    const share = Math.log(error / low.error) / Math.log(high.error / low.error);
    return Math.exp(Math.log(low.cpuMs) + share * Math.log(high.cpuMs / low.cpuMs));
  }
  return envelope.at(-1).cpuMs;
}
