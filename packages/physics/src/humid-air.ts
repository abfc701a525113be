// Air with water vapour in it, by the equations of the ASHRAE Handbook - Fundamentals 2017, chapter 1.
// The humidity ratio W is the mass of vapour for each mass of dry air, kg/kg; energies and volumes are per kg of dry air.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import { ATMOSPHERE, ICE_POINT } from './constants.ts';

/** Triple point of water, K: below it the saturated state is over ice. Source: ITS-90. */
const TRIPLE_POINT = 273.16;

/** Molar mass of water over that of dry air. ASHRAE 2017 ch. 1 eq 20. */
const MASS_RATIO = 0.621945;

/** Gas constant of dry air that ASHRAE's volumes use, J/(kg·K). ASHRAE 2017 ch. 1 eq 1. */
const DRY_AIR_GAS_CONSTANT = 287.042;

/** Range of the saturation formulas, K: -100 °C to 200 °C. ASHRAE 2017 ch. 1, beside eq 5 and 6. */
const COLDEST = 173.15;
const HOTTEST = 473.15;

/**
 * Pressure of water vapour over ice or liquid water, Pa.
 *
 *     ln p = C1/T + C2 + C3 T + C4 T² + C5 T³ + C6 T⁴ + C7 ln T    over ice
 *     ln p = C8/T + C9 + C10 T + C11 T² + C12 T³ + C13 ln T        over water
 *
 * @param kelvin - Temperature T, K, 173.15 to 473.15.
 * @returns Saturation pressure, Pa. The handbook claims 300 ppm against its table.
 * @throws RangeError outside -100 °C to 200 °C.
 *
 * @remarks
 * Valid: -100 °C to 200 °C.
 * Source: Hyland and Wexler 1983, as ASHRAE Fundamentals 2017 ch. 1 eq 5 and 6.
 * Checked: memory for the coefficients, second-hand for the table values they are checked against.
 *
 * @example Water at 25 °C: 3169.7 Pa in the handbook's table 3, which claims 300 ppm
 * ```ts
 * saturationPressure(298.15); // => 3169.2
 * ```
 */
export function saturationPressure(kelvin: number): number {
  mustLieWithin('saturationPressure', 'kelvin', kelvin, COLDEST, HOTTEST);
  return Math.exp(kelvin < TRIPLE_POINT ? logPressureOverIce(kelvin) : logPressureOverWater(kelvin));
}

function logPressureOverIce(T: number): number {
  const polynomial = 6.3925247 + T * (-9.677843e-3 + T * (6.2215701e-7 + T * (2.0747825e-9 + T * -9.484024e-13)));
  return -5.6745359e3 / T + polynomial + 4.1635019 * Math.log(T);
}

function logPressureOverWater(T: number): number {
  const polynomial = 1.3914993 + T * (-4.8640239e-2 + T * (4.1764768e-5 + T * -1.4452093e-8));
  return -5.8002206e3 / T + polynomial + 6.5459673 * Math.log(T);
}

/**
 * Humidity ratio from the vapour's partial pressure, kg/kg.
 *
 *     W = 0.621945 pw / (p - pw)
 *
 * @param vapourPressure - Partial pressure pw, Pa, 0 or more and below the total pressure.
 * @param pressure - Total pressure p, Pa; the standard atmosphere unless given.
 * @returns Humidity ratio W, kg of vapour per kg of dry air.
 * @throws RangeError when the vapour's pressure is negative or not below the total.
 *
 * @remarks
 * Valid: ideal mixture; within 0.5 % at room conditions (memory).
 * Source: ASHRAE Fundamentals 2017 ch. 1 eq 20.
 * Checked: second-hand.
 *
 * @example Half of saturation at 20 °C
 * ```ts
 * humidityRatio(0.5 * 2338.8); // => 0.007262
 * ```
 */
export function humidityRatio(vapourPressure: number, pressure: number = ATMOSPHERE): number {
  mustNotBeNegative('humidityRatio', 'vapourPressure', vapourPressure);
  if (!(pressure > vapourPressure)) {
    throw new RangeError(`humidityRatio: pressure is ${pressure}; it must be above the vapour's ${vapourPressure}`);
  }
  return (MASS_RATIO * vapourPressure) / (pressure - vapourPressure);
}

/**
 * Partial pressure of the vapour in air of a known humidity ratio, Pa: the inverse of `humidityRatio`.
 *
 *     pw = p W / (0.621945 + W)
 *
 * @param ratio - Humidity ratio W, kg/kg, 0 or more.
 * @param pressure - Total pressure p, Pa; the standard atmosphere unless given.
 * @returns Vapour pressure, Pa.
 * @throws RangeError when the ratio is negative or the pressure not above 0.
 *
 * @remarks
 * Valid: ideal mixture.
 * Source: ASHRAE Fundamentals 2017 ch. 1 eq 36 with eq 20 solved for pw.
 * Checked: second-hand.
 *
 * @example Room air with 7.262 g/kg
 * ```ts
 * vapourPressure(0.007262); // => 1169.4
 * ```
 */
