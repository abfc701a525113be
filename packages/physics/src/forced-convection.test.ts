import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { mixedConvection, nusseltCylinder, nusseltPlateStream, stirredSpeed, streamFilm } from './forced-convection.ts';

const positive = fc.double({ min: 0.01, max: 100, noNaN: true });

describe('driven air', () => {
  it('exact: the film of a laminar stream grows with the root of its speed', () => {
    expect(streamFilm(4, 0.2, 310) / streamFilm(1, 0.2, 310)).toBeCloseTo(2, 12);
    expect(streamFilm(0, 0.2, 310)).toBe(0);
  });

  it('limit: a cylinder in still air keeps a Nusselt number of 0.3', () => {
    expect(nusseltCylinder(0, 0.71)).toBeCloseTo(0.3, 12);
  });

  it('property: assisting flow is never below the stronger part, opposing never above it', () => {
    fc.assert(
      fc.property(positive, positive, (forced, natural) => {
        const stronger = Math.max(forced, natural);
        expect(mixedConvection(forced, natural)).toBeGreaterThanOrEqual(stronger * (1 - 1e-12));
        expect(mixedConvection(forced, natural, 'opposing')).toBeLessThanOrEqual(stronger * (1 + 1e-12));
        expect(mixedConvection(forced, natural)).toBeCloseTo(mixedConvection(natural, forced), 10);
      }),
    );
  });

  it('limit: with one of the two absent the other stands alone', () => {
    expect(mixedConvection(5, 0)).toBeCloseTo(5, 12);
    expect(mixedConvection(0, 5, 'opposing')).toBeCloseTo(5, 12);
    expect(mixedConvection(5, 5, 'opposing')).toBe(0);
  });

  it('property: Nusselt numbers rise with the stream', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 4e5, noNaN: true }), (reynolds) => {
        expect(nusseltPlateStream(reynolds + 1, 0.71)).toBeGreaterThan(nusseltPlateStream(reynolds, 0.71));
        expect(nusseltCylinder(reynolds + 1, 0.71)).toBeGreaterThan(nusseltCylinder(reynolds, 0.71));
      }),
    );
  });

  it('exact: a jet that fills half of the bay by itself keeps its speed', () => {
    expect(stirredSpeed(0.5 * 2, 2, 1)).toBeCloseTo(2, 12);
  });

  it('refuses speeds below 0', () => {
    expect(() => streamFilm(-1, 0.2, 310)).toThrow('speed is -1');
    expect(() => mixedConvection(-1, 1)).toThrow('forced is -1');
    expect(() => stirredSpeed(1, 1, 0)).toThrow('crossSection is 0');
  });
});
