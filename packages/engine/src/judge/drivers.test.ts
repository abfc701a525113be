import { describe, expect, it } from 'vitest';
import { centredRanks, driversOf } from './drivers.ts';
import { sampleColumn } from './samples.ts';

const columns = (count: number, samples: number, seed: number): Map<string, number[]> =>
  new Map(Array.from({ length: count }, (_, at) => [`input ${at}`, sampleColumn(`input ${at}`, samples, seed)]));

describe('driversOf', () => {
  it('exact: ties share their mean rank', () => {
    expect(centredRanks([5, 1, 5, 9])).toEqual([0, -1.5, 0, 1.5]);
  });

  it('exact: a result that follows one input has it as its only driver, with the whole variance', () => {
    const inputs = columns(40, 24, 1);
    const drivers = driversOf(
      inputs,
      inputs.get('input 7')!.map((u) => Math.exp(5 * u)),
    );
    expect(drivers).toHaveLength(1);
    expect(drivers[0]!.path).toBe('input 7');
    expect(drivers[0]!.share).toBeCloseTo(1, 12);
  });

  it('property: finds two drivers in the order of their strength; shares follow the squares of the coefficients', () => {
    const inputs = columns(30, 400, 2);
    const [strong, weak] = [inputs.get('input 3')!, inputs.get('input 11')!];
    const drivers = driversOf(
      inputs,
      strong.map((u, at) => 2 * u - weak[at]!),
    );
    expect(drivers.slice(0, 2).map(({ path }) => path)).toEqual(['input 3', 'input 11']);
    expect(drivers[0]!.share).toBeGreaterThan(0.72); // 4/5 in values, a little less in ranks
    expect(drivers[0]!.share).toBeLessThan(0.88);
    expect(drivers[0]!.share + drivers[1]!.share).toBeGreaterThan(0.95);
  });

  it('property: noise names an input in one case of ten at most, although there are more inputs than samples', () => {
    const named = Array.from({ length: 60 }, (_, seed) =>
      driversOf(columns(50, 24, seed), sampleColumn('the result itself', 24, seed)),
    ).filter((drivers) => drivers.length > 0);
    expect(named.length).toBeLessThan(7);
  });

  it('limit: a result that never changes has no driver', () => {
    expect(driversOf(columns(3, 24, 1), new Array<number>(24).fill(4))).toEqual([]);
  });
});
