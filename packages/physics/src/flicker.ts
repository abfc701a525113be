// How a lamp's light pulsates: measures of flicker, what is held against them, and the bands that a rolling shutter makes of it.

import { mustBePositive, mustLieWithin, mustNotBeNegative } from './argument.ts';

/**
 * Percent flicker, as a share: depth of modulation.
 *
 *     PF = (most - least)/(most + least)
 *
 * @param most - Brightest moment, any unit, above 0.
 * @param least - Darkest moment, 0 or more.
 * @returns PF, 0 to 1.
 * @throws RangeError when an argument is out of these bounds.
 *
 * @remarks Valid: any waveform. Source: IES Lighting Handbook; IEEE 1789-2015. Checked: second-hand.
 *
 * @example From 60 to 100 %
 * ```ts
 * percentFlicker(1, 0.6); // => 0.25
 * ```
 */
export function percentFlicker(most: number, least: number): number {
  mustBePositive('percentFlicker', 'most', most);
  mustLieWithin('percentFlicker', 'least', least, 0, most);
  return (most - least) / (most + least);
}

/**
 * Flicker index: light above the mean over all light.
 *
 *     FI = sum of max(x - mean, 0) / sum of x
 *
 * @param period - Samples of one whole period at even steps, each 0 or more, not all 0.
 * @returns FI, 0 to below 1. A lamp pulsed with the duty D has 1 - D.
 * @throws RangeError when a sample is negative or there is no light.
 *
 * @remarks Valid: any waveform, sampled finely. Source: IES Lighting Handbook. Checked: memory.
 *
 * @example On for a quarter of the time
 * ```ts
 * flickerIndex([1, 0, 0, 0]); // => 0.75
 * ```
 */
export function flickerIndex(period: readonly number[]): number {
  let total = 0;
  for (const sample of period) {
    mustNotBeNegative('flickerIndex', 'a sample', sample);
    total += sample;
  }
  mustBePositive('flickerIndex', 'the light of a period', total);
  const mean = total / period.length;
  return period.reduce((sum, sample) => sum + Math.max(sample - mean, 0), 0) / total;
}

/** Which line of the recommendation: where the risk is low, or where no effect is seen. */
export type FlickerLine = 'low risk' | 'no effect';

/** Share per Hz below 90 Hz, share per Hz from there on, and the frequency from which there is no bound. */
const lines: Readonly<Record<FlickerLine, readonly [below: number, above: number, free: number]>> = {
  'low risk': [0.000_25, 0.0008, 1250],
  'no effect': [0.0001, 1 / 3000, 3000],
};

/**
 * Largest modulation of light that the recommendation for health allows.
 *
 *     below 90 Hz: 0.025 f % (low risk), 0.01 f % (no effect); from 90 Hz on: 0.08 f %, 0.0333 f %
 *
 * @param frequency - f of the light, Hz, above 0.
 * @param line - Which of the two lines.
 * @returns Share, 0 to 1; 1 from 1250 Hz on (low risk) and from 3000 Hz on (no effect): no bound.
 * @throws RangeError when the frequency is not above 0.
 *
 * @remarks
 * Valid: one dominant frequency. Source: IEEE Std 1789-2015, 8.1.1. Checked: second-hand.
 *
 * @example Ripple of mains of 60 Hz
 * ```ts
 * flickerBound(120, 'low risk'); // => 0.096
 * flickerBound(120, 'no effect'); // => 0.04
 * ```
 */
export function flickerBound(frequency: number, line: FlickerLine): number {
  mustBePositive('flickerBound', 'frequency', frequency);
  const [below, above, free] = lines[line];
  if (frequency >= free) return 1;
  return Math.min(frequency < 90 ? below * frequency : above * frequency, 1);
}

/**
 * Brightest row less darkest row of a rolling shutter's picture under a pulsed lamp, as a share of the mean.
 *
 *     (min(D, r) - max(0, D + r - 1))/(D f T),   r = f T less its whole part
 *
 * @param frequency - f, Hz, above 0.
 * @param duty - D, share of each period in which the lamp is on, above 0 to 1.
 * @param time - T for which each row is exposed, s, above 0.
 * @returns Share; 0 when T holds a whole number of periods. Never above min(D, 1 - D)/(D f T).
 * @throws RangeError when an argument is out of these bounds.
 *
 * @remarks
 * Valid: light fully off between pulses, rows enough to meet every phase. Source: integral of a rectangular wave over a moving
 * window. Checked: derived here, against a simulation.
 *
 * @example 100 Hz, half on: 5 ms, 10 ms and a little more
 * ```ts
 * pulseBanding(100, 0.5, 0.005); // => 2.000
 * pulseBanding(100, 0.5, 0.01); // => 0.000
 * pulseBanding(1000, 0.5, 0.0105); // => 0.0952
 * ```
 */
export function pulseBanding(frequency: number, duty: number, time: number): number {
  mustBePositive('pulseBanding', 'frequency', frequency);
  mustLieWithin('pulseBanding', 'duty', duty, Number.MIN_VALUE, 1);
  mustBePositive('pulseBanding', 'time', time);
  const periods = frequency * time;
  // A time written as 10 ms is not exactly one period of 100 Hz in binary: the last digits are no phase.
  const rest = periods - Math.round(periods);
  const phase = Math.abs(rest) < 1e-9 * periods ? 0 : periods - Math.floor(periods);
  return (Math.min(duty, phase) - Math.max(0, duty + phase - 1)) / (duty * periods);
}

/**
 * The same under a lamp whose light swings as a sine.
 *
 *     2 m |sin(pi f T)|/(pi f T)
 *
 * @param frequency - f, Hz, above 0.
 * @param ripple - m, (most - least)/(most + least), 0 to 1.
 * @param time - T, s, above 0.
 * @returns Share of the mean.
 * @throws RangeError when an argument is out of these bounds.
 *
 * @remarks Valid: one frequency. Source: integral of a sine over a moving window. Checked: derived here.
 *
 * @example 100 Hz with 30 %, half a period
 * ```ts
 * rippleBanding(100, 0.3, 0.005); // => 0.382
 * ```
 */
export function rippleBanding(frequency: number, ripple: number, time: number): number {
  mustBePositive('rippleBanding', 'frequency', frequency);
  mustLieWithin('rippleBanding', 'ripple', ripple, 0, 1);
  mustBePositive('rippleBanding', 'time', time);
  const angle = Math.PI * frequency * time;
  return (2 * ripple * Math.abs(Math.sin(angle))) / angle;
}
