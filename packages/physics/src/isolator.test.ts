import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  forcedAmplitude,
  hystereticTransmissibility,
  naturalFrequency,
  neededDeflection,
  padStiffness,
  swayStiffness,
  transmissibility,
} from './isolator.ts';
import { reversalFrequency, stepFrequency, strokeAt } from './stroke.ts';
import { twoMassFrequencies, twoMassTransmission } from './two-masses.ts';

const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('a mass on something springy', () => {
  it('limit: slow shakes come through as they are; at √2 they do at any damping', () => {
    fc.assert(
      fc.property(within(0.005, 0.9), (damping) => {
        expect(transmissibility(0, damping)).toBe(1);
        expect(transmissibility(Math.SQRT2, damping)).toBeCloseTo(1, 9);
        expect(hystereticTransmissibility(Math.SQRT2, 2 * damping)).toBeCloseTo(1, 9);
        expect(hystereticTransmissibility(0, 2 * damping)).toBe(1);
      }),
    );
  });

  it('property: above 1 below √2, below 1 above it', () => {
    fc.assert(
      fc.property(within(0.01, 1.41), within(1.42, 60), within(0.005, 0.9), (slow, fast, damping) => {
        expect(transmissibility(slow, damping)).toBeGreaterThan(1);
        expect(transmissibility(fast, damping)).toBeLessThan(1);
      }),
    );
  });

  it.each([
    [0.5, 1.332, 1.3282, 1.3138],
    [1, 10.05, 5.099, 2.6926],
    [1.25, 1.7489, 1.6746, 1.4856],
    [2, 0.3392, 0.3559, 0.4125],
    [5, 0.0466, 0.0589, 0.0928],
    [10, 0.0143, 0.0226, 0.0416],
    [50, 0.002, 0.004, 0.008],
  ])('cross: a second calculation at r = %f for damping 0.05, 0.1, 0.2', (ratio, low, middle, high) => {
    expect(transmissibility(ratio, 0.05)).toBeCloseTo(low, 3);
    expect(transmissibility(ratio, 0.1)).toBeCloseTo(middle, 3);
    expect(transmissibility(ratio, 0.2)).toBeCloseTo(high, 3);
  });

  it('cross: what gets through is the motion times what spring and damper pass on', () => {
    const [stiffness, ratio, damping] = [4e5, 2.3, 0.15];
    const passed = forcedAmplitude(1, stiffness, ratio, damping) * stiffness * Math.hypot(1, 2 * damping * ratio);
    expect(passed).toBeCloseTo(transmissibility(ratio, damping), 12);
  });

  it('exact: both kinds of loss agree at resonance, where η = 2 ζ', () => {
    expect(hystereticTransmissibility(1, 0.2)).toBeCloseTo(transmissibility(1, 0.1), 12);
  });

  it('cross: worked pads of 60 mm x 60 mm x 25 mm, and a full sheet, under 25 kg', () => {
    const pads = naturalFrequency((1.5 * 100e3 * 4 * 0.06 ** 2) / 0.025, 25);
    expect(pads).toBeCloseTo(9.36, 2);
    const through = [2, 5, 8, 12, 15, 35, 125].map((hertz) => transmissibility(hertz / pads, 0.1));
    for (const [at, expected] of [1.048, 1.392, 3.183, 1.487, 0.655, 0.096, 0.016].entries())
      expect(through[at]).toBeCloseTo(expected, 2);
    const sheet = naturalFrequency((1.5 * 100e3 * 0.16) / 0.02, 25);
    expect(transmissibility(35 / sheet, 0.1)).toBeCloseTo(5.08, 1);
    expect(20 * Math.log10(transmissibility(500 / sheet, 0.1))).toBeCloseTo(-36.6, 1);
    expect(naturalFrequency((1.5 * 100e3 * 0.16) / 0.02, 10)).toBeCloseTo(55.13, 1);
    expect(naturalFrequency((1.5 * 100e3 * 0.16) / 0.02, 40)).toBeCloseTo(27.57, 1);
  });

  it('cross: the deflection that is needed lets through what was asked', () => {
    const deflection = neededDeflection(25, 0.1);
    expect(1000 * deflection).toBeCloseTo(4.37, 2);
    const frequency = Math.sqrt(9.80665 / deflection) / (2 * Math.PI);
    expect(transmissibility(25 / frequency, 1e-6)).toBeCloseTo(0.1, 9);
  });

  it('limit: a tall pad is as stiff as its rubber, a flat one far stiffer', () => {
    expect(padStiffness(2e6, 0.01, 0.01, 10) / 2e6).toBeCloseTo(1, 6);
    expect(padStiffness(2e6, 0.1, 0.1, 0.005) / 2e6).toBeCloseTo(51, 9);
  });

  it('limit: a push at the height of the springs shears them only; springs far apart keep it from rocking', () => {
    expect(swayStiffness(2e4, 6e4, 0.2, 0)).toBeCloseTo(2e4, 9);
    expect(swayStiffness(2e4, 6e4, 1e6, 0.2)).toBeCloseTo(2e4, 3);
  });

  it('cross: the give of a sway is that of the shear and that of the turning two rows of pads allow', () => {
    const [push, height, half] = [10, 0.25, 0.15];
    const turn = (push * height) / (2 * half) / (6e4 / 2) / half;
    expect(push / swayStiffness(2e4, 6e4, half, height)).toBeCloseTo(push / 2e4 + turn * height, 12);
  });

  it.each([
    ['no reach', () => swayStiffness(1, 1, 0, 1)],
    ['no mass', () => naturalFrequency(1, 0)],
    ['a frequency below 0', () => transmissibility(-1, 0.1)],
    ['no damping', () => transmissibility(1, 0)],
    ['no loss', () => hystereticTransmissibility(1, 0)],
    ['no spring', () => forcedAmplitude(1, 0, 1, 0.1)],
    ['nothing let through', () => neededDeflection(10, 0)],
    ['a pad without thickness', () => padStiffness(1, 1, 1, 0)],
    [
      'a lower mass of nothing',
      () => twoMassFrequencies({ mass: 1, stiffness: 1, loss: 0 }, { mass: 0, stiffness: 1, loss: 0 }),
    ],
    ['a stroke of nothing', () => reversalFrequency(0, 1, 1)],
    ['a frequency of nothing', () => strokeAt(0, 1, 1)],
    ['no turn', () => stepFrequency(1, 0, 200)],
  ])('limit: %s is refused', (_, call) => expect(call).toThrow(RangeError));
});

