import { describe, expect, it } from 'vitest';
import { randomStream, scramble, shuffled, textSeed } from './random.ts';

describe('random numbers', () => {
  it('published: the scrambler gives the hash test vectors of an empty text with seeds 1 and ffffffff (from memory)', () => {
    expect(scramble(0)).toBe(0);
    expect(scramble(1)).toBe(0x514e28b7);
    expect(scramble(0xffffffff)).toBe(0x81f16f39);
  });

  it('property: equal seeds give equal streams, other seeds other ones', () => {
    const take = (seed: number): number[] => {
      const random = randomStream(seed);
      return [random(), random(), random()];
    };
    expect(take(7)).toEqual(take(7));
    expect(take(7)).not.toEqual(take(8));
    expect(textSeed('room.humidity')).not.toBe(textSeed('room.humiditz'));
  });

  it('exact: mean 1/2, variance 1/12 and no correlation between neighbours, within four standard errors', () => {
    const random = randomStream(1);
    const values = Array.from({ length: 40_000 }, random);
    const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
    const variance = values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / values.length;
    const neighbours = values.slice(1).reduce((sum, value, at) => sum + (value - mean) * (values[at]! - mean), 0);
    expect(Math.abs(mean - 0.5)).toBeLessThan(4 * Math.sqrt(1 / 12 / values.length));
    expect(Math.abs(variance - 1 / 12)).toBeLessThan(4 * Math.sqrt(1 / 180 / values.length));
    expect(Math.abs(neighbours / values.length / variance)).toBeLessThan(4 / Math.sqrt(values.length));
  });

  it('property: shuffling keeps every number once', () => {
    expect(shuffled(24, randomStream(3)).sort((a, b) => a - b)).toEqual(Array.from({ length: 24 }, (_, at) => at));
  });
});
