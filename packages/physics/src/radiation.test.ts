import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { blackEmission, parallelExchange, radiationFilm, radiationToRoom } from './radiation.ts';

const kelvin = fc.double({ min: 200, max: 600, noNaN: true });
const emissivity = fc.double({ min: 0.02, max: 1, noNaN: true });

describe('radiation of two', () => {
  it('property: exchange changes its sign with the temperatures and vanishes between equals', () => {
    fc.assert(
      fc.property(emissivity, emissivity, kelvin, kelvin, (e1, e2, hot, cold) => {
        expect(parallelExchange(e1, hot, e2, cold)).toBeCloseTo(-parallelExchange(e2, cold, e1, hot), 8);
        expect(parallelExchange(e1, hot, e2, hot)).toBe(0);
      }),
    );
  });

  it('cross: the film times the difference is the exact exchange', () => {
    fc.assert(
      fc.property(emissivity, kelvin, kelvin, (e, a, b) => {
        expect(radiationFilm(e, a, b) * (a - b)).toBeCloseTo(radiationToRoom(e, 1, a, b), 8);
      }),
    );
  });

  it('limit: at one temperature the film is four sigma T cubed', () => {
    expect(radiationFilm(0.9, 300, 300)).toBeCloseTo((0.9 * 4 * blackEmission(300)) / 300, 12);
  });

  it('limit: two black faces exchange all, and a perfect mirror nearly nothing', () => {
    expect(parallelExchange(1, 400, 1, 300)).toBeCloseTo(blackEmission(400) - blackEmission(300), 9);
    expect(parallelExchange(1e-9, 400, 1, 300)).toBeLessThan(1e-5);
  });

  it('refuses more than black', () => {
    expect(() => radiationToRoom(1.1, 1, 300, 300)).toThrow('emissivity is 1.1');
    expect(() => parallelExchange(0, 300, 1, 300)).toThrow('firstEmissivity is 0');
    expect(() => blackEmission(-1)).toThrow('kelvin is -1');
  });
});
