import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { exhaustRise, fireForAnswer, heatDetectorFor, heatDetectors, longestExposure } from './heat-detector.ts';

describe('heat detectors', () => {
  it('exact: in every class the usual temperature lies 29 K and the highest 4 K below the earliest answer', () => {
    for (const { typical, highest, answersFrom, answersTo } of Object.values(heatDetectors)) {
      expect(answersFrom - typical).toBe(29);
      expect(answersFrom - highest).toBe(4);
      expect(answersTo).toBeGreaterThan(answersFrom);
    }
  });

  it('property: a warmer place never gets an earlier class, and its class bears it', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -20, max: 114, noNaN: true }),
        fc.double({ min: 0, max: 1, noNaN: true }),
        (at, more) => {
          const [a, b] = [heatDetectorFor(at)!, heatDetectorFor(at + more)!];
          expect(b >= a).toBe(true);
          expect(longestExposure(a)).toBeGreaterThanOrEqual(at);
        },
      ),
    );
    expect(heatDetectorFor(116)).toBeUndefined();
  });

  it('exact: the fire that warms the air by as much as is missing', () => {
    const fire = fireForAnswer(0.02, 308, 342);
    expect(exhaustRise(fire, 0.02)).toBeCloseTo(34, 9);
    expect(fireForAnswer(0.02, 350, 342)).toBe(0);
    expect(() => exhaustRise(1, 0)).toThrow('massFlow is 0');
  });

  it('cross: 1 kW in 60 m³/h warms it by 49.7 K at most (separate calculation)', () => {
    expect(exhaustRise(1000, 0.02)).toBeCloseTo(49.7, 1);
  });
});
