// How much of what one rectangle sends out reaches another: closed forms for the faces of a box.

import { mustBePositive } from './argument.ts';

/**
 * View factor between two equal rectangles that face one another squarely.
 *
 *     F = 2/(pi X Y) · ( ln sqrt((1+X²)(1+Y²)/(1+X²+Y²)) + X sqrt(1+Y²) atan(X/sqrt(1+Y²))
 *         + Y sqrt(1+X²) atan(Y/sqrt(1+X²)) - X atan X - Y atan Y ),    X = width/distance, Y = depth/distance
 *
 * @param width - m, above 0.
 * @param depth - m, above 0.
 * @param distance - m, above 0.
 * @returns F, 0 to 1, the same from either rectangle.
 * @throws RangeError when an argument is 0, negative or not a number.
 *
 * @remarks
 * Valid: diffuse faces with nothing between them.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 13.2.
 * Checked: memory; a value second-hand.
 *
 * @example Plates of 1 m by 0.5 m, 0.5 m apart (Holman, example 8-2 reads 0.285 off a chart)
 * ```ts
 * parallelViewFactor(1, 0.5, 0.5); // => 0.2859
 * ```
 */
export function parallelViewFactor(width: number, depth: number, distance: number): number {
  mustBePositive('parallelViewFactor', 'width', width);
  mustBePositive('parallelViewFactor', 'depth', depth);
  mustBePositive('parallelViewFactor', 'distance', distance);
  const X = width / distance;
  const Y = depth / distance;
  const x = Math.sqrt(1 + X * X);
  const y = Math.sqrt(1 + Y * Y);
  const logarithm = Math.log((x * y) / Math.sqrt(1 + X * X + Y * Y));
  const crossed = X * y * Math.atan(X / y) + Y * x * Math.atan(Y / x);
  return (2 / (Math.PI * X * Y)) * (logarithm + crossed - X * Math.atan(X) - Y * Math.atan(Y));
}

/**
 * View factor from one rectangle to another that stands on their common edge at a right angle.
 *
 *     F = 1/(pi W) · ( W atan(1/W) + H atan(1/H) - S atan(1/S)
 *         + ln( (1+W²)(1+H²)/(1+S²) · (W²(1+S²)/((1+W²)S²))^(W²) · (H²(1+S²)/((1+H²)S²))^(H²) ) / 4 ),
 *     W = sending/edge, H = receiving/edge, S² = W² + H²
 *
 * @param edge - Length of the common edge, m, above 0.
 * @param sending - Other side of the rectangle that sends, m, above 0.
 * @param receiving - Other side of the rectangle that receives, m, above 0.
 * @returns F, 0 to 1. The way back has F · sending / receiving.
 * @throws RangeError when an argument is 0, negative or not a number.
 *
 * @remarks
 * Valid: diffuse faces with nothing between them.
 * Source: Incropera and DeWitt, Fundamentals of Heat and Mass Transfer, table 13.2.
 * Checked: memory; a value second-hand.
 *
 * @example Two squares on one edge
 * ```ts
 * cornerViewFactor(1, 1, 1); // => 0.2000
 * ```
 */
export function cornerViewFactor(edge: number, sending: number, receiving: number): number {
  mustBePositive('cornerViewFactor', 'edge', edge);
  mustBePositive('cornerViewFactor', 'sending', sending);
  mustBePositive('cornerViewFactor', 'receiving', receiving);
  const W = sending / edge;
  const H = receiving / edge;
  const W2 = W * W;
  const H2 = H * H;
  const S2 = W2 + H2;
  const S = Math.sqrt(S2);
  const logarithm =
    Math.log(((1 + W2) * (1 + H2)) / (1 + S2)) +
    W2 * Math.log((W2 * (1 + S2)) / ((1 + W2) * S2)) +
    H2 * Math.log((H2 * (1 + S2)) / ((1 + H2) * S2));
  const angles = W * Math.atan(1 / W) + H * Math.atan(1 / H) - S * Math.atan(1 / S);
  return (angles + logarithm / 4) / (Math.PI * W);
}
