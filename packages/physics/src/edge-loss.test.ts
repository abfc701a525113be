import { describe, expect, it } from 'vitest';
import { boxShapeFactor } from './conduction.ts';
import { edgeTransmittance } from './edge-loss.ts';

describe('edge of two boards', () => {
  it('cross: isothermal faces give nearly the 0.54 of the shape-factor table', () => {
    const perMetre = (boxShapeFactor(1, 1, 1001, 0.1) - boxShapeFactor(1, 1, 1, 0.1) - 4 * 1000 * 10) / 4000;
    expect(perMetre).toBeCloseTo(0.54, 9);
    expect(Math.abs(edgeTransmittance(0.1, 1, Infinity, Infinity) / perMetre - 1)).toBeLessThan(0.05);
  });

  it('exact: only the Biot number counts: twice the size and conductivity at one film doubles the edge', () => {
    const small = edgeTransmittance(0.018, 0.13, 7.7, 7.7);
    expect(edgeTransmittance(0.036, 0.26, 7.7, 7.7)).toBeCloseTo(2 * small, 6);
  });

  it('property: weaker films make less of an edge, and it is always a loss on inside dimensions', () => {
    const losses = [1, 5, 25, 125].map((film) => edgeTransmittance(0.018, 0.13, film, film));
    expect(losses.every((loss, at) => loss > (losses[at - 1] ?? 0))).toBe(true);
  });

  it('refuses a board without thickness or film', () => {
    expect(() => edgeTransmittance(0, 0.13, 7, 7)).toThrow('thickness is 0');
    expect(() => edgeTransmittance(0.018, 0.13, 0, 7)).toThrow('innerFilm is 0');
  });
});
