import { describe, expect, it } from 'vitest';
import { coolingTime } from './lumped-cooling.ts';
import { settlingTime, thermostatCycle } from './thermostat-cycle.ts';

describe('a body that a thermostat switches', () => {
  it('exact: after one time constant 1/e of the way is left', () => {
    expect(settlingTime(500, 100, 20 + 80 / Math.E, 20)).toBeCloseTo(500, 9);
    expect(settlingTime(500, 50, 50, 20)).toBe(0);
  });

  it('cross: cools as a body of one temperature does', () => {
    expect(settlingTime(871.7, 383.15, 313.15, 308.15)).toBeCloseTo(coolingTime(5 / 75, 871.7, 1), 9);
  });

  it('cross: rise and fall are those of small steps of the differential equation', () => {
    const [tau, low, high, up, down] = [600, 36, 40, 48, 30];
    const step = 0.01;
    let [temperature, rise] = [low, 0];
    for (; temperature < high; rise += step) temperature += (step * (up - temperature)) / tau;
    let fall = 0;
    for (; temperature > low; fall += step) temperature += (step * (down - temperature)) / tau;
    const exact = thermostatCycle(tau, [low, high], up, down);
    expect(exact.rise).toBeCloseTo(rise, 1);
    expect(exact.fall).toBeCloseTo(fall, 1);
    expect(3600 / (exact.rise + exact.fall)).toBeCloseTo(6.5, 1);
  });

  it('limit: a narrow band takes as long as its width over the rate', () => {
    const { rise, fall } = thermostatCycle(600, [38, 38.001], 48, 30);
    expect(rise).toBeCloseTo((600 * 0.001) / 10, 4);
    expect(fall).toBeCloseTo((600 * 0.001) / 8, 4);
  });

  it('property: refuses what would never get there', () => {
    expect(() => settlingTime(600, 30, 40, 35)).toThrow(RangeError);
    expect(() => settlingTime(600, 30, 40, 40)).toThrow(RangeError);
    expect(() => thermostatCycle(600, [40, 38], 48, 30)).toThrow(RangeError);
    expect(() => settlingTime(0, 30, 40, 50)).toThrow(RangeError);
  });
});
