// Control charts: CUSUM and EWMA of values that should scatter about 0 with deviation 1, and when a shift began.

export interface Cusum {
  /** Sum upwards and sum downwards, both 0 or more, by value. */
  readonly up: Float64Array;
  readonly down: Float64Array;
  /** First value at which either passes h. */
  readonly alarm?: number;
  readonly side?: 'up' | 'down';
  /** First value after the sum that alarmed was last 0: about when the shift began (E. S. Page 1954). */
  readonly began?: number;
}

/** S⁺ ← max(0, S⁺ + z − k), S⁻ ← max(0, S⁻ − z − k); an alarm when either passes h. It goes on after an alarm. */
export function cusum(values: ArrayLike<number>, k: number, h: number): Cusum {
  const up = new Float64Array(values.length);
  const down = new Float64Array(values.length);
  let alarm: number | undefined;
  let [s, t, upZero, downZero] = [0, 0, -1, -1];
  let found: { side: 'up' | 'down'; began: number } | undefined;
  for (let at = 0; at < values.length; at += 1) {
    s = Math.max(0, s + values[at]! - k);
    t = Math.max(0, t - values[at]! - k);
    if (s === 0) upZero = at;
    if (t === 0) downZero = at;
    up[at] = s;
    down[at] = t;
    if (alarm === undefined && (s > h || t > h)) {
      alarm = at;
      found = s > h ? { side: 'up', began: upZero + 1 } : { side: 'down', began: downZero + 1 };
    }
  }
  return alarm === undefined ? { up, down } : { up, down, alarm, ...found! };
}

export interface Ewma {
  readonly values: Float64Array;
  /** Limit on either side, by value: it grows from the first value to its end (exact variance). */
  readonly limits: Float64Array;
  readonly alarm?: number;
}

/** Z ← (1 − λ) Z + λ z, alarm at |Z| > L √(λ / (2 − λ) · (1 − (1 − λ)^2i)). */
export function ewma(values: ArrayLike<number>, lambda: number, limit: number): Ewma {
  const course = new Float64Array(values.length);
  const limits = new Float64Array(values.length);
  let z = 0;
  let alarm: number | undefined;
  for (let at = 0; at < values.length; at += 1) {
    z = (1 - lambda) * z + lambda * values[at]!;
    course[at] = z;
    limits[at] = limit * Math.sqrt((lambda / (2 - lambda)) * (1 - (1 - lambda) ** (2 * (at + 1))));
    if (alarm === undefined && Math.abs(z) > limits[at]!) alarm = at;
  }
  return alarm === undefined ? { values: course, limits } : { values: course, limits, alarm };
}

export interface Onset {
  /** Most likely first value after the shift. */
  readonly at: number;
  /** First values whose likelihood is within a factor e⁻² of it: an interval of about 95 %. */
  readonly from: number;
  readonly to: number;
  /** Shift, in standard deviations. */
  readonly shift: number;
}

/** When the mean of independent values of deviation 1 left 0 and stayed away: by likelihood (D. V. Hinkley 1970). */
export function onsetOf(values: ArrayLike<number>): Onset {
  const count = values.length;
  const worth = new Float64Array(count);
  let [sum, best] = [0, count - 1];
  for (let at = count - 1; at >= 0; at -= 1) {
    sum += values[at]!;
    worth[at] = (sum * sum) / (2 * (count - at));
    if (worth[at]! > worth[best]!) best = at;
  }
  let [from, to] = [best, best];
  for (let at = 0; at < count; at += 1)
    if (worth[best]! - worth[at]! <= 2) {
      from = Math.min(from, at);
      to = Math.max(to, at);
    }
  let after = 0;
  for (let at = best; at < count; at += 1) after += values[at]!;
  return { at: best, from, to, shift: after / (count - best) };
}
