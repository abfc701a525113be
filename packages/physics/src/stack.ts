// Stack effect: warm air stands lighter than the room's, so it leaves at the top and draws room air in at the bottom.

import { mustBeFinite, mustBePositive, mustNotBeNegative } from './argument.ts';
import { GRAVITY } from './constants.ts';

/**
 * Pressure difference that a height of lighter air builds up: dp = (rho_outside - rho_inside) g H.
 *
 * @param outside - Density of the surrounding air, kg/m³, above 0.
 * @param inside - Density of the air in the cabinet, kg/m³, above 0.
 * @param height - H between the two openings, m.
 * @returns Pa; above 0 where the inside is lighter (warmer) and the height positive.
 * @throws RangeError when a density is not above 0 or the height is not finite.
 *
 * @remarks Valid: still air. Source: hydrostatics. Checked: exact.
 *
 * @example A bay at 45 °C in a room of 21 °C, openings 0.9 m apart
 * ```ts
 * stackPressure(1.2, 1.109, 0.9); // => 0.803
 * ```
 */
export function stackPressure(outside: number, inside: number, height: number): number {
  mustBePositive('stackPressure', 'outside', outside);
  mustBePositive('stackPressure', 'inside', inside);
  mustBeFinite('stackPressure', 'height', height);
  return (outside - inside) * GRAVITY * height;
}

/** Two openings of one space, one above the other, and the air on both sides. */
export interface TwoOpenings {
  /** Discharge area Cd A of the lower opening, m². */
  readonly lowerDischarge: number;
  /** Discharge area of the upper opening, m². */
  readonly upperDischarge: number;
  /** Height between the two, m. */
  readonly height: number;
  /** Density of the surrounding air, kg/m³. */
  readonly outside: number;
  /** Density of the air inside, kg/m³, at most `outside`. */
  readonly inside: number;
}

/**
 * Height above the lower opening at which inside and outside have one pressure.
 *
 *     h/H = A_u^2 rho_i / (A_l^2 rho_o + A_u^2 rho_i)
 *
 * It moves towards the larger opening. Anything open below it draws in, anything above it blows out.
 *
 * @param openings - Both discharge areas, height and densities above 0.
 * @returns h in m, between 0 and H.
 * @throws RangeError when a value is not above 0.
 *
 * @remarks
 * Valid: no fan, no wind, warm inside. Source: equal mass flow through both openings; ASHRAE Fundamentals 2017 ch. 16 gives
 * H/(1 + (A_l/A_u)^2 T_i/T_o), the same. Checked: exact.
 *
 * @example Equal openings: a little below the middle, because the outflow is lighter
 * ```ts
 * neutralLevel({ lowerDischarge: 0.01, upperDischarge: 0.01, height: 1, outside: 1.2, inside: 1.1 }); // => 0.478
 * ```
 */
export function neutralLevel(openings: TwoOpenings): number {
  mustBeOpenings('neutralLevel', openings);
  const lower = openings.lowerDischarge ** 2 * openings.outside;
  const upper = openings.upperDischarge ** 2 * openings.inside;
  return (openings.height * upper) / (lower + upper);
}

/**
 * Mass flow that the stack effect drives through two openings.
 *
 *     m = sqrt(2 (rho_o - rho_i) g H / (1/(A_l^2 rho_o) + 1/(A_u^2 rho_i)))
 *
 * @param openings - Both discharge areas, height and densities above 0.
 * @returns kg/s, in below and out above; below 0 when the inside is the heavier air.
 * @throws RangeError when a value is not above 0.
 *
 * @remarks
 * Valid: warm inside; for a cold inside (negative result) the densities that pass the holes change places, 2 % per 10 K.
 * Source: orifice law at both openings and hydrostatics (Walton 1989; ASHRAE Fundamentals 2017 ch. 16). Checked: exact.
 *
 * @example Openings of 55 cm² 0.9 m apart, Cd 0.61, 45 °C inside and 21 °C outside
 * ```ts
 * const area = 0.61 * 0.0055;
 * stackFlow({ lowerDischarge: area, upperDischarge: area, height: 0.9, outside: 1.1999, inside: 1.1094 }); // => 0.00322
 * ```
 */
