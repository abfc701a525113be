import { describe, expect, it } from 'vitest';
import { insideTolerance, sandedTolerance, sheetMovement } from './sheet-tolerance.ts';

describe('sandedTolerance', () => {
  it('limit: of a sheet without thickness the constant part is left', () => {
    expect(sandedTolerance(1e-12).above).toBeCloseTo(0.0002, 9);
    expect(sandedTolerance(1e-12).below).toBeCloseTo(0.0004, 9);
  });

  it('refuses a thickness of 0', () => {
    expect(() => sandedTolerance(0)).toThrow('sandedTolerance: thickness is 0');
  });
});

describe('insideTolerance', () => {
  it('exact: a perfect saw leaves √2 of one board', () => {
    expect(insideTolerance(0.018, 0)).toBeCloseTo(Math.SQRT2 * 0.00084, 12);
  });

  it('limit: a bad saw rules', () => {
    expect(insideTolerance(0.018, 0.1) / 0.1).toBeCloseTo(1, 3);
  });

  it('property: thicker boards are never surer', () => {
    expect(insideTolerance(0.024)).toBeGreaterThan(insideTolerance(0.012));
  });
});

describe('sheetMovement', () => {
  it('property: grows with length and change alike, and shrinks when the air dries', () => {
    expect(sheetMovement(2, 0.1)).toBeCloseTo(2 * sheetMovement(1, 0.1), 12);
    expect(sheetMovement(1, -0.2)).toBeCloseTo(-sheetMovement(1, 0.2), 12);
  });
});
