import { describe, expect, it } from 'vitest';
import { fanOctaves } from './sound-fan.ts';
import { addLevels, aLevel } from './sound-level.ts';
import { noiseRating, ratingCurve } from './sound-rating.ts';

describe('fanOctaves', () => {
  it('property: faster turns move the noise up the octaves', () => {
    const [slow, fast] = [fanOctaves('axial', 1500), fanOctaves('axial', 3000)];
    for (const [band, level] of slow.entries()) expect(fast[band]).toBeGreaterThanOrEqual(level);
    expect(aLevel(fast)).toBeGreaterThan(aLevel(slow) + 2.5);
  });

  it('cross: the octaves of the sheet’s fan add up to about its whole level', () => {
    expect(Math.abs(addLevels(fanOctaves('axial', 1500)))).toBeLessThan(0.2);
  });

  it('limit: never below its plateau’s start, where the number of Strouhal is held at 1', () => {
    expect(fanOctaves('blower', 1e6).every((level) => level === -5 - 5 * 0.15 ** 2)).toBe(true);
    expect(() => fanOctaves('axial', 0)).toThrow('fanOctaves: turns is 0');
  });
});

describe('noiseRating', () => {
  it('exact: a curve has its own number; one octave above it counts', () => {
    expect(noiseRating(ratingCurve(37))).toBeCloseTo(37, 9);
    const higher = ratingCurve(30).map((level, band) => (band === 4 ? level + 5 : level));
    expect(noiseRating(higher)).toBeCloseTo(35, 9);
  });

  it('limit: silence has none', () => {
    expect(noiseRating(Array.from({ length: 8 }, () => Number.NEGATIVE_INFINITY))).toBe(Number.NEGATIVE_INFINITY);
    expect(() => noiseRating([1])).toThrow('noiseRating: octaves has 1 numbers');
    expect(() => ratingCurve(Number.NaN)).toThrow('ratingCurve: rating is NaN');
  });
});
