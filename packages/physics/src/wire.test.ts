import { describe, expect, it } from 'vitest';
import { ICE_POINT } from './constants.ts';
import {
  ambientFactor,
  copperFactor,
  copperResistance,
  cordCurrent,
  flexibleResistance,
  gaugeArea,
  gaugeCurrent,
  voltageDrop,
} from './wire.ts';

const COLD: number = ICE_POINT + 20;
const drop = (current: number, length: number, section: number, temperature: number = COLD): number =>
  voltageDrop(current, length, flexibleResistance(section * 1e-6, temperature));

describe('wires', () => {
  it.each([
    ['24 V, 2.5 A, 3 m of 0.75 mm²', drop(2.5, 3, 0.75), 0.39, 24, 1.62],
    ['the same 60 W at 12 V', drop(5, 3, 0.75), 0.78, 12, 6.5],
    ['1.5 mm² at 12 V', drop(5, 3, 1.5), 0.399, 12, 3.33],
    ['2.5 mm² at 12 V', drop(5, 3, 2.5), 0.239, 12, 2],
  ])('cross: %s', (_, got, volts, supply, percent) => {
    expect(got).toBeCloseTo(volts, 3);
    expect((100 * got) / supply).toBeCloseTo(percent, 1);
  });

  it('cross: warm at 45 °C the first of them loses 0.428 V, by the rounded printed factor 1.100 0.429 V', () => {
    expect(drop(2.5, 3, 0.75, ICE_POINT + 45)).toBeCloseTo(0.428, 3);
  });

  it('cross: 10 ft of 18 AWG solid with 3 A at 75 °C lose 0.466 V, 3.89 % of 12 V and 1.40 W', () => {
    const lost = voltageDrop(3, 3.048, copperResistance(gaugeArea(18), ICE_POINT + 75));
    expect(lost).toBeCloseTo(0.466, 2);
    expect((100 * lost) / 12).toBeCloseTo(3.89, 1);
    expect(3 * lost).toBeCloseTo(1.4, 2);
  });

  it('cross: a fan loom of 0.75 mm² PVC in a bay of 50 °C may carry 4.26 A by the printed factor', () => {
    expect(cordCurrent(0.75e-6) * ambientFactor(ICE_POINT + 70, ICE_POINT + 50)).toBeCloseTo(4.26, 1);
  });

  it('exact: half the voltage makes four times the share lost', () => {
    expect(drop(5, 3, 0.75) / 12 / (drop(2.5, 3, 0.75) / 24)).toBeCloseTo(4, 12);
  });

  it('limit: air as warm as the insulation bears leaves nothing; 30 °C all', () => {
    expect(ambientFactor(343.15, 343.15)).toBe(0);
    expect(ambientFactor(343.15, 400)).toBe(0);
    expect(ambientFactor(343.15, ICE_POINT + 30)).toBe(1);
    expect(copperFactor(COLD)).toBe(1);
  });

  it('property: a thicker wire carries more and loses less', () => {
    const sections = [0.2, 0.25, 0.34, 0.5, 0.6, 0.75, 0.9, 1, 1.5, 2, 2.5, 4, 6];
    for (const [at, section] of sections.entries()) {
      if (at === 0) continue;
      expect(flexibleResistance(section * 1e-6, COLD)).toBeLessThan(flexibleResistance(sections[at - 1]! * 1e-6, COLD));
      expect(cordCurrent(section * 1e-6)).toBeGreaterThanOrEqual(cordCurrent(sections[at - 1]! * 1e-6));
    }
    expect(gaugeCurrent(20)).toBeLessThan(gaugeCurrent(18));
  });

  it.each([
    [() => gaugeArea(-1), 'gaugeArea: gauge is -1'],
    [() => copperFactor(0), 'copperFactor: temperature is 0'],
    [() => copperResistance(0, 300), 'copperResistance: area is 0'],
    [() => flexibleResistance(0, 300), 'flexibleResistance: area is 0'],
    [() => voltageDrop(-1, 1, 1), 'voltageDrop: current is -1'],
    [() => ambientFactor(300, 300), 'ambientFactor: limit above 30 °C'],
    [() => cordCurrent(0), 'cordCurrent: area is 0'],
    [() => gaugeCurrent(-2), 'gaugeCurrent: gauge is -2'],
  ])('exact: refuses nonsense (%#)', (call, message) => {
    expect(call).toThrow(message);
  });
});
