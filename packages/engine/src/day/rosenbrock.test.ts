import { describe, expect, it } from 'vitest';
import { type Method, ROS2, ROS34PW2 } from './rosenbrock.ts';

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

describe('W-methods', () => {
  it.each([
    ['ROS2', ROS2, 2, 1],
    ['ROS34PW2', ROS34PW2, 3, 2],
  ] as const)('exact: %s and its embedded method meet every order condition', (_, method, order, embeddedOrder) => {
    for (const { order: of, miss } of conditions(method, method.tableau.weights)) {
      if (of <= order) expect(Math.abs(miss)).toBeLessThan(2e-14);
    }
    for (const { order: of, miss } of conditions(method, method.tableau.embedded)) {
      if (of <= embeddedOrder) expect(Math.abs(miss)).toBeLessThan(2e-14);
    }
  });
});
