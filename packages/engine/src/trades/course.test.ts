import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DayRecord } from '../day/record.ts';
import {
  type Course,
  columnOf,
  courseOf,
  firstReaching,
  integralOf,
  integralOfProduct,
  largest,
  meanOf,
  timeAbove,
  valueAt,
  within,
} from './course.ts';
import { largestMean } from './largest-mean.ts';

const course = (...points: [number, number][]): Course => ({
  times: Float64Array.from(points, ([time]) => time),
  values: Float64Array.from(points, ([, value]) => value),
});
const tent = course([0, 0], [10, 10], [20, 0]);
const jump = course([0, 1], [10, 1], [10, 5], [20, 5]);

describe('course', () => {
  it('exact: a tent has its peak, its integral and its time above half height', () => {
    expect(largest(tent)).toEqual({ value: 10, time: 10, row: 1 });
    expect(integralOf(tent)).toBe(100);
    expect(timeAbove(tent, 5)).toBe(10);
    expect(meanOf(within(tent, 5, 15))).toBe(7.5);
    expect(firstReaching(tent, 4, 'below')).toBe(4);
    expect(firstReaching(within(tent, 10, 20), 4, 'above')).toBe(16);
    expect(firstReaching(tent, 11, 'below')).toBeUndefined();
  });

  it('exact: a part starts after a jump and ends before one', () => {
    expect([...within(jump, 10, 20).values]).toEqual([5, 5]);
    expect([...within(jump, 0, 10).values]).toEqual([1, 1]);
    expect([...within(jump, 10, 15).times]).toEqual([10, 15]);
    expect(valueAt(jump, 10)).toBe(5);
    expect(valueAt(jump, 9.9)).toBe(1);
    expect(timeAbove(jump, 3)).toBe(10);
  });

  it('exact: the largest mean over a window lies around the peak; a repeating day goes on into its morning', () => {
    expect(largestMean(tent, 10, false).value).toBeCloseTo(7.5, 12); // window 5 … 15, both ends between rows
    const night = course([0, 8], [5, 8], [5, 0], [15, 0], [15, 8], [20, 8]);
    expect(largestMean(night, 10, false).value).toBe(4);
    expect(largestMean(night, 10, true).value).toBe(8);
    expect(largestMean(tent, 40, false).value).toBe(5);
  });

  it('exact: with slopes the lines are cubics: t³ is met in value, integral, crossing and moving mean', () => {
    const times = [0, 1, 3, 4];
    const cubic: Course = {
      times: Float64Array.from(times),
      values: Float64Array.from(times, (t) => t ** 3),
      slopes: Float64Array.from(times, (t) => 3 * t ** 2),
    };
    expect(valueAt(cubic, 2)).toBeCloseTo(8, 12);
    expect(integralOf(cubic)).toBeCloseTo(64, 12);
    expect(integralOf(within(cubic, 0.5, 3.5))).toBeCloseTo((3.5 ** 4 - 0.5 ** 4) / 4, 12);
    expect(firstReaching(cubic, 8, 'below')).toBeCloseTo(2, 9);
    expect(timeAbove(cubic, 8)).toBeCloseTo(2, 9);
    expect(largestMean(cubic, 2, false).value).toBeCloseTo((4 ** 4 - 2 ** 4) / 8, 12);
    expect(integralOfProduct(cubic, cubic) / (4 ** 7 / 7)).toBeCloseTo(1, 1); // Simpson on degree six
  });

  it('exact: products of straight lines are integrated exactly', () => {
    expect(integralOfProduct(tent, tent)).toBeCloseTo(2000 / 3, 9);
  });

  it('property: a window mean lies between the day’s mean and its peak', () => {
    const points = fc.array(fc.double({ min: 0, max: 100, noNaN: true }), { minLength: 3, maxLength: 30 });
    fc.assert(
      fc.property(points, fc.integer({ min: 1, max: 20 }), fc.boolean(), (values, window, repeats) => {
        const made = course(...values.map((value, at): [number, number] => [at, value]));
        const { value } = largestMean(made, window, repeats);
        expect(value).toBeLessThanOrEqual(largest(made).value + 1e-9);
        if (repeats) expect(value).toBeGreaterThanOrEqual(meanOf(made) - 1e-9);
      }),
    );
  });
});

describe('columns of a record', () => {
  const names = Array.from({ length: 19 }, (_, column) => `place ${column}`);
  const table = { names, values: Float64Array.from({ length: 19 * 3 }, (_, at) => at) };
  const record = { times: Float64Array.of(0, 10, 20) } as unknown as DayRecord;

  it('exact: each holds its own numbers row by row, in whatever order they are asked for', () => {
    for (const column of [18, 0, 7, 8, 16, 3])
      expect([...columnOf(table, `place ${column}`)]).toEqual([column, 19 + column, 38 + column]);
    expect([...courseOf(record, table, 'place 9').values]).toEqual([9, 28, 47]);
  });

  it('exact: a course has slopes where the record has them for the same columns', () => {
    const slopes = { names, values: table.values.map((value) => -value) };
    expect([...courseOf(record, { ...table }, 'place 9', slopes).slopes!]).toEqual([-9, -28, -47]);
    const none = { names: [], values: new Float64Array() };
    expect(courseOf(record, { ...table }, 'place 9', none).slopes).toBeUndefined();
  });

  it('limit: a name that is no column is a fault', () => {
    expect(() => columnOf(table, 'nowhere')).toThrow('no column "nowhere"');
  });
});
