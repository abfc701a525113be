import { describe, expect, it } from 'vitest';
import { type Method, ROS34PW2 } from './rosenbrock.ts';

/** Residuals of the order conditions of a W-method (any matrix), by order. */
function conditions({ tableau, gamma }: Method, weights: readonly number[]): { order: number; miss: number }[] {
  const stages = weights.length;
  const range = Array.from({ length: stages }, (_, i) => i);
  const alpha = (i: number, j: number): number => tableau.alpha[i]![j] ?? 0;
  const lower = (i: number, j: number): number => (i === j ? gamma : (tableau.lower[i]![j] ?? 0));
  const row = (of: (i: number, j: number) => number, i: number): number => range.reduce((s, j) => s + of(i, j), 0);
  const sum = (term: (i: number) => number): number => range.reduce((s, i) => s + weights[i]! * term(i), 0);
  const twice =
    (first: typeof alpha, second: typeof alpha) =>
    (i: number): number =>
      range.reduce((s, j) => s + first(i, j) * row(second, j), 0);
  return [
    { order: 1, miss: sum(() => 1) - 1 },
    { order: 2, miss: sum((i) => row(alpha, i)) - 1 / 2 },
    { order: 2, miss: sum((i) => row(lower, i)) },
    { order: 3, miss: sum((i) => row(alpha, i) ** 2) - 1 / 3 },
    { order: 3, miss: sum(twice(alpha, alpha)) - 1 / 6 },
    { order: 3, miss: sum(twice(alpha, lower)) },
    { order: 3, miss: sum(twice(lower, alpha)) },
    { order: 3, miss: sum(twice(lower, lower)) },
  ];
}

describe('ROS34PW2', () => {
  it('exact: the method and its embedded one meet every order condition', () => {
    for (const { order, miss } of conditions(ROS34PW2, ROS34PW2.tableau.weights)) {
      if (order <= 3) expect(Math.abs(miss)).toBeLessThan(2e-14);
    }
    for (const { order, miss } of conditions(ROS34PW2, ROS34PW2.tableau.embedded)) {
      if (order <= 2) expect(Math.abs(miss)).toBeLessThan(2e-14);
    }
  });

  it('exact: stiffly accurate, so that a step ends where its last stage stands plus that stage', () => {
    const { a, m } = ROS34PW2;
    m.forEach((share, j) => {
      expect(share).toBeCloseTo(j === 3 ? 1 : a[3]![j]!, 13);
    });
  });
});
