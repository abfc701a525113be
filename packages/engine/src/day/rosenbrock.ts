// The time integrator's coefficients: a W-method, whose order holds for any matrix, so that air flows may be frozen in it
// while every stage still solves them anew. Stiffly stable; with the exact matrix L-stable.

interface Tableau {
  readonly gamma: number;
  readonly alpha: readonly (readonly number[])[];
  readonly lower: readonly (readonly number[])[];
  readonly weights: readonly number[];
  readonly embedded: readonly number[];
  /** Order of the error estimate + 1: exponent of the step control. */
  readonly errorOrder: number;
}

/**
 * With Γ = (γ_ij) the stages are solved as
 *     (1/(γh) - J) U_i = f(y + Σ a_ij U_j) + Σ (c_ij/h) U_j + h g_i f_t,      y_new = y + Σ m_i U_i,  error = Σ e_i U_i,
 * with a = α Γ⁻¹, c = -Γ⁻¹ (below the diagonal), m = b Γ⁻¹, g_i = Σ γ_ij (E. Hairer, G. Wanner, Solving ODEs II, 1996, IV.7).
 */
export interface Method {
  readonly stages: number;
  readonly gamma: number;
  readonly a: readonly Float64Array[];
  readonly c: readonly Float64Array[];
  readonly m: Float64Array;
  readonly e: Float64Array;
  /** Time of each stage as a share of the step. */
  readonly node: Float64Array;
  readonly g: Float64Array;
  /** Weights b of the stages in the plain form: fluxes of the step are Σ b_i (flux at stage + its slope · U_i). */
  readonly b: Float64Array;
  readonly errorOrder: number;
  readonly tableau: Tableau;
}

function transform(tableau: Tableau): Method {
  const { gamma, alpha, lower, weights, embedded, errorOrder } = tableau;
  const stages = weights.length;
  const range = Array.from({ length: stages }, (_, i) => i);
  const full = range.map((i) => range.map((j) => (i === j ? gamma : (lower[i]![j] ?? 0))));
  const inverse = range.map(() => new Array<number>(stages).fill(0));
  for (const j of range) {
    for (let i = j; i < stages; i += 1) {
      let sum = i === j ? 1 : 0;
      for (let k = j; k < i; k += 1) sum -= full[i]![k]! * inverse[k]![j]!;
      inverse[i]![j] = sum / gamma;
    }
  }
  const times = (row: readonly number[], j: number): number =>
    row.reduce((sum, value, k) => sum + value * inverse[k]![j]!, 0);
  const m = Float64Array.from(range, (j) => times(weights, j));
  return {
    stages,
    gamma,
    a: range.map((i) => Float64Array.from(range, (j) => times(alpha[i]!, j))),
    c: range.map((i) => Float64Array.from(range, (j) => (j < i ? -inverse[i]![j]! : 0))),
    m,
    e: Float64Array.from(range, (j) => m[j]! - times(embedded, j)),
    node: Float64Array.from(range, (i) => alpha[i]!.reduce((sum, value) => sum + value, 0)),
    g: Float64Array.from(range, (i) => full[i]!.reduce((sum, value) => sum + value, 0)),
    b: Float64Array.from(weights),
    errorOrder,
    tableau,
  };
}

/**
 * Order 3 with an embedded order 2, four stages, stiffly accurate: ROS34PW2 of J. Rang, L. Angermann, BIT 45 (2005) 761.
 * The two-stage method of order 2 by Verwer et al. (1999) was tried beside it: on the frozen day it took nearly twice the time at
 * equal error.
 * Coefficients from memory; the tests check all order conditions of a W-method to rounding.
 */
export const ROS34PW2: Method = transform({
  gamma: 4.35866521508459e-1,
  alpha: [[], [8.7173304301691801e-1], [8.4457060015369423e-1, -1.1299064236484185e-1], [0, 0, 1]],
  lower: [
    [],
    [-8.7173304301691801e-1],
    [-9.0338057013044082e-1, 5.4180672388095326e-2],
    [2.4212380706095346e-1, -1.2232505839045147, 5.4526025533510214e-1],
  ],
  weights: [2.4212380706095346e-1, -1.2232505839045147, 1.545260255335102, 4.35866521508459e-1],
  embedded: [3.7810903145819369e-1, -9.6042292212423178e-2, 5e-1, 2.179332607542295e-1],
  errorOrder: 3,
});
