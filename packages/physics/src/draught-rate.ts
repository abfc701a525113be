// Draught on people: how many of them would complain of moving air. It says nothing of a print on a bed.

import { mustBeFinite, mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';
import { ICE_POINT } from './constants.ts';

/** Air slower than this, m/s, is not felt. Source: ISO 7730:2005, eq 6. */
const NOT_FELT = 0.05;
/** Air as warm as skin, °C, is not felt as a draught. Source: ISO 7730:2005, eq 6. */
const SKIN = 34;

/**
 * Share of people who are dissatisfied because of a draught, percent.
 *
 *     DR = (34 - t) (v - 0.05)^0.62 (0.37 v Tu + 3.14)    t in °C, v in m/s, Tu in percent, at most 100
 *
 * @param kelvin - Air temperature, K.
 * @param speed - Mean air speed v, m/s, 0 or more; below 0.05 it counts as 0.05.
 * @param turbulencePercent - Turbulence intensity Tu, percent, 0 or more; 40 where it is not known.
 * @returns Dissatisfied people, percent, 0 to 100.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: 20 °C to 26 °C, v < 0.5 m/s, Tu 10 to 60 percent, light seated work, draught at the neck.
 * Source: ISO 7730:2005, eq 6.
 * Checked: memory; verified against a printed table, second-hand.
 *
 * @example A seat where the exhaust is felt
 * ```ts
 * draughtRate(295.15, 0.2, 40); // => 22.58
 * ```
 */
export function draughtRate(kelvin: number, speed: number, turbulencePercent: number): number {
  mustBePositive('draughtRate', 'kelvin', kelvin);
  mustNotBeNegative('draughtRate', 'speed', speed);
  mustNotBeNegative('draughtRate', 'turbulencePercent', turbulencePercent);
  const coolness = Math.max(0, SKIN - (kelvin - ICE_POINT));
  const felt = Math.max(NOT_FELT, speed);
  const rate = coolness * (felt - NOT_FELT) ** 0.62 * (0.37 * felt * turbulencePercent + 3.14);
  return Math.min(100, rate);
}

/**
 * Air speed at which a given share of people is dissatisfied, m/s: the inverse of `draughtRate`.
 *
 * @param ratePercent - Dissatisfied people, percent, above 0 and below 100.
 * @param kelvin - Air temperature, K, below 34 °C.
 * @param turbulencePercent - Turbulence intensity, percent, 0 or more.
 * @returns Speed, m/s, above 0.05.
 * @throws RangeError when an argument is out of bounds.
 *
 * @remarks
 * Valid: as `draughtRate`.
 * Source: ISO 7730:2005, eq 6, solved by bisection.
 * Checked: memory; verified against a printed table, second-hand.
 *
 * @example The speed that a fifth of the people mind at 20 °C
 * ```ts
 * draughtSpeed(20, 293.15, 40); // => 0.162
 * ```
 */
export function draughtSpeed(ratePercent: number, kelvin: number, turbulencePercent: number): number {
  mustBeFinite('draughtSpeed', 'ratePercent', ratePercent);
  if (!(ratePercent > 0 && ratePercent < 100)) {
    throw new RangeError(`draughtSpeed: ratePercent is ${ratePercent}; it must lie between 0 and 100, both left out`);
  }
  mustLieWithin('draughtSpeed', 'kelvin', kelvin, 1, SKIN + ICE_POINT - 0.1);
  let low = NOT_FELT;
  let high = 1;
  while (draughtRate(kelvin, high, turbulencePercent) < ratePercent) high *= 2;
  for (let step = 0; step < 60; step++) {
    const middle = (low + high) / 2;
    if (draughtRate(kelvin, middle, turbulencePercent) < ratePercent) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
