// A body that a thermostat switches between two ends: how long it heats, how long it rests.

import { mustBeFinite, mustBePositive } from './argument.ts';

/**
 * Time in which a body moves from one temperature to another on its way to where it would settle, s.
 *
 *     t = tau ln((T_end - T_first)/(T_end - T_last))
 *
 * @param tau - tau = C/UA, s, above 0.
 * @param first - T_first, K.
 * @param last - T_last, K, between `first` and `end`; not `end` itself, which is never reached.
 * @param end - T_end where it would settle, K.
 * @returns Time; 0 when first and last are one.
 * @throws RangeError when `last` does not lie on the way from `first` to `end`.
 *
 * @remarks
 * Valid: one time constant, constant surroundings.
 * Source: solution of T' = -(T - T_end)/tau.
 * Checked: against an independent script.
 *
 * @example A bed of 872 s from 100 °C to 40 °C in air of 30 °C: 28.3 min
 * ```ts
 * settlingTime(871.7, 100, 40, 30) / 60; // => 28.3
 * ```
 */
export function settlingTime(tau: number, first: number, last: number, end: number): number {
  mustBePositive('settlingTime', 'tau', tau);
  for (const [name, value] of Object.entries({ first, last, end })) mustBeFinite('settlingTime', name, value);
  if (first === last) return 0;
  const share = (end - first) / (end - last);
  if (!(share > 1) || !Number.isFinite(share))
    throw new RangeError(`settlingTime: last is ${last}; it must lie between first (${first}) and end (${end})`);
  return tau * Math.log(share);
}

/** One round of a thermostat. */
export interface ThermostatCycle {
  /** From its lower to its upper end, s. */
  readonly rise: number;
  /** From its upper to its lower end, s. */
  readonly fall: number;
}

/**
 * How long a body takes between the two ends of a thermostat, up and down.
 *
 *     rise = tau ln((T_up - T_low)/(T_up - T_high)),    fall = tau ln((T_high - T_down)/(T_low - T_down))
 *
 * @param tau - C/UA, s, above 0.
 * @param band - T_low and T_high, K, low below high.
 * @param up - T_up where it would settle while it is pushed up, K, above the band.
 * @param down - T_down where it would settle otherwise, K, below the band.
 * @returns Both times; 3600/(rise + fall) is the number of switchings on in an hour.
 * @throws RangeError when a temperature lies on the wrong side.
 *
 * @remarks
 * Valid: one time constant; a sensor's lag makes the band wider.
 * Source: solution of T' = -(T - T_end)/tau.
 * Checked: against an independent script.
 *
 * @example A bay with a fan: 48 °C without it, 30 °C with it, switched at 40 and 38 °C; 13.4 rounds an hour
 * ```ts
 * const { rise, fall } = thermostatCycle(600, [38, 40], 48, 30);
 * rise; // => 133.9
 * 3600 / (rise + fall); // => 13.4
 * ```
 */
export function thermostatCycle(
  tau: number,
  [low, high]: readonly [number, number],
  up: number,
  down: number,
): ThermostatCycle {
  return { rise: settlingTime(tau, low, high, up), fall: settlingTime(tau, high, low, down) };
}
