// Scales of a picture: from values to places on paper, with the values that are written beside it.

export interface Scale {
  /** Ends of what is drawn, in the value's own unit. */
  readonly low: number;
  readonly high: number;
  readonly ticks: readonly number[];
  /** Share of the way from low to high, 0…1; values beyond the ends lie on them. */
  readonly share: (value: number) => number;
}

/**
 * A straight scale with round ends a little beyond the values, and at most `most` round ticks.
 *
 * @example From a room in winter to a warm bay
 * ```ts
 * linearScale([19.3, 41.2], 6).ticks.join(' '); // => 15 20 25 30 35 40 45
 * linearScale([19.3, 41.2], 6).share(30); // => 0.5
 * ```
 */
export function linearScale(values: readonly number[], most: number): Scale {
  const [least, greatest] = ends(values);
  // A line that hardly moves is shown as level, not blown up to its last digits.
  const span = Math.max(greatest - least, Math.max(Math.abs(greatest), Math.abs(least), 1e-3) * 0.01);
  const step = roundStep(span / most);
  const low = Math.floor(least / step) * step;
  const high = Math.ceil((least + span) / step) * step;
  const count = Math.round((high - low) / step);
  const ticks = Array.from({ length: count + 1 }, (_, at) => Number((low + at * step).toPrecision(12)));
  return { low, high, ticks, share: (value) => clamp((value - low) / (high - low)) };
}

/** Decades that are drawn at most: what is ten thousand times less than the greatest is as good as none. */
const MOST_DECADES = 4;

/**
 * A scale of decades, with 2 and 5 of each when they are few. Values of zero or less, and what lies more than four decades
 * below the greatest, lie on the lower end.
 *
 * @example Particles in a room and in a bay
 * ```ts
 * decadeScale([3000, 2.4e6]).ticks.join(' '); // => 1000 10000 100000 1000000 10000000
 * decadeScale([120, 800]).ticks.join(' '); // => 100 200 500 1000
 * ```
 */
export function decadeScale(values: readonly number[]): Scale {
  const positive = values.filter((value) => value > 0);
  const [least, greatest] = positive.length === 0 ? [1, 10] : ends(positive);
  const top = Math.ceil(Math.log10(greatest) - 1e-9);
  const bottom = Math.max(Math.min(Math.floor(Math.log10(least) + 1e-9), top - 1), top - MOST_DECADES);
  const decades = Array.from({ length: top - bottom + 1 }, (_, at) => 10 ** (bottom + at));
  const parts = top - bottom === 1 ? [1, 2, 5] : [1];
  const ticks = decades
    .flatMap((decade) => parts.map((part) => part * decade))
    .slice(0, parts.length * (top - bottom) + 1);
  const share = (value: number) => (value > 0 ? clamp((Math.log10(value) - bottom) / (top - bottom)) : 0);
  return { low: 10 ** bottom, high: 10 ** top, ticks, share };
}

const HOUR = 3600;

/** Time from 0 to `length` s with ticks at whole hours, at most ten of them. */
export function timeScale(length: number): Scale {
  const step =
    [1, 2, 3, 6, 12, 24, 48, 168].find((hours) => length / (hours * HOUR) <= 10) ?? Math.ceil(length / HOUR / 10);
  const ticks = Array.from({ length: Math.floor(length / (step * HOUR)) + 1 }, (_, at) => at * step * HOUR);
  return { low: 0, high: length, ticks, share: (value) => clamp(value / length) };
}

function ends(values: readonly number[]): [number, number] {
  let least = Infinity;
  let greatest = -Infinity;
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    least = Math.min(least, value);
    greatest = Math.max(greatest, value);
  }
  return least <= greatest ? [least, greatest] : [0, 1];
}

/** The next of 1, 2, 5 times a power of ten. */
function roundStep(step: number): number {
  const power = 10 ** Math.floor(Math.log10(step));
  return power * ([1, 2, 5, 10].find((digit) => digit * power >= step * (1 - 1e-9)) ?? 10);
}

function clamp(share: number): number {
  return Math.min(1, Math.max(0, share));
}