describe('two masses upon one another', () => {
  const upper = { mass: 25, stiffness: 1.2e6, loss: 0.2 };

  it('limit: on a base that does not give it is one mass', () => {
    const stiff = { mass: 1, stiffness: 1e15, loss: 0 };
    expect(twoMassFrequencies(upper, stiff)[0]).toBeCloseTo(naturalFrequency(1.2e6, 25), 6);
    for (const hertz of [2, 12, 35, 125, 500])
      expect(twoMassTransmission(hertz, upper, stiff)).toBeCloseTo(
        hystereticTransmissibility(hertz / naturalFrequency(1.2e6, 25), 0.2),
        6,
      );
  });

  it('limit: a light shelf is a second spring in series', () => {
    const shelf = { mass: 1e-6, stiffness: 388_800, loss: 0.02 };
    const series = 1 / (1 / 1.2e6 + 1 / 388_800);
    expect(twoMassFrequencies(upper, shelf)[0]).toBeCloseTo(naturalFrequency(series, 25), 3);
    expect(naturalFrequency(series, 25)).toBeCloseTo(17.25, 1);
  });

  it('cross: worked shelf with soft foam', () => {
    const [low, high] = twoMassFrequencies(
      { mass: 25, stiffness: 1e5, loss: 0 },
      { mass: 1.944, stiffness: 388_800, loss: 0 },
    );
    expect(low).toBeCloseTo(8.96, 2);
    expect(high).toBeCloseTo(79.94, 1);
  });

  it('property: at rest all of a force reaches the ground', () => {
    expect(twoMassTransmission(0, { ...upper, loss: 0 }, { mass: 2, stiffness: 4e5, loss: 0 })).toBeCloseTo(1, 12);
  });

  it('property: what gets through is largest near the lower natural frequency', () => {
    const shelf = { mass: 2, stiffness: 4e5, loss: 0.05 };
    const [low] = twoMassFrequencies(upper, shelf);
    const at = (hertz: number): number => twoMassTransmission(hertz, upper, shelf);
    expect(at(low)).toBeGreaterThan(at(0.8 * low));
    expect(at(low)).toBeGreaterThan(at(1.25 * low));
    expect(at(low)).toBeGreaterThan(3);
  });
});

describe('strokes', () => {
  it.each([
    [0.05, 0.1, 3, 0.94],
    [0.02, 0.1, 3, 2.14],
    [0.005, 0.15, 5, 7.89],
    [0.002, 0.06, 1, 5.59],
    [0.0008, 0.1, 3, 15.31],
    [0.0005, 0.2, 10, 35.36],
  ])('cross: %f m at %f m/s and %f m/s²: %f Hz', (length, speed, acceleration, hertz) => {
    expect(reversalFrequency(length, speed, acceleration)).toBeCloseTo(hertz, 2);
  });

  it('property: the stroke at a frequency swings at that frequency', () => {
    fc.assert(
      fc.property(within(0.2, 60), within(0.02, 0.5), within(0.5, 20), (hertz, speed, acceleration) => {
        fc.pre(1 / (2 * hertz) > 1e-3);
        expect(reversalFrequency(strokeAt(hertz, speed, acceleration), speed, acceleration)).toBeCloseTo(hertz, 6);
      }),
    );
  });

  it('property: shorter strokes swing faster, and both forms meet where the speed is just reached', () => {
    const just = 0.1 ** 2 / 3;
    expect(reversalFrequency(just * 0.999_999, 0.1, 3)).toBeCloseTo(reversalFrequency(just, 0.1, 3), 4);
    expect(reversalFrequency(0.004, 0.1, 3)).toBeGreaterThan(reversalFrequency(0.005, 0.1, 3));
  });

  it('exact: one turn a second of 200 steps is 200 Hz', () =>
    expect(stepFrequency(0.04, 0.04, 200)).toBeCloseTo(200, 9));
});
