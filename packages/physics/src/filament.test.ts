import { describe, expect, it } from 'vitest';
import { bendStrain, filamentLength, windingMass } from './filament.ts';
import { clampedBuckling, longestGap, rodMoment } from './filament-gap.ts';
import { pullAfterBends, spoolDrag, spoolStart } from './filament-path.ts';

const D = 0.00175;

describe('filament', () => {
  it.each([
    ['PLA', 1240, 335.3, 126.4],
    ['ASA', 1070, 388.6, 146.5],
    ['PA 12', 1010, 411.6, 155.2],
    ['TPU', 1210, 343.6, 129.5],
  ])('cross: metres in a kilogram of %s', (_, density, thin, thick) => {
    expect(filamentLength(1, density, D)).toBeCloseTo(thin, 1);
    expect(filamentLength(1, density, 0.00285)).toBeCloseTo(thick, 1);
  });

  it.each([
    [0.195, 1.201],
    [0.16, 0.668],
    [0.13, 0.296],
  ])('cross: a spool wound to %d m holds %d kg of PLA', (outer, mass) => {
    expect(windingMass(1240, outer, 0.1, 0.055, 0.8)).toBeCloseTo(mass, 3);
  });

  it('exact: 2 % of strain at 44 mm, 1 % at 87.5 mm; an empty spool holds nothing', () => {
    expect(bendStrain(D, 0.04375)).toBeCloseTo(0.02, 12);
    expect(bendStrain(D, 0.0875)).toBeCloseTo(0.01, 12);
    expect(windingMass(1240, 0.1, 0.1, 0.055, 0.8)).toBe(0);
  });
});

describe('the way from the spool', () => {
  it.each([
    [0.5, 0.1, 180, 0.685],
    [0.5, 0.15, 180, 0.801],
    [0.5, 0.15, 360, 1.283],
    [0.5, 0.2, 360, 1.757],
    [0.5, 0.3, 720, 21.7],
    [1.2, 0.12, 270, 2.112],
  ])('cross: %d N, friction %d, %d°: %d N', (before, friction, degrees, after) => {
    expect(pullAfterBends(before, friction, (degrees * Math.PI) / 180)).toBeCloseTo(after, after > 10 ? 1 : 3);
  });

  it('cross: a spool on a rod, full and nearly empty; on a ball bearing; and set turning', () => {
    expect(spoolDrag(1.25, 0.3, 0.026, 0.08)).toBeCloseTo(1.2, 2);
    expect(spoolDrag(0.45, 0.3, 0.026, 0.045)).toBeCloseTo(0.765, 3);
    expect(spoolDrag(1.25, 0.0015, 0.004, 0.08)).toBeCloseTo(0.0009, 4);
    expect(spoolStart(1.25, 0.1, 0.026, 0.08, 1)).toBeCloseTo(1.04, 2);
  });

  it('property: bends of one path multiply, in any order', () => {
    const whole = pullAfterBends(0.7, 0.2, 3);
    expect(pullAfterBends(pullAfterBends(0.7, 0.2, 1), 0.2, 2)).toBeCloseTo(whole, 12);
    expect(pullAfterBends(0.7, 0, 3)).toBe(0.7);
  });
});

describe('the gap below the wheels', () => {
  it.each([
    [3.3e9, 10, 600, 0],
    [30e6, 5, 21.8, 1],
    [30e6, 10, 5.5, 1],
    [30e6, 20, 1.4, 1],
  ])('cross: %d Pa, %d mm: %d N', (modulus, millimetres, newton, digits) => {
    expect(clampedBuckling(modulus, rodMoment(D), millimetres / 1000)).toBeCloseTo(newton, digits);
  });

  it('exact: the longest gap bears just the push that was asked for', () => {
    const gap = longestGap(30e6, rodMoment(D), 20);
    expect(clampedBuckling(30e6, rodMoment(D), gap)).toBeCloseTo(20, 9);
  });
});

it.each([
  [() => filamentLength(0, 1, 1), 'filamentLength: mass is 0'],
  [() => windingMass(1240, 0.1, 0.2, 0.05, 0.8), 'windingMass: hub is 0.2'],
  [() => bendStrain(1, 0), 'bendStrain: radius is 0'],
  [() => pullAfterBends(-1, 0, 0), 'pullAfterBends: before is -1'],
  [() => spoolDrag(1, 1, 1, 0), 'spoolDrag: winding is 0'],
  [() => spoolStart(-1, 1, 1, 1, 1), 'spoolStart: mass is -1'],
  [() => rodMoment(0), 'rodMoment: diameter is 0'],
  [() => clampedBuckling(1, 1, 0), 'clampedBuckling: length is 0'],
  [() => longestGap(1, 1, 0), 'longestGap: push is 0'],
])('exact: refuses nonsense (%#)', (call, message) => {
  expect(call).toThrow(message);
});
