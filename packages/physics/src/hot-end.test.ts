import { describe, expect, it } from 'vitest';
import { blockLoss, meltPower, motorLoss, supplyLoss } from './hot-end.ts';

describe('small heats of a machine', () => {
  it('exact: melting, block and motor by hand', () => {
    expect(meltPower(15e-9, 1040, 2000, 215)).toBeCloseTo(6.708, 3);
    expect(blockLoss(10, 0.002, 200)).toBeCloseTo(4, 12);
    expect(motorLoss(1.5, 2)).toBeCloseTo(9, 12);
  });

  it('exact: a supply of efficiency one half keeps as much as it gives, and its idle heat', () => {
    expect(supplyLoss(100, 0.5, 0)).toBeCloseTo(100, 12);
    expect(supplyLoss(100, 0.5)).toBeCloseTo(103, 12);
    expect(supplyLoss(100, 1, 0)).toBe(0);
  });

  it('limit: what stands still and unpowered gives off nothing', () => {
    expect(meltPower(0, 1040, 2000, 215)).toBe(0);
    expect(blockLoss(16, 0.001, 0)).toBe(0);
    expect(motorLoss(0, 2)).toBe(0);
  });

  it('refuses more out than in', () => {
    expect(() => supplyLoss(100, 1.1)).toThrow('efficiency is 1.1');
    expect(() => meltPower(-1, 1, 1, 1)).toThrow('volumeFlow is -1');
    expect(() => motorLoss(1, -1)).toThrow('resistance is -1');
    expect(() => blockLoss(1, -1, 1)).toThrow('area is -1');
  });
});
