import { STEFAN_BOLTZMANN } from '@stillair/physics';
import { expect, it } from 'vitest';
import { enclosureWeights, type Surface } from './enclosure-weights.ts';

/** Heat leaving surface 0 when the surfaces have these temperatures. */
function heatOfFirst(surfaces: readonly Surface[], kelvin: readonly number[]): number {
  const weights = enclosureWeights(surfaces);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = weights.reduce((sum, weight, index) => sum + weight * kelvin[index]! ** 4, 0) / total;
  return weights[0]! * STEFAN_BOLTZMANN * (kelvin[0]! ** 4 - mean);
}

it('exact: a small body in a large room, grey both: A1 σ ΔT⁴ / (1/ε1 + (A1/A2)(1/ε2 − 1))', () => {
  const [a1, e1, a2, e2] = [0.05, 0.8, 3, 0.9];
  const expected = (a1 * STEFAN_BOLTZMANN * (360 ** 4 - 300 ** 4)) / (1 / e1 + (a1 / a2) * (1 / e2 - 1));
  const got = heatOfFirst(
    [
      { area: a1, emissivity: e1 },
      { area: a2, emissivity: e2 },
    ],
    [360, 300],
  );
  expect(got).toBeCloseTo(expected, 6);
});

it('exact: six equal faces, one warm, black: the warm face sends all to the others', () => {
  const faces = Array.from({ length: 6 }, () => ({ area: 1, emissivity: 0.98 }));
  const got = heatOfFirst(faces, [310, 300, 300, 300, 300, 300]);
  const resistance = (1 - 0.98) / 0.98;
  const expected = (STEFAN_BOLTZMANN * (310 ** 4 - 300 ** 4)) / (resistance + 1 + resistance / 5);
  expect(got / expected).toBeCloseTo(1, 6);
});
