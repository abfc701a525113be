// Cubic Hermite interpolation between two rows of a record: values and slopes at both ends fix one cubic.
// These run in the hot loop and check nothing.

/** Value at `share` (0 to 1) of an interval of `length` seconds. */
export function hermite(share: number, length: number, y0: number, s0: number, y1: number, s1: number): number {
  const rest = 1 - share;
  return y0 + (y1 - y0) * share * share * (3 - 2 * share) + length * share * rest * (s0 * rest - s1 * share);
}

/** Slope per second at `share` of the interval. */
export function hermiteSlope(share: number, length: number, y0: number, s0: number, y1: number, s1: number): number {
  const rest = 1 - share;
  return (6 * share * rest * (y1 - y0)) / length + s0 * rest * (1 - 3 * share) + s1 * share * (3 * share - 2);
}

/** Integral from the interval's start to `share` of it. */
export function hermiteIntegral(share: number, length: number, y0: number, s0: number, y1: number, s1: number): number {
  const u = share;
  const u2 = u * u;
  const u3 = u2 * u;
  const u4 = u3 * u;
  return (
    length *
    (y0 * (u - u3 + 0.5 * u4) +
      y1 * (u3 - 0.5 * u4) +
      length * (s0 * (0.5 * u2 - (2 / 3) * u3 + 0.25 * u4) + s1 * (0.25 * u4 - u3 / 3)))
  );
}

/**
 * Shares inside the interval, in rising order, at which the cubic's slope is zero.
 * Written into `out`; returns how many (0, 1 or 2).
 */
export function hermiteTurns(
  length: number,
  y0: number,
  s0: number,
  y1: number,
  s1: number,
  out: Float64Array | number[],
): number {
  const rise = y1 - y0;
  const a = 3 * (length * (s0 + s1) - 2 * rise);
  const b = 2 * (3 * rise - length * (2 * s0 + s1));
  const c = length * s0;
  let count = 0;
  if (Math.abs(a) <= 1e-14 * Math.abs(b)) {
    const root = -c / b;
    if (root > 0 && root < 1) out[count++] = root;
    return count;
  }
  const square = b * b - 4 * a * c;
  if (!(square > 0)) return 0;
  const q = -0.5 * (b + (b >= 0 ? Math.sqrt(square) : -Math.sqrt(square)));
  const one = q / a;
  const two = q === 0 ? Number.NaN : c / q;
  const low = Math.min(one, two);
  const high = Math.max(one, two);
  if (low > 0 && low < 1) out[count++] = low;
  if (high > 0 && high < 1) out[count++] = high;
  return count;
}

/**
 * Share between `from` and `to` at which the cubic passes `level`, upwards when `rising` (by default if it ends
 * at or above it). The caller knows that it lies below
 * (above) the level at `from` and not any more at `to`.
 */
export function hermiteCrossing(
  level: number,
  length: number,
  y0: number,
  s0: number,
  y1: number,
  s1: number,
  from: number,
  to: number,
  rising: boolean = hermite(to, length, y0, s0, y1, s1) >= level,
): number {
  let low = from;
  let high = to;
  let share = 0.5 * (low + high);
  // Newton kept inside the bracket; the bracket halves whenever Newton leaves it.
  for (let round = 0; round < 60 && high - low > 1e-15; round += 1) {
    const miss = hermite(share, length, y0, s0, y1, s1) - level;
    if (rising ? miss >= 0 : miss <= 0) high = share;
    else low = share;
    const slope = hermiteSlope(share, length, y0, s0, y1, s1) * length;
    let next = share - miss / slope;
    if (!(next > low && next < high)) next = 0.5 * (low + high);
    if (Math.abs(next - share) < 1e-14) break;
    share = next;
  }
  return share;
}