export function vapourPressure(ratio: number, pressure: number = ATMOSPHERE): number {
  mustNotBeNegative('vapourPressure', 'ratio', ratio);
  mustBePositive('vapourPressure', 'pressure', pressure);
  return (pressure * ratio) / (MASS_RATIO + ratio);
}

/**
 * Relative humidity, 0 to 1 (above 1 where the air would be supersaturated).
 *
 *     RH = pw / pws(T)
 *
 * @param kelvin - Air temperature T, K.
 * @param ratio - Humidity ratio, kg/kg, 0 or more.
 * @param pressure - Total pressure, Pa; the standard atmosphere unless given.
 * @returns Relative humidity as a fraction.
 * @throws RangeError outside the range of the saturation formula or for a negative ratio.
 *
 * @remarks
 * Valid: -100 °C to 200 °C.
 * Source: ASHRAE Fundamentals 2017 ch. 1 eq 22.
 * Checked: second-hand.
 *
 * @example Room air of 20 °C and 50 % warmed to 40 °C in a bay
 * ```ts
 * relativeHumidity(313.15, 0.007262); // => 0.1584
 * ```
 */
export function relativeHumidity(kelvin: number, ratio: number, pressure: number = ATMOSPHERE): number {
  return vapourPressure(ratio, pressure) / saturationPressure(kelvin);
}

/**
 * Humidity ratio of air at a relative humidity, kg/kg: the inverse of `relativeHumidity`.
 *
 *     W = 0.621945 RH pws / (p - RH pws)
 *
 * @param kelvin - Air temperature, K.
 * @param relative - Relative humidity RH, 0 to 1.
 * @param pressure - Total pressure p, Pa; the standard atmosphere unless given.
 * @returns Humidity ratio, kg/kg.
 * @throws RangeError when RH is not 0 to 1 or the temperature is out of range.
 *
 * @remarks
 * Valid: -100 °C to where the vapour's pressure reaches the total (100 °C at one atmosphere and RH 1).
 * Source: ASHRAE Fundamentals 2017 ch. 1 eq 20 and 22.
 * Checked: second-hand.
 *
 * @example Room air of 20 °C and 50 %
 * ```ts
 * humidityRatioAt(293.15, 0.5); // => 0.007262
 * ```
 */
export function humidityRatioAt(kelvin: number, relative: number, pressure: number = ATMOSPHERE): number {
  mustLieWithin('humidityRatioAt', 'relative', relative, 0, 1);
  return humidityRatio(relative * saturationPressure(kelvin), pressure);
}

/**
 * Humidity ratio from a wet-bulb reading, kg/kg.
 *
 *     W = ((2501 - 2.326 t*) Ws* - 1.006 (t - t*)) / (2501 + 1.86 t - 4.186 t*)    t* ≥ 0 °C
 *     W = ((2830 - 0.24 t*) Ws* - 1.006 (t - t*)) / (2830 + 1.86 t - 2.1 t*)       t* < 0 °C
 *
 * t is the dry bulb, t* the wet bulb, both in °C; Ws* the ratio of air saturated at t*.
 *
 * @param kelvin - Dry-bulb temperature, K.
 * @param wetBulb - Wet-bulb temperature, K, not above the dry bulb.
 * @param pressure - Total pressure, Pa; the standard atmosphere unless given.
 * @returns Humidity ratio, kg/kg.
 * @throws RangeError when the wet bulb is warmer than the dry bulb or so cold that no vapour is left.
 *
 * @remarks
 * Valid: within the saturation formula's range.
 * Source: ASHRAE Fundamentals 2017 ch. 1 eq 33 and 35.
 * Checked: memory; checked against the handbook's example 1.
 *
 * @example 40 °C dry bulb, 20 °C wet bulb; example 1 of the handbook prints 0.0065
 * ```ts
 * humidityRatioFromWetBulb(313.15, 293.15); // => 0.0064
 * ```
 */
export function humidityRatioFromWetBulb(kelvin: number, wetBulb: number, pressure: number = ATMOSPHERE): number {
  if (!(wetBulb <= kelvin)) {
    throw new RangeError(
      `humidityRatioFromWetBulb: wetBulb is ${wetBulb}; it must not be above the dry bulb ${kelvin}`,
    );
  }
  const t = kelvin - ICE_POINT;
  const wet = wetBulb - ICE_POINT;
  const saturated = humidityRatio(saturationPressure(wetBulb), pressure);
  const ratio =
    wet >= 0
      ? ((2501 - 2.326 * wet) * saturated - 1.006 * (t - wet)) / (2501 + 1.86 * t - 4.186 * wet)
      : ((2830 - 0.24 * wet) * saturated - 1.006 * (t - wet)) / (2830 + 1.86 * t - 2.1 * wet);
  if (!(ratio >= 0)) {
    throw new RangeError(
      `humidityRatioFromWetBulb: wetBulb is ${wetBulb}; dry air at ${kelvin} K has a warmer wet bulb`,
    );
  }
  return ratio;
}

