import { describe, expect, it } from 'vitest';
import { slitFriction, slitOctaves, slitTransmission } from './sound-slit.ts';

describe('slitTransmission', () => {
  it('exact: sound from all sides sees twice what sound straight on does', () => {
    const slit = { width: 0.005, depth: 0.018 };
    expect(slitTransmission(500, { ...slit, field: 'diffuse' })).toBeCloseTo(
      2 * slitTransmission(500, { ...slit, field: 'normal' }),
      12,
    );
  });

  it('property: a narrow deep gap rings where it is about half a wave deep', () => {
    const at = (frequency: number): number =>
      slitTransmission(frequency, { width: 0.001, depth: 0.1, field: 'diffuse' });
    expect(at(1650)).toBeGreaterThan(5 * at(1000));
  });
});

describe('slitOctaves', () => {
  it.each([
    [0.001, [-8.1, -5.3, -2.5, 0.3, 3, 5.2, 4.9]],
    [0.005, [-10.5, -8, -5.6, -3.2, -1, 0.4, -2, -5.8]],
  ])('cross: octave losses of a gap of %d m through 18 mm, as worked by an independent script', (width, losses) => {
    const octaves = slitOctaves(width, 0.018);
    for (const [band, expected] of losses.entries())
      expect(Math.abs(-10 * Math.log10(octaves[band]!) - expected)).toBeLessThan(0.2);
  });

  it('property: a narrow gap lets more than its area through at low tones', () => {
    const octaves = slitOctaves(0.001, 0.018);
    expect(octaves[0]).toBeGreaterThan(4);
    expect(octaves[4]).toBeLessThan(1);
  });

  it('exact: nonsense is refused by name', () => {
    expect(() => slitOctaves(0, 0.018)).toThrow('slitTransmission: width is 0');
  });
});

describe('slitFriction', () => {
  const gap = (width: number): number => slitFriction(125, { width, depth: 0.01, field: 'diffuse' });

  it('limit: nothing in a wide gap, all of it in a hair; four times narrower costs 24 dB', () => {
    expect(gap(0.01)).toBeCloseTo(1, 4);
    expect(gap(1e-6)).toBeLessThan(1e-8);
    expect(10 * Math.log10(gap(8e-6) / gap(2e-6))).toBeCloseTo(24.1, 0);
  });

  it('property: low tones suffer most', () => {
    const at = (frequency: number): number => slitFriction(frequency, { width: 0.0003, depth: 0.01, field: 'diffuse' });
    for (const frequency of [125, 250, 500, 1000]) expect(at(frequency)).toBeLessThan(at(2 * frequency));
    expect(() => at(0)).toThrow('slitFriction: frequency is 0');
  });
});
