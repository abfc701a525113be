// Air that goes round a filter instead of through it. Above class E12 the seat, not the class, sets the result.

import { mustBePositive, mustLieWithin } from './argument.ts';
import { type Gap, gapResistance } from './gap.ts';
import type { Resistance } from './resistance.ts';

/** How a total flow divides between a filter and the gap in its seat. */
export interface Bypass {
  /** Gap flow over total flow, 0 to 1. */
  readonly share: number;
  /** Pressure left over the filter, Pa. */
  readonly pressure: number;
}

/**
 * Share of the flow that passes the gap in a filter's seat: filter and gap see one pressure.
 *
 *     A (V - q) + B (V - q)^2 = a q + b q^2
 *
 * @param filter - A and B of the filter, 0 or more, not both 0.
 * @param gap - Slit around the filter.
 * @param flow - V through both, m³/s, above 0.
 * @param rho - Density, kg/m³, above 0.
 * @param mu - Viscosity, Pa·s, above 0.
 * @returns Share and remaining pressure.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks
 * Valid: one gap of even width; real seats leak at corners. Source: parallel paths; gap after Baker, Sharples & Ward 1987.
 * Checked: values (independent script).
 *
 * @example One millimetre around a filter of 150 Pa at 60 m³/h
 * ```ts
 * const gap = { length: 0.8, width: 1e-3, depth: 0.02, bends: 0 };
 * seatBypass({ linear: 9000, quadratic: 0 }, gap, 60 / 3600, 1.2, 1.81e-5).share; // => 0.384
 * ```
 */
export function seatBypass(filter: Resistance, gap: Gap, flow: number, rho: number, mu: number): Bypass {
  mustBePositive('seatBypass', 'flow', flow);
  mustBePositive('seatBypass', 'filter resistance', filter.linear + filter.quadratic);
  const slit = gapResistance(gap, rho, mu);
  // (b - B) q² + (a + A + 2 B V) q - (A V + B V²) = 0, solved in the form that loses no digits.
  const square = slit.quadratic - filter.quadratic;
  const line = slit.linear + filter.linear + 2 * filter.quadratic * flow;
  const drive = filter.linear * flow + filter.quadratic * flow ** 2;
  const through = (2 * drive) / (line + Math.sqrt(line ** 2 + 4 * square * drive));
  return { share: through / flow, pressure: through * (slit.linear + slit.quadratic * through) };
}

/**
 * Efficiency of filter and gap together: eta_eff = eta (1 - f).
 *
 * @param efficiency - eta of the filter, 0 to 1.
 * @param share - f: {@link Bypass.share}, 0 to 1.
 * @returns eta_eff.
 * @throws RangeError when an argument lies outside 0 to 1.
 *
 * @remarks Valid: all particle sizes pass the gap. Source: mass balance. Checked: exact.
 *
 * @example H13 with 38.4 percent bypass
 * ```ts
 * seatedEfficiency(0.9995, 0.384); // => 0.616
 * ```
 */
export function seatedEfficiency(efficiency: number, share: number): number {
  mustLieWithin('seatedEfficiency', 'efficiency', efficiency, 0, 1);
  mustLieWithin('seatedEfficiency', 'share', share, 0, 1);
  return efficiency * (1 - share);
}
