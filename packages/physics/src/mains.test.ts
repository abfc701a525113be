import { describe, expect, it } from 'vitest';
import { supplyLoss } from './hot-end.ts';
import { continuousCurrent, leakageBudget, lineCurrent, magneticBand, supplyShare } from './mains.ts';

describe('the mains side', () => {
  it('cross: four printers and what goes with them all night: 12.21 A at 120 V, more than 12 A and less than 16 A', () => {
    const watts = 4 * 350 + 40 + 15 + 10;
    expect(lineCurrent(watts, 120, 1)).toBeCloseTo(12.21, 2);
    expect(lineCurrent(watts, 120, 1)).toBeGreaterThan(continuousCurrent(15));
    expect(lineCurrent(watts, 120, 1)).toBeLessThan(continuousCurrent(20));
    expect(lineCurrent(watts, 230, 1)).toBeCloseTo(6.37, 2);
    expect(lineCurrent(watts, 230, 0.65)).toBeCloseTo(9.8, 2);
  });

  it('cross: four cold supplies of 40 A against B16 and C16', () => {
    expect(4 * 40).toBeGreaterThan(magneticBand(16, 'B').to);
    expect(4 * 40).toBe(magneticBand(16, 'C').to);
    expect(magneticBand(16, 'C').from).toBe(80);
    expect(magneticBand(10, 'D')).toEqual({ from: 100, to: 200 });
  });

  it('cross: a budget of 9 mA bears nine units of 1 mA, and two of 3.5 mA', () => {
    expect(Math.floor(leakageBudget(0.03) / 0.001 + 1e-9)).toBe(9);
    expect(Math.floor(leakageBudget(0.03) / 0.0035)).toBe(2);
  });

  it('cross: 288 W at 88 % leave 39.3 W, at 92 % 25.0 W', () => {
    expect(supplyLoss(288, 0.88, 0)).toBeCloseTo(39.3, 1);
    expect(supplyLoss(288, 0.92, 0)).toBeCloseTo(25, 1);
  });

  it('limit: a supply gives all in cool air and nothing when hot enough', () => {
    expect(supplyShare(300, 313.15, 0.025)).toBe(1);
    expect(supplyShare(343.15, 323.15, 0.025)).toBeCloseTo(0.5, 12);
    expect(supplyShare(400, 323.15, 0.025)).toBe(0);
  });

  it.each([
    [() => lineCurrent(-1, 230, 1), 'lineCurrent: power is -1'],
    [() => lineCurrent(1, 0, 1), 'lineCurrent: voltage is 0'],
    [() => lineCurrent(1, 230, 1.1), 'lineCurrent: powerFactor is 1.1'],
    [() => continuousCurrent(0), 'continuousCurrent: rating is 0'],
    [() => magneticBand(0, 'B'), 'magneticBand: rating is 0'],
    [() => leakageBudget(0), 'leakageBudget: trip is 0'],
    [() => supplyShare(300, 310, -1), 'supplyShare: slope is -1'],
  ])('exact: refuses nonsense (%#)', (call, message) => {
    expect(call).toThrow(message);
  });
});
