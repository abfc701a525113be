import { describe, expect, it } from 'vitest';
import { boxIngress, desiccantTime, strandTime, strandUptake, vapourDensity } from './moisture.ts';

const C = 273.15;
const grams = (celsius: number, relative: number): number => 1000 * vapourDensity(C + celsius, relative);

describe('water in air', () => {
  it.each([
    [22, 0.55, 10.65],
    [22, 0.1, 1.94],
    [35, 0.1, 3.95],
  ])('cross: %d °C, RH %d: %d g/m³ by the Magnus formula', (celsius, relative, expected) => {
    expect(grams(celsius, relative)).toBeCloseTo(expected, 1);
  });

  it('cross: room air of 22 °C and 50 % has 17.9 % when a bay warms it to 40 °C', () => {
    // Pressure of the vapour stays; its density falls as the air expands.
    const relative = (vapourDensity(C + 22, 0.5) * (C + 22)) / (vapourDensity(C + 40, 1) * (C + 40));
    expect(100 * relative).toBeCloseTo(17.9, 0);
  });
});

describe('water in a strand', () => {
  it('limit: nothing at first, all in the end, and no step where the two series meet', () => {
    expect(strandUptake(0)).toBe(0);
    expect(strandUptake(10)).toBeCloseTo(1, 12);
    expect(strandUptake(0.02 - 1e-9)).toBeCloseTo(strandUptake(0.02), 3);
  });

  it('exact: nine tenths after the time that is told', () => {
    const time = strandTime(0.000875, 1e-12);
    expect(strandUptake((1e-12 * time) / 0.000875 ** 2)).toBeCloseTo(0.9, 4);
  });

  it('cross: 7 to 70 h for 1.75 mm', () => {
    expect(strandTime(0.000875, 1e-12) / 3600).toBeCloseTo(71, 0);
    expect(strandTime(0.000875, 1e-11) / 3600).toBeCloseTo(7.1, 1);
  });
});

describe('a dry box', () => {
  const ingress = boxIngress(0.02, 0.05 / 3600, vapourDensity(C + 22, 0.55), vapourDensity(C + 22, 0.1));

  it('cross: 20 litres that change a twentieth an hour take in 0.21 g a day', () => {
    expect(ingress * 86.4e6).toBeCloseTo(0.21, 2);
  });

  it('cross: 100 g of silica gel last 24 to 38 days', () => {
    expect(desiccantTime(0.1, 0.05, ingress) / 86_400).toBeCloseTo(24, 0);
    expect(desiccantTime(0.1, 0.08, ingress) / 86_400).toBeCloseTo(38, 0);
  });

  it('limit: air as dry as the box brings nothing in', () => {
    expect(boxIngress(0.02, 1e-5, 0.01, 0.01)).toBe(0);
  });
});

it.each([
  [() => vapourDensity(300, 1.1), 'vapourDensity: relative is 1.1'],
  [() => strandUptake(-1), 'strandUptake: fourier is -1'],
  [() => strandTime(0, 1), 'strandTime: radius is 0'],
  [() => boxIngress(-1, 1, 1, 1), 'boxIngress: volume is -1'],
  [() => desiccantTime(1, 1, 0), 'desiccantTime: ingress is 0'],
])('exact: refuses nonsense (%#)', (call, message) => {
  expect(call).toThrow(message);
});
