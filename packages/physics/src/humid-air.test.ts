import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { airDensity } from './air.ts';
import {
  dewPoint,
  humidityRatio,
  humidityRatioAt,
  humidityRatioFromWetBulb,
  moistAirDensity,
  relativeHumidity,
  saturationPressure,
  vapourPressure,
} from './humid-air.ts';

const roomKelvin = fc.double({ min: 263.15, max: 343.15, noNaN: true });
const relative = fc.double({ min: 0.01, max: 1, noNaN: true });

describe('humid air', () => {
  it('property: ratio and relative humidity undo each other', () => {
    fc.assert(
      fc.property(roomKelvin, relative, (kelvin, rh) => {
        expect(relativeHumidity(kelvin, humidityRatioAt(kelvin, rh))).toBeCloseTo(rh, 10);
        const pw = rh * saturationPressure(kelvin);
        expect(vapourPressure(humidityRatio(pw)) / pw).toBeCloseTo(1, 10);
      }),
    );
  });

  it('property: the dew point never lies above the air and undoes the saturation pressure', () => {
    fc.assert(
      fc.property(roomKelvin, relative, (kelvin, rh) => {
        const dew = dewPoint(rh * saturationPressure(kelvin));
        expect(dew).toBeLessThanOrEqual(kelvin + 1e-8);
      }),
    );
    expect(dewPoint(saturationPressure(300))).toBeCloseTo(300, 7);
  });

  it('property: saturation pressure rises with temperature, also across the triple point', () => {
    fc.assert(
      fc.property(fc.double({ min: 173.15, max: 473, noNaN: true }), (kelvin) => {
        expect(saturationPressure(kelvin + 0.1)).toBeGreaterThan(saturationPressure(kelvin));
      }),
    );
  });

  it('limit: the laws over ice and over water meet at the triple point within the 300 ppm they claim', () => {
    const ratio = saturationPressure(273.16 - 1e-9) / saturationPressure(273.16);
    expect(Math.abs(ratio - 1)).toBeLessThan(300e-6);
  });

  it('limit: without vapour the density is that of dry air, within the two gas constants', () => {
    expect(moistAirDensity(300, 0) / airDensity(300)).toBeCloseTo(1, 4);
  });

  it('property: humid air is lighter than dry air of the same temperature', () => {
    fc.assert(
      fc.property(roomKelvin, relative, (kelvin, rh) => {
        expect(moistAirDensity(kelvin, humidityRatioAt(kelvin, rh))).toBeLessThan(moistAirDensity(kelvin, 0));
      }),
    );
  });

  it('limit: a wet bulb as warm as the dry bulb means saturated air', () => {
    expect(humidityRatioFromWetBulb(293.15, 293.15)).toBeCloseTo(humidityRatioAt(293.15, 1), 12);
    expect(humidityRatioFromWetBulb(268.15, 268.15)).toBeCloseTo(humidityRatioAt(268.15, 1), 12);
  });

  it('refuses vapour above the total pressure, a warmer wet bulb, and air drier than dry', () => {
    expect(() => humidityRatio(101325)).toThrow('humidityRatio: pressure is 101325');
    expect(() => humidityRatio(-1)).toThrow('humidityRatio: vapourPressure is -1');
    expect(() => humidityRatioFromWetBulb(293, 294)).toThrow('wetBulb is 294');
    expect(() => humidityRatioFromWetBulb(313.15, 278.15)).toThrow('dry air at 313.15 K has a warmer wet bulb');
    expect(() => humidityRatioAt(293, 1.2)).toThrow('relative is 1.2');
    expect(() => saturationPressure(100)).toThrow('kelvin is 100');
    expect(() => dewPoint(0)).toThrow('dewPoint');
  });
});
