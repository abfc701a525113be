import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { addLevels, aLevel, aWeighting, exactOctaveBands, octaveBands } from './sound-level.ts';

const level = fc.double({ min: -20, max: 120, noNaN: true });

describe('aWeighting', () => {
  it('exact: nothing at 1000 Hz', () => {
    expect(aWeighting(1000)).toBe(0);
    expect(exactOctaveBands[4]).toBeCloseTo(1000, 9);
    for (const [band, exact] of exactOctaveBands.entries())
      expect(Math.abs(exact / octaveBands[band]! - 1)).toBeLessThan(0.01);
  });

  it('limit: falls 80 dB for a tenth of a very low frequency', () => {
    expect(aWeighting(0.01) - aWeighting(0.001)).toBeCloseTo(80, 3);
  });
});

describe('addLevels', () => {
  it('exact: N equal levels are 10 lg N more, and silence adds nothing', () => {
    expect(addLevels([40, 40, 40])).toBeCloseTo(40 + 10 * Math.log10(3), 12);
    expect(addLevels([40, Number.NEGATIVE_INFINITY])).toBeCloseTo(40, 12);
    expect(addLevels([])).toBe(Number.NEGATIVE_INFINITY);
  });

  it('property: at least the loudest, at most 3 dB more for each doubling of their number', () => {
    fc.assert(
      fc.property(fc.array(level, { minLength: 1, maxLength: 8 }), (levels) => {
        const loudest = Math.max(...levels);
        expect(addLevels(levels)).toBeGreaterThanOrEqual(loudest - 1e-9);
        expect(addLevels(levels)).toBeLessThanOrEqual(loudest + 10 * Math.log10(levels.length) + 1e-9);
      }),
    );
  });
});

describe('aLevel', () => {
  it('exact: a level in one octave counts as its weighting says', () => {
    const silent = Number.NEGATIVE_INFINITY;
    expect(aLevel([silent, 60, silent, silent, silent, silent, silent, silent])).toBeCloseTo(43.9, 1);
  });

  it('property: 1 dB more in every octave is 1 dB more', () => {
    fc.assert(
      fc.property(fc.array(level, { minLength: 8, maxLength: 8 }), (octaves) => {
        expect(aLevel(octaves.map((one) => one + 1))).toBeCloseTo(aLevel(octaves) + 1, 9);
      }),
    );
  });
});

describe('refusals', () => {
  it.each([
    ['no frequency', () => aWeighting(0), 'aWeighting: frequency is 0'],
    ['a level that is none', () => addLevels([Number.NaN]), 'addLevels: level is NaN'],
    ['seven octaves', () => aLevel([1, 2, 3, 4, 5, 6, 7]), 'aLevel: octaves has 7 numbers'],
  ])('exact: %s is refused by name', (_, call, message) => {
    expect(call).toThrow(message);
  });
});
