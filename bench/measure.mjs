// Times of repeated runs, and the reference calculation beside them.

import { calibrate } from './calibration.mjs';
import { cpuMilliseconds } from './clock.mjs';

/** A sample is at least so long, ms: the processor's clock ticks coarsely. */
const SAMPLE = 30;

/**
 * Processor time of one run, ms: median and least of `samples` samples after `warm` unmeasured runs. Processor time of the whole
 * process counts what the compiler and the collector of garbage do beside the run, and does not count what other programs do.
 */
export function measure(run, { warm = 30, samples = 21 } = {}) {
  for (let i = 0; i < warm; i += 1) run();
  const runs = Math.max(1, Math.ceil(SAMPLE / timed(run, 1)));
  return beside(() => timed(run, runs) / runs, samples);
}

/** Processor time of a run on something made anew for each, which is not counted: for what keeps answers with what it was given. */
export function measureFresh(make, run, { warm = 40, samples = 21, runs = 8 } = {}) {
  for (let i = 0; i < warm; i += 1) run(make());
  const sample = () => {
    const given = Array.from({ length: runs }, make);
    return timed(() => run(given.pop()), runs) / runs;
  };
  return beside(sample, samples);
}

/** Time by the clock on the wall, for what runs in programs of its own. */
export function measureWall(run, { warm = 2, samples = 11 } = {}) {
  for (let i = 0; i < warm; i += 1) run();
  const once = () => {
    const start = performance.now();
    run();
    return performance.now() - start;
  };
  return beside(once, samples);
}

/** The reference is taken before and after, so that a machine that slows down shows in it. */
function beside(sample, samples) {
  const before = calibrate();
  const spans = Array.from({ length: samples }, sample).sort((a, b) => a - b);
  const reference = 0.5 * (before + calibrate());
  const median = spans[Math.floor(samples / 2)];
  return { median, least: spans[0], ratio: median / reference };
}

function timed(run, times) {
  const start = cpuMilliseconds();
  for (let i = 0; i < times; i += 1) run();
  return Math.max(cpuMilliseconds() - start, 1e-3);
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
