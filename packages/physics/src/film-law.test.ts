import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airConductivity, airPrandtl } from './air.ts';
import { filmLaw, naturalFilm, type Orientation } from './film-law.ts';
import { nusseltHotFaceDown, nusseltHotFaceUp, nusseltVerticalPlate, rayleighInAir } from './natural-convection.ts';

const orientation = fc.constantFrom<Orientation>('vertical', 'faces-up', 'faces-down');
const length = fc.double({ min: 0.01, max: 2, noNaN: true });
const kelvin = fc.double({ min: 1, max: 90, noNaN: true });

describe('film law', () => {
  it('property: is above 0 and finite for any difference', () => {
    fc.assert(
      fc.property(orientation, length, fc.double({ min: -200, max: 200, noNaN: true }), (side, size, difference) => {
        const film = filmLaw(side, size, 310)(difference);
        expect(film).toBeGreaterThan(0);
        expect(Number.isFinite(film)).toBe(true);
      }),
    );
  });

  it('property: the heat always flows from hot to cold and grows with the difference', () => {
    fc.assert(
      fc.property(orientation, length, fc.double({ min: -90, max: 90, noNaN: true }), (side, size, difference) => {
        const law = filmLaw(side, size, 310);
        const heat = law(difference) * difference;
        expect(heat * difference).toBeGreaterThanOrEqual(0);
        expect(law(difference + 0.01) * (difference + 0.01)).toBeGreaterThan(heat);
      }),
    );
  });

  it('property: film and slope pass through zero without a step', () => {
    fc.assert(
      fc.property(orientation, length, (side, size) => {
        const law = filmLaw(side, size, 310);
        expect(law(1e-9) / law(-1e-9)).toBeCloseTo(1, 9);
        expect((law(1e-5) - law(0)) / 1e-5 / law(1)).toBeCloseTo(0, 1);
        expect((law(0) - law(-1e-5)) / 1e-5 / law(1)).toBeCloseTo(0, 1);
      }),
    );
  });

  it('property: an upright face does not care about the sign; a level one mirrors the other side', () => {
    fc.assert(
      fc.property(length, kelvin, (size, difference) => {
        const wall = filmLaw('vertical', size, 310);
        expect(wall(difference)).toBe(wall(-difference));
        expect(filmLaw('faces-up', size, 310)(difference)).toBe(filmLaw('faces-down', size, 310)(-difference));
        expect(filmLaw('faces-up', size, 310)(difference)).toBeGreaterThan(filmLaw('faces-up', size, 310)(-difference));
      }),
    );
  });

  it('cross: follows the published correlations from 1 K on: the wall within 1 percent, a level face within 10 percent', () => {
    fc.assert(
      fc.property(length, kelvin, (size, difference) => {
        const rayleigh = rayleighInAir(size, difference, 310);
        const scale = airConductivity(310) / size;
        const wall = scale * nusseltVerticalPlate(rayleigh, airPrandtl(310));
        expect(Math.abs(filmLaw('vertical', size, 310)(difference) / wall - 1)).toBeLessThan(0.01);
        if (rayleigh < 1e4) return;
        const up = scale * nusseltHotFaceUp(rayleigh);
        const down = scale * nusseltHotFaceDown(rayleigh);
        expect(Math.abs(filmLaw('faces-up', size, 310)(difference) / up - 1)).toBeLessThan(0.1);
        expect(Math.abs(filmLaw('faces-down', size, 310)(difference) / down - 1)).toBeLessThan(0.1);
      }),
    );
  });

  it('limit: at no difference only conduction is left: 0.68 k/L upright, 2/pi k/L level', () => {
    const scale = airConductivity(310) / 0.5;
    expect(filmLaw('vertical', 0.5, 310)(0)).toBeCloseTo(0.825 ** 2 * scale, 9);
    expect(filmLaw('faces-up', 0.5, 310)(0)).toBeCloseTo((2 / Math.PI) * scale, 9);
  });

  it('exact: the single answer is the law at the mean temperature', () => {
    expect(naturalFilm('faces-down', 0.1, 330, 300)).toBe(filmLaw('faces-down', 0.1, 315)(30));
  });

  it('property: the temperature at which properties are taken matters little, 2.5 percent for 10 K', () => {
    fc.assert(
      fc.property(orientation, kelvin, (side, difference) => {
        const ratio = filmLaw(side, 0.3, 320)(difference) / filmLaw(side, 0.3, 310)(difference);
        expect(Math.abs(ratio - 1)).toBeLessThan(0.025);
      }),
    );
  });

  it('refuses a face without extent', () => {
    expect(() => filmLaw('vertical', 0, 300)).toThrow('filmLaw: length is 0');
    expect(() => filmLaw('vertical', 1, Number.NaN)).toThrow('filmLaw: filmKelvin is NaN');
  });
});
