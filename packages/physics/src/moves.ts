// Moves of a machine that starts, turns and stops with one acceleration: how fast it may take a corner, how long a move lasts.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';

/** Speeds that were computed one from another may miss by so much of their squares. */
const ROUNDING = 1e-9;

/**
 * Highest speed at the end of a way that begins at another speed: going forward from a start, or backward from a stop.
 *
 *     v = √(v0² + 2 a D)
 *
 * @param speed - v0 at the other end, m/s, 0 or more.
 * @param acceleration - a, m/s², above 0.
 * @param distance - D, m, 0 or more.
 * @returns v in m/s, never below v0.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: one constant acceleration. Source: kinematics; Galileo, Two New Sciences, 1638, Third Day. Checked: formula (memory).
 *
 * @example From rest over 15 mm at 1.5 m/s²
 * ```ts
 * reachedSpeed(0, 1.5, 0.015); // => 0.2121
 * ```
 */
export function reachedSpeed(speed: number, acceleration: number, distance: number): number {
  mustNotBeNegative('reachedSpeed', 'speed', speed);
  mustBePositive('reachedSpeed', 'acceleration', acceleration);
  mustNotBeNegative('reachedSpeed', 'distance', distance);
  return Math.sqrt(speed * speed + 2 * acceleration * distance);
}

/**
 * Time of a straight move that speeds up, holds its speed and slows down again.
 *
 *     vp = √((2 a D + v0² + v1²)/2)
 *     vp ≤ v: t = (vp - v0)/a + (vp - v1)/a
 *     else:   t = (v - v0)/a + (v - v1)/a + (D - (v² - v0²)/2a - (v² - v1²)/2a)/v
 *
 * | symbol | meaning                                          | unit |
 * | ------ | ------------------------------------------------ | ---- |
 * | D      | length of the move                               | m    |
 * | v      | speed that was asked for                         | m/s  |
 * | a      | acceleration, and as much to slow down           | m/s² |
 * | v0, v1 | speed at its beginning and at its end            | m/s  |
 * | vp     | speed where it turns from speeding up to slowing | m/s  |
 *
 * @param distance - D, above 0.
 * @param speed - v, above 0.
 * @param acceleration - a, above 0.
 * @param entry - v0, 0 to v.
 * @param exit - v1, 0 to v; the way must suffice to get there from v0.
 * @returns t in s, never below D/v.
 * @throws RangeError when an argument is nonsense or the way too short for the change of speed.
 *
 * @remarks
 * Valid: acceleration sets in at once; where it sets in gradually the move lasts longer.
 * Source: kinematics of constant acceleration. Checked: formula (memory).
 *
 * @example 100 mm and 2 mm at 150 mm/s and 1.5 m/s², from rest to rest; 10 mm within a chain
 * ```ts
 * moveTime(0.1, 0.15, 1.5, 0, 0); // => 0.76667
 * moveTime(0.002, 0.15, 1.5, 0, 0); // => 0.07303
 * moveTime(0.01, 0.1, 1, 0.02, 0.01); // => 0.17250
 * ```
 */
export function moveTime(distance: number, speed: number, acceleration: number, entry: number, exit: number): number {
  mustBePositive('moveTime', 'distance', distance);
  mustBePositive('moveTime', 'speed', speed);
  mustBePositive('moveTime', 'acceleration', acceleration);
  mustLieWithin('moveTime', 'entry', entry, 0, speed * (1 + ROUNDING));
  mustLieWithin('moveTime', 'exit', exit, 0, speed * (1 + ROUNDING));
  const begin = entry * entry;
  const end = exit * exit;
  const all = 2 * acceleration * distance;
  const most = (speed * speed * (1 + ROUNDING) + all) * ROUNDING;
  mustLieWithin('moveTime', 'change of speed squared', Math.abs(end - begin), 0, all + most);
  const peak = 0.5 * (all + begin + end);
  if (peak <= speed * speed) {
    return Math.max((2 * Math.sqrt(peak) - entry - exit) / acceleration, distance / speed);
  }
  const ramps = (2 * speed * speed - begin - end) / (2 * acceleration);
  return (2 * speed - entry - exit) / acceleration + (distance - ramps) / speed;
}

/**
 * Speed at which a corner may be taken so that an arc laid into it stays within a distance of its point.
 *
 *     r = δ sin(θ/2)/(1 - sin(θ/2)),   vj = √(a r)
 *
 * θ is the angle between the two lines at the corner: 180° goes straight on, 0° turns back.
 *
 * @param acceleration - a, m/s², above 0.
 * @param deviation - δ: how far the arc passes from the corner's point, m, 0 or more.
 * @param together - Cosine of the change of direction: product of both directions, -1 turns back, 1 goes straight on.
 * @returns vj in m/s; 0 where it turns back, Infinity where it goes straight on.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: sets a speed, no path: the machine goes through the point all the same. Machines with a set step of speed for each axis turn
 * faster or slower. Source: an arc that touches both lines, and its centripetal acceleration. Checked: formula (memory), geometry (exact).
 *
 * @example A right angle and a turn of 60° at 1.5 m/s² and 20 µm
 * ```ts
 * cornerSpeed(1.5, 0.00002, 0); // => 0.00851
 * cornerSpeed(1.5, 0.00002, 0.5); // => 0.01393
 * ```
 */
export function cornerSpeed(acceleration: number, deviation: number, together: number): number {
  mustBePositive('cornerSpeed', 'acceleration', acceleration);
  mustNotBeNegative('cornerSpeed', 'deviation', deviation);
  mustLieWithin('cornerSpeed', 'together', together, -1 - ROUNDING, 1 + ROUNDING);
  const half = Math.sqrt(Math.max(0, 0.5 * (1 + together))); // sin(θ/2)
  if (half >= 1) return Infinity;
  return Math.sqrt((acceleration * deviation * half) / (1 - half));
}

/**
 * Highest speed on an arc whose pull inwards stays within an acceleration.
 *
 *     v = √(a R)
 *
 * @param acceleration - a, m/s², above 0.
 * @param radius - R, m, above 0.
 * @returns v in m/s.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid: any. Source: centripetal acceleration; Huygens, Horologium Oscillatorium, 1673. Checked: formula (memory).
 *
 * @example A hole of 10 mm at 1.5 m/s²
 * ```ts
 * arcSpeed(1.5, 0.005); // => 0.0866
 * ```
 */
export function arcSpeed(acceleration: number, radius: number): number {
  mustBePositive('arcSpeed', 'acceleration', acceleration);
  mustBePositive('arcSpeed', 'radius', radius);
  return Math.sqrt(acceleration * radius);
}
