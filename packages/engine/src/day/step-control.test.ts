import { describe, expect, it } from 'vitest';
import { LINEAR, MOST, STEEP } from './first-step.ts';
import { ROS34PW2 } from './rosenbrock.ts';
import { newStepControl, nextLength, OWN_ERROR } from './step-control.ts';

/** Error estimate for y' = -y over the length z, from y = 1, and the error of the result. */
function errorsAt(z: number): { estimate: number; own: number } {
  const { stages, gamma, a, c, e, m } = ROS34PW2;
  const U: number[] = [];
  for (let i = 0; i < stages; i += 1) {
    const y = U.reduce((sum, value, j) => sum + a[i]![j]! * value, 1);
    const shares = U.reduce((sum, value, j) => sum + c[i]![j]! * value, 0);
    U.push((shares - z * y) / (1 / gamma + z));
  }
  const end = U.reduce((sum, value, j) => sum + m[j]! * value, 1);
  return { estimate: Math.abs(U.reduce((sum, value, j) => sum + e[j]! * value, 0)), own: Math.abs(end - Math.exp(-z)) };
}
const estimate = (z: number): number => errorsAt(z).estimate;

describe('the first step after a jump', () => {
  it('limit: the error estimate of a lone relaxing value stays below its three bounds', () => {
    for (let exponent = -3; exponent <= 5; exponent += 0.01) {
      const z = 10 ** exponent;
      expect(estimate(z)).toBeLessThanOrEqual(Math.min(STEEP * z ** 3, LINEAR * z, MOST));
    }
  });
  it('limit: and touches them', () => {
    expect(estimate(0.01)).toBeGreaterThan(0.96 * STEEP * 0.01 ** 3);
    expect(estimate(4.5)).toBeGreaterThan(0.99 * LINEAR * 4.5);
    expect(estimate(1e5)).toBeGreaterThan(0.97 * MOST);
  });
});

describe('how much an error estimate is minded', () => {
  it('limit: the result errs by less than OWN_ERROR h/τ of the estimate, and by little less where steps are short', () => {
    for (let exponent = -2; exponent <= 5; exponent += 0.01) {
      const z = 10 ** exponent;
      const { estimate: told, own } = errorsAt(z);
      expect(own).toBeLessThan(OWN_ERROR * z * told);
    }
    const { estimate: told, own } = errorsAt(0.01);
    expect(own).toBeGreaterThan(0.97 * OWN_ERROR * 0.01 * told);
  });
});

describe('the length of the next step', () => {
  it('exact: errors that follow their order keep a step that is just right, but for the safety', () => {
    const control = newStepControl();
    nextLength(control, 10, 1, 3, false);
    expect(nextLength(control, 10, 1, 3, false)).toBeCloseTo(9, 12);
  });
  it('order: an error that shrinks from step to step lets the next one grow more than its size alone would', () => {
    const control = newStepControl();
    nextLength(control, 10, 0.8, 3, false);
    const predicted = nextLength(control, 10, 0.4, 3, false);
    expect(predicted).toBeGreaterThan(10 * 0.9 * 0.4 ** (-1 / 3));
  });
  it('limit: after a failure the step does not grow, and by fourfold at most', () => {
    const control = newStepControl();
    expect(nextLength(control, 10, 1e-6, 3, true)).toBe(10);
    expect(nextLength(control, 10, 1e-9, 3, false)).toBe(40);
  });
});
