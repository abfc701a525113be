// Strokes of a machine that goes to and fro: how often it turns back, and how fast its motors step.

import { mustBePositive } from './argument.ts';

/**
 * How often a zig-zag swings to and fro.
 *
 *     t = L/v + v/a where the speed is reached (L ≥ v²/a), else 2 √(L/a);  f = 1/(2 t)
 *
 * @param length - L of one stroke, m, above 0.
 * @param speed - v, m/s, above 0.
 * @param acceleration - a, m/s², above 0.
 * @returns Frequency of the whole to and fro, Hz.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: each stroke begins and ends at rest; corners taken at speed are softer and faster. Source: kinematics. Checked: formula (memory).
 *
 * @example Filling a wall of 5 mm, and one of 0.5 mm
 * ```ts
 * reversalFrequency(0.005, 0.15, 5); // => 7.89
 * reversalFrequency(0.0005, 0.2, 10); // => 35.4
 * ```
 */
export function reversalFrequency(length: number, speed: number, acceleration: number): number {
  mustBePositive('reversalFrequency', 'length', length);
  mustBePositive('reversalFrequency', 'speed', speed);
  mustBePositive('reversalFrequency', 'acceleration', acceleration);
  const reached = length >= speed ** 2 / acceleration;
  const time = reached ? length / speed + speed / acceleration : 2 * Math.sqrt(length / acceleration);
  return 1 / (2 * time);
}

/**
 * The stroke that swings at a frequency: {@link reversalFrequency} the other way round.
 *
 * @param frequency - f, Hz, above 0.
 * @param speed - v, m/s, above 0.
 * @param acceleration - a, m/s², above 0.
 * @returns Length of one stroke, m.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid, Source, Checked: as {@link reversalFrequency}.
 *
 * @example At 10 Hz, mm
 * ```ts
 * 1000 * strokeAt(10, 0.1, 3); // => 1.875
 * ```
 */
export function strokeAt(frequency: number, speed: number, acceleration: number): number {
  mustBePositive('strokeAt', 'frequency', frequency);
  mustBePositive('strokeAt', 'speed', speed);
  mustBePositive('strokeAt', 'acceleration', acceleration);
  const time = 1 / (2 * frequency);
  const ramps = speed / acceleration;
  return time >= 2 * ramps ? speed * (time - ramps) : (acceleration * time ** 2) / 4;
}

/**
 * Full steps of a motor in a second.
 *
 *     f = v n/p
 *
 * @param speed - v of the belt, m/s, above 0.
 * @param travelPerTurn - p of the belt in a turn, m, above 0.
 * @param stepsPerTurn - n, above 0.
 * @returns Frequency, Hz; the current swings at a quarter of it.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid: belt drives. Source: kinematics. Checked: formula (memory).
 *
 * @example 100 mm/s, 40 mm and 200 steps a turn
 * ```ts
 * stepFrequency(0.1, 0.04, 200); // => 500
 * ```
 */
export function stepFrequency(speed: number, travelPerTurn: number, stepsPerTurn: number): number {
  mustBePositive('stepFrequency', 'speed', speed);
  mustBePositive('stepFrequency', 'travelPerTurn', travelPerTurn);
  mustBePositive('stepFrequency', 'stepsPerTurn', stepsPerTurn);
  return (speed * stepsPerTurn) / travelPerTurn;
}
