import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { starWeights } from './mean-radiant-star.ts';
import { parallelExchange, radiationFilm } from './radiation.ts';
import { type RadiatingFace, radiosity } from './radiosity.ts';
import { cornerViewFactor, parallelViewFactor } from './view-factors.ts';

const emissivity = fc.double({ min: 0.05, max: 1, noNaN: true });
const kelvin = fc.double({ min: 250, max: 400, noNaN: true });

describe('radiosity', () => {
  it('exact: two parallel plates exchange as their closed form says', () => {
    fc.assert(
      fc.property(emissivity, emissivity, kelvin, kelvin, (e1, e2, t1, t2) => {
        const [first] = radiosity(
          [
            { area: 2, emissivity: e1, kelvin: t1 },
            { area: 2, emissivity: e2, kelvin: t2 },
          ],
          [
            [0, 1],
            [1, 0],
          ],
        );
        expect(first!.heat).toBeCloseTo(2 * parallelExchange(e1, t1, e2, t2), 7);
      }),
    );
  });

  it('property: in a box the heats of all faces add up to nothing', () => {
    fc.assert(
      fc.property(fc.array(fc.tuple(emissivity, kelvin), { minLength: 6, maxLength: 6 }), (states) => {
        const { areas, factors } = box(0.8, 0.6, 0.85);
        const faces = states.map(([e, t], at): RadiatingFace => ({ area: areas[at]!, emissivity: e, kelvin: t }));
        const heats = radiosity(faces, factors).map(({ heat }) => heat);
        expect(heats.reduce((sum, heat) => sum + heat, 0)).toBeCloseTo(0, 5);
      }),
    );
  });

  it('property: a face that only passes on floats between the others and its heat is 0', () => {
    const { areas, factors } = box(0.8, 0.6, 0.85);
    const faces = areas.map((area, at): RadiatingFace => {
      if (at === 0) return { area, emissivity: 0.9, kelvin: 360 };
      return at === 3 ? { area, emissivity: 0.3 } : { area, emissivity: 0.9, kelvin: 300 };
    });
    const floating = radiosity(faces, factors)[3]!;
    expect(floating.heat).toBe(0);
    expect(floating.kelvin).toBeGreaterThan(300);
    expect(floating.kelvin).toBeLessThan(360);
  });

  it.each([0, 2, 4])(
    'cross: a star of six conductances is within 2 percent of all reflections, face %d of a bay warm',
    (warm) => {
      const { areas, factors } = box(0.8, 0.6, 0.85);
      const faces = areas.map(
        (area, at): RadiatingFace => ({ area, emissivity: 0.9, kelvin: at === warm ? 310 : 300 }),
      );
      const weights = starWeights(areas, new Array<number>(6).fill(0.9));
      const rest = weights.reduce((sum, weight, at) => (at === warm ? sum : sum + weight), 0);
      const heat = (10 * radiationFilm(1, 310, 300)) / (1 / weights[warm]! + 1 / rest);
      expect(Math.abs(heat / radiosity(faces, factors)[warm]!.heat - 1)).toBeLessThan(0.02);
    },
  );

  it('refuses an open space, a missing row and a space without a temperature', () => {
    const face = { area: 1, emissivity: 0.9, kelvin: 300 };
    expect(() =>
      radiosity(
        [face, face],
        [
          [0, 0.9],
          [1, 0],
        ],
      ),
    ).toThrow('the sum of row 0 is 0.9');
    expect(() => radiosity([face, face], [[0, 1]])).toThrow('it must have a row for each face');
    expect(() => radiosity([{ area: 1, emissivity: 1 }], [[1]])).toThrow('no face has a temperature');
  });
});

/** Areas and view factors of a box: floor, ceiling, left, right, front, back. */
function box(width: number, depth: number, height: number) {
  const [floor, side, front] = [width * depth, depth * height, width * height];
  const areas = [floor, floor, side, side, front, front];
  const across = [
    parallelViewFactor(width, depth, height),
    parallelViewFactor(depth, height, width),
    parallelViewFactor(width, height, depth),
  ];
  const floorToSide = cornerViewFactor(depth, width, height);
  const floorToFront = cornerViewFactor(width, depth, height);
  const sideToFloor = cornerViewFactor(depth, height, width);
  const sideToFront = cornerViewFactor(height, depth, width);
  const frontToFloor = cornerViewFactor(width, height, depth);
  const frontToSide = cornerViewFactor(height, width, depth);
  const pairs = [
    [0, floorToSide, floorToFront],
    [sideToFloor, 0, sideToFront],
    [frontToFloor, frontToSide, 0],
  ];
  const factors = areas.map((_, from) =>
    areas.map((_, to) => {
      const [a, b] = [Math.floor(from / 2), Math.floor(to / 2)];
      if (from === to) return 0;
      return a === b ? across[a]! : pairs[a]![b]!;
    }),
  );
  return { areas, factors };
}
