import { describe, expect, it } from 'vitest';
import {
  greatest,
  greatestMovingMean,
  integral,
  least,
  mean,
  resample,
  type Series,
  seriesOf,
  timeAbove,
  valueAt,
} from './series.ts';

/** t³ - 12 t on [0, 4] in two cubics, then a jump to 5 and a straight line to 1 at t = 6. */
const cubic: Series = {
  times: Float64Array.of(0, 1, 4, 4, 6),
  values: Float64Array.of(0, -11, 16, 5, 1),
  slopes: Float64Array.of(-12, -9, 36, -2, -2),
};
const straight: Series = { times: Float64Array.of(0, 2, 2, 4), values: Float64Array.of(0, 4, 1, 1), slopes: undefined };

describe('series', () => {
  it('exact: values between rows, at rows, at a jump and beyond the ends', () => {
    expect(valueAt(cubic, 0.5)).toBeCloseTo(0.125 - 6, 13);
    expect(valueAt(cubic, 2)).toBeCloseTo(-16, 13);
    expect(valueAt(cubic, 4)).toBe(5);
    expect(valueAt(cubic, 5)).toBeCloseTo(3, 13);
    expect([-1, 9].map((t) => valueAt(cubic, t))).toEqual([0, 1]);
    expect(valueAt(straight, 1)).toBe(2);
  });

  it('exact: extremes lie where the cubic turns, also between rows, and within the times asked for', () => {
    const low = least(cubic);
    expect(low.value).toBeCloseTo(-16, 12);
    expect(low.time).toBeCloseTo(2, 7);
    expect(greatest(cubic)).toEqual({ value: 16, time: 4 });
    expect(greatest(cubic, 4, 6)).toEqual({ value: 5, time: 4 });
    expect(least(cubic, 0, 1).value).toBeCloseTo(-11, 12);
    expect(greatest(cubic, 3, 3.5).value).toBeCloseTo(3.5 ** 3 - 42, 12);
  });

  it('exact: integrals and means of the whole and of parts', () => {
    expect(integral(cubic, 0, 4)).toBeCloseTo(64 - 96, 12);
    expect(integral(cubic, 0.5, 3)).toBeCloseTo((81 - 0.0625) / 4 - 6 * (9 - 0.25), 12);
    expect(integral(cubic)).toBeCloseTo(-32 + 6, 12);
    expect(mean(straight)).toBeCloseTo((4 + 2) / 4, 13);
    expect(mean(straight, 1, 1)).toBe(2);
  });

  it('exact: time above a level, in and out several times', () => {
    // t³ - 12 t > 0 only after √12; the line is above 2 until 5.5; the level 0 lies on its start.
    expect(timeAbove(cubic, 0)).toBeCloseTo(4 - Math.sqrt(12) + 2, 10);
    expect(timeAbove(cubic, 2, 4, 6)).toBeCloseTo(1.5, 12);
    expect(timeAbove(cubic, -11)).toBeCloseTo(1 + (4 - (Math.sqrt(1 + 44) - 1) / 2) + 2, 9);
    expect(timeAbove(straight, 1)).toBeCloseTo(1.5, 13);
  });

  it('exact: greatest moving mean of a triangle', () => {
    const triangle: Series = {
      times: Float64Array.of(0, 10, 20),
      values: Float64Array.of(0, 10, 0),
      slopes: undefined,
    };
    const { value, time } = greatestMovingMean(triangle, 4);
    expect(value).toBeCloseTo(9, 9);
    expect(time).toBeCloseTo(12, 4);
    expect(greatestMovingMean(triangle, 50).value).toBeCloseTo(5, 12);
    expect(() => greatestMovingMean(triangle, 0)).toThrow('length is 0; it must be above 0');
  });

  it('exact: even samples', () => {
    const { times, values } = resample(straight, 5);
    expect([...times]).toEqual([0, 1, 2, 3, 4]);
    expect([...values]).toEqual([0, 2, 1, 1, 1]);
    expect(() => resample(straight, 1)).toThrow('count is 1; it must be 2 or more');
  });

  it('exact: a column by its name; a name that is nowhere is told', () => {
    const table = { names: ['a', 'b'], values: Float64Array.of(1, 2, 3, 4) };
    expect([...seriesOf(Float64Array.of(0, 1), table, 'b').values]).toEqual([2, 4]);
    expect(() => seriesOf(Float64Array.of(0, 1), table, 'c')).toThrow('name is "c"; the record has a, b');
  });
});
