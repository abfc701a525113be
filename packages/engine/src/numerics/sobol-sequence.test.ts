import { describe, expect, it } from 'vitest';
import { directionText } from './sobol-directions.data.ts';
import { oddNumbers, SOBOL_DIMENSIONS, sobolDigits } from './sobol-sequence.ts';

const entries = directionText.split(';').map((entry) => entry.trim().split(/\s+/).map(Number));

/** x^exponent modulo a polynomial over two elements, by repeated squaring. */
function powerOfX(exponent: number, polynomial: number, degree: number): number {
  const times = (a: number, b: number): number => {
    let [product, factor] = [0, a];
    for (let rest = b; rest > 0; rest >>= 1) {
      if ((rest & 1) === 1) product ^= factor;
      factor <<= 1;
      if (((factor >> degree) & 1) === 1) factor ^= polynomial;
    }
    return product;
  };
  let [power, square] = [1, degree === 1 ? 1 : 2];
  for (let rest = exponent; rest > 0; rest >>= 1) {
    if ((rest & 1) === 1) power = times(power, square);
    square = times(square, square);
  }
  return power;
}

describe('Sobol’ sequence', () => {
  it('exact: every polynomial is primitive, and no other of its degree is left out', () => {
    const factors = (of: number): number[] =>
      Array.from({ length: of }, (_, at) => at + 1).filter(
        (each) => each > 1 && of % each === 0 && [2, 3, 5, 7, 11, 13, 17, 23, 31, 73, 89, 127].includes(each),
      );
    const wrong = entries.filter(([polynomial = 0, ...odd]) => {
      const degree = odd.length;
      const order = 2 ** degree - 1;
      return (
        polynomial >> degree !== 1 ||
        powerOfX(order, polynomial, degree) !== 1 ||
        factors(order).some((factor) => factor < order && powerOfX(order / factor, polynomial, degree) === 1)
      );
    });
    expect(wrong).toEqual([]);
    expect(new Set(entries.map(([polynomial]) => polynomial)).size).toBe(entries.length);
    // Primitive polynomials of degree s: φ(2^s − 1)/s.
    const counts = [1, 1, 2, 2, 6, 6, 18, 16, 48, 60, 176, 144];
    expect(counts.map((_, at) => entries.filter((entry) => entry.length === at + 2).length)).toEqual(counts);
  });

  it('property: first numbers are odd, and m_k is below 2^k', () => {
    expect(entries.filter(([, ...odd]) => odd.some((m, at) => m % 2 === 0 || m >= 2 ** (at + 1)))).toEqual([]);
  });

  it('exact: halving every axis parts the first 2^d points evenly in d dimensions (Sobol’’s property A), for every d up to 481', () => {
    // The first digits of the direction numbers as a matrix over two elements: every leading square must be regular.
    const size = SOBOL_DIMENSIONS;
    const rows = Array.from({ length: size }, (_, dimension) => firstDigits(dimension, size));
    const irregular: number[] = [];
    const reduced: { row: bigint; pivot: bigint }[] = [];
    for (let at = 0; at < size; at += 1) {
      let row = rows[at]!;
      for (const { row: earlier, pivot } of reduced) if ((row & pivot) !== 0n) row ^= earlier;
      const pivot = 1n << BigInt(at);
      // A leading square is regular as long as elimination without exchange meets its diagonal.
      if ((row & pivot) === 0n) irregular.push(at + 1);
      reduced.push({ row, pivot });
    }
    expect(irregular).toEqual([]);
  });

  it('property: every dyadic interval of each axis holds its share of the points', () => {
    for (let dimension = 0; dimension < SOBOL_DIMENSIONS; dimension += 1) {
      const cells = new Set(sobolDigits(dimension, 256).map((digits) => digits >>> 24));
      expect(cells.size, `dimension ${dimension}`).toBe(256);
    }
  });

  it('limit: continues beyond the first numbers of a polynomial, and refuses what has none', () => {
    expect(oddNumbers(3, [1], 5)).toEqual([1, 3, 5, 15, 17]);
    expect(() => sobolDigits(SOBOL_DIMENSIONS, 4)).toThrow('dimension is 481');
    expect(() => sobolDigits(0.5, 4)).toThrow('dimension is 0.5');
  });
});

/** The first digit of direction numbers 1 to `count` of a dimension: bit k − 1 of m_k; here without an end of their digits. */
function firstDigits(dimension: number, count: number): bigint {
  if (dimension === 0) return 1n;
  const [polynomial = 0, ...first] = entries[dimension - 1]!;
  const degree = first.length;
  const odd = first.map(BigInt);
  for (let at = degree; at < count; at += 1) {
    let next = odd[at - degree]!;
    for (let back = 1; back <= degree; back += 1)
      if (((polynomial >>> (degree - back)) & 1) === 1) next ^= odd[at - back]! << BigInt(back);
    odd.push(next);
  }
  return odd.slice(0, count).reduce((row, m, at) => row | (((m >> BigInt(at)) & 1n) << BigInt(at)), 0n);
}
