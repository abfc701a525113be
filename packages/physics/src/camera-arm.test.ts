import { describe, expect, it } from 'vitest';
import { armFollows, armFrequency, armStiffness, swingBlur } from './camera-arm.ts';

describe('armStiffness', () => {
  it('cross: the deflection curve integrated twice from its bending moment', () => {
    const [modulus, width, thickness, length] = [2e9, 0.02, 0.008, 0.15];
    const inertia = (width * thickness ** 3) / 12;
    let [slope, way] = [0, 0];
    const steps = 20_000;
    for (let step = 0; step < steps; step += 1) {
      const x = ((step + 0.5) * length) / steps;
      const bent = ((length - x) / (modulus * inertia)) * (length / steps);
      way += (slope + bent / 2) * (length / steps);
      slope += bent;
    }
    expect(armStiffness(modulus, width, thickness, length) * way).toBeCloseTo(1, 6);
    // The slope of the end over its deflection, which swingBlur takes.
    expect((slope * length) / way).toBeCloseTo(1.5, 6);
  });

  it('property: twice the thickness is eight times as stiff', () => {
    expect(armStiffness(2e9, 0.02, 0.016, 0.15) / armStiffness(2e9, 0.02, 0.008, 0.15)).toBeCloseTo(8, 12);
  });
});

describe('armFrequency', () => {
  it('limit: without a load 1.5 % above the exact root of the swinging bar', () => {
    // k = 3 EI/L³ and m = 1: the exact angular frequency is 1.87510407² sqrt(EI/(m L³)).
    expect((2 * Math.PI * armFrequency(3, 0, 1)) / 1.87510407 ** 2).toBeCloseTo(1.0148, 3);
  });

  it('limit: a heavy load alone is a mass on a spring', () => {
    expect(armFrequency(1000, 10, 0)).toBeCloseTo(10 / (2 * Math.PI), 12);
  });

  it('refuses an arm without any mass', () => {
    expect(() => armFrequency(1000, 0, 0)).toThrow('armFrequency: mass is 0');
  });
});

describe('armFollows', () => {
  it('limit: a stiff arm follows its clamp, a soft one stays behind, and between it swings up', () => {
    expect(armFollows(1e-4, 0.03)).toBeCloseTo(0, 6);
    expect(armFollows(1e4, 0.03)).toBeCloseTo(1, 6);
    expect(armFollows(1, 0.03)).toBeCloseTo(1 / 0.06, 9);
  });
});

describe('swingBlur', () => {
  it('exact: a shift alone, from an arm so long that it does not tilt', () => {
    expect(swingBlur(0.001, 1e9, 0.3, 0.4, 2000)).toBeCloseTo(10, 6);
  });

  it('property: a shorter arm tilts more for the same way', () => {
    expect(swingBlur(0.0001, 0.1, 0.3, 0.4, 2000)).toBeGreaterThan(swingBlur(0.0001, 0.2, 0.3, 0.4, 2000));
  });
});
