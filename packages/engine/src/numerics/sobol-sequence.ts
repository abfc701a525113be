// Sobol' sequences: points that fill a cube more evenly than random ones do (I. M. Sobol', USSR Comput. Math. Math. Phys. 7 (1967)
// 86-112), in the order of P. Bratley & B. L. Fox, Algorithm 659, ACM Trans. Math. Softw. 14 (1988) 88-100 (Gray code).

import { directionText } from './sobol-directions.data.ts';

const BITS = 32;

/** Polynomial and first odd numbers of each dimension but the first. */
const directions: readonly (readonly number[])[] = directionText
  .split(';')
  .map((entry) => entry.trim().split(/\s+/).map(Number));

/** Dimensions that have direction numbers. */
export const SOBOL_DIMENSIONS: number = directions.length + 1;

/**
 * The odd numbers m1, m2 … of a primitive polynomial x^s + a1 x^(s−1) + … + 1, continued from the first s of them:
 *
 *     m_k = 2 a1 m_(k−1) ⊕ 4 a2 m_(k−2) ⊕ … ⊕ 2^s m_(k−s) ⊕ m_(k−s)
 *
 * @param polynomial - Its coefficients, 0 or 1, read as one binary number: x³ + x + 1 is 11.
 * @param first - m1 … ms, odd, m_k below 2^k.
 * @returns m1 … m_count; exact up to count 32 (as whole numbers below 2^32).
 *
 * @example The worked example of Bratley & Fox 1988
 * ```ts
 * oddNumbers(11, [1, 3, 7], 6).join(' '); // => 1 3 7 5 7 43
 * ```
 */
export function oddNumbers(polynomial: number, first: readonly number[], count: number): number[] {
  const degree = first.length;
  const odd = first.slice(0, count);
  for (let at = degree; at < count; at += 1) {
    let next = odd[at - degree]!;
    for (let back = 1; back <= degree; back += 1) {
      const coefficient = (polynomial >>> (degree - back)) & 1;
      if (coefficient === 1) next ^= odd[at - back]! << back;
    }
    odd.push(next >>> 0);
  }
  return odd;
}

/** Direction numbers of a dimension, from 0: m_k / 2^k as binary fractions of 32 digits. */
function directionsOf(dimension: number): Uint32Array {
  const made = new Uint32Array(BITS);
  const [polynomial, ...first] = dimension === 0 ? [1] : directions[dimension - 1]!;
  const odd = dimension === 0 ? new Array<number>(BITS).fill(1) : oddNumbers(polynomial!, first, BITS);
  for (let at = 0; at < BITS; at += 1) made[at] = odd[at]! << (BITS - 1 - at);
  return made;
}

/**
 * One coordinate of the first points of the sequence, as binary fractions of 32 digits (times 2^−32 they lie in 0 ≤ u < 1). The first
 * point is the origin.
 *
 * @param dimension - From 0 to {@link SOBOL_DIMENSIONS} − 1.
 * @throws RangeError for another dimension.
 *
 * @example Third coordinate of the second to fifth point
 * ```ts
 * [...sobolDigits(2, 5)].slice(1).map((digits) => digits / 2 ** 32).join(' '); // => 0.5 0.25 0.75 0.625
 * ```
 */
export function sobolDigits(dimension: number, count: number): Uint32Array {
  if (!(Number.isInteger(dimension) && dimension >= 0 && dimension < SOBOL_DIMENSIONS))
    throw new RangeError(
      `sobolDigits: dimension is ${dimension}; it must be a whole number from 0 to ${SOBOL_DIMENSIONS - 1}`,
    );
  const steps = directionsOf(dimension);
  const points = new Uint32Array(count);
  for (let at = 1; at < count; at += 1) {
    // The last digit that is 0 in the number of the point before.
    const changed = 31 - Math.clz32(at & -at);
    points[at] = points[at - 1]! ^ steps[changed]!;
  }
  return points;
}
