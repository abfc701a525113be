// What a camera needs: exposure from illuminance, and the blur of what moves.

import { mustBeFinite, mustBePositive, mustNotBeNegative } from './argument.ts';

/** Calibration of meters of incident light, lx s. Source: ISO 2720:1974, 240 to 400; 250 is usual. Second-hand. */
export const INCIDENT_CONSTANT = 250;

/** Calibration of meters of reflected light, cd s/m². Source: ISO 2720:1974, 10.6 to 13.4; 12.5 is usual. Second-hand. */
export const REFLECTED_CONSTANT = 12.5;

/**
 * Exposure value of a lens and a shutter.
 *
 *     EV = log2(N²/t)
 *
 * @param aperture - N, f-number, above 0.
 * @param time - t, s, above 0.
 * @returns EV.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks Valid: any. Source: ISO 2720:1974. Checked: second-hand.
 *
 * @example f/2 and 1/20 s
 * ```ts
 * exposureValue(2, 0.05); // => 6.322
 * ```
 */
export function exposureValue(aperture: number, time: number): number {
  mustBePositive('exposureValue', 'aperture', aperture);
  mustBePositive('exposureValue', 'time', time);
  return Math.log2(aperture ** 2 / time);
}

/**
 * Illuminance that an exposure value at ISO 100 stands for.
 *
 *     E = (C/100) 2^EV
 *
 * @param value - EV.
 * @returns E in lx.
 * @throws RangeError when the value is not finite.
 *
 * @remarks Valid: C = 250; the standard allows 240 to 400. Source: ISO 2720:1974. Checked: second-hand.
 *
 * @example The dark end of a meter's scale, and a lit room
 * ```ts
 * illuminanceAtValue(0); // => 2.5
 * illuminanceAtValue(7); // => 320
 * ```
 */
export function illuminanceAtValue(value: number): number {
  mustBeFinite('illuminanceAtValue', 'value', value);
  return (INCIDENT_CONSTANT / 100) * 2 ** value;
}

/**
 * Luminance that an exposure value at ISO 100 stands for.
 *
 *     L = (K/100) 2^EV
 *
 * @param value - EV.
 * @returns L in cd/m².
 * @throws RangeError when the value is not finite.
 *
 * @remarks Valid: K = 12.5; the standard allows 10.6 to 13.4. Source: ISO 2720:1974. Checked: second-hand.
 *
 * @example One candela per square metre
 * ```ts
 * luminanceAtValue(3); // => 1
 * ```
 */
export function luminanceAtValue(value: number): number {
  mustBeFinite('luminanceAtValue', 'value', value);
  return (REFLECTED_CONSTANT / 100) * 2 ** value;
}

/**
 * How long a shutter must stay open for a middling picture.
 *
 *     t = C N²/(E S)
 *
 * @param illuminance - E on what is looked at, lx, above 0.
 * @param aperture - N, f-number, above 0.
 * @param iso - S, ISO speed, above 0.
 * @returns t in s.
 * @throws RangeError when an argument is not above 0.
 *
 * @remarks
 * Valid: things of middling brightness, C = 250. Black filament wants up to four times as long, white a third.
 * Source: ISO 2720:1974. Checked: second-hand.
 *
 * @example 200 lx, f/2, ISO 100
 * ```ts
 * exposureTime(200, 2, 100); // => 0.05
 * ```
 */
export function exposureTime(illuminance: number, aperture: number, iso: number): number {
  mustBePositive('exposureTime', 'illuminance', illuminance);
  mustBePositive('exposureTime', 'aperture', aperture);
  mustBePositive('exposureTime', 'iso', iso);
  return (INCIDENT_CONSTANT * aperture ** 2) / (illuminance * iso);
}

/**
 * How far a thing moves while the shutter is open.
 *
 *     blur = v t
 *
 * @param speed - v, m/s, 0 or more.
 * @param time - t, s, 0 or more.
 * @returns m.
 * @throws RangeError when an argument is negative.
 *
 * @remarks Valid: steady motion across the view. Source: kinematics. Checked: memory.
 *
 * @example 100 mm/s in 1/20 s
 * ```ts
 * motionBlur(0.1, 0.05); // => 0.005
 * ```
 */
export function motionBlur(speed: number, time: number): number {
  mustNotBeNegative('motionBlur', 'speed', speed);
  mustNotBeNegative('motionBlur', 'time', time);
  return speed * time;
}