export function stackFlow(openings: TwoOpenings): number {
  mustBeOpenings('stackFlow', openings);
  const { lowerDischarge, upperDischarge, height, outside, inside } = openings;
  const drive = stackPressure(outside, inside, height);
  const resistance = 1 / (lowerDischarge ** 2 * outside) + 1 / (upperDischarge ** 2 * inside);
  return Math.sign(drive) * Math.sqrt((2 * Math.abs(drive)) / resistance);
}

/**
 * Volume flow out of one opening by its height above the neutral level, as handbooks print it.
 *
 *     V = A_d sqrt(2 g h (T_i - T_o)/T_i)
 *
 * @param discharge - A_d = Cd A, m², 0 or more.
 * @param toNeutral - h, m, 0 or more.
 * @param insideK - T_i, K, at least T_o.
 * @param outsideK - T_o, K, above 0.
 * @returns m³/s at inside temperature.
 * @throws RangeError when an argument is nonsense or the inside is colder.
 *
 * @remarks Valid: as {@link stackFlow}. Source: ASHRAE Fundamentals 2009 ch. 16, equation (38). Checked: formula (memory).
 *
 * @example 100 cm² with Cd 0.65, 0.75 m above the neutral level, 35 and 22 °C
 * ```ts
 * stackOutflow(0.0065, 0.75, 308.15, 295.15); // => 0.00512
 * ```
 */
export function stackOutflow(discharge: number, toNeutral: number, insideK: number, outsideK: number): number {
  mustNotBeNegative('stackOutflow', 'discharge', discharge);
  mustNotBeNegative('stackOutflow', 'toNeutral', toNeutral);
  mustBePositive('stackOutflow', 'outsideK', outsideK);
  mustNotBeNegative('stackOutflow', 'insideK - outsideK', insideK - outsideK);
  return discharge * Math.sqrt((2 * GRAVITY * toNeutral * (insideK - outsideK)) / insideK);
}

/**
 * Volume flow of a stack that a heat source drives, when all heat leaves with the air.
 *
 *     dT = Q/(rho cp V),  V = A_d sqrt(2 g H dT/T)   =>   V = (A_d^2 2 g H Q/(rho cp T))^(1/3)
 *
 * Eight times the heat only doubles the flow. Heat through the walls makes it less: this is an upper bound.
 *
 * @param discharge - A_d of both openings in series, m², 0 or more.
 * @param height - H between them, m, 0 or more.
 * @param heat - Q taken up by the air, W, 0 or more.
 * @param airK - T, K, above 0.
 * @param heatCapacity - rho cp of the air, J/(m³·K), above 0.
 * @returns m³/s.
 * @throws RangeError when an argument is nonsense.
 *
 * @remarks Valid: dT small against T, no loss through walls. Source: the two balances above. Checked: exact.
 *
 * @example 100 W, 1 m, two openings of 60 cm² in series
 * ```ts
 * heatDrivenStack(0.62 * 0.00424, 1, 100, 300, 1190) * 3600; // => 12.1
 * ```
 */
export function heatDrivenStack(
  discharge: number,
  height: number,
  heat: number,
  airK: number,
  heatCapacity: number,
): number {
  mustNotBeNegative('heatDrivenStack', 'discharge', discharge);
  mustNotBeNegative('heatDrivenStack', 'height', height);
  mustNotBeNegative('heatDrivenStack', 'heat', heat);
  mustBePositive('heatDrivenStack', 'airK', airK);
  mustBePositive('heatDrivenStack', 'heatCapacity', heatCapacity);
  return Math.cbrt((discharge ** 2 * 2 * GRAVITY * height * heat) / (heatCapacity * airK));
}

function mustBeOpenings(where: string, openings: TwoOpenings): void {
  for (const [name, value] of Object.entries(openings)) mustBePositive(where, name, value as number);
}
