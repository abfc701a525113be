import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { meanRadiantFactors, starWeights } from './mean-radiant-star.ts';
import { parallelExchange, radiationFilm } from './radiation.ts';
import { radiosity } from './radiosity.ts';

describe('mean radiant star', () => {
  it('property: the factors of any box fulfil their own equation', () => {
    const side = fc.double({ min: 0.05, max: 3, noNaN: true });
    fc.assert(
      fc.property(side, side, side, (width, depth, height) => {
        const areas = [width * depth, width * depth, depth * height, depth * height, width * height, width * height];
        expectFulfilled(areas);
      }),
    );
  });

  it.each([[[1, 0.6, 0.5]], [[1, 0.3, 0.3, 0.41]], [[1, 0.334, 0.333, 0.334]], [[1, 1, 1]], [[4, 1, 1, 1, 1, 1]]])(
    'property: so do those of a space with one large face: %j',
    (areas) => {
      expectFulfilled(areas);
    },
  );

  it('exact: two parallel plates exchange as their closed form, whatever their emissivities', () => {
    const [first, second] = starWeights([1, 1], [0.9, 0.3]);
    const film = radiationFilm(1, 320, 300);
    const heat = (20 * film) / (1 / first! + 1 / second!);
    expect(heat).toBeCloseTo(parallelExchange(0.9, 320, 0.3, 300), 9);
  });

  it('exact: six equal black faces that see one another alike exchange as with all reflections', () => {
    const faces = Array.from({ length: 6 }, (_, at) => ({ area: 1, emissivity: 0.7, kelvin: at === 0 ? 301 : 300 }));
    const factors = faces.map((_, from) => faces.map((_, to) => (from === to ? 0 : 1 / 5)));
    const weights = starWeights([1, 1, 1, 1, 1, 1], [0.7, 0.7, 0.7, 0.7, 0.7, 0.7]);
    const rest = weights.slice(1).reduce((sum, weight) => sum + weight, 0);
    const heat = radiationFilm(1, 301, 300) / (1 / weights[0]! + 1 / rest);
    expect(heat).toBeCloseTo(radiosity(faces, factors)[0]!.heat, 9);
  });

  it('property: a brighter emissivity never weakens a face’s tie to the star', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.05, max: 0.95, noNaN: true }), (emissivity) => {
        const dull = starWeights([1, 2, 2], [emissivity, 0.9, 0.9])[0]!;
        expect(starWeights([1, 2, 2], [emissivity + 0.05, 0.9, 0.9])[0]!).toBeGreaterThan(dull);
      }),
    );
  });

  it('refuses a face as large as all the others, and a face that emits nothing', () => {
    expect(() => meanRadiantFactors([3, 1, 1])).toThrow('face 0 has 3 m² and the others 2 together');
    expect(() => meanRadiantFactors([1])).toThrow(RangeError);
    expect(() => starWeights([1, 1], [0, 1])).toThrow('an emissivity is 0');
    expect(() => starWeights([1, 1], [1])).toThrow('1 emissivities for 2 areas');
  });
});

function expectFulfilled(areas: readonly number[]): void {
  const factors = meanRadiantFactors(areas);
  const sum = areas.reduce((total, area, at) => total + area * factors[at]!, 0);
  for (const [at, area] of areas.entries()) {
    expect(factors[at]! * (1 - (area * factors[at]!) / sum)).toBeCloseTo(1, 6);
    expect(factors[at]!).toBeGreaterThan(1);
  }
}
