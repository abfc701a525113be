import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { STEFAN_BOLTZMANN } from './constants.ts';
import { cavityMultiplier, fluxForIlluminance, interreflect } from './interreflection.ts';
import { radiosity } from './radiosity.ts';
import { cornerViewFactor, parallelViewFactor } from './view-factors.ts';

const share = fc.double({ min: 0, max: 0.95, noNaN: true });

/** Faces of a unit cube, ceiling first; the floor last. */
const opposite = parallelViewFactor(1, 1, 1);
const beside = cornerViewFactor(1, 1, 1);
const cube = Array.from({ length: 6 }, (_, from) =>
  Array.from({ length: 6 }, (_, to) => (from === to ? 0 : from + to === 5 ? opposite : beside)),
);

describe('light between faces', () => {
  it('exact: two endless plates throw light to and fro as a geometric series', () => {
    fc.assert(
      fc.property(share, share, (a, b) => {
        const [first, second] = interreflect(
          [0, 1000],
          [a, b],
          [
            [0, 1],
            [1, 0],
          ],
        );
        expect(second).toBeCloseTo(1000 / (1 - a * b), 6);
        expect(first).toBeCloseTo((1000 * b) / (1 - a * b), 6);
      }),
    );
  });

  it('exact: what the faces swallow is what the lamp gives', () => {
    fc.assert(
      fc.property(fc.array(share, { minLength: 6, maxLength: 6 }), (rho) => {
        const direct = cube[0]!.map((F) => 1000 * F);
        const sum = direct.reduce((all, E) => all + E, 0);
        const lit = interreflect(direct, rho, cube);
        const swallowed = lit.reduce((all, E, face) => all + E * (1 - rho[face]!), 0);
        expect(swallowed / sum).toBeCloseTo(1, 6);
      }),
    );
  });

  it('exact: in a closed space of one reflectance whose faces are lit alike, all light is 1/(1 - rho) times the first', () => {
    fc.assert(
      fc.property(share, (rho) => {
        const lit = interreflect(new Array<number>(6).fill(100), new Array<number>(6).fill(rho), cube);
        for (const E of lit) expect(E).toBeCloseTo(100 * (1 + cavityMultiplier(rho)), 4);
      }),
    );
  });

  it('cross: the multiplier is the sum of every reflection, each without what the openings let out', () => {
    fc.assert(
      fc.property(share, fc.double({ min: 0, max: 1, noNaN: true }), (rho, openings) => {
        let [sum, thrown] = [0, rho];
        for (let bounce = 0; bounce < 1000; bounce += 1) {
          sum += thrown;
          thrown *= rho * (1 - openings);
        }
        expect(cavityMultiplier(rho, openings)).toBeCloseTo(sum, 9);
      }),
    );
  });

  it('cross: agrees with the radiation of hot faces, solved by radiosities', () => {
    const rho = [0.8, 0.3, 0.5, 0.05, 0.6, 0.2];
    const kelvin = [400, 300, 350, 310, 420, 280];
    const sent = kelvin.map((T, i) => (1 - rho[i]!) * STEFAN_BOLTZMANN * T ** 4);
    const direct = cube.map((row) => row.reduce((sum, F, j) => sum + F * sent[j]!, 0));
    const lit = interreflect(direct, rho, cube);
    const hot = radiosity(
      kelvin.map((T, i) => ({ area: 1, emissivity: 1 - rho[i]!, kelvin: T })),
      cube,
    );
    for (const [i, E] of lit.entries()) expect(sent[i]! + rho[i]! * E).toBeCloseTo(hot[i]!.radiosity, 6);
  });

  it('limit: black throws nothing back, an open space less than a closed one', () => {
    expect(cavityMultiplier(0)).toBe(0);
    expect(cavityMultiplier(0.8, 1)).toBeCloseTo(0.8, 12);
    expect(cavityMultiplier(0.8, 0.1)).toBeLessThan(cavityMultiplier(0.8));
  });

  it('exact: the flux of the lumen method gives back its illuminance', () => {
    expect((fluxForIlluminance(300, 0.36, 0.4, 0.8) * 0.4 * 0.8) / 0.36).toBeCloseTo(300, 9);
  });

  it('refuses shares beyond nature and rows that do not fit', () => {
    expect(() => cavityMultiplier(1)).toThrow('multiplier');
    expect(() => interreflect([1], [0.5, 0.5], [[0]])).toThrow('1 by 1');
    expect(() => interreflect([1], [1.2], [[0]])).toThrow('reflectance is 1.2');
    expect(() => fluxForIlluminance(1, 1, 0, 1)).toThrow('utilisation is 0');
  });
});
