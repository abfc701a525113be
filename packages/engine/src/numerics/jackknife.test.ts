import { expect, it } from 'vitest';
import { jackknifeError } from './jackknife.ts';
import { randomStream } from './random.ts';

it('exact: of a mean it is the standard error of the groups’ means', () => {
  const random = randomStream(2);
  const groups = Array.from({ length: 8 }, random);
  const mean = groups.reduce((sum, value) => sum + value, 0) / 8;
  const without = groups.map((value) => (8 * mean - value) / 7);
  const plain = Math.sqrt(groups.reduce((sum, value) => sum + (value - mean) ** 2, 0) / 7 / 8);
  expect(jackknifeError(without)).toBeCloseTo(plain, 12);
});

it('limit: one group tells nothing of an error', () => {
  expect(jackknifeError([1])).toBeNaN();
});