/**
 * Dew point: the temperature at which the air's vapour begins to settle, K.
 *
 *     pws(dew point) = pw
 *
 * @param pressureOfVapour - Partial pressure of the vapour, Pa; at least that of ice at -100 °C (0.0014 Pa).
 * @returns Dew point (frost point below 0 °C), K, to 1e-9 K.
 * @throws RangeError when the pressure lies outside the saturation formula's range.
 *
 * @remarks
 * Valid: -100 °C to 200 °C.
 * Source: the saturation formula solved for temperature by bisection; no fitted inverse is used.
 * Checked: second-hand.
 *
 * @example Room air of 20 °C and 50 %
 * ```ts
 * dewPoint(0.5 * 2338.8) - 273.15; // => 9.27
 * ```
 */
export function dewPoint(pressureOfVapour: number): number {
  mustLieWithin(
    'dewPoint',
    'pressureOfVapour',
    pressureOfVapour,
    saturationPressure(COLDEST),
    saturationPressure(HOTTEST),
  );
  let low = COLDEST;
  let high = HOTTEST;
  while (high - low > 1e-9) {
    const middle = (low + high) / 2;
    if (saturationPressure(middle) < pressureOfVapour) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * Enthalpy of moist air over dry air at 0 °C and liquid water at 0 °C, J per kg of dry air.
 *
 *     h = 1006 t + W (2.501e6 + 1860 t)    t in °C
 *
 * @param kelvin - Temperature, K.
 * @param ratio - Humidity ratio W, kg/kg, 0 or more.
 * @returns Enthalpy, J/kg.
 * @throws RangeError for a negative ratio or a temperature that is not above 0 K.
 *
 * @remarks
 * Valid: -50 °C to 110 °C (memory).
 * Source: ASHRAE Fundamentals 2017 ch. 1 eq 30.
 * Checked: second-hand.
 *
 * @example Room air of 20 °C and 50 %
 * ```ts
 * moistAirEnthalpy(293.15, 0.007262); // => 38552
 * ```
 */
export function moistAirEnthalpy(kelvin: number, ratio: number): number {
  mustBePositive('moistAirEnthalpy', 'kelvin', kelvin);
  mustNotBeNegative('moistAirEnthalpy', 'ratio', ratio);
  const t = kelvin - ICE_POINT;
  return 1006 * t + ratio * (2.501e6 + 1860 * t);
}

/**
 * Volume of moist air that holds one kilogram of dry air, m³/kg.
 *
 *     v = 287.042 T (1 + W / 0.621945) / p
 *
 * @param kelvin - Temperature T, K, above 0.
 * @param ratio - Humidity ratio W, kg/kg, 0 or more.
 * @param pressure - Total pressure p, Pa; the standard atmosphere unless given.
 * @returns Specific volume, m³ per kg of dry air.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: ideal mixture.
 * Source: ASHRAE Fundamentals 2017 ch. 1 eq 26.
 * Checked: second-hand.
 *
 * @example Room air of 20 °C and 50 %
 * ```ts
 * moistAirVolume(293.15, 0.007262); // => 0.8402
 * ```
 */
export function moistAirVolume(kelvin: number, ratio: number, pressure: number = ATMOSPHERE): number {
  mustBePositive('moistAirVolume', 'kelvin', kelvin);
  mustNotBeNegative('moistAirVolume', 'ratio', ratio);
  mustBePositive('moistAirVolume', 'pressure', pressure);
  return (DRY_AIR_GAS_CONSTANT * kelvin * (1 + ratio / MASS_RATIO)) / pressure;
}

/**
 * Density of moist air, kg of air and vapour per m³.
 *
 *     rho = (1 + W) / v
 *
 * @param kelvin - Temperature, K, above 0.
 * @param ratio - Humidity ratio W, kg/kg, 0 or more.
 * @param pressure - Total pressure, Pa; the standard atmosphere unless given.
 * @returns Density, kg/m³.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: ideal mixture.
 * Source: ASHRAE Fundamentals 2017 ch. 1 eq 11.
 * Checked: second-hand.
 *
 * @example Room air of 20 °C and 50 %
 * ```ts
 * moistAirDensity(293.15, 0.007262); // => 1.1989
 * ```
 */
export function moistAirDensity(kelvin: number, ratio: number, pressure: number = ATMOSPHERE): number {
  return (1 + ratio) / moistAirVolume(kelvin, ratio, pressure);
}
