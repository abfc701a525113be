import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  coagulationCoefficient,
  DEPOSITION,
  meanFreePath,
  meanParticleMass,
  numberAfter,
  settledNumber,
} from './aerosol.ts';
import {
  burstFactor,
  EMISSION_SHAPE,
  heatUpPulse,
  meanBurstFactor,
  tailFactor,
  temperatureFactor,
} from './emission.ts';

/** Even over the range: doubles drawn by fast-check crowd around zero. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((step) => min + ((max - min) * step) / 1e6);

describe('particles', () => {
  it('limit: equal spheres weigh what geometry says', () => {
    expect(meanParticleMass(1e-6, 1, 1000)).toBeCloseTo((Math.PI / 6) * 1e-15, 27);
    expect(() => meanParticleMass(1e-6, 0.9, 1000)).toThrow('geometricDeviation is 0.9');
  });

  it('limit: large spheres coagulate at 4 k T/(3 mu), whatever their size', () => {
    const smoluchowski = (4 * 1.380649e-23 * 293.15) / (3 * 1.8134e-5);
    expect(coagulationCoefficient(50e-6, 293.15, 1000) / smoluchowski).toBeCloseTo(1, 2);
  });

  it('order: coagulation is quickest near 20 nm', () => {
    const at = (nanometres: number) => coagulationCoefficient(nanometres * 1e-9, 293.15, 1000);
    expect(at(20)).toBeGreaterThan(at(5));
    expect(at(20)).toBeGreaterThan(at(100));
  });

  it('order: molecules fly farther in warm air', () => {
    expect(meanFreePath(323)).toBeGreaterThan(meanFreePath(293));
    for (const { low, central, high } of [DEPOSITION.room, DEPOSITION.cabinet, ...Object.values(EMISSION_SHAPE)]) {
      expect(low).toBeLessThan(central);
      expect(central).toBeLessThan(high);
    }
  });
});

describe('coagulating box', () => {
  const box = { source: 3e9, loss: 1e-3, coagulation: 1e-15 };

  it('exact: the settled number balances source, loss and coagulation', () => {
    const n = settledNumber(box);
    expect((box.loss * n + box.coagulation * n ** 2) / box.source).toBeCloseTo(1, 12);
  });

  it('cross: agrees with a Runge-Kutta integration', () => {
    const slope = (n: number) => box.source - box.loss * n - box.coagulation * n * n;
    let n = 5e12;
    const h = 0.5;
    for (let t = 0; t < 600; t += h) {
      const k1 = slope(n);
      const k2 = slope(n + 0.5 * h * k1);
      const k3 = slope(n + 0.5 * h * k2);
      const k4 = slope(n + h * k3);
      n += (h / 6) * (k1 + 2 * k2 + 2 * k3 + k4);
    }
    expect(numberAfter(box, 5e12, 600) / n).toBeCloseTo(1, 9);
  });

  it('limit: without coagulation it is a plain decay; at last it settles', () => {
    expect(numberAfter({ source: 0, loss: 1e-3, coagulation: 0 }, 1e10, 700) / 1e10).toBeCloseTo(Math.exp(-0.7), 12);
    expect(numberAfter(box, 0, 1e6) / settledNumber(box)).toBeCloseTo(1, 12);
    expect(() => settledNumber({ source: 1, loss: 0, coagulation: 0 })).toThrow('loss + coagulation is 0');
  });
});

describe('emission', () => {
  it('cross: the mean is the mean of the course', () => {
    const steps = 20_000;
    let sum = 0;
    for (let i = 0; i < steps; i++) sum += burstFactor(((i + 0.5) * 5400) / steps, 7, 600);
    expect(meanBurstFactor(5400, 7, 600)).toBeCloseTo(sum / steps, 7);
  });

  it('limit: a short print is all burst, a long one settles', () => {
    expect(meanBurstFactor(1e-3, 5, 480)).toBeCloseTo(5, 4);
    expect(meanBurstFactor(1e9, 5, 480)).toBeCloseTo(1, 5);
    expect(tailFactor(0, 0.1, 7200)).toBe(0.1);
    expect(heatUpPulse(2, 0)).toBe(0);
  });

  it('property: temperature factors multiply', () => {
    fc.assert(
      fc.property(evenly(-30, 30), evenly(-30, 30), (a, b) => {
        expect(temperatureFactor(a) * temperatureFactor(b)).toBeCloseTo(temperatureFactor(a + b), 8);
      }),
    );
    expect(() => burstFactor(0, 0.5, 480)).toThrow('ratio is 0.5');
  });
});
