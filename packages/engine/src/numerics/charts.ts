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
  /** Shift, as a multiple of the signature. */
  readonly shift: number;
}

/**
 * When something changed and stayed changed, by likelihood (D. V. Hinkley 1970). `signatureOf` gives what a change of 1 at a value does to
 * all values; without it, it shifts the mean from there on.
 */
export function onsetOf(
  values: ArrayLike<number>,
  signatureOf: (at: number) => ArrayLike<number> = (at) => Float64Array.from(values, (_, each) => (each < at ? 0 : 1)),
): Onset {
  const fits = Array.from({ length: values.length }, (_, at) => {
    const signature = signatureOf(at);
    let [both, square] = [0, 0];
    for (let each = at; each < values.length; each += 1) {
      both += signature[each]! * values[each]!;
      square += signature[each]! ** 2;
    }
    return { worth: square > 0 ? (both * both) / (2 * square) : 0, shift: square > 0 ? both / square : 0 };
  });
  const best = fits.reduce((most, { worth }, at) => (worth > fits[most]!.worth ? at : most), 0);
  const near = [...fits.keys()].filter((at) => fits[best]!.worth - fits[at]!.worth <= 2);
  return { at: best, from: Math.min(...near), to: Math.max(...near), shift: fits[best]!.shift };
}
