// The largest mean of a course over any window of a given length.

import { hermite, hermiteIntegral } from '../day/hermite.ts';
import { type Course, lengthOf, type Moment, meanOf, pieceIntegral } from './course.ts';
import { type Places, windowsOver } from './windows.ts';
import { zeros } from './zeros.ts';

/**
 * Largest mean over any window of the given length. A day that is too short for the window is averaged as a whole; one that
 * repeats is followed round into its next morning.
 */
export function largestMean(course: Course, window: number, repeats: boolean): Moment {
  const { times } = course;
  if (!(lengthOf(course) > window)) return { value: meanOf(course), time: times[times.length - 1]! };
  const { ends, begins } = windowsOver(times, window, repeats);
  const sums = sumsOf(course);
  const total = sums[times.length - 1]!;
  const means = zeros(ends.times.length);
  addIntegrals(means, 1, course, sums, ends);
  for (let at = 0; at < means.length; at += 1) if (begins.times[at]! > ends.times[at]!) means[at]! += total;
  addIntegrals(means, -1, course, sums, begins);
  let best = 0;
  for (let at = 0; at < means.length; at += 1) {
    means[at]! /= window;
    if (means[at]! > means[best]!) best = at;
  }
  let found: Moment = { value: means[best]!, time: ends.times[best]! };
  let most = found.value;
  // Between two such ends the slope of the mean, value(end) − value(begin), is a straight line (nearly, for cubics): the mean is
  // largest where that line falls through zero. It cannot rise by more than the course's whole range would lift it.
  const range = rangeOf(course);
  for (let at = 0; at + 1 < means.length; at += 1) {
    const gap = ends.times[at + 1]! - ends.times[at]!;
    if (!(gap > 0)) continue;
    if (Math.max(means[at]!, means[at + 1]!) + (gap * range) / window <= most) continue;
    const early = valueAfter(course, ends, at, gap / 4) - valueAfter(course, begins, at, gap / 4);
    const late = valueAfter(course, ends, at, (3 * gap) / 4) - valueAfter(course, begins, at, (3 * gap) / 4);
    if (early <= late) continue;
    const step = gap * (0.25 + (0.5 * early) / (early - late));
    if (!(step > 0 && step < gap)) continue;
    const end = ends.times[at]! + step;
    const begin = begins.times[at]! + step;
    const whole = integralTo(course, sums, end, ends.rows[at]!) + (begin > end ? total : 0);
    const mean = (whole - integralTo(course, sums, begin, begins.rows[at]!)) / window;
    if (mean <= most) continue;
    most = mean;
    found = { value: mean, time: end };
  }
  return found;
}

/** Integral from the start to each row. */
function sumsOf(course: Course): Float64Array {
  const sums = zeros(course.times.length);
  for (let row = 1; row < sums.length; row += 1) sums[row] = sums[row - 1]! + pieceIntegral(course, row);
  return sums;
}

function rangeOf({ values }: Course): number {
  let least = values[0]!;
  let most = least;
  for (let row = 1; row < values.length; row += 1) {
    const value = values[row]!;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  return most - least;
}

/** Adds the integral from the course's start to each place, or takes it off. */
function addIntegrals(to: Float64Array, sign: 1 | -1, course: Course, sums: Float64Array, places: Places): void {
  const { times, values, slopes } = course;
  for (let at = 0; at < to.length; at += 1) {
    const row = places.rows[at]!;
    const span = places.times[at]! - times[row]!;
    let integral = sums[row]!;
    if (span > 0 && row + 1 < times.length) {
      const length = times[row + 1]! - times[row]!;
      const y0 = values[row]!;
      const y1 = values[row + 1]!;
      if (slopes === undefined) integral += span * (y0 + ((y1 - y0) * span) / (2 * length));
      else {
        // `hermiteIntegral` written out: thousands of calls with six numbers each are slower than what they reckon.
        const u = span / length;
        const u2 = u * u;
        const u3 = u2 * u;
        const u4 = u3 * u;
        const bend = slopes[row]! * (0.5 * u2 - (2 / 3) * u3 + 0.25 * u4) + slopes[row + 1]! * (0.25 * u4 - u3 / 3);
        integral += length * (y0 * (u - u3 + 0.5 * u4) + y1 * (u3 - 0.5 * u4) + length * bend);
      }
    }
    to[at]! += sign * integral;
  }
}

/** Integral from the course's start to a time in the interval after `row`. */
function integralTo(course: Course, sums: Float64Array, time: number, row: number): number {
  const { times, values, slopes } = course;
  const span = time - times[row]!;
  if (!(span > 0) || row + 1 >= times.length) return sums[row]!;
  const length = times[row + 1]! - times[row]!;
  const y0 = values[row]!;
  const y1 = values[row + 1]!;
  if (slopes === undefined) return sums[row]! + span * (y0 + ((y1 - y0) * span) / (2 * length));
  return sums[row]! + hermiteIntegral(span / length, length, y0, slopes[row]!, y1, slopes[row + 1]!);
}

/** The course's value a step after a place, still before the row that follows. */
function valueAfter({ times, values, slopes }: Course, places: Places, at: number, step: number): number {
  const row = places.rows[at]!;
  const span = places.times[at]! + step - times[row]!;
  if (!(span > 0) || row + 1 >= times.length) return values[row]!;
  const length = times[row + 1]! - times[row]!;
  const y0 = values[row]!;
  const y1 = values[row + 1]!;
  if (slopes === undefined) return y0 + ((y1 - y0) * span) / length;
  return hermite(span / length, length, y0, slopes[row]!, y1, slopes[row + 1]!);
}
