import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  exposureTime,
  exposureValue,
  INCIDENT_CONSTANT,
  illuminanceAtValue,
  luminanceAtValue,
  motionBlur,
  REFLECTED_CONSTANT,
} from './exposure.ts';

const stop = fc.double({ min: 1, max: 22, noNaN: true });
const lux = fc.double({ min: 1, max: 1e5, noNaN: true });

describe('exposure', () => {
  it('exact: at ISO 100 the time is that of the exposure value of the light', () => {
    fc.assert(
      fc.property(stop, lux, (N, E) => {
        const value = exposureValue(N, exposureTime(E, N, 100));
        expect(illuminanceAtValue(value) / E).toBeCloseTo(1, 9);
      }),
    );
  });

  it('property: twice the light, twice the speed, or a stop more open halve the time', () => {
    fc.assert(
      fc.property(stop, lux, (N, E) => {
        const time = exposureTime(E, N, 200);
        expect(exposureTime(2 * E, N, 200) / time).toBeCloseTo(0.5, 9);
        expect(exposureTime(E, N, 400) / time).toBeCloseTo(0.5, 9);
        expect(exposureTime(E, N / Math.SQRT2, 200) / time).toBeCloseTo(0.5, 9);
      }),
    );
  });

  it('cross: both calibrations speak of a thing that throws back 16 %', () => {
    // L = rho E/pi: K/C = rho/pi.
    const rho = (Math.PI * REFLECTED_CONSTANT) / INCIDENT_CONSTANT;
    expect(rho).toBeCloseTo(0.157, 3);
    expect((Math.PI * luminanceAtValue(9)) / illuminanceAtValue(9)).toBeCloseTo(rho, 9);
  });

  it('exact: blur is speed times time', () => expect(motionBlur(0.08, 0.25)).toBe(0.02));

  it('refuses darkness and no lens', () => {
    expect(() => exposureTime(0, 2, 100)).toThrow('illuminance is 0');
    expect(() => exposureValue(0, 1)).toThrow('aperture is 0');
    expect(() => motionBlur(-1, 1)).toThrow('speed is -1');
  });
});
