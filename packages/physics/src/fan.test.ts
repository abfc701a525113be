import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { curveAt, monotoneCurve, straightCurve } from './curve.ts';
import { affinity, fanNoise, genericFanPoints, scaleFanPoints } from './fan.ts';
import { curvePathFlow, curvePathSlope, quadraticPathFlow, quadraticPathSlope } from './fan-path.ts';
import { fansInParallel, fansInSeries, flowAtPressure, operatingPoints } from './operating-point.ts';

/** Even over the range: doubles drawn by fast-check crowd around zero. */
const evenly = (min: number, max: number) =>
  fc.integer({ min: 0, max: 1e6 }).map((step) => min + ((max - min) * step) / 1e6);

const axial = monotoneCurve(genericFanPoints('axial', 0.02, 40));
const pressures = evenly(-80, 80);

describe('affinity', () => {
  it('exact: air power scales as flow times pressure', () => {
    const { flow, pressure, power } = affinity({ speed: 0.8, diameter: 1.3, density: 0.95 });
    expect(flow * pressure).toBeCloseTo(power, 12);
    expect(() => affinity({ speed: 0 })).toThrow('speed is 0');
  });

  it('exact: there and back again', () => {
    const points = genericFanPoints('blower', 0.03, 80);
    const back = scaleFanPoints(scaleFanPoints(points, { speed: 0.6 }), { speed: 1 / 0.6 });
    back.forEach(([v, p], i) => {
      expect(v).toBeCloseTo(points[i]![0], 12);
      expect(p).toBeCloseTo(points[i]![1], 12);
    });
    expect(fanNoise(fanNoise(42, { speed: 0.6 }), { speed: 1 / 0.6 })).toBeCloseTo(42, 12);
  });

  it('order: of one size and speed the bigger and faster fan is louder', () => {
    expect(fanNoise(40, { diameter: 1.2 })).toBeGreaterThan(40);
    expect(fanNoise(40, { speed: 0.7 })).toBeLessThan(40);
    expect(fanNoise(40, { density: 0.9 })).toBeLessThan(40);
  });
});

describe('paths with a fan', () => {
  it('exact: the closed form satisfies its quadratic, is odd and passes nothing at zero', () => {
    fc.assert(
      fc.property(pressures, evenly(0, 5e3), evenly(1, 1e6), (d, a, b) => {
        const q = quadraticPathFlow(d, a, b);
        expect(a * q + b * q * Math.abs(q)).toBeCloseTo(d, 8);
        expect(quadraticPathFlow(-d, a, b)).toBeCloseTo(-q, 15);
      }),
    );
    expect(quadraticPathFlow(0, 0, 1e5)).toBe(0);
  });

  it('cross: slopes agree with differences', () => {
    const step = 1e-4;
    const slope = (quadraticPathFlow(5 + step, 1e3, 1e5) - quadraticPathFlow(5 - step, 1e3, 1e5)) / (2 * step);
    expect(quadraticPathSlope(5, 1e3, 1e5) / slope).toBeCloseTo(1, 6);
    const at = (dp: number) => curvePathFlow(dp, axial, 1, 1500, 2e4, 0);
    expect(curvePathSlope(at(-12), axial, 1, 1500, 2e4) / ((at(-12 + step) - at(-12 - step)) / (2 * step))).toBeCloseTo(
      1,
      4,
    );
  });

  it('property: the root balances the path, whatever the start, also backwards through the fan', () => {
    fc.assert(
      fc.property(pressures, evenly(-0.05, 0.05), (dp, start) => {
        const q = curvePathFlow(dp, axial, 0.9, 800, 1e5, start);
        expect(dp + 0.9 * curveAt(axial, q) - 800 * q - 1e5 * q * Math.abs(q)).toBeCloseTo(0, 8);
      }),
    );
    expect(curvePathFlow(-70, axial, 1, 800, 1e5, 0)).toBeLessThan(0);
  });

  it('property: more pressure passes more air', () => {
    fc.assert(
      fc.property(pressures, (dp) => {
        expect(curvePathFlow(dp + 0.1, axial, 1, 800, 1e5, 0)).toBeGreaterThan(
          curvePathFlow(dp, axial, 1, 800, 1e5, 0),
        );
      }),
    );
  });

  it('limit: a fan at rest is its resistances', () => {
    expect(curvePathFlow(-6, axial, 0, 800, 1e5, 0)).toBeCloseTo(quadraticPathFlow(-6, 800, 1e5), 12);
  });

  it('exact: finds a root with a stall dip, from any start, that is a root', () => {
    const dip = monotoneCurve(genericFanPoints('axial-with-dip', 0.02, 40));
    for (const start of [0, 0.005, 0.01, 0.02]) {
      const q = curvePathFlow(-24.4, dip, 1, 0, 0, start);
      expect(curveAt(dip, q)).toBeCloseTo(24.4, 9);
    }
  });
});

describe('operating points', () => {
  it('exact: three on a dip, the middle one unstable', () => {
    const dip = monotoneCurve(genericFanPoints('axial-with-dip', 1, 1));
    const points = operatingPoints(
      (v) => curveAt(dip, v),
      () => 0.615,
      0,
      1,
    );
    expect(points.map(({ stable }) => stable)).toEqual([true, false, true]);
    for (const { pressure } of points) expect(pressure).toBeCloseTo(0.615, 9);
  });

  it('exact: counts a crossing on a step once, and none where there is none', () => {
    expect(
      operatingPoints(
        (v) => 1 - v,
        () => 0.5,
        0,
        1,
        10,
      ),
    ).toHaveLength(1);
    expect(
      operatingPoints(
        (v) => 1 - v,
        () => 0,
        0,
        1,
        10,
      ),
    ).toHaveLength(1);
    expect(
      operatingPoints(
        (v) => 1 - v,
        () => 2,
        0,
        1,
      ),
    ).toEqual([]);
  });

  it('exact: a crossing that falls on a step is found to the digit', () => {
    const [only] = operatingPoints(
      (v) => 1 - v,
      (v) => v,
      0,
      1,
      10,
    );
    expect(only?.flow).toBe(0.5);
    const [last] = operatingPoints(
      (v) => 1 - v,
      () => 0,
      0,
      1,
      3,
    );
    expect(last?.flow).toBe(1);
  });

  it('exact: equal fans double the pressure in series and the flow in parallel', () => {
    expect(fansInSeries([axial, axial], 0.01)).toBeCloseTo(2 * curveAt(axial, 0.01), 12);
    expect(fansInParallel([axial, axial], 20)).toBeCloseTo(2 * flowAtPressure(axial, 20), 12);
  });

  it('property: the flow at a pressure gives that pressure back', () => {
    fc.assert(
      fc.property(evenly(-20, 60), (pressure) => {
        expect(curveAt(axial, flowAtPressure(axial, pressure))).toBeCloseTo(pressure, 8);
      }),
    );
  });

  it('order: right of the dip is taken where there are two answers', () => {
    const dip = straightCurve(genericFanPoints('axial-with-dip', 1, 1));
    expect(flowAtPressure(dip, 0.61)).toBeGreaterThan(0.5);
  });
});
