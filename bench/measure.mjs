// Times of repeated runs, and the reference calculation beside them.

import { calibrate } from './calibration.mjs';

/**
 * Runs `run` unmeasured `warm` times, then `times` times measured.
 * The reference is taken before and after, so that a machine that slows down shows in it.
 */
export function measure(run, { warm = 30, times = 101 } = {}) {
  for (let i = 0; i < warm; i += 1) run();
  const before = calibrate();
  const spans = Array.from({ length: times }, () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  }).sort((a, b) => a - b);
  const after = calibrate();
  const median = spans[Math.floor(times / 2)];
  return { median, least: spans[0], ratio: median / (0.5 * (before + after)) };
}

/** A line of the table. `limit` is in the unit of `value`; smaller is better. */
export function line(what, value, unit, { ratio, limit, note = '' } = {}) {
  return { what, value, unit, ratio, limit, note };
}

/** Exponent p of cost ~ n^p, fitted by least squares on logarithms. */
export function growthExponent(sizes, costs) {
  const [x, y] = [sizes.map(Math.log), costs.map(Math.log)];
  const mean = (list) => list.reduce((sum, value) => sum + value, 0) / list.length;
  const [middle, level] = [mean(x), mean(y)];
  const rise = x.reduce((sum, value, i) => sum + (value - middle) * (y[i] - level), 0);
  return rise / x.reduce((sum, value) => sum + (value - middle) ** 2, 0);
}
