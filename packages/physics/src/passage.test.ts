import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { doorSweep, narrowestOpening, turnedWidth, turningWidth } from './passage.ts';

const side = fc.double({ min: 0.01, max: 2, noNaN: true });

describe('turnedWidth', () => {
  it('exact: straight its width, at a right angle its depth', () => {
    expect(turnedWidth(0.4, 0.3, 0)).toBe(0.4);
    expect(turnedWidth(0.4, 0.3, Math.PI / 2)).toBeCloseTo(0.3, 12);
  });

  it('cross: its largest value over all angles is the diagonal', () => {
    fc.assert(
      fc.property(side, side, (a, b) => {
        const widths = Array.from({ length: 2001 }, (_, step) => turnedWidth(a, b, (step * Math.PI) / 4000));
        expect(Math.max(...widths)).toBeLessThanOrEqual(turningWidth(a, b) + 1e-12);
        expect(Math.max(...widths)).toBeCloseTo(turningWidth(a, b), 5);
      }),
      { numRuns: 30 },
    );
  });
});

describe('narrowestOpening', () => {
  it('property: never below the shorter side, never above the width', () => {
    fc.assert(
      fc.property(side, side, side, (a, b, room) => {
        const opening = narrowestOpening(a, b, room);
        expect(opening).toBeGreaterThanOrEqual(Math.min(a, b));
        expect(opening).toBeLessThanOrEqual(a);
      }),
    );
  });

  it('limit: without room to turn it goes as it stands', () => {
    expect(narrowestOpening(0.45, 0.38, 0)).toBe(0.45);
    expect(narrowestOpening(0.45, 0.38, 10)).toBe(0.38);
  });
});

describe('doorSweep', () => {
  it('limit: a thin leaf sweeps its width', () => {
    expect(doorSweep(0.6, 0)).toBe(0.6);
  });

  it('refuses a leaf of no width', () => {
    expect(() => doorSweep(0, 0.018)).toThrow('doorSweep: width is 0');
  });
});
