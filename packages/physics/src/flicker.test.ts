import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flickerBound, flickerIndex, percentFlicker, pulseBanding, rippleBanding } from './flicker.ts';

const duty = fc.double({ min: 0.05, max: 1, noNaN: true });
const frequency = fc.double({ min: 20, max: 30_000, noNaN: true });
const time = fc.double({ min: 1e-4, max: 0.1, noNaN: true });

describe('flicker', () => {
  it('exact: a pulsed lamp has the index 1 - D, and all of its light is flicker', () => {
    const period = Array.from({ length: 1000 }, (_, i) => (i < 370 ? 1 : 0));
    expect(flickerIndex(period)).toBeCloseTo(0.63, 12);
    expect(percentFlicker(1, 0)).toBe(1);
  });

  it('exact: a sine has the index of its depth over pi', () => {
    const period = Array.from({ length: 20_000 }, (_, i) => 1 + 0.3 * Math.sin((2 * Math.PI * (i + 0.5)) / 20_000));
    expect(flickerIndex(period)).toBeCloseTo(0.3 / Math.PI, 6);
  });

  it('limit: a steady lamp has neither', () => {
    expect(percentFlicker(3, 3)).toBe(0);
    expect(flickerIndex([2, 2, 2])).toBe(0);
  });

  it('property: the bound rises with the frequency, and no effect is asked more strictly than low risk', () => {
    fc.assert(
      fc.property(frequency, frequency, (a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a];
        for (const line of ['low risk', 'no effect'] as const)
          expect(flickerBound(high, line)).toBeGreaterThanOrEqual(flickerBound(low, line));
        expect(flickerBound(low, 'no effect')).toBeLessThanOrEqual(flickerBound(low, 'low risk'));
      }),
    );
  });

  it('exact: pulses leave no bands at whole periods, and elsewhere at most the bound', () => {
    fc.assert(
      fc.property(frequency, duty, time, fc.integer({ min: 1, max: 200 }), (f, D, T, n) => {
        expect(pulseBanding(f, D, n / f)).toBeCloseTo(0, 6);
        expect(pulseBanding(f, D, T)).toBeLessThanOrEqual(Math.min(D, 1 - D) / (D * f * T) + 1e-9);
        expect(rippleBanding(f, 0.5, n / f)).toBeCloseTo(0, 6);
      }),
    );
  });

  it('cross: agrees with windows moved over a pulsed lamp', () => {
    for (const [f, D, T] of [
      [100, 0.5, 0.0137],
      [230, 0.2, 0.0061],
      [1000, 0.8, 0.00273],
    ] as const) {
      const light = (t: number): number => (t * f - Math.floor(t * f) < D ? 1 : 0);
      const rows = Array.from({ length: 400 }, (_, row) => {
        const start = row / 400 / f;
        let sum = 0;
        for (let i = 0; i < 4000; i += 1) sum += light(start + ((i + 0.5) * T) / 4000);
        return sum / 4000;
      });
      expect((Math.max(...rows) - Math.min(...rows)) / D).toBeCloseTo(pulseBanding(f, D, T), 2);
    }
  });

  it('limit: a short exposure sees the whole swing of a sine, a long one nothing', () => {
    expect(rippleBanding(100, 0.3, 1e-6)).toBeCloseTo(0.6, 4);
    expect(rippleBanding(100, 0.3, 10.0025)).toBeLessThan(1e-3);
  });

  it('refuses no light, no pulses and no time', () => {
    expect(() => flickerIndex([0, 0])).toThrow('light of a period is 0');
    expect(() => percentFlicker(1, 2)).toThrow('least is 2');
    expect(() => flickerBound(0, 'low risk')).toThrow('frequency is 0');
    expect(() => pulseBanding(100, 0, 0.01)).toThrow('duty is 0');
    expect(() => rippleBanding(100, 0.1, 0)).toThrow('time is 0');
  });
});
