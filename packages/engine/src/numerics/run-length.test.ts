import { describe, expect, it } from 'vitest';
import { cusum, ewma, onsetOf } from './charts.ts';
import { normalQuantile } from './normal.ts';
import { randomStream } from './random.ts';
import {
  cusumLimitFor,
  cusumRunLength,
  ewmaLimitFor,
  ewmaRunLength,
  gaussPoints,
  twoSidedCusumRunLength,
} from './run-length.ts';

function normals(seed: number): () => number {
  const random = randomStream(seed);
  return () => normalQuantile(random());
}

/** Mean first alarm of many seeded runs, and its standard error. */
function simulated(trials: number, alarm: (draw: () => number) => number): readonly [number, number] {
  const draw = normals(5);
  const lengths = Array.from({ length: trials }, () => alarm(draw));
  const mean = lengths.reduce((sum, each) => sum + each, 0) / trials;
  const variance = lengths.reduce((sum, each) => sum + (each - mean) ** 2, 0) / (trials - 1);
  return [mean, Math.sqrt(variance / trials)];
}

describe('run lengths', () => {
  it("exact: Gauss and Legendre's points integrate a polynomial of degree 9 with five points", () => {
    const { x, w } = gaussPoints(5);
    const integral = x.reduce((sum, each, at) => sum + w[at]! * (each ** 8 + each ** 9), 0);
    expect(integral).toBeCloseTo(2 / 9, 13);
  });

  it('limit: a CUSUM whose interval vanishes alarms as a single limit does', () => {
    // h near 0: an alarm at the first z above k.
    expect(cusumRunLength(1, 1e-9, 0)).toBeCloseTo(1 / 0.15865525393145707, 4);
  });

  it('limit: an EWMA that keeps nothing is a single chart with two limits', () => {
    expect(ewmaRunLength(1, 2, 0)).toBeCloseTo(1 / 0.04550026389635842, 6);
  });

  it('cross: the charts themselves, run on seeded noise, alarm as late as computed, within four standard errors', () => {
    const [mean, error] = simulated(4000, (draw) => {
      let [s, t, count] = [0, 0, 0];
      while (s <= 4 && t <= 4) {
        const z = draw() + 0.75;
        s = Math.max(0, s + z - 0.5);
        t = Math.max(0, t - z - 0.5);
        count += 1;
      }
      return count;
    });
    expect(Math.abs(mean - twoSidedCusumRunLength(0.5, 4, 0.75))).toBeLessThan(4 * error);
  });

  it('exact: the limit asked for a run length has that run length', () => {
    expect(twoSidedCusumRunLength(0.5, cusumLimitFor(0.5, 1000), 0)).toBeCloseTo(1000, 2);
    expect(ewmaRunLength(0.1, ewmaLimitFor(0.1, 500), 0)).toBeCloseTo(500, 2);
  });
});

describe('charts', () => {
  const shifted = [0.3, -0.2, 0.1, 0, -0.4, 2, 1.8, 2.2, 1.9, 2.1];

  it('exact: sums by hand, the alarm and where the shift began', () => {
    const { up, alarm, began, side } = cusum(shifted, 0.5, 4);
    expect(up[6]).toBeCloseTo(2.8, 12);
    expect({ alarm, began, side }).toEqual({ alarm: 7, began: 5, side: 'up' });
    expect(
      cusum(
        shifted.map((each) => -each),
        0.5,
        4,
      ).side,
    ).toBe('down');
    expect(cusum([0.1, -0.1], 0.5, 4).alarm).toBeUndefined();
  });

  it('exact: an EWMA by hand, with the exact limit of its first value', () => {
    const { values, limits, alarm } = ewma([1, 1, 9], 0.5, 3);
    expect([...values]).toEqual([0.5, 0.75, 4.875]);
    expect(limits[0]).toBeCloseTo(1.5, 12);
    expect(alarm).toBe(2);
  });

  it('exact: the likeliest onset of a step without noise is the step', () => {
    const { at, shift } = onsetOf([0, 0, 0, 0, 1, 1, 1, 1]);
    expect({ at, shift }).toEqual({ at: 4, shift: 1 });
  });
});
