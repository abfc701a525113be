// How far machines reach: the union over every commanded position of what moves, with all that hangs on it.

import { mustBeFinite, mustBePositive, mustNotBeNegative } from './argument.ts';

export interface BedMotion {
  /** Plate in the direction in which it moves, m. */
  readonly plate: number;
  /** Whole way, m. */
  readonly travel: number;
  /** Middle of the way behind the middle of the frame, m. */
  readonly offset: number;
  /** Knob or clip before the plate, m. */
  readonly clip: number;
  /** Cable and strain relief behind it, m. */
  readonly cable: number;
}

export interface Reach {
  /** Before the middle of the frame, m. */
  readonly front: number;
  /** Behind it, m. */
  readonly rear: number;
}

/**
 * How far a bed that moves in depth reaches before and behind the middle of its frame.
 *
 *     front = s/2 - o + P/2 + c_f,   rear = s/2 + o + P/2 + c_r
 *
 * | symbol   | meaning                                    | unit |
 * | -------- | ------------------------------------------ | ---- |
 * | s, o     | whole way; its middle behind the frame's   | m    |
 * | P        | plate in that direction                    | m    |
 * | c_f, c_r | clip before the plate, cable behind it     | m    |
 *
 * @param motion - Plate above 0, travel, clip and cable 0 or more, offset any.
 * @returns m.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: any. Source: geometry, union of both ends of the way. Checked: exact.
 *
 * @example A plate of 235 mm that travels 235 mm, with a clip of 10 and a cable of 50 mm
 * ```ts
 * bedReach({ plate: 0.235, travel: 0.235, offset: 0, clip: 0.01, cable: 0.05 }).front; // => 0.245
 * bedReach({ plate: 0.235, travel: 0.235, offset: 0, clip: 0.01, cable: 0.05 }).rear; // => 0.285
 * ```
 */
export function bedReach({ plate, travel, offset, clip, cable }: BedMotion): Reach {
  mustBePositive('bedReach', 'plate', plate);
  mustNotBeNegative('bedReach', 'travel', travel);
  mustBeFinite('bedReach', 'offset', offset);
  mustNotBeNegative('bedReach', 'clip', clip);
  mustNotBeNegative('bedReach', 'cable', cable);
  const half = (travel + plate) / 2;
  return { front: half - offset + clip, rear: half + offset + cable };
}

/**
 * Depth that a machine sweeps: frame and bed together.
 *
 *     swept = max(d/2, front) + max(d/2, rear)
 *
 * @param frame - d: depth of the frame, m, 0 or more.
 * @param reach - Of its bed from the frame's middle.
 * @returns m; never below the frame.
 * @throws RangeError when the frame is nonsense.
 *
 * @remarks Valid: any. Source: geometry. Checked: exact.
 *
 * @example The bed above in a frame of 400 mm: 530 mm, though the frame is 400
 * ```ts
 * sweptDepth(0.4, { front: 0.245, rear: 0.285 }); // => 0.530
 * ```
 */
export function sweptDepth(frame: number, { front, rear }: Reach): number {
  mustNotBeNegative('sweptDepth', 'frame', frame);
  return Math.max(frame / 2, front) + Math.max(frame / 2, rear);
}

/**
 * Footprint of a delta machine, whose three columns stand on a circle: √3 R wide, 1.5 R deep.
 *
 * @param radius - R from the middle to the columns' outer edges, m, above 0.
 * @returns Width and depth of the box around the triangle, m.
 * @throws RangeError when the radius is not above 0.
 *
 * @remarks Valid: equal sides, one side to the front. Source: geometry of the equilateral triangle. Checked: exact.
 *
 * @example Columns at 200 mm
 * ```ts
 * deltaFootprint(0.2).width; // => 0.346
 * deltaFootprint(0.2).depth; // => 0.300
 * ```
 */
export function deltaFootprint(radius: number): { readonly width: number; readonly depth: number } {
  mustBePositive('deltaFootprint', 'radius', radius);
  return { width: Math.sqrt(3) * radius, depth: 1.5 * radius };
}
